/**
 * A field on a regular grid as shapes to draw: filled steps, lines, the places without a value. Fields are row after row
 * (value k of column i and row j is j * columns + i); shapes are SVG paths in grid steps, x along a row, y from row to
 * row. Contours are d3-contour's; it puts a value at the middle of a cell, half a step off ours.
 */
import { contours } from 'd3-contour';

export interface Field {
  columns: number;
  rows: number;
  values: ArrayLike<number>; // NaN where there is none
}

export interface ContourLine {
  level: number;
  path: string;
  label: { x: number; y: number } | null; // the middle of its longest run inside the grid
}

type Ring = ReadonlyArray<readonly number[]>;

/** Levels at round steps (1, 2 or 5 of a decade) strictly inside a range, at most `most` of them. */
export function roundLevels(low: number, high: number, most: number): number[] {
  if (!(high > low)) return [];
  const raw = (high - low) / most;
  const decade = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((each) => each * decade).find((each) => each >= raw * (1 - 1e-9))!;
  const first = Math.floor(low / step) + 1;
  const count = Math.ceil(high / step) - first;
  return Array.from({ length: Math.max(0, count) }, (_, k) => Number(((first + k) * step).toPrecision(12)));
}

export function rangeOf({ values }: Field): { low: number; high: number } | null {
  const known = Array.from(values).filter(Number.isFinite);
  return known.length === 0 ? null : { low: Math.min(...known), high: Math.max(...known) };
}

/** Where the field is at or above a level. */
export function areaAbove(field: Field, level: number): string {
  return ringsOf(field, level).map(closed).join('');
}

/** Where the field has no value. */
export function areaWithout(field: Field): string {
  const missing = Array.from(field.values, (value) => (Number.isFinite(value) ? 0 : 1));
  return missing.includes(1) ? areaAbove({ ...field, values: missing }, 0.5) : '';
}

/** The line of a level, without the rim of the grid. */
export function contourLine(field: Field, level: number): ContourLine {
  const runs = ringsOf(field, level).flatMap((ring) => runsInside(ring, field));
  const longest = runs.reduce<Ring | null>(
    (best, run) => (best && length(best) >= length(run) ? best : run),
    null,
  );
  return { level, path: runs.map(open).join(''), label: longest && middle(longest) };
}

function ringsOf({ columns, rows, values }: Field, level: number): Ring[] {
  const { coordinates } = contours().size([columns, rows]).contour(Array.from(values), level);
  return coordinates.flat().map((ring) => ring.map(([x = 0, y = 0]) => [x - 0.5, y - 0.5]));
}

/** The parts of a ring that do not run along the rim, where d3-contour closes it half a step outside. */
function runsInside(ring: Ring, { columns, rows }: Field): Ring[] {
  const isInside = ([x = 0, y = 0]: readonly number[]) =>
    x >= 0 && y >= 0 && x <= columns - 1 && y <= rows - 1;
  const start = ring.findIndex((point) => !isInside(point));
  if (start < 0) return [ring];
  const points = [...ring.slice(start, -1), ...ring.slice(0, start + 1)];
  const runs: Ring[] = [];
  let run: Array<readonly number[]> = [];
  for (const point of points) {
    if (isInside(point)) run.push(point);
    else if (run.length > 0) {
      if (run.length > 1) runs.push(run);
      run = [];
    }
  }
  if (run.length > 1) runs.push(run);
  return runs;
}

const at = ([x = 0, y = 0]: readonly number[]) => `${Number(x.toFixed(3))} ${Number(y.toFixed(3))}`;
const open = (run: Ring) => `M${run.map(at).join('L')}`;
const closed = (ring: Ring) => `${open(ring)}Z`;

function length(run: Ring): number {
  let sum = 0;
  for (let k = 1; k < run.length; k++)
    sum += Math.hypot(run[k]![0]! - run[k - 1]![0]!, run[k]![1]! - run[k - 1]![1]!);
  return sum;
}

function middle(run: Ring): { x: number; y: number } {
  const [x = 0, y = 0] = run[run.length >> 1]!;
  return { x, y };
}
