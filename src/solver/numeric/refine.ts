/** Curves as polylines: parameter values put closer where the curve bends. */

/**
 * Sorted parameter values: `edges` with every interval halved while `isCoarse` says so, down to `least` wide.
 * `isCoarse(a, b)` judges one interval, by any number of curves.
 */
export function refine(
  edges: readonly number[],
  isCoarse: (from: number, to: number) => boolean,
  least: number,
): number[] {
  const values = [edges[0]!];
  const split = (from: number, to: number): void => {
    if (to - from > least && isCoarse(from, to)) {
      const middle = 0.5 * (from + to);
      split(from, middle);
      split(middle, to);
    } else values.push(to);
  };
  for (let k = 1; k < edges.length; k++) split(edges[k - 1]!, edges[k]!);
  return values;
}

/** `count` equal intervals over [from, to] as `count + 1` edges. */
export function evenly(from: number, to: number, count: number): number[] {
  return Array.from({ length: count + 1 }, (_, k) => (k === count ? to : from + ((to - from) * k) / count));
}

const INSIDE = [0.25, 0.5, 0.75];

/** Whether the curve between two parameters leaves its chord by more than the tolerance; points of any dimension. */
export function leavesChord(
  curve: (at: number) => readonly number[],
  from: number,
  to: number,
  tolerance: number,
): boolean {
  const a = curve(from);
  const b = curve(to);
  return INSIDE.some((share) => distance(curve(from + share * (to - from)), a, b) > tolerance);
}

/** Distance of a point from the line through a and b (from a where they coincide). */
function distance(p: readonly number[], a: readonly number[], b: readonly number[]): number {
  let along = 0;
  let length = 0;
  let square = 0;
  for (let k = 0; k < a.length; k++) {
    const chord = b[k]! - a[k]!;
    const offset = p[k]! - a[k]!;
    along += chord * offset;
    length += chord * chord;
    square += offset * offset;
  }
  return Math.sqrt(Math.max(0, square - (length > 0 ? (along * along) / length : 0)));
}

/** A polyline within the tolerance of a curve, its kinks and starting intervals given as `edges`. */
export function tracePolyline<P extends readonly number[]>(
  curve: (at: number) => P,
  edges: readonly number[],
  tolerance: number,
): P[] {
  const span = edges[edges.length - 1]! - edges[0]!;
  return refine(edges, (a, b) => leavesChord(curve, a, b, tolerance), span * 1e-5).map(curve);
}
