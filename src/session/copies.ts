/**
 * Copies of the open design as they lie in the browser: one per tab in the database, and a note in the small
 * synchronous storage that covers the moment until the database has it. A note tells of the history only what the
 * database does not hold yet. Records are numbered like documents, a step per version.
 */
import {
  migrationChain,
  type PlainDocument,
  type Step as Upgrade,
} from '../solver/design/migration-chain.ts';
import type { Step, Trail } from './history.ts';

/** A copy in the database. Its text and the states of its trail are of any document version. */
export interface Copy {
  text: string;
  time: number; // ms, strictly rising from save to save
  line: string; // the name under which the design was opened: versions of one design share it
  trail: Trail<unknown> | null;
}

/** A copy in the small storage. */
export interface Note extends Omit<Copy, 'trail'> {
  since: Since | null; // null: no room for the history
}

/** A trail told by its difference from the one in the copy of that time; without a time it is whole. */
interface Since {
  time: number | null;
  past: Run;
  future: Run;
}

/** Steps `from` to before `to` of the other list, then more. */
interface Run {
  from: number;
  to: number;
  more: Step<unknown>[];
}

export const COPY_VERSION = 2;

/** Exported for their tests; version 1 had no version in it and no line. */
export const COPY_UPGRADES: readonly Upgrade[] = [
  { to: 2, change: (copy) => ({ ...copy, line: nameIn(copy.text) }) },
];

const upgrade = migrationChain(COPY_UPGRADES, COPY_VERSION);

export type CopyReading<T> = { ok: true; copy: T } | { ok: false; reason: string };

export const packCopy = (copy: Copy | Note): object => ({ ...copy, version: COPY_VERSION });

/** A value from the database as a copy of the present version. */
export function unpackCopy(value: unknown): CopyReading<Copy> {
  const found = present(value);
  if (!found.ok) return found;
  const { text, time, line, trail } = found.copy;
  const isHistory = isRecord(trail) && isSteps(trail.past) && isSteps(trail.future);
  return {
    ok: true,
    copy: { text, time, line, trail: isHistory ? (trail as unknown as Copy['trail']) : null },
  };
}

/** A text from the small storage as a note of the present version. */
export function unpackNote(text: string): CopyReading<Note> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { ok: false, reason: 'it is no JSON' };
  }
  const found = present(value);
  if (!found.ok) return found;
  const { text: document, time, line, since, trail } = found.copy;
  const told = isSince(since) ? since : wholeOf(trail);
  return { ok: true, copy: { text: document, time, line, since: told } };
}

/** What the trail has that the copy of `base` does not. */
export function trailSince(
  base: { time: number; trail: Trail<unknown> } | null,
  trail: Trail<unknown>,
): Since {
  return {
    time: base?.time ?? null,
    past: runOf(base?.trail.past ?? [], trail.past),
    future: runOf(base?.trail.future ?? [], trail.future),
  };
}

/** The trail that a note tells of; null when it builds on another copy than this one. */
export function trailOf({ since }: Note, base: Copy | null): Trail<unknown> | null {
  if (!since || (since.time !== null && since.time !== base?.time)) return null;
  const whole = ({ from, to, more }: Run, steps: Step<unknown>[] = []) => [...steps.slice(from, to), ...more];
  return { past: whole(since.past, base?.trail?.past), future: whole(since.future, base?.trail?.future) };
}

/** Steps are known again by identity: a step that has not been undone stays the same object. */
function runOf(base: Step<unknown>[], steps: Step<unknown>[]): Run {
  const start = steps[0] === undefined ? -1 : base.indexOf(steps[0]);
  if (start < 0) return { from: 0, to: 0, more: steps };
  let common = 0;
  while (common < steps.length && base[start + common] === steps[common]) common++;
  return { from: start, to: start + common, more: steps.slice(common) };
}

type Present = { text: string; time: number; line: string } & Record<string, unknown>;

function present(value: unknown): CopyReading<Present> {
  if (!isRecord(value)) return { ok: false, reason: 'it is no copy of a design' };
  const version = value.version ?? 1;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return { ok: false, reason: 'its version is no number' };
  if (version > COPY_VERSION)
    return {
      ok: false,
      reason: `a newer Downcurve kept it (record ${version}, allowed up to ${COPY_VERSION})`,
    };
  const copy = upgrade(value as PlainDocument, version);
  const { text, time, line } = copy;
  if (typeof text !== 'string' || typeof time !== 'number' || typeof line !== 'string')
    return { ok: false, reason: 'it is no copy of a design' };
  return { ok: true, copy: { ...copy, text, time, line } };
}

/** The name in a document's text; empty where it has none. */
function nameIn(text: unknown): string {
  try {
    const value: unknown = JSON.parse(String(text));
    return isRecord(value) && typeof value.name === 'string' ? value.name : '';
  } catch {
    return '';
  }
}

/** Version 1 of a note had the whole trail in it. */
function wholeOf(trail: unknown): Since | null {
  if (!isRecord(trail) || !isSteps(trail.past) || !isSteps(trail.future)) return null;
  return trailSince(null, { past: trail.past, future: trail.future });
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isSteps(value: unknown): value is Step<unknown>[] {
  return (
    Array.isArray(value) &&
    value.every((step) => isRecord(step) && typeof step.label === 'string' && isRecord(step.state))
  );
}

function isSince(value: unknown): value is Since {
  if (!isRecord(value) || !(value.time === null || typeof value.time === 'number')) return false;
  return [value.past, value.future].every(
    (run) => isRecord(run) && Number.isInteger(run.from) && Number.isInteger(run.to) && isSteps(run.more),
  );
}
