/** The browser's storages in memory. */
import type { Notebook, Shelf } from '../../src/session/storage.ts';

export interface Memory {
  shelved: Map<string, unknown>;
  noted: Map<string, string>;
  shelf: Shelf;
  notebook: Notebook;
}

export function memory(): Memory {
  const shelved = new Map<string, unknown>();
  const noted = new Map<string, string>();
  return {
    shelved,
    noted,
    shelf: {
      keys: async () => [...shelved.keys()],
      read: async (key) => structuredClone(shelved.get(key)),
      write: async (key, value) => {
        shelved.set(key, structuredClone(value));
      },
      remove: async (key) => {
        shelved.delete(key);
      },
    },
    notebook: {
      get length() {
        return noted.size;
      },
      key: (k) => [...noted.keys()][k] ?? null,
      getItem: (key) => noted.get(key) ?? null,
      setItem: (key, value) => {
        noted.set(key, value);
      },
      removeItem: (key) => {
        noted.delete(key);
      },
    },
  };
}
