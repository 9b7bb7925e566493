/**
 * Section outlines on a unit chord: x from the leading edge aft, y upward, both as a share of the chord. The x axis of
 * an imported outline is its chord line; it is taken as it stands, neither turned nor moved (read-outline.ts does that once).
 */
import type { Outline, Pair, Strut } from '../design/document.ts';
import { FOUR_DIGIT_CODE } from '../design/ranges.ts';
import type { Curve } from '../numeric/spline.ts';
import { type Contour, contour } from './contour.ts';

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

/** The strut's section: a symmetric four-digit form of its thickness, as the document draws none. */
export function strutOutline({ chord, thickness }: Pick<Strut, 'chord' | 'thickness'>): Outline {
  return { kind: 'naca4', code: '0010', thicknessScale: thickness / chord / 0.1 };
}

/** Height of the mean line over the chord line, as a share of the chord, at x in [0, 1]. */
export function meanLine(outline: Outline): Curve {
  if (outline.kind === 'naca4') {
    const digits = fourDigitOf(outline);
    return (x) => fourDigitMeanLine(digits, x).y;
  }
  const { height } = heightsOf(outline);
  return (x) => 0.5 * (height(x, 1) + height(x, -1));
}

/** Largest thickness as a share of the chord. */
export function thicknessRatio(outline: Outline): number {
  if (outline.kind === 'naca4') return fourDigitOf(outline).thickness;
  const { height } = heightsOf(outline);
  return extreme((x) => height(x, 1) - height(x, -1));
}

/** Largest height of the mean line as a share of the chord; negative where it hangs below the chord line. */
export function camberRatio(outline: Outline): number {
  if (outline.kind === 'naca4') return fourDigitOf(outline).camber;
  return extreme(meanLine(outline));
}

/** The digits of a four-digit outline with its scaling worked in. */
export function fourDigitOf(outline: Extract<Outline, { kind: 'naca4' }>): FourDigit {
  const { code, thicknessScale = 1, camberScale = 1 } = outline;
  const digits = readFourDigit(code);
  if (!digits) throw new Error(`section code: found "${code}", allowed four digits such as 2412`);
  const { camber, position, thickness } = digits;
  return { camber: camber * camberScale, position, thickness: thickness * thicknessScale };
}

/** Heights of imported points with thickness and camber scaled apart, both measured square to the chord line. */
function heightsOf(outline: Extract<Outline, { kind: 'coordinates' }>): Contour {
  const drawn = contour(outline.points);
  const { thicknessScale = 1, camberScale = 1 } = outline;
  if (thicknessScale === 1 && camberScale === 1) return drawn;
  const height: Contour['height'] = (x, side) => {
    const [above, below] = [drawn.height(x, 1), drawn.height(x, -1)];
    return 0.5 * (camberScale * (above + below) + side * thicknessScale * (above - below));
  };
  return { start: drawn.start, height };
}

/** The surface point over a place on the chord, 0 foremost (side 1 upper, -1 lower); a four-digit thickness stands square to the mean line. */
export function surfacePoint(outline: Outline): (x: number, side: 1 | -1) => Pair {
  if (outline.kind === 'coordinates') {
    const { start, height } = heightsOf(outline);
    return (x, side) => {
      const place = start + x * (1 - start);
      return [place, height(place, side)];
    };
  }
  const digits = fourDigitOf(outline);
  return (x, side) => {
    const { y, slope } = fourDigitMeanLine(digits, x);
    const half = (side * fourDigitThickness(digits, x)) / Math.hypot(1, slope);
    return [x - half * slope, y + half];
  };
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
