/** Points of an outline as a curve, and why some points are no outline. Shares of the chord. */
import type { Pair } from '../design/document.ts';
import { smoothCubic } from '../numeric/smooth.ts';

/** A section's surface as height over the chord line. */
export interface Contour {
  start: number; // x of the foremost place, which need not be one of the points
  height: (x: number, side: 1 | -1) => number; // side 1 upper, -1 lower
}

/**
 * The surface through imported points. Along t = sqrt(x - start), negative on the upper side, an outline with a round nose
 * is one smooth curve right through its leading edge; measured from the foremost point instead of the foremost place
 * between points it would have a kink there, and no laminar layer would pass it.
 */
export function contour(points: readonly Pair[]): Contour {
  const xs = points.map(([x]) => x);
  const nose = xs.indexOf(Math.min(...xs));
  const { start, isBehind } = foremost(points, nose);
  const t = points.map(([x], k) => Math.sqrt(x - start) * (k < nose || (k === nose && !isBehind) ? -1 : 1));
  const curve = smoothCubic(
    t,
    points.map(([, y]) => y),
  );
  const [first, last] = [t[0]!, t[t.length - 1]!];
  const clamp = (at: number) => Math.min(last, Math.max(first, at));
  // Points may run either way round: the side that lies higher at mid-chord is the upper one.
  const middle = Math.sqrt(Math.max(0, 0.5 - start));
  const upper = curve(-middle) >= curve(middle) ? -1 : 1;
  return { start, height: (x, side) => curve(clamp(upper * side * Math.sqrt(Math.max(0, x - start)))) };
}

const AT_POINT = 0.02;

/**
 * Where the parabola through the foremost point and its neighbours is foremost, and whether that point lies behind it in
 * the order of the points; the point itself where they make no such parabola.
 */
function foremost(points: readonly Pair[], nose: number): { start: number; isBehind: boolean } {
  const [x1, y1] = points[nose]!;
  const [before, after] = [points[nose - 1], points[nose + 1]];
  if (!before || !after) return { start: x1, isBehind: true };
  const [x0, y0] = before;
  const [x2, y2] = after;
  const way = Math.sign(y2 - y0);
  const slope = (x1 - x0) / (y1 - y0);
  const bend = ((x2 - x1) / (y2 - y1) - slope) / (y2 - y0);
  const y = 0.5 * (y0 + y1) - slope / (2 * bend);
  const start = x0 + slope * (y - y0) + bend * (y - y0) * (y - y1);
  const isNose =
    bend > 0 && way * (y1 - y0) > 0 && way * (y2 - y1) > 0 && way * (y - y0) > 0 && way * (y2 - y) > 0;
  const isAhead = x1 - start > AT_POINT * (Math.min(x0, x2) - x1); // else the point itself is foremost
  return isNose && isAhead ? { start, isBehind: way * (y1 - y) >= 0 } : { start: x1, isBehind: true };
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
  const { height } = contour(points);
  for (let k = 1; k < 100; k++)
    if (height(k / 100, 1) < height(k / 100, -1))
      return { found: `sides that cross at x ${k / 100}`, allowed: 'an upper side above the lower one' };
  return null;
}
