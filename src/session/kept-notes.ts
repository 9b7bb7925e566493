/**
 * Changes of kept designs in the small synchronous storage, for the moment until the database has them: a page that is
 * left or dies meanwhile leaves its note to the next visit.
 */
import type { KeptStore } from './kept.ts';
import { asChange, type Change, changed } from './kept-record.ts';
import type { Notebook } from './storage.ts';

const NOTE = 'downcurve.kept.';

/** What was written down, or null where there is no room for it or the browser blocks it. */
export function noteChange(notebook: Notebook | null, id: string, change: Change): string | null {
  try {
    if (!notebook) return null;
    const text = JSON.stringify(change);
    notebook.setItem(NOTE + id, text);
    return text;
  } catch {
    return null;
  }
}

export function readNote(notebook: Notebook | null, id: string): { text: string; change: Change } | null {
  try {
    const text = notebook?.getItem(NOTE + id);
    return typeof text === 'string' ? { text, change: asChange(JSON.parse(text)) } : null;
  } catch {
    return null; // blocked, or damaged
  }
}

/** Takes a note away unless another tab has written there meanwhile. */
export function dropNote(notebook: Notebook | null, id: string, text: string | null): void {
  try {
    if (text !== null && notebook?.getItem(NOTE + id) === text) notebook.removeItem(NOTE + id);
  } catch {
    // blocked
  }
}

/** Gives the database what pages that were left or died had only noted; answers with what it refuses. */
export async function takeUpNotes(kept: KeptStore, notebook: Notebook | null): Promise<Map<string, Change>> {
  const refused = new Map<string, Change>();
  for (const id of notedIds(notebook)) {
    const note = readNote(notebook, id);
    if (!note) continue;
    const { text, change } = note;
    try {
      await kept.change(id, (present) => {
        const isDue = readNote(notebook, id)?.text === text; // an open tab may have written it meanwhile, and more
        const isKnown = present !== undefined || change.text !== undefined;
        return isDue && isKnown ? changed(present, change) : present;
      });
      dropNote(notebook, id, text);
    } catch {
      refused.set(id, change);
    }
  }
  return refused;
}

/** Ids of kept designs that have a note. */
function notedIds(notebook: Notebook | null): string[] {
  try {
    const keys = Array.from({ length: notebook?.length ?? 0 }, (_, k) => notebook!.key(k) ?? '');
    return keys.flatMap((key) => (key.startsWith(NOTE) ? [key.slice(NOTE.length)] : []));
  } catch {
    return []; // blocked
  }
}
