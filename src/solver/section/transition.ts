/**
 * Where a laminar layer turns turbulent without being tripped: by the envelope of its growing waves, or by Michel's
 * older rule of thumb; and how far waves may grow in water of a given clarity.
 */

export type Clarity = 'clean' | 'coastal' | 'silty';

/**
 * Critical amplification exponents n. By L. M. Mack, JPL Publication 77-15 (1977), n = -8.43 - 2.4 ln Tu, they stand
 * for a turbulence level of 0.07 %, 0.4 % and 1 % (from memory). That these levels fit clean, coastal and silty water
 * is an assumption: no measurement of natural transition at sea was found.
 */
export const CRITICAL_N: Readonly<Record<Clarity, number>> = { clean: 9, coastal: 4.8, silty: 2.6 };

/**
 * Growth of n per length of momentum thickness: theta dn/ds. Envelope of the most amplified Tollmien-Schlichting waves
 * of Falkner-Skan profiles, M. Drela and M. B. Giles, AIAA J. 25 (1987) 1347, eqs. 29-34 (from memory). Below the
 * critical Re_theta nothing grows; growth sets in over `ONSET` decades to either side of it, without a jump.
 */
export function amplification(shape: number, reTheta: number): number {
  const over = Math.log10(reTheta) - criticalLogRe(shape) + ONSET;
  if (over <= 0) return 0;
  const share = Math.min(1, over / (2 * ONSET));
  const onset = share * share * (3 - 2 * share);
  const length = (6.54 * shape - 14.07) / (shape * shape); // l(H)
  const rise = (0.058 * (shape - 4) ** 2) / (shape - 1) - 0.068; // m(H) l(H)
  return onset * slopeOverReTheta(shape) * 0.5 * (rise + length);
}

/** M. Drela, Flight Vehicle Aerodynamics (2014), ch. 4, smooths the same onset by 0.08 decades (from memory). */
const ONSET = 0.08;

/** log10 of the Re_theta at which the first waves grow. */
export function criticalLogRe(shape: number): number {
  const k = 1 / (shape - 1);
  return (1.415 * k - 0.489) * Math.tanh(20 * k - 12.9) + 3.295 * k + 0.44;
}

/** dn/dRe_theta of the envelope. */
export function slopeOverReTheta(shape: number): number {
  return 0.01 * Math.sqrt((2.4 * shape - 3.7 + 2.5 * Math.tanh(1.5 * shape - 4.65)) ** 2 + 0.25);
}

/**
 * Re_theta at transition by R. Michel, ONERA 1/1578A (1951), in the form of T. Cebeci and A. M. O. Smith, Analysis of
 * Turbulent Boundary Layers (1974): Re_theta = 1.174 (1 + 22400/Re_s) Re_s^0.46, s from the stagnation point.
 */
export function michelReTheta(reArc: number): number {
  return 1.174 * (1 + 22400 / reArc) * reArc ** 0.46;
}
