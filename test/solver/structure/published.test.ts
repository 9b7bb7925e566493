import { describe } from 'vitest';
import { structures } from '../../published/structures.ts';
import { runRows } from '../published/run-rows.ts';

describe('published: structures', () => runRows(structures));
