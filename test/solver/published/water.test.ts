import { describe } from 'vitest';
import { water } from '../../published/water.ts';
import { runRows } from './run-rows.ts';

describe('published: water', () => runRows(water));
