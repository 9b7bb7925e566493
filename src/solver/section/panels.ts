/**
 * Panels on a section: nodes from the trailing edge over the upper side to the nose and back below, close together
 * where pressure changes fast. Lengths are shares of the chord.
 *
 * Spacing along either side follows the two-ended stretching of M. Vinokur, J. Comput. Phys. 50 (1983) 215: a spacing
 * asked for at the nose, one at the trailing edge, and smooth growth between them.
 */
import type { OutlinePoints } from '../geometry/outline.ts';
import { smoothCubic } from '../numeric/smooth.ts';

export interface Panels {
  count: number; // panels; there are count + 1 nodes
  x: Float64Array;
  y: Float64Array;
  arc: Float64Array; // along the surface from the first node
  length: Float64Array; // of each panel
  gap: number; // width of the trailing edge; 0 where it counts as sharp
}

/** A trailing edge thinner than this counts as sharp: below it the two end nodes say the same thing twice. */
const SHARP = 1e-4;
const NOSE_SPACING = 0.12; // of the nose radius: the turn round the nose takes some 25 panels
const TAIL_SPACING = 0.004;

/** Places `count` panels (even) on an outline given by many points in the order of `outlinePoints`. */
export function placePanels(outline: OutlinePoints, count: number): Panels {
  const along = arcLength(outline);
  const xAt = smoothCubic(along, outline.x);
  const yAt = smoothCubic(along, outline.y);
  const end = along[along.length - 1]!;
  const nose = along[noseIndex(outline)]!;
  const half = count / 2;
  const noseSpacing = NOSE_SPACING * noseRadius(outline);
  const upper = stretch(half, TAIL_SPACING / nose, noseSpacing / nose);
  const lower = stretch(half, TAIL_SPACING / (end - nose), noseSpacing / (end - nose));
  const x = new Float64Array(count + 1);
  const y = new Float64Array(count + 1);
  for (let k = 0; k <= count; k++) {
    const s = k <= half ? nose * upper[k]! : end - (end - nose) * lower[count - k]!;
    x[k] = xAt(s);
    y[k] = yAt(s);
  }
  const arc = arcLength({ x, y });
  const length = new Float64Array(count);
  for (let k = 0; k < count; k++) length[k] = arc[k + 1]! - arc[k]!;
  const gap = Math.hypot(x[0]! - x[count]!, y[0]! - y[count]!);
  return { count, x, y, arc, length, gap: gap > SHARP ? gap : 0 };
}

/** Shares 0 to 1 along a side, `first` and `last` being the spacings wanted at its ends. Vinokur (1983), eqs. 45-53. */
function stretch(count: number, first: number, last: number): Float64Array {
  const lean = Math.sqrt(last / first);
  const delta = inverseSinhc(1 / (count * Math.sqrt(first * last)));
  return Float64Array.from({ length: count + 1 }, (_, k) => {
    const u = 0.5 * (1 + Math.tanh(delta * (k / count - 0.5)) / Math.tanh(0.5 * delta));
    return u / (lean + (1 - lean) * u);
  });
}

/** Solves sinh(d)/d = value, value above 1, by Newton's method from a start that lies above the root. */
function inverseSinhc(value: number): number {
  const wanted = Math.max(value, 1.01);
  let d = Math.log(2 * wanted * (1 + Math.log(2 * wanted))) + 1;
  for (let k = 0; k < 50; k++) {
    const step = (Math.sinh(d) - wanted * d) / (Math.cosh(d) - wanted);
    d -= step;
    if (Math.abs(step) < 1e-12 * d) break;
  }
  return d;
}

function arcLength({ x, y }: OutlinePoints): Float64Array {
  const arc = new Float64Array(x.length);
  for (let k = 1; k < x.length; k++) arc[k] = arc[k - 1]! + Math.hypot(x[k]! - x[k - 1]!, y[k]! - y[k - 1]!);
  return arc;
}

/** The point furthest from the middle of the trailing edge. */
function noseIndex({ x, y }: OutlinePoints): number {
  const last = x.length - 1;
  const tailX = 0.5 * (x[0]! + x[last]!);
  const tailY = 0.5 * (y[0]! + y[last]!);
  let best = 0;
  let furthest = 0;
  for (let k = 1; k < last; k++) {
    const distance = Math.hypot(x[k]! - tailX, y[k]! - tailY);
    if (distance > furthest) [best, furthest] = [k, distance];
  }
  return best;
}

/** Radius of the parabola y^2 = 2 r x through the half thickness at 0.5 % of the chord; kept between 0.02 and 5 %. */
function noseRadius(outline: OutlinePoints): number {
  const { x, y } = outline;
  const nose = noseIndex(outline);
  const at = x[nose]! + 0.005;
  const height = (from: number, step: number): number => {
    let k = from;
    while (x[k]! < at && k + step >= 0 && k + step < x.length) k += step;
    const share = (at - x[k - step]!) / (x[k]! - x[k - step]!);
    return y[k - step]! + share * (y[k]! - y[k - step]!);
  };
  const half = 0.5 * (height(nose - 1, -1) - height(nose + 1, 1));
  return Math.min(0.05, Math.max(0.0002, half ** 2 / 0.01));
}
