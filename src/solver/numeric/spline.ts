/**
 * Monotone cubic through points: never overshoots its data.
 * Interior slopes: weighted harmonic mean, F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300.
 * End slopes: three-point formula, limited so that the end interval stays monotone. Two points give a line.
 */

export type Curve = (x: number) => number;

/** Curve through (x, y), x strictly rising; outside the range the end value holds. Copies nothing, keeps x and y. */
export function monotoneCubic(x: readonly number[], y: readonly number[]): Curve {
  const n = x.length;
  if (n < 2) throw new Error(`a curve needs two points or more, found ${n}`);
  if (y.length !== n) throw new Error(`a curve needs as many y as x, found ${y.length} and ${n}`);
  const step = new Float64Array(n - 1);
  const rise = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    step[i] = x[i + 1]! - x[i]!;
    if (!(step[i]! > 0)) throw new Error(`points must rise strictly: ${x[i]} is followed by ${x[i + 1]}`);
    rise[i] = (y[i + 1]! - y[i]!) / step[i]!;
  }
  const slope = slopes(step, rise);
  return (at) => {
    if (at <= x[0]!) return y[0]!;
    if (at >= x[n - 1]!) return y[n - 1]!;
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle]! <= at) low = middle;
      else high = middle;
    }
    const h = step[low]!;
    const t = at - x[low]!;
    const curvature = (3 * rise[low]! - 2 * slope[low]! - slope[low + 1]!) / h;
    const third = (slope[low]! + slope[low + 1]! - 2 * rise[low]!) / (h * h);
    return y[low]! + t * (slope[low]! + t * (curvature + t * third));
  };
}

function slopes(step: Float64Array, rise: Float64Array): Float64Array {
  const last = step.length;
  const slope = new Float64Array(last + 1);
  if (last === 1) return slope.fill(rise[0]!);
  for (let i = 1; i < last; i++) {
    const before = rise[i - 1]!;
    const after = rise[i]!;
    if (before * after <= 0) continue;
    const a = 2 * step[i]! + step[i - 1]!;
    const b = step[i]! + 2 * step[i - 1]!;
    slope[i] = (a + b) / (a / before + b / after);
  }
  slope[0] = endSlope(step[0]!, step[1]!, rise[0]!, rise[1]!);
  slope[last] = endSlope(step[last - 1]!, step[last - 2]!, rise[last - 1]!, rise[last - 2]!);
  return slope;
}

function endSlope(step: number, next: number, rise: number, nextRise: number): number {
  const slope = ((2 * step + next) * rise - step * nextRise) / (step + next);
  if (slope * rise <= 0) return 0;
  if (rise * nextRise <= 0 && Math.abs(slope) > 3 * Math.abs(rise)) return 3 * rise;
  return slope;
}
