/** Opens what one tab has kept: the newest of its two copies that reads. */
import type { Design } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import { type Copy, type Note, trailOf } from './copies.ts';
import type { Trail } from './history.ts';
import { type Found, type Notebook, readLastGood, type Shelf } from './storage.ts';
import { newTab, type Tabs } from './tabs.ts';

export interface RecoverySources {
  shelf: Shelf;
  notebook: Notebook | null; // null where the browser blocks it
  tabs: Tabs;
  read: (text: string) => Reading;
  now?: () => number;
  patience?: number; // ms; a database that does not answer by then must not keep the page empty
}

export interface Opened {
  id: string;
  design: Design;
  trail: Trail<unknown> | null;
  line: string;
  time: number;
  base: { time: number; trail: Trail<unknown> } | null; // what the database holds
  isNoted: boolean;
  isWhole: boolean; // nothing of it lies in the database
}

export interface Trouble {
  id: string;
  reason: string;
  text: string;
}

/** When the newest of its copies was made; 0 where none can be made out. */
export function newestOf({ copy, note }: Found): number {
  const times = [copy?.reading, note?.reading].flatMap((reading) => (reading?.ok ? [reading.copy.time] : []));
  return Math.max(0, ...times);
}

/** The newest of a tab's two copies that reads; adds to the troubles what does not. */
export function openNewest(
  { id, copy, note }: Found,
  sources: RecoverySources,
  troubles: Trouble[],
): Opened | null {
  const shelved = copy?.reading.ok ? copy.reading.copy : null;
  const noted = note?.reading.ok ? note.reading.copy : null;
  if (copy && !copy.reading.ok) troubles.push({ id, reason: copy.reading.reason, text: asText(copy.raw) });
  if (note && !note.reading.ok) troubles.push({ id, reason: note.reading.reason, text: note.raw });
  const tries = [shelved, noted].filter((each) => each !== null).sort((one, other) => other.time - one.time);
  for (const each of tries) {
    const reading = sources.read(each.text);
    if (!reading.ok) {
      troubles.push({ id, reason: reading.message, text: each.text });
      continue;
    }
    const { line, time } = each;
    const trail = 'since' in each ? trailOfNote(each, shelved) : each.trail;
    return {
      id,
      design: reading.design,
      trail,
      line,
      time,
      base: shelved?.trail ? { time: shelved.time, trail: shelved.trail } : null,
      isNoted: 'since' in each,
      isWhole: 'since' in each && each.since?.time === null,
    };
  }
  return null;
}

/** What a note and the copy tell together; a note that builds on another copy is one step from this one. */
function trailOfNote(note: Note, base: Copy | null): Trail<unknown> | null {
  const told = trailOf(note, base);
  const before = base && parsed(base.text);
  if (told || !base?.trail || !before) return told;
  const label = note.since?.past.more.at(-1)?.label ?? 'latest changes';
  return { past: [...base.trail.past, { label, state: before }], future: [] };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** The design that was opened at the last start. */
export async function openLastGood({ shelf, read }: RecoverySources): Promise<Opened | null> {
  try {
    const found = await readLastGood(shelf);
    const reading = found.ok ? read(found.copy.text) : null;
    if (!found.ok || !reading?.ok) return null;
    const { line, time } = found.copy;
    return {
      id: newTab(),
      design: reading.design,
      trail: null,
      line,
      time,
      base: null,
      isNoted: false,
      isWhole: false,
    };
  } catch {
    return null;
  }
}

const asText = (raw: unknown) => (typeof raw === 'string' ? raw : (JSON.stringify(raw) ?? String(raw)));
