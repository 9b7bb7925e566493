/**
 * Section outlines on a unit chord: x from the leading edge aft, y upward, both as a share of the chord. The x axis of
 * an imported outline is its chord line; it is taken as it stands, neither turned nor scaled.
 */
import type { Outline, Pair } from '../design/document.ts';
import { FOUR_DIGIT_CODE } from '../design/ranges.ts';
import { smoothCubic } from '../numeric/smooth.ts';
import type { Curve } from '../numeric/spline.ts';

/** A NACA four-digit code as shares of the chord. E. N. Jacobs, K. E. Ward, R. M. Pinkerton, NACA Report 460 (1933). */
export interface FourDigit {
  camber: number; // largest height of the mean line
  position: number; // where that is; 0 for a symmetric section
  thickness: number; // largest thickness
}

export interface OutlinePoints {
  x: Float64Array;
  y: Float64Array;
}

/** What a four-digit code says; null where it is none (camber without a position, no thickness, other characters). */
export function readFourDigit(code: string): FourDigit | null {
  if (!FOUR_DIGIT_CODE.test(code)) return null;
  const camber = Number(code[0]) / 100;
  const position = camber > 0 ? Number(code[1]) / 10 : 0;
  return { camber, position, thickness: Number(code.slice(2)) / 100 };
}

/** Half thickness of a four-digit section with its published, open trailing edge. NACA Report 460, eq. on p. 4. */
export function fourDigitThickness({ thickness }: FourDigit, x: number): number {
  const series = 0.2969 * Math.sqrt(x) - x * (0.126 + x * (0.3516 - x * (0.2843 - x * 0.1015)));
  return 5 * thickness * series;
}

/** Height and slope of a four-digit mean line: two parabolas that meet at the highest point. NACA Report 460. */
export function fourDigitMeanLine(
  { camber, position: p }: FourDigit,
  x: number,
): { y: number; slope: number } {
  if (camber === 0) return { y: 0, slope: 0 };
  const scale = x < p ? camber / (p * p) : camber / (1 - p) ** 2;
  const start = x < p ? 0 : 1 - 2 * p;
  return { y: scale * (start + x * (2 * p - x)), slope: 2 * scale * (p - x) };
}

/**
 * `count` points (5 or more, best odd so that the leading edge is one of them) from the trailing edge along the upper
 * surface to the leading edge and back along the lower one, cosine spaced.
 */
export function outlinePoints(outline: Outline, count: number): OutlinePoints {
  const at = surfacePoint(outline);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const share = (2 * k) / (count - 1); // 0 to 1 along the upper surface, 1 to 2 along the lower one
    const [px, py] = at(0.5 * (1 + Math.cos(Math.PI * share)), share <= 1 ? 1 : -1);
    x[k] = px;
    y[k] = py;
  }
  return { x, y };
}

/** The outline at eta between root and tip: thickness and camber blended linearly, point by point of `outlinePoints`. */
export function blendOutlines(root: Outline, tip: Outline, eta: number, count: number): OutlinePoints {
  const from = outlinePoints(root, count);
  const to = outlinePoints(tip, count);
  const blend = (a: Float64Array, b: Float64Array) => a.map((value, k) => value + (b[k]! - value) * eta);
  return { x: blend(from.x, to.x), y: blend(from.y, to.y) };
}

/** Height of the mean line over the chord line, as a share of the chord, at x in [0, 1]. */
export function meanLine(outline: Outline): Curve {
  if (outline.kind === 'naca4') {
    const digits = fourDigit(outline.code);
    return (x) => fourDigitMeanLine(digits, x).y;
  }
  const height = contour(outline.points);
  return (x) => 0.5 * (height(x, 1) + height(x, -1));
}

/** Largest thickness as a share of the chord. */
export function thicknessRatio(outline: Outline): number {
  if (outline.kind === 'naca4') return fourDigit(outline.code).thickness;
  const height = contour(outline.points);
  return extreme((x) => height(x, 1) - height(x, -1));
}

/** Largest height of the mean line as a share of the chord; negative where it hangs below the chord line. */
export function camberRatio(outline: Outline): number {
  if (outline.kind === 'naca4') return fourDigit(outline.code).camber;
  return extreme(meanLine(outline));
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

function fourDigit(code: string): FourDigit {
  const digits = readFourDigit(code);
  if (!digits) throw new Error(`section code: found "${code}", allowed four digits such as 2412`);
  return digits;
}

/** The surface point over a place on the chord (side 1 upper, -1 lower); a four-digit thickness stands square to the mean line. */
export function surfacePoint(outline: Outline): (x: number, side: 1 | -1) => Pair {
  if (outline.kind === 'coordinates') {
    const height = contour(outline.points);
    return (x, side) => [x, height(x, side)];
  }
  const digits = fourDigit(outline.code);
  return (x, side) => {
    const { y, slope } = fourDigitMeanLine(digits, x);
    const half = (side * fourDigitThickness(digits, x)) / Math.hypot(1, slope);
    return [x - half * slope, y + half];
  };
}

/**
 * Upper and lower height of imported points at x. Along t = sqrt(x - nose), negative on the upper side, an outline with
 * a round nose is one smooth curve right through its leading edge.
 */
function contour(points: readonly Pair[]): (x: number, side: 1 | -1) => number {
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

/** The value of largest size of f over the chord: by samples, then a parabola through the best and its neighbours. */
function extreme(f: Curve): number {
  const count = 200;
  const place = (k: number) => 0.5 * (1 - Math.cos((Math.PI * k) / count));
  const values = Array.from({ length: count + 1 }, (_, k) => f(place(k)));
  let best = 1;
  for (let k = 1; k < count; k++) if (Math.abs(values[k]!) > Math.abs(values[best]!)) best = k;
  const [before, here, after] = [values[best - 1]!, values[best]!, values[best + 1]!];
  const bend = before - 2 * here + after;
  return bend === 0 ? here : here - (after - before) ** 2 / (8 * bend);
}
