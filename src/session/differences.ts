/**
 * What differs between two documents, as a builder would list it: number by number where the laws are of the same
 * kind, law by law where they are not, part by part where one of the two has none. A key left out counts as its usual
 * value. Name, marks and notes are no part of the shape and are left out.
 */
import type { Design } from '../solver/design/document.ts';
import { rangeOf } from '../solver/design/ranges.ts';

export interface Difference {
  path: string; // "wing.droop.tipAngle", "wing.chord", "stabilizer"
  from: unknown; // undefined: left out
  to: unknown;
  eta?: number; // of a point of a law
}

type Branch = Record<string, unknown>;

const LEFT_OUT = new Set(['format', 'version', 'name', 'marks', 'notes.ride']);
const OUTLINE = /^(wing|stabilizer)\.section\.(root|tip)$/;
const LENGTH = /^(wing|stabilizer)\.length$/;
const PART = /^(stabilizer|fuselage|strut)$/;
const LAW = /^(wing|stabilizer)\.(chord|sweep|droop|twist)$/;

export function differencesOf(one: Design, other: Design): Difference[] {
  return compare('', one, other);
}

function compare(path: string, from: unknown, to: unknown): Difference[] {
  if (LEFT_OUT.has(path) || isSame(from, to)) return [];
  if (isBranch(from) && isBranch(to) && !isToldWhole(path, from, to))
    return isPoints(from) && isPoints(to) ? betweenPoints(path, from.at, to.at) : inside(path, from, to);
  const usual = rangeOf(path)?.default;
  const said = (value: unknown) => (value === undefined ? usual : value);
  if (usual !== undefined && said(from) === said(to)) return [];
  if (isOptionalBlock(path, from, to)) return inside(path, (from ?? {}) as Branch, (to ?? {}) as Branch);
  return [{ path, from: said(from), to: said(to) }];
}

function inside(path: string, from: Branch, to: Branch): Difference[] {
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return keys.flatMap((key) => compare(path === '' ? key : `${path}.${key}`, from[key], to[key]));
}

type Pairs = readonly (readonly [number, number])[];

const isPoints = (law: Branch): law is Branch & { at: Pairs } => law.kind === 'points';

const etasOf = (at: Pairs) => at.map(([eta]) => eta);

function betweenPoints(path: string, from: Pairs, to: Pairs): Difference[] {
  return from.flatMap(([eta, value], k) => {
    const other = to[k]![1];
    return other === value ? [] : [{ path: `${path}.at.${k}.1`, from: value, to: other, eta }];
  });
}

/** Told as one thing, not key by key. */
function isToldWhole(path: string, from: Branch, to: Branch): boolean {
  if (OUTLINE.test(path) || LENGTH.test(path)) return true;
  if (!LAW.test(path)) return false;
  if (isPoints(from) && isPoints(to)) return !isSame(etasOf(from.at), etasOf(to.at));
  if (from.kind !== to.kind || 'expression' in from) return true;
  return Object.keys({ ...from, ...to }).some((key) => !(key in from) || !(key in to));
}

/** A block that one of the two leaves out is told key by key, a part that one of them lacks is not. */
function isOptionalBlock(path: string, from: unknown, to: unknown): boolean {
  if (PART.test(path)) return false;
  const [given, missing] = from === undefined ? [to, from] : [from, to];
  return missing === undefined && isBranch(given);
}

const isBranch = (value: unknown): value is Branch =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function isSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].every((key) => isSame((one as Branch)[key], (other as Branch)[key]));
}
