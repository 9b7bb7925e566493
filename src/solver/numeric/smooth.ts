/**
 * Smooth cubic through points: value, slope and curvature run on, so that no kink shows in a pressure. It may overshoot
 * between points; laws the user draws use the monotone cubic of spline.ts instead. Ends: the first and last two pieces
 * share one cubic (not-a-knot), so that any cubic is met exactly. C. de Boor, A Practical Guide to Splines (1978), ch. 4.
 */
import type { Curve } from './spline.ts';

/** Curve through (x, y), four points or more, x strictly rising; outside the range the end pieces run on. */
export function smoothCubic(x: ArrayLike<number>, y: ArrayLike<number>): Curve {
  const n = x.length;
  if (n < 4 || y.length !== n) throw new Error(`a smooth curve needs four points or more, found ${n}`);
  const step = Float64Array.from({ length: n - 1 }, (_, i) => x[i + 1]! - x[i]!);
  const rise = step.map((h, i) => (y[i + 1]! - y[i]!) / h);
  if (!step.every((h) => h > 0)) throw new Error('the points of a smooth curve must rise strictly');
  const slope = endTiedSlopes(step, rise);
  return (at) => {
    let low = 0;
    let high = n - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (x[middle]! <= at) low = middle;
      else high = middle;
    }
    const h = step[low]!;
    const t = at - x[low]!;
    const second = (3 * rise[low]! - 2 * slope[low]! - slope[low + 1]!) / h;
    const third = (slope[low]! + slope[low + 1]! - 2 * rise[low]!) / (h * h);
    return y[low]! + t * (slope[low]! + t * (second + t * third));
  };
}

/** Slopes of equal curvature on both sides of each point: a tridiagonal system, eliminated forwards then back. */
function endTiedSlopes(step: Float64Array, rise: Float64Array): Float64Array {
  const last = step.length;
  const diagonal = new Float64Array(last + 1);
  const above = new Float64Array(last + 1);
  const slope = new Float64Array(last + 1);
  const endRow = (h: number, next: number, r: number, nextRise: number) =>
    ((h + 2 * (h + next)) * next * r + h * h * nextRise) / (h + next);
  diagonal[0] = step[1]!;
  above[0] = step[0]! + step[1]!;
  slope[0] = endRow(step[0]!, step[1]!, rise[0]!, rise[1]!);
  for (let i = 1; i <= last; i++) {
    const isEnd = i === last;
    const below = isEnd ? step[last - 1]! + step[last - 2]! : step[i]!;
    const share = below / diagonal[i - 1]!;
    diagonal[i] = (isEnd ? step[last - 2]! : 2 * (step[i - 1]! + step[i]!)) - share * above[i - 1]!;
    above[i] = isEnd ? 0 : step[i - 1]!;
    const right = isEnd
      ? endRow(step[last - 1]!, step[last - 2]!, rise[last - 1]!, rise[last - 2]!)
      : 3 * (step[i]! * rise[i - 1]! + step[i - 1]! * rise[i]!);
    slope[i] = right - share * slope[i - 1]!;
  }
  slope[last] = slope[last]! / diagonal[last]!;
  for (let i = last - 1; i >= 0; i--) slope[i] = (slope[i]! - above[i]! * slope[i + 1]!) / diagonal[i]!;
  return slope;
}
