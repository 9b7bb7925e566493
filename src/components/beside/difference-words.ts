/** A difference between two documents as a line to read: what it is, and both values in the user's units. */
import type { Difference } from '../../session/differences.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type {
  ChordLaw,
  DroopLaw,
  Length,
  Outline,
  Stabilizer,
  SweepLaw,
  TwistLaw,
} from '../../solver/design/document.ts';
import { describeOutline } from '../section-fields.ts';
import { quantityAt, wordsOf } from './key-words.ts';

export interface DifferenceLine {
  what: string;
  from: string;
  to: string;
}

type Write = (value: number, quantity: Quantity) => string;

export function sayDifference({ path, from, to, eta }: Difference, units: UnitSystem): DifferenceLine {
  if (LENGTH.test(path)) return lengths(path, from as Length, to as Length, units);
  const place = eta === undefined ? '' : ` at ${formatWithUnit(eta, 'share', units)} of the half`;
  const what = `${wordsOf(path)}${place}`;
  if (typeof from === 'number' && typeof to === 'number')
    return { what, ...twoNumbers(from, to, quantityAt(path), units) };
  const write: Write = (value, quantity) => formatWithUnit(value, quantity, units);
  const [one, other] = [describe(path, from, write), describe(path, to, write)];
  return one === other
    ? { what, from: one, to: `${other}, but not the same` }
    : { what, from: one, to: other };
}

const LENGTH = /^(wing|stabilizer)\.length$/;

/** A length tip to tip is the span. */
function lengths(path: string, from: Length, to: Length, units: UnitSystem): DifferenceLine {
  const values = twoNumbers(from.value, to.value, 'length', units);
  if (from.kind === to.kind) {
    const what = from.kind === 'tipToTip' ? path.replace('.length', ' span') : `${wordsOf(path)}, unrolled`;
    return { what, ...values };
  }
  const say = ({ kind }: Length, value: string) =>
    `${value} ${kind === 'tipToTip' ? 'tip to tip' : 'unrolled'}`;
  return { what: wordsOf(path), from: say(from, values.from), to: say(to, values.to) };
}

/** With as many decimals as it takes to tell them apart. */
function twoNumbers(from: number, to: number, quantity: Quantity, units: UnitSystem) {
  const write = (value: number, decimals?: number) =>
    formatWithUnit(value, quantity, units, decimals === undefined ? {} : { decimals });
  let [one, other] = [write(from), write(to)];
  for (let decimals = 1; one === other && decimals <= 8; decimals++)
    [one, other] = [write(from, decimals), write(to, decimals)];
  return { from: one, to: other };
}

function describe(path: string, value: unknown, write: Write): string {
  if (path === 'brief.depth' && value === null) return 'deep water';
  if (path === 'brief.driveHeight' && value === null) return 'the balance point';
  if (value === null) return 'none';
  if (value === undefined) return 'not given';
  if (typeof value === 'number') return write(value, quantityAt(path));
  if (typeof value === 'string')
    return path.startsWith('notes.') ? `${value.length} characters` : (CHOICES[value] ?? value);
  if (Array.isArray(value)) return describeList(path, value);
  const [part, key] = path.split('.');
  switch (key ?? part) {
    case 'chord':
      return describeChord(value as ChordLaw, write);
    case 'sweep':
      return describeSweep(value as SweepLaw, write);
    case 'droop':
      return describeDroop(value as DroopLaw, write);
    case 'twist':
      return describeTwist(value as TwistLaw, write);
    case 'section':
      return sectionName(value as Outline);
    case 'stabilizer':
      return `${write((value as Stabilizer).length.value, 'length')} long, ${write((value as Stabilizer).arm, 'length')} behind the wing`;
    case 'fuselage':
    case 'strut':
      return 'fitted';
    default:
      return JSON.stringify(value).slice(0, 80);
  }
}

const CHOICES: Readonly<Record<string, string>> = {
  standard: 'carbon, standard modulus',
  intermediate: 'carbon, intermediate modulus',
  high: 'carbon, high modulus',
  shell: 'skin over foam',
};

function describeList(path: string, list: readonly unknown[]): string {
  if (path.startsWith('wanted.laws.')) return list.join(', ');
  return `${list.length} ${list.length === 1 ? 'entry' : 'entries'}`;
}

function sectionName(outline: Outline): string {
  const name = outline.kind === 'naca4' ? outline.code : outline.name;
  return `${name} (${describeOutline(outline)})`;
}

interface Free {
  kind: string;
  at?: readonly (readonly [number, number])[];
  expression?: string;
}

/** Laws of points and formulas; null for the others. */
function describeFree(law: Free, quantity: Quantity, write: Write): string | null {
  if (law.kind === 'formula') return `formula ${law.expression}`;
  if (law.kind !== 'points' || !law.at) return null;
  const [first, last] = [law.at[0]!, law.at.at(-1)!];
  return `${law.at.length} points, ${write(first[1], quantity)} at the root to ${write(last[1], quantity)} at the tip`;
}

function describeChord(law: ChordLaw, write: Write): string {
  switch (law.kind) {
    case 'taper':
      return `straight taper, ${write(law.root, 'length')} to ${write(law.tip, 'length')}`;
    case 'elliptic':
      return `elliptic, ${write(law.root, 'length')} at the root`;
    case 'superelliptic':
      return `superelliptic, ${write(law.root, 'length')} at the root, powers ${write(law.n, 'ratio')} and ${write(law.m, 'ratio')}`;
    default:
      return describeFree(law, 'length', write)!;
  }
}

function describeSweep(law: SweepLaw, write: Write): string {
  switch (law.kind) {
    case 'straight':
      return `straight, ${write(law.angle, 'angle')}`;
    case 'rake':
      return `${write(law.angle, 'angle')}, tip raked ${write(law.tip, 'length')} aft by power ${write(law.power, 'ratio')}`;
    default:
      return describeFree(law, 'length', write)!;
  }
}

function describeTwist(law: TwistLaw, write: Write): string {
  return law.kind === 'linear'
    ? `linear, ${write(law.tip, 'angle')} at the tip`
    : describeFree(law, 'angle', write)!;
}

function describeDroop(law: DroopLaw, write: Write): string {
  if (law.kind === 'flat') return 'flat';
  if (law.kind === 'points' || law.kind === 'formula') return describeFree(law, 'angle', write)!;
  const tip =
    law.tipAngle === undefined
      ? `tip drop ${write(law.tipDrop, 'length')}`
      : `${write(law.tipAngle, 'angle')} at the tip`;
  switch (law.kind) {
    case 'late':
      return `late, ${tip}, from ${write(law.from, 'share')} of the half, power ${write(law.power, 'ratio')}`;
    case 'gull':
      return `gull, up ${write(law.rootAngle, 'angle')} at the root, ${tip}, knee at ${write(law.knee, 'share')} of the half`;
    default:
      return `${law.kind}, ${tip}`;
  }
}
