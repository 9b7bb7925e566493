/** LU factors by their defining equation, A x = b, and the property that one factorisation serves a leading block too. */
import { describe, expect, it } from 'vitest';
import { factor, solveFactored } from '../../../src/solver/numeric/dense.ts';
import { expectClose } from '../../support/close.ts';

/** Numbers in (-1, 1) that are the same at every run: a linear congruential generator (Numerical Recipes, ch. 7). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (1664525 * state + 1013904223) % 4294967296;
    return state / 2147483648 - 1;
  };
}

function solveCopy(a: Float64Array, n: number, b: Float64Array, lead?: number, size?: number): Float64Array {
  const factors = a.slice();
  const pivots = new Int32Array(n);
  factor(factors, n, pivots, lead);
  const x = b.slice();
  solveFactored(factors, n, pivots, x, size);
  return x;
}

/** Largest |A x - b| of a row over |A||x| + |b| of that row: a few rounding errors when the solution is backward stable. */
function backwardError(
  a: Float64Array,
  stride: number,
  size: number,
  x: Float64Array,
  b: Float64Array,
): number {
  let worst = 0;
  for (let i = 0; i < size; i++) {
    let sum = -b[i]!;
    let scale = Math.abs(b[i]!);
    for (let j = 0; j < size; j++) {
      sum += a[i * stride + j]! * x[j]!;
      scale += Math.abs(a[i * stride + j]! * x[j]!);
    }
    worst = Math.max(worst, Math.abs(sum) / scale);
  }
  return worst;
}

describe('factor and solveFactored', () => {
  it('solve a case by hand: x + 2y + z = 8, 2x + y - z = 1, 3x - y + 2z = 7 at (1, 2, 3)', () => {
    const a = Float64Array.of(1, 2, 1, 2, 1, -1, 3, -1, 2);
    const x = solveCopy(a, 3, Float64Array.of(8, 1, 7));
    [1, 2, 3].forEach((value, k) => {
      expectClose(`x${k}`, x[k]!, value, { within: 1e-14 });
    });
  });

  it('are exact in one step for a triangle and an identity', () => {
    expect([...solveCopy(Float64Array.of(1, 0, 0, 1), 2, Float64Array.of(4, -7))]).toEqual([4, -7]);
    expect([...solveCopy(Float64Array.of(2, 4, 0, 8), 2, Float64Array.of(10, 16))]).toEqual([1, 2]);
  });

  it('hold a small residual whatever is asked, with rows that must be swapped', () => {
    const n = 80;
    const next = numbers(7);
    const a = Float64Array.from({ length: n * n }, next);
    for (let i = 0; i < n; i++) a[i * n + i] = 0; // no pivot where it would be taken without swapping
    for (let k = 0; k < 5; k++) {
      const b = Float64Array.from({ length: n }, next);
      expect(backwardError(a, n, n, solveCopy(a, n, b), b)).toBeLessThan(1e-13);
    }
  });

  it('swap rows for the sake of accuracy, not only for zeros', () => {
    // without a swap 1e-20 swallows the rest: x would come out (0, 1)
    const x = solveCopy(Float64Array.of(1e-20, 1, 1, 1), 2, Float64Array.of(1, 2));
    expectClose('x', x[0]!, 1, { within: 1e-12 });
    expectClose('y', x[1]!, 1, { within: 1e-12 });
  });

  it('keep the residual of every row small when rows and columns differ by sixteen powers of ten', () => {
    const n = 40;
    const next = numbers(11);
    const a = Float64Array.from({ length: n * n }, next);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) a[i * n + j]! *= 10 ** (8 * Math.cos(3 * i) + 8 * Math.sin(5 * j));
    const b = Float64Array.from({ length: n }, (_, i) => next() * 10 ** (8 * Math.cos(3 * i)));
    const x = solveCopy(a, n, b);
    expect(x.every(Number.isFinite)).toBe(true);
    // row pivoting is stable against the largest entry of the matrix, which is what it can promise
    const largest = a.reduce((most, value, k) => Math.max(most, Math.abs(value * x[k % n]!)), 0);
    for (let i = 0; i < n; i++) {
      let sum = -b[i]!;
      for (let j = 0; j < n; j++) sum += a[i * n + j]! * x[j]!;
      expect(Math.abs(sum)).toBeLessThan(1e-12 * largest);
    }
  });

  it('say where a matrix is singular', () => {
    const twins = Float64Array.of(1, 2, 3, 2, 4, 6, 1, 1, 1);
    expect(() => solveCopy(twins, 3, new Float64Array(3))).toThrow(
      'singular matrix: no pivot in column 3 of 3',
    );
    const empty = Float64Array.of(1, 0, 0, 1, 0, 0, 1, 0, 1);
    expect(() => solveCopy(empty, 3, new Float64Array(3))).toThrow(
      'singular matrix: no pivot in column 2 of 3',
    );
    const broken = Float64Array.of(Number.NaN, 1, 1, 1);
    expect(() => solveCopy(broken, 2, new Float64Array(2))).toThrow(
      'singular matrix: no pivot in column 1 of 2',
    );
  });
});

describe('a leading block inside one factorisation', () => {
  const n = 30;
  const lead = 18;
  const next = numbers(23);
  const a = Float64Array.from({ length: n * n }, next);
  for (let i = lead; i < n; i++) for (let j = 0; j < lead; j++) a[i * n + j]! *= 50; // larger pivots below tempt
  const b = Float64Array.from({ length: n }, next);

  it('is solved alone from the factors of the whole', () => {
    const alone = new Float64Array(lead * lead);
    for (let i = 0; i < lead; i++) for (let j = 0; j < lead; j++) alone[i * lead + j] = a[i * n + j]!;
    const expected = solveCopy(alone, lead, b.slice(0, lead));
    const found = solveCopy(a, n, b, lead, lead);
    for (let k = 0; k < lead; k++) expectClose(`x${k}`, found[k]!, expected[k]!, { share: 1e-9 });
    expect([...found.subarray(lead)]).toEqual([...b.subarray(lead)]); // the rest of b is not touched
  });

  it('leaves the whole solved as well', () => {
    expect(backwardError(a, n, n, solveCopy(a, n, b, lead), b)).toBeLessThan(1e-11);
  });

  it('cannot be had without keeping the rows apart', () => {
    const mixed = solveCopy(a, n, b, n, lead);
    expect(backwardError(a, n, lead, mixed, b)).toBeGreaterThan(1e-3);
  });
});
