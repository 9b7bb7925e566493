/**
 * Bracketed root finding: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4.
 * Bisection keeps the bracket; secant and inverse quadratic steps give the speed.
 */

/** A root of f between low and high to within `tolerance` in x, or null when f has one sign at both ends. */
export function findRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
  atLow = f(low),
  atHigh = f(high),
): number | null {
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (!(atLow * atHigh < 0)) return null;
  let [a, fa, b, fb] = [low, atLow, high, atHigh];
  let [c, fc] = [a, fa];
  let step = b - a;
  let before = step;
  for (let i = 0; i < 200; i++) {
    if (fb * fc > 0) {
      [c, fc] = [a, fa];
      step = before = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const close = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const half = 0.5 * (c - b);
    if (Math.abs(half) <= close || fb === 0) return b;
    const bold =
      Math.abs(before) >= close && Math.abs(fa) > Math.abs(fb) ? interpolate(a, b, c, fa, fb, fc) : null;
    if (bold !== null && 2 * Math.abs(bold) < Math.min(3 * Math.abs(half) - close, Math.abs(before))) {
      before = step;
      step = bold;
    } else step = before = half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > close ? step : Math.sign(half) * close;
    fb = f(b);
  }
  return b;
}

/** Step from b by inverse quadratic interpolation, or the secant where two points coincide; null if it leaves the bracket. */
function interpolate(a: number, b: number, c: number, fa: number, fb: number, fc: number): number | null {
  const half = 0.5 * (c - b);
  const s = fb / fa;
  let p: number;
  let q: number;
  if (a === c) {
    p = 2 * half * s;
    q = 1 - s;
  } else {
    const u = fa / fc;
    const w = fb / fc;
    p = s * (2 * half * u * (u - w) - (b - a) * (w - 1));
    q = (u - 1) * (w - 1) * (s - 1);
  }
  const step = -p / q;
  return Number.isFinite(step) && step * half > 0 ? step : null;
}
