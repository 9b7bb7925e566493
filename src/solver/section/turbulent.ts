/**
 * Turbulent boundary layer and wake: skin friction of T. W. Swafford, AIAA J. 21 (1983) 923, with the energy shape
 * factor, dissipation and shear lag of M. Drela and M. B. Giles, AIAA J. 25 (1987) 1347, eqs. 13-22 (from memory).
 * The lag follows J. E. Green, D. J. Weeks, J. W. F. Brooman, ARC R&M 3791 (1973): the outer layer's stress moves
 * towards its value in equilibrium over a few thicknesses.
 */
import * as slot from './closure.ts';

/** Rate of the lag: delta/C_tau dC_tau/ds = LAG (q in equilibrium - q). */
export const LAG = 4.2;

/** Below this Re_theta the relations are held at their value there; ln 20 = 3. */
const LEAST_RE_THETA = 20;

/** Fills all slots for a layer on a wall; q is the square root of C_tau. */
export function turbulentClosure(shape: number, reTheta: number, q: number, out: Float64Array): void {
  energyShape(shape, reTheta, out);
  friction(shape, reTheta, out);
  stress(shape, q, out);
  thickness(shape, out);
}

/** Fills all slots for one half of a wake: no wall friction. */
export function wakeClosure(shape: number, reTheta: number, q: number, out: Float64Array): void {
  energyShape(shape, reTheta, out);
  out[slot.FRICTION] = 0;
  out[slot.FRICTION_H] = 0;
  out[slot.FRICTION_R] = 0;
  stress(shape, q, out);
  thickness(shape, out);
}

/** Share of the stress in equilibrium with which a layer starts that has just turned turbulent: q over its balance. */
export function startingStress(shape: number): number {
  return 1.8 * Math.exp(-3.3 / (shape - 1));
}

/** H* on either side of the shape H0 at which it is least, about that of separation. */
function energyShape(shape: number, reTheta: number, out: Float64Array): void {
  const re = Math.max(reTheta, 200);
  const varies = reTheta > 200;
  const least = re > 400 ? 3 + 400 / re : 4;
  const leastR = re > 400 ? -400 / re : 0;
  let star = 1.505 + 4 / re;
  let byShape: number;
  let byR = -4 / re;
  if (shape < least) {
    const off = least - shape;
    const root = Math.sqrt(re);
    const power = Math.exp(1.6 * Math.log(off)) / shape; // quicker than off ** 1.6
    const scale = 0.165 - 1.6 / root;
    star += scale * power;
    byShape = -scale * power * (1.6 / off + 1 / shape);
    byR += (0.8 / root) * power + ((scale * 1.6 * power) / off) * leastR;
  } else {
    const off = shape - least;
    const log = Math.log(re);
    const sum = off + 4 / log;
    const inner = 0.04 / shape + (0.007 * log) / (sum * sum);
    star += off * off * inner;
    const bySum = (-0.014 * log) / (sum * sum * sum);
    byShape = 2 * off * inner + off * off * (bySum - 0.04 / (shape * shape));
    const byOff = 2 * off * inner + off * off * bySum;
    byR += off * off * (0.007 / (sum * sum) - (bySum * 4) / (log * log)) - byOff * leastR;
  }
  out[slot.STAR] = star;
  out[slot.STAR_H] = (byShape * shape) / star;
  out[slot.STAR_R] = varies ? byR / star : 0;
}

/** cf = 0.3 exp(-1.33 H)/(log10 Re_theta)^(1.74 + 0.31 H) + 0.00011 (tanh(4 - H/0.875) - 1). */
function friction(shape: number, reTheta: number, out: Float64Array): void {
  const log = Math.log(Math.max(reTheta, LEAST_RE_THETA));
  const decades = Math.log(log * Math.LOG10E);
  const exponent = 1.74 + 0.31 * shape;
  const main = 0.3 * Math.exp(-1.33 * shape - exponent * decades);
  const bend = 1 - 2 / (Math.exp(8 - shape / 0.4375) + 1); // tanh(4 - H/0.875)
  out[slot.FRICTION] = 0.5 * (main + 0.00011 * (bend - 1));
  out[slot.FRICTION_H] =
    0.5 * shape * (main * (-1.33 - 0.31 * decades) - (0.00011 / 0.875) * (1 - bend * bend));
  out[slot.FRICTION_R] = reTheta > LEAST_RE_THETA ? (-0.5 * main * exponent) / log : 0;
}

/**
 * Slip speed U_s = H* (1 - (4/3)(H - 1)/H)/2, stress in equilibrium C_tau = 0.015 H* (H - 1)^3/((1 - U_s) H^3), and
 * dissipation CD = (cf/2) U_s + C_tau (1 - U_s). Needs the slots of H* and friction.
 */
function stress(shape: number, q: number, out: Float64Array): void {
  const star = out[slot.STAR]!;
  const lean = (4 / (3 * shape) - 1 / 3) / 2; // U_s over H*
  const slip = star * lean;
  const slipH = slip * out[slot.STAR_H]! - (2 * star) / (3 * shape);
  const slipR = slip * out[slot.STAR_R]!;
  const rest = 1 - slip;
  const ratio = (shape - 1) / shape;
  const balance = Math.sqrt((0.015 * star * ratio * ratio * ratio) / rest);
  out[slot.BALANCE] = balance;
  out[slot.BALANCE_H] = 0.5 * balance * (out[slot.STAR_H]! + 3 / (shape - 1) + slipH / rest);
  out[slot.BALANCE_R] = 0.5 * balance * (out[slot.STAR_R]! + slipR / rest);
  // 2 CD/H* = 2 lean cf/2 + 2 C_tau (1/H* - lean)
  const wall = out[slot.FRICTION]!;
  const outer = q * q;
  const leanH = -2 / (3 * shape);
  out[slot.DISSIPATION] = 2 * (lean * wall + outer * (1 / star - lean));
  out[slot.DISSIPATION_H] =
    2 * (leanH * wall + lean * out[slot.FRICTION_H]! - outer * (out[slot.STAR_H]! / star + leanH));
  out[slot.DISSIPATION_R] = 2 * (lean * out[slot.FRICTION_R]! - (outer * out[slot.STAR_R]!) / star);
  out[slot.DISSIPATION_Q] = 4 * outer * (1 / star - lean);
}

/** delta = theta (3.15 + 1.72/(H - 1)) + delta-star. */
function thickness(shape: number, out: Float64Array): void {
  out[slot.THICKNESS] = 3.15 + 1.72 / (shape - 1) + shape;
  out[slot.THICKNESS_H] = shape * (1 - 1.72 / (shape - 1) ** 2);
}
