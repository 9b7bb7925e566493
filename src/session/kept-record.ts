/** What the database holds of one kept design. What is found there is looked at like anything else from outside. */

/** What a rider gives marks for. */
export const MARKS = ['hold', 'glide', 'turn', 'takeOff', 'pump'] as const;
export type MarkName = (typeof MARKS)[number];
/** 1 (poor) to 5 (just right); a mark not given is not there. */
export type Marks = { [mark in MarkName]?: number };

export interface StoredDesign {
  name: string;
  kept: number; // ms since 1970
  notes: string; // the rider's own
  marks: Marks;
  removed: number | null; // ms since 1970 when it was taken off the shelf; null: it is on it
  text: string; // the document, as it was kept
}

/** What is found, as far as it can be made out; a text is made of what is none, so that it can be handed out. */
export function asStored(value: unknown): StoredDesign {
  const found = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>;
  const { name, kept, notes, marks, removed, text } = found;
  return {
    name: typeof name === 'string' && name !== '' ? name : 'Without a name',
    kept: isTime(kept) ? kept : 0,
    notes: typeof notes === 'string' ? notes : '',
    marks: wholeMarks(marks),
    removed: isTime(removed) ? removed : null,
    text: typeof text === 'string' ? text : (JSON.stringify(value) ?? ''),
  };
}

/** The marks among what is found; between two the nearer. */
export function wholeMarks(value: unknown): Marks {
  const found = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>;
  const marks: Marks = {};
  for (const name of MARKS) {
    const mark = found[name];
    if (typeof mark === 'number' && mark >= 1 && mark <= 5) marks[name] = Math.round(mark);
  }
  return marks;
}

const isTime = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
