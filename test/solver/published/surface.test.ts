import { describe } from 'vitest';
import { surface } from '../../published/surface.ts';
import { runRows } from './run-rows.ts';

describe('published: surface', () => runRows(surface));
