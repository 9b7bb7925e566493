import { describe } from 'vitest';
import { swept } from '../../published/swept.ts';
import { runRows } from './run-rows.ts';

describe('published: swept', () => runRows(swept));
