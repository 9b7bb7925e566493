/**
 * Bench test: weights hung on the foil, deflections read, and the springs and moduli that explain them best.
 *
 * A reading is a sum over the links of the foil, each in proportion to the give of that link (bench.ts): linear least
 * squares in the gives, in units of their present values, weighed by what a reading is good for. Links that the readings
 * cannot tell apart are held at their present values, and so are links they do not determine.
 */
import type { BenchReading, Design } from '../design/document.ts';
import { isWithin, rangeOf } from '../design/ranges.ts';
import { dependentColumns, type LeastSquares, leastSquares } from '../numeric/least-squares.ts';
import { Bench, type Link, RADIANS, type Row } from './bench.ts';

export interface FittedLink extends Link {
  value: number;
  low: number; // 95 % interval
  high: number | null; // null: the readings allow it to be rigid
}

export interface HeldLink extends Link {
  why: string;
}

export interface FittedReading {
  index: number; // in the document's list
  measured: number; // m or degrees
  before: number; // by the present values
  fitted: number;
  isOdd: boolean; // far from what all the others say
}

export interface BenchFit {
  fitted: FittedLink[];
  held: HeldLink[];
  readings: FittedReading[];
  scatter: number | null; // times the reading error; null where nothing is left over to tell
  hysteresis: number | null; // mean share by which unloading differs from loading
  problems: Array<{ index: number; message: string }>;
  advice: string | null;
  changes: Array<{ path: string; value: number }>; // that put the fit into the document
}

/** Fits what the document's readings say. Never throws on odd readings: they come back as problems. */
export function benchFit(design: Design): BenchFit {
  const list = design.joints?.bench ?? [];
  const empty: BenchFit = {
    fitted: [],
    held: [],
    readings: [],
    scatter: null,
    hysteresis: null,
    problems: [],
    advice: null,
    changes: [],
  };
  if (list.length === 0) return empty;
  if (!design.strut)
    return { ...empty, advice: 'The design has no strut: there is nothing to hang a weight on.' };
  const bench = new Bench(design);
  const problems: BenchFit['problems'] = [];
  const rows: Row[] = [];
  list.forEach((reading, index) => {
    const row = bench.row(reading, index);
    if (typeof row === 'string') problems.push({ index, message: row });
    else rows.push(row);
  });
  if (rows.length === 0) return { ...empty, problems, advice: 'No reading can be used yet.' };
  const result = fitRows(rows, bench.links);
  return { ...empty, ...result, problems, hysteresis: hysteresisOf(list), ...adviceOn(result, rows) };
}

type Fit = Pick<BenchFit, 'fitted' | 'held' | 'readings' | 'scatter'>;

function fitRows(rows: readonly Row[], links: readonly Link[]): Fit {
  const held: HeldLink[] = [];
  // A link that the readings hardly feel takes no part, and is not worth a word.
  let open = links
    .map((_, k) => k)
    .filter((k) =>
      rows.some(({ parts, rest }) => Math.abs(parts[k]!) > 0.005 * Math.abs(sumOf(parts) + rest)),
    );
  for (;;) {
    const twins = dependentColumns(open.map((k) => columnOf(rows, k)))?.map((i) => open[i]!);
    const [out, because] = twins
      ? [
          twins.at(-1)!,
          `cannot be told from ${listOf(twins.slice(0, -1).map((k) => links[k]!.label))} by these readings`,
        ]
      : undetermined(rows, open);
    if (out === null) break;
    held.push({ ...links[out]!, why: because });
    open = open.filter((k) => k !== out);
  }
  const solution = solveOpen(rows, open);
  const fitted = open.map((k, i): FittedLink => {
    const link = links[k]!;
    const [gives, reach] = [solution.sizes[i]!, solution.reaches[i]!];
    return {
      ...link,
      value: link.present / gives,
      low: link.present / (gives + reach),
      high: gives > reach ? link.present / (gives - reach) : null,
    };
  });
  const readings = rows.map((row): FittedReading => {
    const shown = (value: number) => (row.isTurn ? value / RADIANS : value);
    const before = sumOf(row.parts) + row.rest;
    const value = predicted(row, open, solution.sizes);
    const off = Math.abs(row.measured - value) / row.error;
    return {
      index: row.index,
      measured: shown(row.measured),
      before: shown(before),
      fitted: shown(value),
      isOdd: rows.length > open.length + 1 && off > 3 && off > 2.5 * solution.scatter,
    };
  });
  return { fitted, held, readings, scatter: rows.length > open.length ? solution.scatter : null };
}

const sumOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

function predicted({ parts, rest }: Row, open: readonly number[], sizes: Float64Array): number {
  return parts.reduce((sum, value, k) => {
    const i = open.indexOf(k);
    return sum + value * (i >= 0 ? sizes[i]! : 1);
  }, rest);
}

/** Least squares of the open links' gives, the others at their present values; in reading errors. */
function solveOpen(rows: readonly Row[], open: readonly number[]): LeastSquares {
  const none = new Float64Array(open.length);
  return leastSquares(
    open.map((k) => columnOf(rows, k)),
    Float64Array.from(rows, (row) => (row.measured - predicted(row, open, none)) / row.error),
  );
}

function columnOf(rows: readonly Row[], k: number): Float64Array {
  return Float64Array.from(rows, ({ parts, error }) => parts[k]! / error);
}

/** The worst link whose interval reaches nothing or beyond twice itself, with the reason; none when all are determined. */
function undetermined(rows: readonly Row[], open: readonly number[]): [number, string] | [null, ''] {
  if (open.length === 0) return [null, ''];
  const { sizes, reaches } = solveOpen(rows, open);
  let worst = -1;
  let most = 1;
  open.forEach((_, i) => {
    const looseness = sizes[i]! > 0 ? reaches[i]! / sizes[i]! : Number.POSITIVE_INFINITY;
    if (looseness > most || (looseness === most && looseness > 1)) [worst, most] = [i, looseness];
  });
  if (worst < 0) return [null, ''];
  return sizes[worst]! > 0
    ? [open[worst]!, 'not determined by these readings: their scatter is larger than what it gives']
    : [
        open[worst]!,
        'the readings ask for a give below nothing here: they contradict one another or the section',
      ];
}

function listOf(names: readonly string[]): string {
  return names.length < 2
    ? (names[0] ?? 'the others')
    : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** Same weight, same places, loading against unloading: mean difference over mean reading. */
function hysteresisOf(list: readonly BenchReading[]): number | null {
  const key = ({ pull, mass, on, at, arm, readOn, station }: BenchReading) =>
    [pull, mass, on, at, arm, readOn, station].join(' ');
  const value = ({ deflection, turn, pull }: BenchReading) => (pull === 'twist' ? turn : deflection);
  const shares: number[] = [];
  for (const up of list.filter(({ order }) => order !== 'unloading')) {
    const down = list.find((reading) => reading.order === 'unloading' && key(reading) === key(up));
    const [a, b] = [value(up), down && value(down)];
    if (a !== undefined && b !== undefined && a + b !== 0)
      shares.push(Math.abs(b - a) / Math.abs((a + b) / 2));
  }
  return shares.length > 0 ? shares.reduce((sum, share) => sum + share, 0) / shares.length : null;
}

function adviceOn(
  { fitted, held, scatter }: Fit,
  rows: readonly Row[],
): Pick<BenchFit, 'advice' | 'changes'> {
  const changes = fitted
    .map(({ path, value }) => ({ path, value: Number(value.toPrecision(4)) }))
    .filter(({ path, value }) => isWithin(rangeOf(path)!, value));
  if (fitted.length === 0)
    return {
      changes,
      advice: 'These readings fit no foil of this shape: look for a slip in a sign, a place or a unit.',
    };
  const stations = new Set(rows.map(({ parts }) => (parts[0]! / (sumOf(parts) || 1)).toFixed(3)));
  const isApart = held.some(({ why }) => why.startsWith('cannot be told'));
  if (isApart && stations.size < 2)
    return {
      changes,
      advice:
        'With one station, box and strut cannot be told apart: the box is kept as it is and all else is put on the strut. Read a second station, half way up.',
    };
  if (isApart)
    return { changes, advice: 'More stations, or weights at other places, would tell more links apart.' };
  if (scatter !== null && scatter > 4)
    return {
      changes,
      advice:
        'The readings scatter more than a rule does: look for play in the joints, or a slip in a reading.',
    };
  return { changes, advice: null };
}
