import { describe } from 'vitest';
import { planar } from '../../published/planar.ts';
import { runRows } from './run-rows.ts';

describe('published: planar wings', () => runRows(planar));
