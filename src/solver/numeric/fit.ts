/**
 * A polynomial laid through scattered values by least squares, for slopes that must not follow the scatter.
 * Chebyshev polynomials on the range of x keep the normal equations well conditioned up to a degree of about ten.
 */
import { factor, solveFactored } from './dense.ts';

export interface Fit {
  at: (x: number) => number;
  slope: (x: number) => number;
  scatter: number; // root mean square of what the polynomial leaves over
}

/** Fit of degree `degree`, lowered where there are too few points for it. Throws on fewer than two points. */
export function fitPolynomial(x: ArrayLike<number>, y: ArrayLike<number>, degree: number): Fit {
  const points = x.length;
  if (points < 2) throw new Error(`a fit needs two points or more, found ${points}`);
  const terms = Math.min(degree, points - 1) + 1;
  const low = Math.min(...Array.from(x));
  const width = Math.max(...Array.from(x)) - low;
  const unit = (at: number) => (2 * (at - low)) / width - 1;
  const basis = new Float64Array(terms);
  const normal = new Float64Array(terms * terms);
  const share = new Float64Array(terms);
  for (let k = 0; k < points; k++) {
    chebyshev(unit(x[k]!), basis);
    for (let i = 0; i < terms; i++) {
      share[i]! += basis[i]! * y[k]!;
      for (let j = 0; j < terms; j++) normal[i * terms + j]! += basis[i]! * basis[j]!;
    }
  }
  const pivots = new Int32Array(terms);
  factor(normal, terms, pivots);
  solveFactored(normal, terms, pivots, share);
  const slopes = derivative(share);
  const sum = (series: Float64Array, t: number) => {
    chebyshev(t, basis);
    let total = 0;
    for (let i = 0; i < series.length; i++) total += series[i]! * basis[i]!;
    return total;
  };
  let square = 0;
  for (let k = 0; k < points; k++) square += (y[k]! - sum(share, unit(x[k]!))) ** 2;
  return {
    at: (at) => sum(share, unit(at)),
    slope: (at) => (2 / width) * sum(slopes, unit(at)),
    scatter: Math.sqrt(square / points),
  };
}

/** T_0 .. T_n at t into `to`. */
function chebyshev(t: number, to: Float64Array): void {
  for (let i = 0; i < to.length; i++) to[i] = i === 0 ? 1 : i === 1 ? t : 2 * t * to[i - 1]! - to[i - 2]!;
}

/** Chebyshev series of the derivative (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 22.8). */
function derivative(series: Float64Array): Float64Array {
  const n = series.length;
  const slope = new Float64Array(Math.max(1, n - 1));
  for (let i = n - 2; i >= 0; i--) {
    slope[i] = 2 * (i + 1) * series[i + 1]! + (i + 2 < n - 1 ? slope[i + 2]! : 0);
  }
  slope[0]! *= 0.5;
  return slope;
}
