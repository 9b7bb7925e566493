import { describe, expect, it } from 'vitest';
import { fitPolynomial } from '../../../src/solver/numeric/fit.ts';
import { randomFrom } from '../../../src/solver/numeric/random.ts';
import { rankCorrelation } from '../../../src/solver/numeric/rank.ts';

const stations = (count: number, end: number) =>
  Float64Array.from({ length: count }, (_, k) => (end * k) / (count - 1));

describe('polynomial by least squares', () => {
  it('meets a polynomial of its degree and its slope to rounding, off the points too', () => {
    const f = (x: number) => 3 - 2 * x + 0.5 * x ** 2 - 0.01 * x ** 5;
    const slope = (x: number) => -2 + x - 0.05 * x ** 4;
    const x = stations(41, 9);
    const fit = fitPolynomial(x, x.map(f), 5);
    for (const at of [0, 0.37, 4.5, 8.99, 9]) {
      expect(Math.abs(fit.at(at) - f(at))).toBeLessThan(1e-9);
      expect(Math.abs(fit.slope(at) - slope(at))).toBeLessThan(1e-9);
    }
    expect(fit.scatter).toBeLessThan(1e-9);
  });

  it('gives a slope through scatter where differences of neighbours show only scatter', () => {
    const random = randomFrom(5);
    const x = stations(41, 45);
    const noise = 0.005;
    const y = x.map((at) => 60 + 5e-4 * at * at + noise * (2 * random() - 1));
    const fit = fitPolynomial(x, y, 4);
    let worstDifference = 0;
    for (let k = 5; k < 36; k++) {
      const wanted = 1e-3 * x[k]!;
      expect(Math.abs(fit.slope(x[k]!) - wanted)).toBeLessThan(1e-3);
      worstDifference = Math.max(worstDifference, Math.abs((y[k + 1]! - y[k]!) / (x[1]! - x[0]!) - wanted));
    }
    expect(worstDifference).toBeGreaterThan(3e-3);
    expect(fit.scatter).toBeGreaterThan(0.3 * noise);
  });

  it('lowers its degree to the points there are, and refuses a single one', () => {
    const fit = fitPolynomial([1, 3], [2, 8], 7);
    expect(fit.at(2)).toBeCloseTo(5, 12);
    expect(fit.slope(2)).toBeCloseTo(3, 12);
    expect(() => fitPolynomial([1], [2], 3)).toThrow(/two points/);
  });
});

describe('rank correlation', () => {
  it('is 1 for what rises together however crookedly, -1 for what falls', () => {
    const x = [1, 2, 3, 5, 8];
    expect(
      rankCorrelation(
        x,
        x.map((value) => value ** 3),
      ),
    ).toBeCloseTo(1, 12);
    expect(
      rankCorrelation(
        x,
        x.map((value) => -Math.exp(value)),
      ),
    ).toBeCloseTo(-1, 12);
  });

  it('of ten paired marks is 1 - 6 sum d^2/(n (n^2 - 1)), and ties share their mean rank', () => {
    // the closed form for lists without ties, worked from the ranks
    const one = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    const other = [20, 10, 40, 30, 61, 52, 70, 80, 100, 90];
    const ranks = [2, 1, 4, 3, 6, 5, 7, 8, 10, 9];
    const squares = ranks.reduce((sum, rank, k) => sum + (rank - one[k]!) ** 2, 0);
    expect(rankCorrelation(one, other)).toBeCloseTo(1 - (6 * squares) / (10 * 99), 12);
    // ties: x ranks 1.5 1.5 3, y ranks 1 2 3: covariance 1.5, squares 1.5 and 2
    expect(rankCorrelation([4, 4, 9], [1, 2, 3])).toBeCloseTo(1.5 / Math.sqrt(1.5 * 2), 12);
  });
});
