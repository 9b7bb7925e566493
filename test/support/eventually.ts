import { vi } from 'vitest';

/** Waits until the check holds; a busy machine is no failure. */
export const eventually = (check: () => unknown) => vi.waitFor(check, { timeout: 30_000 });
