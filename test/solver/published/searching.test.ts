import { describe, vi } from 'vitest';
import { searching } from '../../published/searching.ts';
import { runRows } from './run-rows.ts';

vi.setConfig({ testTimeout: 60_000 }); // polars are made once, more slowly on a busy machine

describe('published: searching', () => runRows(searching));
