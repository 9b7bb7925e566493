/**
 * Finds the design to open at start among the copies that tabs have kept: this tab's own after a reload, else the
 * newest there is. What cannot be read is set aside, never overwritten, and the next copy is opened instead; what
 * closed tabs have left and the opened history does not hold is offered.
 */
import type { Design } from '../solver/design/document.ts';
import { packCopy } from './copies.ts';
import type { Trail } from './history.ts';
import { type LeftOver, sortOut, type TakenUp } from './left-over.ts';
import {
  newestOf,
  type Opened,
  openLastGood,
  openNewest,
  type RecoverySources,
  type Trouble,
} from './opening.ts';
import { pause } from './pause.ts';
import { type Found, findAll, setAside, writeLastGood } from './storage.ts';
import { newTab, type Tabs } from './tabs.ts';

export interface Recovery {
  id: string; // the copy this tab writes
  design: Design | null; // null: nothing was kept
  trail: Trail<unknown> | null; // its states are read when they are gone back to
  line: string | null;
  time: number; // of the newest copy found
  base: Opened['base']; // what the database holds for this tab
  mustSave: boolean; // the database has not got all of this yet
  message: string | null; // what the user should know
  unreadable: string | null; // text that could not be read, to be saved as a file
  left: LeftOver[];
  taken: TakenUp[]; // copies of closed tabs that are no longer needed once the opened one is kept
}

const PATIENCE = 3000;
const TURNS = 10;

type Own = { id: string; isHeld: boolean } | null;

export async function recover(sources: RecoverySources): Promise<Recovery> {
  return find(sources, await sources.tabs.own());
}

async function find(sources: RecoverySources, own: Own): Promise<Recovery> {
  const { all, isBlocked } = await look(sources);
  const order = [...all].sort((one, other) => rank(other, own?.id) - rank(one, own?.id));
  const troubles: Trouble[] = [];
  let opened: Opened | null = null;
  for (const found of order) opened ??= openNewest(found, sources, troubles);
  opened ??= troubles.length > 0 ? await openLastGood(sources) : null;
  const isKnown = !isBlocked || opened?.isWhole === true;
  let id = await holdOne(sources.tabs, { own, opened, isKnown, troubles });
  const isHeldSince = own?.isHeld === true && own.id === id;
  if (id === opened?.id && !isHeldSince && !isBlocked && (await hasChanged(sources, all, id)))
    return find(sources, { id, isHeld: true });
  const mine = troubles.filter((trouble) => trouble.id === id);
  if (!(await areSetAside(sources, mine))) id = await holdNew(sources.tabs);
  if (opened) keepGood(sources, opened);
  const { trail, left, taken } = await sortOut(sources, all, opened, id);
  return {
    id,
    design: opened?.design ?? null,
    trail,
    line: opened?.line ?? null,
    time: Math.max(0, ...all.map(newestOf)),
    base: opened?.id === id ? opened.base : null,
    mustSave: opened?.isNoted === true || taken.length > 0,
    ...explain(troubles, isKnown),
    left,
    taken,
  };
}

/** All copies, or one tab's; where the database does not answer, the notes alone. */
async function look({ shelf, notebook, patience = PATIENCE }: RecoverySources, only?: string) {
  try {
    const all = await Promise.race([findAll(shelf, notebook, only), patient(patience)]);
    if (all) return { all, isBlocked: false };
  } catch {
    // said by the message that goes with it
  }
  return { all: await findAll(null, notebook, only), isBlocked: true };
}

/** Whether the tab that had the copy has written it, or another has taken it up, since it was found. */
async function hasChanged(sources: RecoverySources, all: Found[], id: string): Promise<boolean> {
  const { all: now } = await look(sources, id);
  return newestIn(now, id) !== newestIn(all, id);
}

const newestIn = (all: Found[], id: string): number =>
  Math.max(0, ...all.filter((found) => found.id === id).map(newestOf));

/** Null after that time, ms, of turns in which the database could have answered: a machine that stood still counts once. */
async function patient(time: number): Promise<null> {
  for (let turn = 0; turn < TURNS; turn++) await pause(time / TURNS);
  return null;
}

/** This tab's own copy first, then the newest. */
const rank = (found: Found, own: string | undefined) =>
  found.id === own ? Number.POSITIVE_INFINITY : newestOf(found);

interface Holding {
  own: Own;
  opened: Opened | null;
  isKnown: boolean; // what lies under the tab's own name is what was opened
  troubles: Trouble[];
}

/** The copy this tab writes from now on: the opened one unless another tab has it, else a new one. */
async function holdOne(tabs: Tabs, { own, opened, isKnown, troubles }: Holding): Promise<string> {
  if (isKnown) {
    const mine = own?.isHeld ? own.id : null;
    if (opened && (opened.id === mine || (await isFree(tabs, opened.id)))) return opened.id;
    if (!opened && mine !== null && troubles.length === 0) return mine;
  }
  return holdNew(tabs);
}

async function holdNew(tabs: Tabs): Promise<string> {
  const id = newTab();
  await tabs.take(id);
  return id;
}

async function isFree(tabs: Tabs, id: string): Promise<boolean> {
  const held = await tabs.held();
  return held !== null && !held.has(id) && (await tabs.take(id));
}

/** Sets aside what could not be read; false where it has to stay where it is, and nothing may be written over it. */
async function areSetAside(sources: RecoverySources, troubles: Trouble[]): Promise<boolean> {
  const { shelf, now = Date.now, patience = PATIENCE } = sources;
  const aside = Promise.all(troubles.map(({ text }, k) => setAside(shelf, text, now() + k)));
  const all = aside.then(
    () => true,
    () => false,
  );
  return troubles.length === 0 || (await Promise.race([all, patient(patience)])) === true;
}

/** Keeps the good copy once more. */
function keepGood({ shelf }: RecoverySources, { design, line, time }: Opened): void {
  const good = packCopy({ text: JSON.stringify(design), line, time, trail: null });
  void writeLastGood(shelf, good).catch(ignore);
}

/** The storage is full or blocked, as the next save will say. */
const ignore = () => {};

function explain([trouble]: Trouble[], isKnown: boolean): Pick<Recovery, 'message' | 'unreadable'> {
  if (trouble)
    return {
      message: `The copy saved last could not be read (${trouble.reason}). It has been set aside and the copy before it is open.`,
      unreadable: trouble.text,
    };
  const message = isKnown
    ? null
    : 'What this browser has saved could not be read: its storage is blocked or damaged. It is left as it is; save your work as a file.';
  return { message, unreadable: null };
}
