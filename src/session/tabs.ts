/**
 * Which tab this is. Each open tab holds a lock on its own copy of the design, so that no other writes there; the
 * browser lets go of it when the tab closes or dies, and the copy can be taken up by a later visit. A duplicated tab
 * brings its original's name along, finds the lock taken and gets a name of its own.
 */

export interface Tabs {
  /** The copy this tab, or the one it is a duplicate of, had before; null for a tab just opened. */
  own(): Promise<{ id: string; isHeld: boolean } | null>;
  /** Holds a copy for this tab; false where another tab has it. */
  take(id: string): Promise<boolean>;
  /** Does the work while no tab has that copy, nor can take it; nothing where one has it. */
  whileFree(id: string, work: () => Promise<void>): Promise<void>;
  /** Names of the copies that open tabs hold; null where the browser cannot tell. */
  held(): Promise<ReadonlySet<string> | null>;
}

/** The copy of the first visit ever. */
export const FIRST = 'first';

export const newTab = (): string => Math.random().toString(36).slice(2, 12);

/** Where there is only one tab: tests, and browsers without locks. */
export function loneTab(): Tabs {
  return {
    own: async () => ({ id: FIRST, isHeld: true }),
    take: async () => true,
    whileFree: (_id, work) => work(),
    held: async () => new Set(),
  };
}

const NAME = 'downcurve.tab';
const RELOAD = 400; // ms; the page before a reload lets go within that time
const LOCK = `${NAME}.`;

export function browserTabs(): Tabs {
  if (!navigator.locks)
    return {
      own: async () => ownBy(async () => true),
      take: async (id) => {
        remember(id);
        return true;
      },
      whileFree: async () => {},
      held: async () => null,
    };
  return {
    own: () => ownBy((id) => hold(id, { signal: AbortSignal.timeout(RELOAD) })),
    take: async (id) => {
      const isHeld = await hold(id, { ifAvailable: true });
      if (isHeld) remember(id);
      return isHeld;
    },
    whileFree: (id, work) =>
      navigator.locks.request(LOCK + id, { ifAvailable: true }, async (lock) => {
        if (lock) await work();
      }),
    held: () =>
      navigator.locks.query().then(
        ({ held = [] }) =>
          new Set(held.flatMap(({ name = '' }) => (name.startsWith(LOCK) ? [name.slice(LOCK.length)] : []))),
        () => null, // the browser blocks all storage, and the locks with it
      ),
  };
}

async function ownBy(holds: (id: string) => Promise<boolean>): ReturnType<Tabs['own']> {
  const id = remembered();
  return id === null ? null : { id, isHeld: await holds(id) };
}

/** Holds the lock until the page goes. */
function hold(id: string, options: LockOptions): Promise<boolean> {
  return new Promise((resolve) => {
    navigator.locks
      .request(LOCK + id, options, (lock) => {
        resolve(lock !== null);
        return lock ? new Promise<void>(() => {}) : undefined;
      })
      .catch(() => resolve(false)); // another tab has it, or the browser forbids
  });
}

function remembered(): string | null {
  try {
    return sessionStorage.getItem(NAME);
  } catch {
    return null;
  }
}

function remember(id: string): void {
  try {
    sessionStorage.setItem(NAME, id);
  } catch {
    // blocked: after a reload the tab takes up its copy as a new one would
  }
}
