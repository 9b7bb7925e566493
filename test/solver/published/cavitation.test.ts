import { describe } from 'vitest';
import { cavitation } from '../../published/cavitation.ts';
import { runRows } from './run-rows.ts';

describe('published: cavitation', () => runRows(cavitation));
