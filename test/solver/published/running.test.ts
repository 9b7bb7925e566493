import { describe, vi } from 'vitest';
import { running } from '../../published/running.ts';
import { runRows } from './run-rows.ts';

vi.setConfig({ testTimeout: 60_000 }); // polars are made once, more slowly on a busy machine

describe('published: running', () => runRows(running));
