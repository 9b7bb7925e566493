/**
 * Bessel functions J0, J1, Y0, Y1 of a positive argument, by the polynomials of M. Abramowitz and I. A. Stegun, Handbook
 * of Mathematical Functions (1964), 9.4.1 to 9.4.6: absolute error below 1e-7.
 */

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);

const J0_SMALL = [1, -2.2499997, 1.2656208, -0.3163866, 0.0444479, -0.0039444, 0.00021];
const Y0_SMALL = [0.36746691, 0.60559366, -0.74350384, 0.25300117, -0.04261214, 0.00427916, -0.00024846];
const J1_SMALL = [0.5, -0.56249985, 0.21093573, -0.03954289, 0.00443319, -0.00031761, 0.00001109];
const Y1_SMALL = [-0.6366198, 0.2212091, 2.1682709, -1.3164827, 0.3123951, -0.0400976, 0.0027873];
const SIZE_0 = [0.79788456, -0.00000077, -0.0055274, -0.00009512, 0.00137237, -0.00072805, 0.00014476];
const PHASE_0 = [-0.78539816, -0.04166397, -0.00003954, 0.00262573, -0.00054125, -0.00029333, 0.00013558];
const SIZE_1 = [0.79788456, 0.00000156, 0.01659667, 0.00017105, -0.00249511, 0.00113653, -0.00020033];
const PHASE_1 = [-2.35619449, 0.12499612, 0.0000565, -0.00637879, 0.00074348, 0.00079824, -0.00029166];

export interface BesselPair {
  j: number;
  y: number;
}

export function besselZero(x: number): BesselPair {
  if (x <= 3) {
    const t = (x / 3) ** 2;
    const j = polynomial(J0_SMALL, t);
    return { j, y: (2 / Math.PI) * Math.log(x / 2) * j + polynomial(Y0_SMALL, t) };
  }
  return farPair(SIZE_0, PHASE_0, x);
}

export function besselOne(x: number): BesselPair {
  if (x <= 3) {
    const t = (x / 3) ** 2;
    const j = x * polynomial(J1_SMALL, t);
    return { j, y: (2 / Math.PI) * Math.log(x / 2) * j + polynomial(Y1_SMALL, t) / x };
  }
  return farPair(SIZE_1, PHASE_1, x);
}

function farPair(size: readonly number[], phase: readonly number[], x: number): BesselPair {
  const t = 3 / x;
  const amplitude = polynomial(size, t) / Math.sqrt(x);
  const angle = x + polynomial(phase, t);
  return { j: amplitude * Math.cos(angle), y: amplitude * Math.sin(angle) };
}
