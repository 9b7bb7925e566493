/**
 * Laminar boundary layer: relations of the Falkner-Skan profiles, separated ones included, as fitted by M. Drela and
 * M. B. Giles, AIAA J. 25 (1987) 1347, eqs. 10-12 (from memory). H is the shape factor delta-star/theta,
 * Re_theta the Reynolds number of the momentum thickness and the local speed.
 */
import * as slot from './closure.ts';

/**
 * At a stagnation point, u = k s: the shape factor, and theta in units of sqrt(nu/k), at which these relations hold
 * both still. (Hiemenz flow itself: 2.216 and 0.2923, F. M. White, Viscous Fluid Flow.)
 */
export const STAGNATION_SHAPE = 2.2401;
export const STAGNATION_THETA = 0.29035;

/** Shape factor at which a laminar layer leaves the wall: where H* is least here (Falkner-Skan: 4.03). */
export const LAMINAR_SEPARATION = 4;

/** Fills the slots STAR to DISSIPATION_Q at a shape factor above 1. */
export function laminarClosure(shape: number, reTheta: number, out: Float64Array): void {
  energyShape(shape, out);
  friction(shape, reTheta, out);
  dissipation(shape, reTheta, out);
}

/** H* = 1.515 + k (4 - H)^2/H, k = 0.076 attached, 0.040 separated. */
function energyShape(shape: number, out: Float64Array): void {
  const off = 4 - shape;
  const rise = ((shape < 4 ? 0.076 : 0.04) * off * off) / shape;
  const star = 1.515 + rise;
  out[slot.STAR] = star;
  out[slot.STAR_H] = (-rise * (4 + shape)) / (off === 0 ? 1 : off) / star;
  out[slot.STAR_R] = 0;
}

/** Re_theta cf/2 = -0.067 + 0.01977 (7.4 - H)^2/(H - 1), and (1 - 1.4/(H - 6))^2 beyond 7.4. */
function friction(shape: number, reTheta: number, out: Float64Array): void {
  let value: number;
  let slope: number;
  if (shape < 7.4) {
    const off = 7.4 - shape;
    const curve = (0.01977 * off * off) / (shape - 1);
    value = curve - 0.067;
    slope = -curve * (2 / off + 1 / (shape - 1));
  } else {
    const off = 1 - 1.4 / (shape - 6);
    value = 0.022 * off * off - 0.067;
    slope = (0.044 * off * 1.4) / (shape - 6) ** 2;
  }
  out[slot.FRICTION] = value / reTheta;
  out[slot.FRICTION_H] = (slope * shape) / reTheta;
  out[slot.FRICTION_R] = -value / reTheta;
}

/** Re_theta 2CD/H* = 0.207 + 0.00205 (4 - H)^5.5, and 0.207 - 0.003 (H - 4)^2/(1 + 0.02 (H - 4)^2) beyond 4. */
function dissipation(shape: number, reTheta: number, out: Float64Array): void {
  let value = 0.207;
  let slope: number;
  if (shape < 4) {
    const off = 4 - shape;
    const power = off * off * off * off * off * Math.sqrt(off);
    value += 0.00205 * power;
    slope = (-5.5 * 0.00205 * power) / off;
  } else {
    const square = (shape - 4) ** 2;
    const spread = 1 + 0.02 * square;
    value -= (0.003 * square) / spread;
    slope = (-0.006 * (shape - 4)) / (spread * spread);
  }
  out[slot.DISSIPATION] = value / reTheta;
  out[slot.DISSIPATION_H] = (slope * shape) / reTheta;
  out[slot.DISSIPATION_R] = -value / reTheta;
  out[slot.DISSIPATION_Q] = 0;
}
