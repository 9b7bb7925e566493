/**
 * What droop buys: the sweep at one lift, the price of hold along it, and how far two shortcuts hold good - the closed
 * hold index against the solved roll-from-yaw, and the simple law C_lr = a CL - b droop. Angles in degrees.
 */
import type { Design } from '../design/document.ts';
import { type DroopStudy, type DroopStudyOptions, droopStudy } from './droop-study.ts';
import { type PriceOptions, type PriceStudy, priceOf } from './price.ts';
import type { Study } from './study.ts';

export interface CurveOptions extends DroopStudyOptions, PriceOptions {}

/** C_lr of the foil about its origin along the sweep, carried at one of the brief's speeds. */
export interface CouplingLine {
  speed: number; // m/s
  CL: number; // of the flat end
  /** The closed index at this speed's lift; the roll term G_w/C_L (rad) where the index is nothing at any droop. */
  index: Float64Array;
  Clr: Float64Array;
  shareOfCL: number; // C_lr / CL when flat
  perDegree: number; // fall of C_lr a degree over the first 25; NaN where not known
  neutral: number | null; // degrees; null: not within the sweep
  neutralIndex: number | null; // the index there
}

export interface CurveStudy {
  sweep: DroopStudy;
  price: PriceStudy;
  coupling: CouplingLine[];
  indexKind: 'holdIndex' | 'rollTerm';
}

const FALL_OVER = 25; // degrees

export function* curveStudy(design: Design, options: CurveOptions = {}): Study<CurveStudy> {
  const sweep = yield* droopStudy(design, options);
  const price = priceOf(sweep, options);
  const { holdIndex, rollTerm, amplitude } = sweep.columns;
  const indexKind = price.goods === 'holdPoint' ? 'holdIndex' : 'rollTerm';
  const index = indexKind === 'holdIndex' ? holdIndex : rollTerm;
  const coupling = sweep.loadings.map(({ speed, CL, Clr }, k): CouplingLine => {
    // Droop and stabilizer are the same at every speed; the lift coefficient goes with 1/V^2.
    const here = index.map((value) => value * (speed / sweep.speed) ** 2);
    const neutral = price.neutralAtSpeeds[k]!.neutral;
    const far = lastWithin(amplitude, FALL_OVER);
    return {
      speed,
      CL,
      index: here,
      Clr,
      shareOfCL: Clr[0]! / CL,
      perDegree: far > 0 ? (Clr[0]! - Clr[far]!) / amplitude[far]! : Number.NaN,
      neutral,
      neutralIndex: neutral === null ? null : between(amplitude, here, neutral),
    };
  });
  return { sweep, price, coupling, indexKind };
}

function lastWithin(amplitude: Float64Array, most: number): number {
  let last = 0;
  while (last + 1 < amplitude.length && amplitude[last + 1]! <= most + 1e-9) last++;
  return last;
}

/** Read between the columns by straight lines. */
function between(x: Float64Array, y: Float64Array, at: number): number {
  let k = 1;
  while (k < x.length - 1 && x[k]! < at) k++;
  const share = (at - x[k - 1]!) / (x[k]! - x[k - 1]!);
  return y[k - 1]! + share * (y[k]! - y[k - 1]!);
}
