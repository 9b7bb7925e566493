/** The browser's database as a shelf of named copies, and as a store of kept designs. */
import { type IDBPDatabase, openDB } from 'idb';
import type { Channel, KeptStore } from './kept.ts';
import type { Notebook, Shelf } from './storage.ts';

const DATABASE = 'downcurve';
const SESSION = 'session'; // since version 1
const KEPT = 'kept'; // since version 2
const VERSION = 2;

let opening: Promise<IDBPDatabase> | null = null;

/** Opens the database at first use, for all who ask; rejects where the browser blocks it, and is tried again then. */
function database(): Promise<IDBPDatabase> {
  opening ??= openDB(DATABASE, VERSION, {
    // Only ever adds: what an earlier version holds stays where it is.
    upgrade: (base) => {
      for (const store of [SESSION, KEPT])
        if (!base.objectStoreNames.contains(store)) base.createObjectStore(store);
    },
    // A tab with a newer version of the page waits for this one to let go.
    blocking: (_current, _blocked, event) => {
      (event.target as IDBDatabase).close();
      opening = null;
    },
    terminated: () => {
      opening = null;
    },
  }).catch((error: unknown) => {
    opening = null;
    throw error;
  });
  return opening;
}

/** The open design and what belongs to it; every call rejects where the browser blocks the database. */
export function browserShelf(): Shelf {
  return {
    keys: async () => (await (await database()).getAllKeys(SESSION)).map(String),
    read: async (key) => (await database()).get(SESSION, key),
    write: async (key, value) => {
      await (await database()).put(SESSION, value, key);
    },
    remove: async (key) => {
      await (await database()).delete(SESSION, key);
    },
  };
}

/** Kept designs, each under its id. */
export function browserKept(): KeptStore {
  return {
    all: async () => {
      const store = (await database()).transaction(KEPT).store;
      const [ids, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
      return values.map((value: unknown, k) => ({ id: String(ids[k]), value }));
    },
    change: async (id, change) => {
      const { store, done } = (await database()).transaction(KEPT, 'readwrite');
      const next = change(await store.get(id));
      await (next === undefined ? store.delete(id) : store.put(next, id));
      await done;
    },
  };
}

/** Between the tabs of the page, or null where the browser has no such thing. */
export function keptChannel(): Channel | null {
  return typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('downcurve-kept');
}

/** The browser's synchronous storage, or null where it is blocked. */
export function browserNotebook(): Notebook | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
