/**
 * Linear least squares with what is known of the answer: sizes of some columns that add up to a target best, 95 %
 * intervals by Student's t, and which columns cannot be told apart. All rows count alike: scale them by their errors
 * first, so that a scatter of one is what was expected.
 */
import { factor, solveFactored } from './dense.ts';

export interface LeastSquares {
  sizes: Float64Array; // by column
  reaches: Float64Array; // half of the 95 % interval
  scatter: number; // root mean square of what is left over, per degree of freedom; 1 where there is none
}

/** Columns of one length as the target. Throws when two columns are the same but for size. */
export function leastSquares(columns: readonly Float64Array[], target: Float64Array): LeastSquares {
  const n = columns.length;
  const normal = new Float64Array(n * n);
  const sizes = new Float64Array(n);
  columns.forEach((column, i) => {
    sizes[i] = inner(column, target);
    columns.forEach((other, j) => {
      normal[i * n + j] = inner(column, other);
    });
  });
  const reaches = new Float64Array(n);
  if (n > 0) {
    const pivots = new Int32Array(n);
    factor(normal, n, pivots);
    solveFactored(normal, n, pivots, sizes);
    for (let i = 0; i < n; i++) {
      const unit = new Float64Array(n);
      unit[i] = 1;
      solveFactored(normal, n, pivots, unit);
      reaches[i] = Math.sqrt(Math.max(0, unit[i]!));
    }
  }
  const freedom = target.length - n;
  const left = target.map((value, r) =>
    columns.reduce((sum, column, i) => sum - sizes[i]! * column[r]!, value),
  );
  const scatter = freedom > 0 ? Math.sqrt(inner(left, left) / freedom) : 1;
  const wide = freedom > 0 ? studentT(freedom) * scatter : NORMAL;
  return { sizes, reaches: reaches.map((value) => value * wide), scatter };
}

const NORMAL = 1.959964; // 97.5 % point of the normal distribution

/** 97.5 % point of Student's t: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.7.5, table 26.10. */
export function studentT(freedom: number): number {
  const few = [12.706, 4.303, 3.182, 2.776];
  if (freedom <= few.length) return few[freedom - 1]!;
  const z = NORMAL;
  const first = (z ** 3 + z) / 4;
  const second = (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96;
  const third = (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384;
  const fourth = (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160;
  return z + first / freedom + second / freedom ** 2 + third / freedom ** 3 + fourth / freedom ** 4;
}

/**
 * The first column that those before it can make, as [the columns it is made of ..., itself]; null when all are
 * independent. `share`: what must be left of a column to count as its own.
 */
export function dependentColumns(columns: readonly Float64Array[], share = 3e-4): number[] | null {
  const before: Array<{ index: number; unit: Float64Array }> = [];
  for (const [index, column] of columns.entries()) {
    const size = Math.sqrt(inner(column, column));
    const rest = column.map((value) => value / size);
    const made = before.filter(({ unit }) => {
      const part = inner(rest, unit);
      unit.forEach((value, r) => {
        rest[r]! -= part * value;
      });
      return Math.abs(part) > 0.05;
    });
    const left = Math.sqrt(inner(rest, rest));
    if (!(left > share)) return [...made.map((entry) => entry.index), index];
    before.push({ index, unit: rest.map((value) => value / left) });
  }
  return null;
}

function inner(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
