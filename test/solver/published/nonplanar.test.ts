import { describe } from 'vitest';
import { nonplanar } from '../../published/nonplanar.ts';
import { runRows } from './run-rows.ts';

describe('published: nonplanar', () => runRows(nonplanar));
