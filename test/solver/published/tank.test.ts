import { describe } from 'vitest';
import { tank } from '../../published/tank.ts';
import { runRows } from './run-rows.ts';

describe('published: tank', () => runRows(tank));
