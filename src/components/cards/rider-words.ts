/** Five sentences for a rider on two foils, each part with how it comes about. Words only; no page needed. */
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { RiderComparison, RiderFigures } from '../../solver/studies/rider.ts';
import { shiftWords } from './beach-words.ts';
import type { Kind } from './marks.ts';

export interface Clause {
  text: string;
  kind: Kind | null; // null: nothing was found to mark
}

/** The five, in order: lift-off, hold, top speed, feet, heel. */
export function riderSentences(found: RiderComparison, units: UnitSystem): Clause[][] {
  return [liftOff(found, units), hold(found), topSpeed(found, units), feet(found, units), heel(found, units)];
}

const KNOT = 1852 / 3600; // m/s
const ALIKE = 0.05 * KNOT; // m/s, less does not show
const none = (text: string): Clause[] => [{ text, kind: null }];

/** Says which of the two has no figure; null when both have. */
function missing<K extends keyof RiderFigures>(
  { one, other }: RiderComparison,
  key: K,
  what: string,
): Clause[] | null {
  if (one[key] !== null && other[key] !== null) return null;
  const who = one[key] === null ? (other[key] === null ? 'either' : 'the first') : 'the second';
  return none(`There is no ${what} of ${who}.`);
}

function liftOff(found: RiderComparison, units: UnitSystem): Clause[] {
  const gap = missing(found, 'takeOff', 'lift-off speed');
  if (gap) return gap;
  const [one, other] = [found.one.takeOff!, found.other.takeOff!];
  const write = (speed: number) => formatWithUnit(speed, 'speed', units, { decimals: 1 });
  const by = write(Math.abs(one - other));
  const text =
    Math.abs(one - other) < ALIKE
      ? `It lifts off at the same speed as the second, ${write(one)}.`
      : `It lifts off ${by} ${one < other ? 'earlier' : 'later'}: at ${write(one)}, the second at ${write(other)}.`;
  return [{ text, kind: 'estimated' }];
}

function hold(found: RiderComparison): Clause[] {
  const gap = missing(found, 'holdIndex', 'hold index');
  if (gap) return gap;
  const [one, other] = [found.one.holdIndex!, found.other.holdIndex!];
  const [a, b] = [writeFixed(one, 2), writeFixed(other, 2)];
  const share = other > 0 ? ` by ${percent(one, other, 0)}` : '';
  const word = a === b ? 'It is as steady as the second' : `It is ${one > other ? 'steadier' : 'looser'}`;
  const clauses: Clause[] = [
    {
      text:
        a === b
          ? `${word}: both have hold index ${a}.`
          : `${word}${share}: hold index ${a}, the second ${b}.`,
      kind: 'estimated',
    },
  ];
  const [r, s] = [found.one.rollFromYaw, found.other.rollFromYaw];
  if (r !== null && s !== null)
    clauses.push({ text: `Turned, it rolls ${wayOf(r)}; the second ${wayOf(s)}.`, kind: 'solved' });
  return clauses;
}

/** Roll for yaw against roll damping: positive into the turn. */
function wayOf(rollFromYaw: number): string {
  if (Math.abs(rollFromYaw) < 5e-4) return 'neither way';
  return `${rollFromYaw > 0 ? 'into' : 'out of'} the turn (roll from yaw ${formatWithUnit(rollFromYaw, 'ratio', 'si', { sign: true, decimals: 3 })})`;
}

const percent = (one: number, other: number, decimals = 1): string =>
  formatWithUnit(Math.abs(one - other) / Math.abs(other), 'share', 'workshop', { decimals });

function topSpeed(found: RiderComparison, units: UnitSystem): Clause[] {
  const gap = missing(found, 'topDrag', 'drag at top speed');
  if (gap) return gap;
  const [one, other] = [found.one.topDrag!, found.other.topDrag!];
  const write = (force: number) => formatWithUnit(force, 'force', units, { decimals: 1 });
  const at = `At ${formatWithUnit(found.brief.speeds.top, 'speed', units, { decimals: 0 })}`;
  const text =
    write(one) === write(other)
      ? `${at} both cost the same, ${write(one)}.`
      : `${at} it is ${one > other ? 'dearer' : 'cheaper'} by ${write(Math.abs(one - other))}, ${percent(one, other)}: ${write(one)}, the second ${write(other)}.`;
  return [{ text, kind: 'estimated' }];
}

function feet(found: RiderComparison, units: UnitSystem): Clause[] {
  const gap = missing(found, 'feet', 'balance at cruise');
  if (gap) return gap;
  const [one, other] = [found.one.feet!, found.other.feet!];
  const shift = one.aftOfStrut - other.aftOfStrut;
  const place = (x: number) =>
    Math.abs(x) < 5e-4 ? 'over the strut' : `${shiftWords(x, units)} of the strut`;
  const move =
    Math.abs(shift) < 5e-4
      ? `At cruise the feet stand where they do on the second, ${place(one.aftOfStrut)}.`
      : `At cruise the feet stand ${shiftWords(shift, units).replace(/ (aft|forward)$/, ' further $1')}: ${place(one.aftOfStrut)}, on the second ${place(other.aftOfStrut)}.`;
  const reach = [one, other].some(({ isReachable }) => !isReachable);
  return [{ text: reach ? `${move} That is out of reach: a shim brings it back.` : move, kind: 'solved' }];
}

function heel({ brief, one, other }: RiderComparison, units: UnitSystem): Clause[] {
  if ((brief.depths?.cruise ?? brief.depth) === null)
    return none('In deep water no tip comes to the surface.');
  if (one.rollFromYaw === null || other.rollFromYaw === null)
    return none('There is no heel to breach of both at this depth.');
  const [a, b] = [one.breachHeel, other.breachHeel];
  const write = (angle: number) => formatWithUnit(angle, 'angle', units, { decimals: 0 });
  const at = 'At cruise depth';
  if (a === null && b === null)
    return [{ text: `${at} no heel brings a tip of either to the surface.`, kind: 'solved' }];
  if (a === null || b === null) {
    const never =
      a === null ? 'it never shows a tip, however far it heels' : `a tip comes out at ${write(a)} of heel`;
    const second = b === null ? 'the second never shows one' : `the second shows one at ${write(b)}`;
    return [{ text: `${at} ${never}; ${second}.`, kind: 'solved' }];
  }
  const text =
    write(a) === write(b)
      ? `${at} a tip of either comes out at ${write(a)} of heel.`
      : `${at} a tip comes out at ${write(a)} of heel, of the second at ${write(b)}: ${write(Math.abs(a - b))} ${a > b ? 'more' : 'less'} to lean on.`;
  return [{ text, kind: 'solved' }];
}

/** Whose rider and water both were asked with. */
export function underWhat({ brief, isSameBrief }: RiderComparison, units: UnitSystem): string {
  const { allUpMass, water, speeds } = brief;
  const mass = formatWithUnit(allUpMass, 'mass', units, { decimals: 0 });
  const warm = formatWithUnit(water.temperature, 'temperature', units, { decimals: 0 });
  const cruise = formatWithUnit(speeds.cruise, 'speed', units, { decimals: 0 });
  const whose = isSameBrief ? 'Both' : 'Both asked alike, with the brief of the first';
  return `${whose}: ${mass} in all, ${water.kind === 'sea' ? 'sea' : 'fresh'} water of ${warm}, cruise at ${cruise}.`;
}
