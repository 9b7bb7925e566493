/**
 * The laws of the design document as functions of eta, the fraction of the unrolled half length (0 root, 1 tip).
 * Chord and sweep answer in metres; droop (positive down) and twist (positive nose up) in radians.
 * `knots` are the places inside (0, 1) where a law is not smooth: integrals are split there.
 */
import { compileFormula } from '../numeric/formula.ts';
import { type Curve, monotoneCubic } from '../numeric/spline.ts';
import type { ChordLaw, DroopLaw, FormulaLaw, Pair, PointsLaw, SweepLaw, TwistLaw } from './document.ts';

export interface Law {
  at: Curve;
  knots: readonly number[];
}

/** A droop law still open in how far the tip bends: the angle at eta for a given tip angle, both in radians down. */
export interface OpenDroop {
  at: (eta: number, tip: number) => number;
  knots: readonly number[];
  tipAngle: number | null; // radians, where the document gives it or the law has no choice
  tipDrop: number | null; // metres, where the document gives that instead
}

const RADIANS = Math.PI / 180;
const NONE: readonly number[] = [];

export function chordLaw(law: ChordLaw): Law {
  switch (law.kind) {
    case 'taper':
      return { at: (eta) => law.root + (law.tip - law.root) * eta, knots: NONE };
    case 'elliptic':
      return { at: (eta) => law.root * Math.sqrt(Math.max(0, 1 - eta * eta)), knots: NONE };
    case 'superelliptic':
      return { at: superelliptic(law.root, law.n, law.m), knots: NONE };
    default:
      return freeLaw(law, 1);
  }
}

/** A square root, which most tips end in, is quicker taken as one. */
function superelliptic(root: number, n: number, m: number): Curve {
  const shape = m === 2 ? Math.sqrt : (share: number) => share ** (1 / m);
  return (eta) => root * shape(Math.max(0, 1 - eta ** n));
}

/** x of the quarter-chord line aft of its root. `straight`: eta h tan(angle) with h the unrolled half length. */
export function sweepLaw(law: SweepLaw, halfLength: number): Law {
  switch (law.kind) {
    case 'straight': {
      const reach = halfLength * Math.tan(law.angle * RADIANS);
      return { at: (eta) => eta * reach, knots: NONE };
    }
    case 'rake': {
      const reach = halfLength * Math.tan(law.angle * RADIANS);
      return { at: (eta) => eta * reach + law.tip * eta ** law.power, knots: NONE };
    }
    default:
      return freeLaw(law, 1);
  }
}

export function twistLaw(law: TwistLaw): Law {
  if (law.kind === 'linear') return { at: (eta) => law.tip * RADIANS * eta, knots: NONE };
  return freeLaw(law, RADIANS);
}

export function droopLaw(law: DroopLaw): OpenDroop {
  switch (law.kind) {
    case 'flat':
      return { at: () => 0, knots: NONE, tipAngle: 0, tipDrop: null };
    case 'vee':
      return { at: (_eta, tip) => tip, knots: NONE, ...measure(law) };
    case 'arc':
      return { at: (eta, tip) => tip * eta, knots: NONE, ...measure(law) };
    case 'late': {
      const { from, power } = law;
      const at = (eta: number, tip: number) => (eta <= from ? 0 : tip * ((eta - from) / (1 - from)) ** power);
      return { at, knots: from > 0 ? [from] : NONE, ...measure(law) };
    }
    case 'gull': {
      // The curve is rebuilt only when the tip angle changes, as it does while a tip drop is solved for.
      let built = Number.NaN;
      let curve: Curve = () => 0;
      const at = (eta: number, tip: number) => {
        if (tip !== built) {
          curve = monotoneCubic([0, law.knee, 1], [-law.rootAngle * RADIANS, 0, tip]);
          built = tip;
        }
        return curve(eta);
      };
      return { at, knots: [law.knee], ...measure(law) };
    }
    default: {
      const { at, knots } = freeLaw(law, RADIANS);
      return { at: (eta) => at(eta), knots, tipAngle: at(1), tipDrop: null };
    }
  }
}

function measure(law: { tipAngle?: number | undefined; tipDrop?: number | undefined }) {
  return law.tipAngle === undefined
    ? { tipAngle: null, tipDrop: law.tipDrop ?? 0 }
    : { tipAngle: law.tipAngle * RADIANS, tipDrop: null };
}

function freeLaw(law: PointsLaw | FormulaLaw, scale: number): Law {
  if (law.kind === 'points') {
    const etas = law.at.map(([eta]) => eta);
    const values = law.at.map(([, value]) => value * scale);
    return { at: monotoneCubic(etas, values), knots: etas.slice(1, -1) };
  }
  const formula = compileFormula(law.expression);
  return { at: (eta) => formula(eta) * scale, knots: NONE };
}

/**
 * The same law bent to another amplitude: the tip angle in degrees down (a flat wing bends as an arc; a gull wing,
 * points and formulas scale as a whole). `present` is the amplitude the law has now, from `droopAmplitude`.
 */
export function withDroopAmplitude(law: DroopLaw, present: number, wanted: number): DroopLaw {
  const factor = present === 0 ? 0 : wanted / present;
  switch (law.kind) {
    case 'flat':
      return { kind: 'arc', tipAngle: wanted };
    case 'vee':
    case 'arc':
      return { kind: law.kind, tipAngle: wanted };
    case 'late':
      return { kind: 'late', from: law.from, power: law.power, tipAngle: wanted };
    case 'gull':
      return { kind: 'gull', knee: law.knee, rootAngle: law.rootAngle * factor, tipAngle: wanted };
    case 'points':
      return { kind: 'points', at: law.at.map(([eta, angle]): Pair => [eta, angle * factor]) };
    case 'formula':
      return { kind: 'formula', expression: `${factor} * (${law.expression})` };
  }
}
