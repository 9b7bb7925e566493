/**
 * What a handle on the curve seen head-on asks of the droop law: the law that puts the wing line where the handle is,
 * as near as the law and its limits allow, said the way the document says it (tip angle or tip drop). Heights and
 * drops in m from the surface's root, angles in degrees down.
 */
import type { DroopLaw, Pair, Planform } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { surfaceOf, tipDropOf } from '../solver/geometry/surface.ts';
import { findRoot } from '../solver/numeric/roots.ts';
import {
  type BentDroop,
  isBent,
  surfaceFor,
  tidy,
  tidyAngle,
  tipMeasureOf,
  withTip,
} from './planform-edits.ts';
import { clamp, round } from './rounding.ts';
import { splitFactor, withFactor } from './scaled-formula.ts';

const DEGREES = 180 / Math.PI;
const MOST_UNROLLED = RANGES['*.droop.tipAngle'].max;
const MOST_WRITTEN = 89.999; // degrees by a formula, whose factor is rounded
const MOST_TIP_TO_TIP = 75; // degrees: with the span held, a steeper wing grows without bound
const LEAST_POWER = RANGES['*.droop.power'].min;
export const MOST_POWER = 8; // more is a kink
const LATEST = 0.95; // share of the half length where a handle lets a late droop begin at most
const NEARLY_EVEN = 0.03; // how near to 1 a dragged power becomes an arc
const NO_BEND = 0.001; // m of tip drop below which a wing has no shape of bend to speak of

/** Which handle shapes the curve between root and tip, and where along the half length it sits. */
export type ShapeGrip =
  | { kind: 'bend'; eta: number } // a flat wing: pulled into an arc
  | { kind: 'power'; eta: number } // vee, arc, late: one family
  | { kind: 'knee'; eta: number } // gull
  | { kind: 'point'; eta: number; index: number };

/** The most droop, up or down, that a handle gives this planform. */
export function mostDroop(planform: Planform): number {
  return planform.length.kind === 'unrolled' ? MOST_UNROLLED : MOST_TIP_TO_TIP;
}

/** The law bent to a tip angle (a law without droop at its tip: to that largest angle). A flat wing becomes an arc. */
export function bentTo(planform: Planform, angle: number): DroopLaw {
  const law = planform.droop;
  const most = mostDroop(planform);
  const tip = tidyAngle(clamp(angle, -most, most));
  switch (law.kind) {
    case 'flat':
      return { kind: 'arc', tipAngle: tip };
    case 'points':
      return { ...law, at: scaledPoints(law.at, amplitudeOf(planform), tip) };
    case 'formula':
      return { ...law, expression: scaledDroop(planform, law.expression, tip) };
    default:
      return withTip(law, 'tipAngle', tip);
  }
}

/** The law with its tip this far below the root; an angle is rounded to a tenth of a degree. */
export function droppedTo(planform: Planform, drop: number): DroopLaw {
  const { droop } = planform;
  const most = mostDroop(planform);
  const angle = solveWithin((at) => dropOf(planform, bentTo(planform, at)) - drop, -most, most, 0.002);
  if (!isBent(droop) || tipMeasureOf(droop) === 'tipAngle') return bentTo(planform, round(angle, 1));
  const reached = Math.abs(angle) < most ? drop : dropOf(planform, withTip(droop, 'tipAngle', angle));
  return withTip(droop, 'tipDrop', tidy(reached));
}

export function shapeGrips(planform: Planform): ShapeGrip[] {
  const law = planform.droop;
  switch (law.kind) {
    case 'formula':
      return [];
    case 'gull':
      return [{ kind: 'knee', eta: law.knee }];
    case 'points':
      return law.at.slice(1, -1).map(([eta], k) => ({ kind: 'point', eta, index: k + 1 }));
    default: {
      const hasShape = law.kind !== 'flat' && Math.abs(presentDrop(planform)) >= NO_BEND;
      return [{ kind: hasShape ? 'power' : 'bend', eta: (1 + startOf(law)) / 2 }];
    }
  }
}

/** The law whose line passes at this height at the grip. Vee, arc and late droop keep the tip where it is. */
export function shapedTo(planform: Planform, grip: ShapeGrip, height: number): DroopLaw {
  const { droop } = planform;
  const most = mostDroop(planform);
  const solve = (law: (x: number) => DroopLaw, low: number, high: number) =>
    solveWithin((x) => heightOf(planform, law(x), grip.eta) - height, low, high, 0.002);
  if (grip.kind === 'power') {
    const power = solve((at) => lateDroop(planform, startOf(droop), at), 0, mostPower(planform));
    return withPower(planform, Math.abs(power - 1) < NEARLY_EVEN ? 1 : round(power, 2));
  }
  if (grip.kind === 'knee' && droop.kind === 'gull') {
    const angle = solve((rootAngle) => ({ ...droop, rootAngle }), -most, most);
    return { ...droop, rootAngle: round(angle, 1) };
  }
  if (grip.kind === 'point' && droop.kind === 'points') {
    const at = (angle: number) => ({ ...droop, at: withPoint(droop.at, grip.index, angle) });
    return at(round(solve(at, -MOST_UNROLLED, MOST_UNROLLED), 1));
  }
  return bentTo(
    planform,
    round(
      solve((at) => bentTo(planform, at), -most, most),
      1,
    ),
  );
}

/**
 * Vee (power 0), arc (1) and late droop are one family: the droop grows as a power of the distance from where it
 * begins. The law of this power with the tip where it is.
 */
export function withPower(planform: Planform, power: number): DroopLaw {
  const from = startOf(planform.droop);
  const within = clamp(power, 0, mostPower(planform));
  return inOwnMeasure(planform, familyMember(planform, from, within));
}

export function powerOf(law: DroopLaw): number {
  return law.kind === 'vee' ? 0 : law.kind === 'late' ? law.power : 1;
}

/** The most power with which some tip angle still reaches the present drop. */
export function mostPower(planform: Planform): number {
  const from = startOf(planform.droop);
  return solveWithin((power) => spareDrop(planform, from, power), LEAST_POWER, MOST_POWER, 0.002);
}

/** The late droop that begins at this share of the half length; the tip stays where it is. */
export function begunAt(planform: Planform, from: number): DroopLaw {
  const power = Math.max(powerOf(planform.droop), LEAST_POWER);
  const latest = solveWithin((start) => spareDrop(planform, start, power), 0, LATEST, 1e-4);
  return inOwnMeasure(planform, lateDroop(planform, clamp(from, 0, latest), power));
}

/** Points with one of them changed. */
export function withPoint(at: readonly Pair[], index: number, value: number): Pair[] {
  return at.map(([eta, present], k): Pair => [eta, k === index ? value : present]);
}

const startOf = (law: DroopLaw): number => (law.kind === 'late' ? law.from : 0);

/** The member of the family with the present tip drop, by its plainest name. */
function familyMember(planform: Planform, from: number, power: number): BentDroop {
  const tipDrop = presentDrop(planform);
  if (from === 0 && power < LEAST_POWER / 2) return { kind: 'vee', tipDrop };
  if (from === 0 && power === 1) return { kind: 'arc', tipDrop };
  return lateDroop(planform, from, Math.max(power, LEAST_POWER));
}

function lateDroop(planform: Planform, from: number, power: number): BentDroop {
  return { kind: 'late', from, power, tipDrop: presentDrop(planform) };
}

/** How much further than at present the steepest tip angle would drop the tip, m; a hair kept in hand. */
function spareDrop(planform: Planform, from: number, power: number): number {
  const present = presentDrop(planform);
  const tipAngle = Math.sign(present) * mostDroop(planform);
  return Math.abs(dropOf(planform, { kind: 'late', from, power, tipAngle })) - 1.001 * Math.abs(present);
}

/** A law given by its drop, said as the document says it. */
function inOwnMeasure(planform: Planform, law: BentDroop): DroopLaw {
  const { droop } = planform;
  if (isBent(droop) && tipMeasureOf(droop) === 'tipDrop') return withTip(law, 'tipDrop', droop.tipDrop ?? 0);
  return withTip(law, 'tipAngle', round(surfaceOf({ ...planform, droop: law }).tipAngle * DEGREES, 1));
}

const amplitudeOf = (planform: Planform): number => surfaceOf(planform).amplitude * DEGREES;

/** Of the design as it is: computed once. */
const presentDrop = (planform: Planform): number => surfaceFor(planform)?.tipDrop ?? 0;

function dropOf(planform: Planform, droop: DroopLaw): number {
  return tipDropOf({ ...planform, droop });
}

function heightOf(planform: Planform, droop: DroopLaw, eta: number): number {
  return surfaceOf({ ...planform, droop }).point(eta).z;
}

/** Points without any droop are bent at the tip alone. */
function scaledPoints(at: readonly Pair[], present: number, wanted: number): Pair[] {
  if (Math.abs(present) < 1e-6) return withPoint(at, at.length - 1, wanted);
  return at.map(([eta, angle]) => [eta, round((angle * wanted) / present, 3)]);
}

/** A formula without any droop becomes an arc. */
function scaledDroop(planform: Planform, expression: string, wanted: number): string {
  const { inner } = splitFactor(expression);
  const within = clamp(wanted, -MOST_WRITTEN, MOST_WRITTEN);
  const present = amplitudeOf({ ...planform, droop: { kind: 'formula', expression: inner } });
  return Math.abs(present) < 1e-6 ? `${within} * eta` : withFactor(inner, within / present);
}

/** The root of a monotone function in a range, or the end of the range that comes nearest. */
function solveWithin(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  const atLow = f(low);
  const atHigh = f(high);
  const root = findRoot(f, low, high, tolerance, atLow, atHigh);
  return root ?? (Math.abs(atLow) < Math.abs(atHigh) ? low : high);
}
