/** The places in the browser where copies of the open design lie, and what goes by which name there. */
import { type Copy, type CopyReading, type Note, unpackCopy, unpackNote } from './copies.ts';
import { FIRST } from './tabs.ts';

/** The browser's database, asynchronous. */
export interface Shelf {
  keys(): Promise<string[]>;
  read(key: string): Promise<unknown>;
  write(key: string, value: unknown): Promise<void>;
  remove(key: string): Promise<void>;
}

/** The browser's small synchronous storage. */
export type Notebook = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const COPY = 'design';
const NOTE = 'downcurve.pending';
const LAST_GOOD = 'last-good';
const SET_ASIDE = 'unreadable';

const keyOf = (start: string, id: string) => (id === FIRST ? start : `${start}.${id}`);
const idOf = (start: string, key: string): string | null => {
  if (key === start) return FIRST;
  return key.startsWith(`${start}.`) ? key.slice(start.length + 1) : null;
};

/** One tab's copies as they were found. */
export interface Found {
  id: string;
  copy: { raw: unknown; reading: CopyReading<Copy> } | null;
  note: { raw: string; reading: CopyReading<Note> } | null;
}

/**
 * Every tab's copies, or one tab's. Rejects where the database cannot be read, unless `shelf` is null: then the notes
 * alone.
 */
export async function findAll(
  shelf: Shelf | null,
  notebook: Notebook | null,
  only: string | null = null,
): Promise<Found[]> {
  const all = new Map<string, Found>();
  const at = (id: string): Found => {
    const found = all.get(id) ?? { id, copy: null, note: null };
    all.set(id, found);
    return found;
  };
  // Notes first: what its tab writes meanwhile has all that a note has, where a later note may build on what is not read.
  for (const [id, raw] of notesIn(notebook))
    if (only === null || id === only) at(id).note = { raw, reading: unpackNote(raw) };
  for (const key of (await shelf?.keys()) ?? []) {
    const id = idOf(COPY, key);
    if (id === null || (only !== null && id !== only)) continue;
    const raw = await shelf!.read(key);
    if (raw === undefined) continue; // another tab has just taken it up
    at(id).copy = { raw, reading: unpackCopy(raw) };
  }
  return [...all.values()];
}

function notesIn(notebook: Notebook | null): [id: string, text: string][] {
  const notes: [string, string][] = [];
  try {
    for (let k = 0; k < (notebook?.length ?? 0); k++) {
      const key = notebook!.key(k) ?? '';
      const id = idOf(NOTE, key);
      const text = notebook!.getItem(key);
      if (id !== null && text !== null) notes.push([id, text]);
    }
  } catch {
    // blocked: no notes
  }
  return notes;
}

export const writeCopy = (shelf: Shelf, id: string, value: object) => shelf.write(keyOf(COPY, id), value);

/** Takes both copies of a tab away. */
export async function forget(shelf: Shelf, notebook: Notebook | null, id: string): Promise<void> {
  await shelf.remove(keyOf(COPY, id));
  dropNote(notebook, id);
}

export const writeLastGood = (shelf: Shelf, value: object) => shelf.write(LAST_GOOD, value);

export async function readLastGood(shelf: Shelf): Promise<CopyReading<Copy>> {
  return unpackCopy(await shelf.read(LAST_GOOD));
}

/** Keeps what could not be read under a key of its own. */
export const setAside = (shelf: Shelf, raw: unknown, now: number) => shelf.write(`${SET_ASIDE}.${now}`, raw);

/** False where the notebook is full or blocked. */
export function writeNote(notebook: Notebook | null, id: string, note: object): boolean {
  try {
    if (!notebook) return false;
    notebook.setItem(keyOf(NOTE, id), JSON.stringify(note));
    return true;
  } catch {
    return false;
  }
}

export function dropNote(notebook: Notebook | null, id: string): void {
  try {
    notebook?.removeItem(keyOf(NOTE, id));
  } catch {
    // blocked
  }
}
