/**
 * Changes of kept designs in the small synchronous storage, for the moment until the database has them: a page that is
 * left or dies meanwhile leaves its notes to the next visit. Each page has a note of its own for each kept design.
 */
import type { KeptStore } from './kept.ts';
import { asChange, bothChanges, type Change, changed } from './kept-record.ts';
import type { Notebook } from './storage.ts';

const NOTE = 'downcurve.kept.';

/** Where a page notes what it does to a kept design. */
export const placeOf = (id: string, page: string): string => `${NOTE}${id}.${page}`;
const idAt = (place: string): string => place.slice(NOTE.length).split('.')[0]!;

/** What was written down, or null where there is no room for it or the browser blocks it. */
export function noteChange(notebook: Notebook | null, place: string, change: Change): string | null {
  try {
    if (!notebook) return null;
    const text = JSON.stringify({ ...change, time: Date.now() });
    notebook.setItem(place, text);
    return text;
  } catch {
    return null;
  }
}

interface Note {
  place: string;
  text: string; // as it stands there
  time: number; // ms since 1970
  change: Change;
}

export function readNote(notebook: Notebook | null, place: string): Note | null {
  try {
    const text = notebook?.getItem(place);
    if (typeof text !== 'string') return null;
    const value: unknown = JSON.parse(text);
    const { time } = value as { time?: unknown };
    return { place, text, time: typeof time === 'number' ? time : 0, change: asChange(value) };
  } catch {
    return null; // blocked, or damaged
  }
}

/** Takes a note away unless more has been noted meanwhile. */
export function dropNote(notebook: Notebook | null, place: string, text: string | null): void {
  try {
    if (text !== null && notebook?.getItem(place) === text) notebook.removeItem(place);
  } catch {
    // blocked
  }
}

/** Gives the database what pages that were left or died had only noted; answers with what it refuses. */
export async function takeUpNotes(kept: KeptStore, notebook: Notebook | null): Promise<Map<string, Change>> {
  const refused = new Map<string, Change>();
  for (const { place, text, change } of notes(notebook)) {
    const id = idAt(place);
    try {
      await kept.change(id, (present) => {
        const isDue = readNote(notebook, place)?.text === text; // an open page may have written it meanwhile, and more
        const isKnown = present !== undefined || change.made !== undefined;
        return isDue && isKnown ? changed(present, change) : present;
      });
      dropNote(notebook, place, text);
    } catch {
      refused.set(id, bothChanges(refused.get(id), change));
    }
  }
  return refused;
}

/** The oldest first. */
function notes(notebook: Notebook | null): Note[] {
  try {
    const keys = Array.from({ length: notebook?.length ?? 0 }, (_, k) => notebook!.key(k) ?? '');
    const all = keys.filter((key) => key.startsWith(NOTE)).map((place) => readNote(notebook, place));
    return all.filter((note) => note !== null).sort((one, other) => one.time - other.time);
  } catch {
    return []; // blocked
  }
}
