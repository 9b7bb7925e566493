/**
 * The price of hold along a droop sweep. Drag rises about as droop squared and hold about as droop, so the curve itself
 * has no corner; what changes from place to place is the price of the next point.
 *
 * Prices are slopes of polynomials laid through the sweep, never differences of neighbouring cases: strip edges move a
 * little from one droop to the next, and a difference would show that.
 */
import { fitPolynomial } from '../numeric/fit.ts';
import { findRoot } from '../numeric/roots.ts';
import type { DroopStudy } from './droop-study.ts';

/** What is bought: a point of hold index, or a degree of droop (where the index stays nothing, as behind a flat stabilizer). */
export type Goods = 'holdPoint' | 'degree';

export interface PriceOptions {
  /** Most that one point may cost, as a share of total drag; default 0.01. */
  perPoint?: number;
  /** Most that one degree may cost, as a share of total drag; default 0.001. */
  perDegree?: number;
}

/** Where the price of the next point passes what the user would pay. Degrees. */
export interface PricePlace {
  at: number | null; // null: it does not, see `why`
  low: number | null; // at three quarters of the price; null: at the flat end or nowhere
  high: number | null; // at five quarters of it; null: beyond the sweep
  why: 'passes' | 'dearerFromTheStart' | 'cheaperToTheEnd';
}

export interface PriceStudy {
  goods: Goods;
  limit: number; // share of total drag the place is for
  amplitude: Float64Array; // degrees
  perPoint: Float64Array; // N for one more point of hold index; NaN where more droop adds none
  perPointShare: Float64Array; // of the total drag there
  /** N for one degree towards the neutral droop; beyond it the step goes back towards flat. */
  perDegree: Float64Array;
  perDegreeShare: Float64Array;
  inducedPerDegree: Float64Array; // N for one more degree, the induced part
  place: PricePlace;
  neutral: number | null; // degrees at which C_lr vanishes; null: not within the sweep
  neutralAtSpeeds: Array<{ speed: number; CL: number; neutral: number | null }>;
  isInducedSaved: boolean; // somewhere one more degree lowers the induced drag
  scatter: number; // N, what the polynomial of the total drag leaves over
}

const DEGREE = 7; // of the polynomials: droop up to 90 degrees, drag even in it apart from the surface and the stabilizer
const FINE = 0.05; // degrees between the stations searched for the place

export function priceOf(study: DroopStudy, options: PriceOptions = {}): PriceStudy {
  const { columns } = study;
  const { amplitude } = columns;
  const market = marketOf(study);
  const neutral = zeroOf(amplitude, columns.Clr);
  const sampled = (f: (x: number) => number) => Float64Array.from(amplitude, f);
  const towards = (x: number) => (neutral !== null && x > neutral ? -1 : 1);
  const goods: Goods = market.hasIndex ? 'holdPoint' : 'degree';
  const limit = goods === 'holdPoint' ? (options.perPoint ?? 0.01) : (options.perDegree ?? 0.001);
  const price = goods === 'holdPoint' ? market.pointShare : market.degreeShare;
  return {
    goods,
    limit,
    amplitude: amplitude.slice(),
    perPoint: sampled(market.point),
    perPointShare: sampled(market.pointShare),
    perDegree: sampled((x) => towards(x) * market.degree(x)),
    perDegreeShare: sampled((x) => towards(x) * market.degreeShare(x)),
    inducedPerDegree: sampled(market.inducedDegree),
    place: placeOf(price, amplitude[amplitude.length - 1]!, limit),
    neutral,
    neutralAtSpeeds: study.loadings.map(({ speed, CL, Clr }) => ({
      speed,
      CL,
      neutral: zeroOf(amplitude, Clr),
    })),
    isInducedSaved: amplitude.some((x) => market.inducedDegree(x) < 0),
    scatter: market.scatter,
  };
}

/** Prices as smooth functions of the amplitude in degrees. */
function marketOf({ columns }: DroopStudy) {
  const { amplitude } = columns;
  const total = fitPolynomial(amplitude, columns.totalDrag, DEGREE);
  const induced = fitPolynomial(amplitude, columns.inducedDrag, DEGREE);
  const hasIndex =
    columns.holdIndex.every(Number.isFinite) && columns.holdIndex.some((index) => index > 1e-9);
  const index = hasIndex ? fitPolynomial(amplitude, columns.holdIndex, DEGREE) : null;
  const point = (x: number) => {
    const gained = index ? index.slope(x) : 0;
    return gained > 1e-9 ? total.slope(x) / gained : Number.NaN;
  };
  return {
    hasIndex,
    point,
    pointShare: (x: number) => point(x) / total.at(x),
    degree: total.slope,
    degreeShare: (x: number) => total.slope(x) / total.at(x),
    inducedDegree: induced.slope,
    scatter: total.scatter,
  };
}

function placeOf(price: (x: number) => number, end: number, limit: number): PricePlace {
  const low = crossing(price, end, 0.75 * limit);
  const high = crossing(price, end, 1.25 * limit);
  const at = crossing(price, end, limit);
  if (at === null) {
    const why = price(0) >= limit ? 'dearerFromTheStart' : 'cheaperToTheEnd';
    return { at, low, high, why };
  }
  return { at, low, high, why: 'passes' };
}

/** The first amplitude at which the price rises through `limit`; null when it starts above it or never gets there. */
function crossing(price: (x: number) => number, end: number, limit: number): number | null {
  const over = (x: number) => price(x) - limit;
  let before = over(0);
  if (!(before < 0)) return null;
  const steps = Math.ceil(end / FINE);
  for (let k = 1; k <= steps; k++) {
    const x = (end * k) / steps;
    const here = over(x);
    if (before < 0 && here >= 0) return findRoot(over, (end * (k - 1)) / steps, x, 1e-4, before, here);
    before = here;
  }
  return null;
}

/** The first amplitude at which a column changes sign, on a polynomial through it; null when it does not. */
function zeroOf(amplitude: Float64Array, values: Float64Array): number | null {
  const known = [...amplitude.keys()].filter((k) => Number.isFinite(values[k]!));
  if (known.length < 3) return null;
  const x = known.map((k) => amplitude[k]!);
  const y = known.map((k) => values[k]!);
  for (let k = 1; k < known.length; k++) {
    if (y[k - 1] === 0) return x[k - 1]!;
    if (y[k - 1]! * y[k]! >= 0) continue;
    const { at } = fitPolynomial(x, y, DEGREE);
    // The polynomial may miss the sign at a node by its scatter: then the chord between the two nodes serves.
    const chord = x[k - 1]! - (y[k - 1]! * (x[k]! - x[k - 1]!)) / (y[k]! - y[k - 1]!);
    return findRoot(at, x[k - 1]!, x[k]!, 1e-5) ?? chord;
  }
  return null;
}
