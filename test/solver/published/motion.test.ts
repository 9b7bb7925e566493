import { describe, vi } from 'vitest';
import { motion } from '../../published/motion.ts';
import { runRows } from './run-rows.ts';

vi.setConfig({ testTimeout: 60_000 }); // polars are made once, more slowly on a busy machine

describe('published: motion', () => runRows(motion));
