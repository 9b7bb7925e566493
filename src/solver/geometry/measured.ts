/**
 * A surface as it came out of the mould: the drawn one with what was measured on one side laid over it. Between measured
 * stations differences run straight; the root, unless it is measured, is as drawn; beyond the last one the difference
 * stays. A measured tip drop bends the half further or less, evenly along its length. Metres and radians.
 */
import type { Measured } from '../design/document.ts';
import { findRoot } from '../numeric/roots.ts';
import type { Surface } from './surface.ts';

const RADIANS = Math.PI / 180;
const STEPS = 400;

export type SideName = 'port' | 'starboard';

/** How a side differs from the drawing, as functions of eta. */
export interface Difference {
  twist: (eta: number) => number; // rad, nose up
  chord: (eta: number) => number; // m
  tipDrop: number | null; // m, measured; null: as drawn
}

export const NO_DIFFERENCE: Difference = { twist: () => 0, chord: () => 0, tipDrop: null };

export function differenceOf(surface: Surface, measured: Measured | undefined, side: SideName): Difference {
  if (!measured) return NO_DIFFERENCE;
  const pairs = (key: 'twist' | 'chord', drawn: (eta: number) => number, scale: number) =>
    measured.at.flatMap(({ eta, ...sides }) => {
      const value = sides[side]?.[key];
      return value === undefined ? [] : [[eta, value * scale - drawn(eta)] as const];
    });
  return {
    twist: straight(pairs('twist', surface.twist, RADIANS)),
    chord: straight(pairs('chord', surface.chord, 1)),
    tipDrop: measured.tipDrop?.[side] ?? null,
  };
}

/** The middle of two sides. */
export function meanDifference(one: Difference, other: Difference, surface: Surface): Difference {
  const drops = [one.tipDrop, other.tipDrop].map((drop) => drop ?? surface.tipDrop);
  const isMeasured = one.tipDrop !== null || other.tipDrop !== null;
  return {
    twist: (eta) => 0.5 * (one.twist(eta) + other.twist(eta)),
    chord: (eta) => 0.5 * (one.chord(eta) + other.chord(eta)),
    tipDrop: isMeasured ? 0.5 * (drops[0]! + drops[1]!) : null,
  };
}

function straight(pairs: ReadonlyArray<readonly [number, number]>): (eta: number) => number {
  if (pairs.length === 0) return () => 0;
  const known = pairs[0]![0] > 0 ? [[0, 0] as const, ...pairs] : pairs;
  return (eta) => {
    const next = known.findIndex(([at]) => at >= eta);
    if (next < 0) return known[known.length - 1]![1];
    if (next === 0) return known[0]![1];
    const [[from, a], [to, b]] = [known[next - 1]!, known[next]!];
    return a + ((b - a) * (eta - from)) / (to - from);
  };
}

/** The drawn surface with a difference. Its areas, mean chord and droop measures are those of this side, doubled. */
export function builtSurface(drawn: Surface, { twist, chord, tipDrop }: Difference): Surface {
  const bend = tipDrop === null ? 0 : bendFor(drawn, tipDrop);
  const droop = (eta: number) => drawn.droop(eta) + bend * eta;
  const shift = shiftTable(drawn, droop, bend === 0);
  const built: Surface = {
    ...drawn,
    droop,
    chord: (eta) => Math.max(0, drawn.chord(eta) + chord(eta)),
    twist: (eta) => drawn.twist(eta) + twist(eta),
    setting: (eta) => drawn.setting(eta) + twist(eta),
    point(eta) {
      const at = drawn.point(eta);
      const [y, z] = shift(eta);
      return { y: at.y + y, z: at.z + z };
    },
  };
  return { ...built, ...measuresOf(drawn, built) };
}

/** Extra droop at the tip (rad), growing evenly from the root, that brings the tip to this drop. */
function bendFor(drawn: Surface, wanted: number): number {
  const drop = (bend: number) => {
    let sum = 0;
    for (let k = 0; k < STEPS; k++) {
      const eta = (k + 0.5) / STEPS;
      const angle = drawn.droop(eta);
      sum += Math.sin(angle + bend * eta) - Math.sin(angle);
    }
    return drawn.tipDrop + (drawn.halfLength * sum) / STEPS - wanted;
  };
  const bend = findRoot(drop, -1, 1, 1e-12, drop(-1), drop(1));
  if (bend === null)
    throw new Error(
      `asBuilt.wing.tipDrop: found ${wanted} m, allowed within a bend of 57 degrees of the drawn ${drawn.tipDrop.toFixed(3)} m`,
    );
  return bend;
}

function shiftTable(
  drawn: Surface,
  droop: (eta: number) => number,
  isSame: boolean,
): (eta: number) => [y: number, z: number] {
  if (isSame) return () => [0, 0];
  const y = new Float64Array(STEPS + 1);
  const z = new Float64Array(STEPS + 1);
  const width = drawn.halfLength / STEPS;
  for (let k = 0; k < STEPS; k++) {
    const eta = (k + 0.5) / STEPS;
    y[k + 1] = y[k]! + width * (Math.cos(droop(eta)) - Math.cos(drawn.droop(eta)));
    z[k + 1] = z[k]! - width * (Math.sin(droop(eta)) - Math.sin(drawn.droop(eta)));
  }
  return (eta) => {
    const at = Math.min(STEPS - 1, Math.floor(eta * STEPS));
    const share = eta * STEPS - at;
    return [y, z].map((table) => table[at]! + share * (table[at + 1]! - table[at]!)) as [number, number];
  };
}

/** Measures of the built surface: the drawn ones in proportion to sums taken alike of both. */
function measuresOf(drawn: Surface, built: Surface): Partial<Surface> {
  const [a, b] = [sums(drawn), sums(built)];
  const scaled = (value: number, key: keyof typeof a) => (a[key] === 0 ? b[key] : (value * b[key]) / a[key]);
  const tip = built.point(1);
  const projectedArea = scaled(drawn.projectedArea, 'projected');
  return {
    halfSpan: tip.y,
    span: 2 * tip.y,
    tipAngle: built.droop(1),
    tipDrop: built.height - tip.z,
    projectedArea,
    unrolledArea: scaled(drawn.unrolledArea, 'unrolled'),
    aspectRatio: (4 * tip.y * tip.y) / projectedArea,
    meanChord: (drawn.meanChord * (b.square / b.projected)) / (a.square / a.projected),
    effectiveDroop: b.droop / b.moment,
  };
}

function sums(surface: Surface) {
  const total = { projected: 0, unrolled: 0, square: 0, moment: 0, droop: 0 };
  for (let k = 0; k < STEPS; k++) {
    // Closer at the tip, where chords fall away.
    const from = Math.sin((0.5 * Math.PI * k) / STEPS);
    const to = Math.sin((0.5 * Math.PI * (k + 1)) / STEPS);
    const eta = 0.5 * (from + to);
    const [c, angle, { y }] = [surface.chord(eta), surface.droop(eta), surface.point(eta)];
    const width = to - from;
    total.projected += width * c * Math.cos(angle);
    total.unrolled += width * c;
    total.square += width * c * c * Math.cos(angle);
    total.moment += width * c * y;
    total.droop += width * c * y * angle;
  }
  return total;
}
