/** Points of an outline as a curve, and why some points are no outline. Shares of the chord. */
import type { Pair } from '../design/document.ts';
import { smoothCubic } from '../numeric/smooth.ts';

/** Height of the surface over the chord line at x; side 1 upper, -1 lower. */
export type Contour = (x: number, side: 1 | -1) => number;

/**
 * Upper and lower height of imported points at x. Along t = sqrt(x - nose), negative on the upper side, an outline with
 * a round nose is one smooth curve right through its leading edge.
 */
export function contour(points: readonly Pair[]): Contour {
  const xs = points.map(([x]) => x);
  const start = Math.min(...xs);
  const nose = xs.indexOf(start);
  const t = points.map(([x], k) => Math.sqrt(x - start) * (k < nose ? -1 : 1));
  const curve = smoothCubic(
    t,
    points.map(([, y]) => y),
  );
  const [first, last] = [t[0]!, t[t.length - 1]!];
  const clamp = (at: number) => Math.min(last, Math.max(first, at));
  // Points may run either way round: the side that lies higher at mid-chord is the upper one.
  const middle = Math.sqrt(Math.max(0, 0.5 - start));
  const upper = curve(-middle) >= curve(middle) ? -1 : 1;
  return (x, side) => curve(clamp(upper * side * Math.sqrt(Math.max(0, x - start))));
}

/** Why points are no outline, as what was found and what is allowed; null when they are one. */
export function outlineProblem(points: readonly Pair[]): { found: string; allowed: string } | null {
  const xs = points.map(([x]) => x);
  const least = Math.min(...xs);
  const most = Math.max(...xs);
  if (least > 0.02 || most < 0.98)
    return {
      found: `x from ${least} to ${most}`,
      allowed: 'x from 0 at the leading edge to 1 at the trailing edge',
    };
  const nose = xs.indexOf(least);
  const turn = xs.findIndex((x, k) => k > 0 && (k <= nose ? !(x < xs[k - 1]!) : !(x > xs[k - 1]!)));
  if (turn >= 0 || nose < 3 || nose > xs.length - 4)
    return {
      found: `x ${xs[Math.max(turn, 0)]} as point ${Math.max(turn, 0) + 1}`,
      allowed: 'points from the trailing edge along one side to the leading edge and back along the other',
    };
  const height = contour(points);
  for (let k = 1; k < 100; k++)
    if (height(k / 100, 1) < height(k / 100, -1))
      return { found: `sides that cross at x ${k / 100}`, allowed: 'an upper side above the lower one' };
  return null;
}
