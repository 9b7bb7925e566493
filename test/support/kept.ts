/** A shelf in memory, for sessions in tests. */
import type { KeptStore } from '../../src/session/kept.ts';

export function memoryKept(held = new Map<string, unknown>()): KeptStore {
  return {
    all: async () => [...held].map(([id, value]) => ({ id, value: structuredClone(value) })),
    change: async (id, change) => {
      const next = structuredClone(change(structuredClone(held.get(id))));
      if (next === undefined) held.delete(id);
      else held.set(id, next);
    },
  };
}
