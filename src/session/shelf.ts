/** The browser's database as a shelf of named copies. */
import { type IDBPDatabase, openDB } from 'idb';
import type { Notebook, Shelf } from './saving.ts';

const STORE = 'session';

/** Opens the database at first use; every call rejects where the browser blocks it. */
export function browserShelf(): Shelf {
  let opening: Promise<IDBPDatabase> | undefined;
  const database = () => {
    opening ??= openDB('downcurve', 1, {
      upgrade: (base) => {
        base.createObjectStore(STORE);
      },
    });
    return opening;
  };
  return {
    read: async (key) => (await database()).get(STORE, key),
    write: async (key, value) => {
      await (await database()).put(STORE, value, key);
    },
  };
}

/** The browser's synchronous storage, or null where it is blocked. */
export function browserNotebook(): Notebook | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
