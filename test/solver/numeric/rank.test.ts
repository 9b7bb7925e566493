import { describe, expect, it } from 'vitest';
import { rankCorrelation, rankProbability, ranks } from '../../../src/solver/numeric/rank.ts';

/** Hollander and Wolfe, Nonparametric Statistical Methods, 1973, p. 187: Hunter L values and panel scores of nine tins of tuna. */
const HUNTER = [44.4, 45.9, 41.9, 53.3, 44.7, 44.1, 50.7, 45.2, 60.1];
const PANEL = [2.6, 3.1, 2.5, 5.0, 3.6, 4.0, 5.2, 2.8, 3.8];

/** S. Siegel, Nonparametric Statistics for the Behavioral Sciences, 1956, table 9.4: yielding scores (tied) and status ranks. */
const YIELDING = [0, 0, 1, 1, 3, 4, 5, 6, 7, 8, 8, 12];
const STATUS = [3, 4, 2, 1, 8, 11, 10, 6, 7, 12, 5, 9];

describe('rank correlation', () => {
  it('shares the mean rank among equal values', () => {
    expect([...ranks(YIELDING)]).toEqual([1.5, 1.5, 3.5, 3.5, 5, 6, 7, 8, 9, 10.5, 10.5, 12]);
  });

  it('agrees with the worked example with ties of Siegel 1956 (0.616 as printed, from memory)', () => {
    // Printed steps: sum of d^2 109.5, sums of squares 143 and 141.5.
    const printed = (143 + 141.5 - 109.5) / (2 * Math.sqrt(143 * 141.5));
    expect(rankCorrelation(YIELDING, STATUS)).toBeCloseTo(printed, 12);
    expect(Math.abs(rankCorrelation(YIELDING, STATUS) - 0.616)).toBeLessThan(0.0015);
  });

  it('agrees with the example with a tie in the SciPy reference, scipy.stats.spearmanr', () => {
    expect(rankCorrelation([1, 2, 3, 4, 5], [5, 6, 7, 8, 7])).toBeCloseTo(0.8207826816681233, 14);
  });

  it('agrees with the tuna of Hollander and Wolfe 1973: rho 0.6', () => {
    expect(rankCorrelation(HUNTER, PANEL)).toBeCloseTo(0.6, 12);
  });

  it('is none where a list does not vary', () => {
    expect(rankCorrelation([3, 3, 3], [1, 2, 3])).toBeNaN();
    expect(rankProbability([3, 3, 3], [1, 2, 3]).probability).toBeNaN();
  });
});

describe('probability of a rank correlation', () => {
  it('is that of Hollander and Wolfe’s tuna: 0.0968, two-sided (from memory)', () => {
    const { probability, isExact } = rankProbability(HUNTER, PANEL);
    expect(isExact).toBe(true);
    expect(probability).toBeCloseTo(0.0968, 4);
  });

  it('counts the 24 orders of four as M. G. Kendall’s table does (Rank Correlation Methods; from memory)', () => {
    // Orders by sum of d^2 = 0, 2, ... 20, with rho = 1 - d^2/10.
    const orders = [1, 3, 1, 4, 2, 2, 2, 4, 1, 3, 1];
    const asFar = (sum: number) =>
      orders.reduce((count, many, k) => count + (Math.abs(10 - 2 * k) >= Math.abs(10 - sum) ? many : 0), 0) /
      24;
    expect(rankProbability([1, 2, 3, 4], [1, 2, 3, 4]).probability).toBeCloseTo(asFar(0), 12);
    expect(rankProbability([1, 2, 3, 4], [2, 1, 3, 4]).probability).toBeCloseTo(asFar(2), 12);
    expect(rankProbability([1, 2, 3, 4], [1, 4, 2, 3]).probability).toBeCloseTo(asFar(6), 12);
  });

  it('counts orders alike where values are tied', () => {
    // Of 1, 1, 2 there are three orders; two of them are as far from zero as the first.
    const { probability } = rankProbability([1, 2, 3], [1, 1, 2]);
    expect(probability).toBeCloseTo(2 / 3, 12);
  });

  it('draws orders beyond nine values, always the same ones: the table’s 0.648 at 0.05 for ten (J. H. Zar, 1972, from memory)', () => {
    const rising = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
    const at = [2, 1, 8, 5, 4, 6, 3, 10, 9, 7]; // sum of d^2 58, rho 0.648
    const below = [3, 1, 5, 9, 4, 2, 7, 8, 6, 10]; // 60, the next rho there is
    expect(rankCorrelation(rising, at)).toBeCloseTo(0.648, 3);
    expect(rankProbability(rising, at)).toEqual(rankProbability(rising, at));
    expect(rankProbability(rising, at).isExact).toBe(false);
    expect(rankProbability(rising, at).probability).toBeLessThan(0.05);
    expect(rankProbability(rising, below).probability).toBeGreaterThan(0.05);
    // Counting all 3 628 800 orders gives these; drawn ones may stand 0.003 off.
    expect(Math.abs(rankProbability(rising, at).probability - 0.04898)).toBeLessThan(0.003);
    expect(Math.abs(rankProbability(rising, below).probability - 0.05443)).toBeLessThan(0.003);
  });
});
