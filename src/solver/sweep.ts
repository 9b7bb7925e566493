/**
 * Any numbers of the document varied over ranges: one solve a case, the last variation running fastest.
 * Every case passes the document reader, so a case outside the allowed ranges is refused by name.
 */
import type { Design } from './design/document.ts';
import { readDesignValue } from './design/read.ts';
import type { ConditionOptions, Report } from './report.ts';
import { solve } from './solve.ts';

export interface Variation {
  path: string; // dotted key path in the document
  from: number;
  to: number;
  count: number; // 1 or more; 1 takes `from`
}

export interface SweepTable {
  columns: string[]; // varied paths, then the report's scalar figures by dotted name
  rows: Array<Array<number | null>>;
}

/** Throws an Error with one sentence naming the case when a path leads nowhere or a case is refused. */
export function sweep(
  design: Design,
  variations: readonly Variation[],
  options: ConditionOptions = {},
): SweepTable {
  const paths = variations.map(({ path }) => path);
  const columns = [...paths];
  const rows: SweepTable['rows'] = [];
  for (const values of grid(variations)) {
    const figures = scalars(solveCase(design, paths, values, options));
    if (rows.length === 0) columns.push(...figures.keys());
    rows.push([...values, ...columns.slice(paths.length).map((name) => figures.get(name) ?? null)]);
  }
  return { columns, rows };
}

function* grid(variations: readonly Variation[]): Generator<number[]> {
  const [first, ...rest] = variations;
  if (!first) {
    yield [];
    return;
  }
  for (let k = 0; k < first.count; k++) {
    const value =
      first.count === 1 ? first.from : first.from + ((first.to - first.from) * k) / (first.count - 1);
    for (const others of grid(rest)) yield [value, ...others];
  }
}

function solveCase(design: Design, paths: string[], values: number[], options: ConditionOptions): Report {
  const name = paths.map((path, k) => `${path}=${values[k]}`).join(' ');
  const varied = paths.reduce((so, path, k) => withNumber(so, path, values[k]!), design);
  const read = readDesignValue(varied);
  if (!read.ok) throw new Error(`${name}: ${read.message}`);
  try {
    return solve(read.design, options);
  } catch (error) {
    throw new Error(`${name}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The document with another number at a path. Throws when the path does not lead to one. */
function withNumber(design: Design, path: string, value: number): Design {
  const replace = (holder: unknown, [key, ...rest]: string[]): unknown => {
    const inner = key === undefined ? holder : own(holder, key);
    if (key === undefined || (rest.length === 0 && typeof inner !== 'number'))
      throw new Error(`${path}: found no number there in this document, allowed the dotted path of one`);
    const changed = rest.length === 0 ? value : replace(inner, rest);
    return Array.isArray(holder)
      ? holder.map((each, k) => (String(k) === key ? changed : each))
      : { ...(holder as object), [key]: changed };
  };
  return replace(design, path.split('.')) as Design;
}

function own(holder: unknown, key: string): unknown {
  if (typeof holder !== 'object' || holder === null || !Object.hasOwn(holder, key)) return undefined;
  return (holder as Record<string, unknown>)[key];
}

/** The report's scalar figures by dotted name, in its own order; strips left out. */
function scalars(report: Report): Map<string, number | null> {
  const figures = new Map<string, number | null>();
  const collect = (value: unknown, name: string) => {
    if (typeof value === 'number' || value === null) figures.set(name, value);
    else if (typeof value === 'object' && value && !Array.isArray(value))
      for (const [key, inner] of Object.entries(value)) collect(inner, name ? `${name}.${key}` : key);
  };
  const { strips: _strips, ...rest } = report;
  collect(rest, '');
  if (report.geometry.stabilizer === null) figures.delete('geometry.stabilizer');
  return figures;
}
