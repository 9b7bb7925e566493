import { describe } from 'vitest';
import { derivatives } from '../../published/derivatives.ts';
import { runRows } from './run-rows.ts';

describe('published: derivatives', () => runRows(derivatives));
