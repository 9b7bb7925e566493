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

/** What changes in a kept design; a mark that is null is taken back. */
export type Change = Partial<Omit<StoredDesign, 'marks'>> & {
  marks?: { [mark in MarkName]?: number | null };
  made?: StoredDesign; // as it was kept: counts where there is nothing yet
};

/** One change after another as one. */
export function bothChanges(first: Change | undefined, second: Change): Change {
  return { ...first, ...second, marks: { ...first?.marks, ...second.marks } };
}

/** What is held with the change made; what another version of the page has put there stays. */
export function changed(value: unknown, { marks, made, ...rest }: Change): StoredDesign {
  const held = value ?? made;
  const found = recordOf(held);
  const given = Object.entries({ ...recordOf(found.marks), ...marks }).filter(([, mark]) => mark !== null);
  return { ...found, ...asStored(held), ...rest, marks: Object.fromEntries(given) };
}

/** The parts of what is found that are a change. */
export function asChange(value: unknown): Change {
  const { marks, made, ...found } = recordOf(value);
  const { marks: _, ...sound } = asStored(value);
  const parts = Object.entries(sound).filter(([key, part]) => found[key] === part);
  const given = recordOf(marks);
  const taken = Object.fromEntries(MARKS.flatMap((mark) => (given[mark] === null ? [[mark, null]] : [])));
  return {
    ...Object.fromEntries(parts),
    marks: { ...wholeMarks(marks), ...taken },
    ...(typeof recordOf(made).text === 'string' && { made: asStored(made) }),
  };
}

/** What is found, as far as it can be made out; a text is made of what is none, so that it can be handed out. */
export function asStored(value: unknown): StoredDesign {
  const found = recordOf(value);
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
  const found = recordOf(value);
  const marks: Marks = {};
  for (const name of MARKS) {
    const mark = found[name];
    if (typeof mark === 'number' && mark >= 1 && mark <= 5) marks[name] = Math.round(mark);
  }
  return marks;
}

const recordOf = (value: unknown): Record<string, unknown> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};

const isTime = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
