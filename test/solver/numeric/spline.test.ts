/** The monotone cubic of F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { monotoneCubic } from '../../../src/solver/numeric/spline.ts';
import { expectClose } from '../../support/close.ts';

const EXACT = { within: 1e-12 };

/** One-sided slope at x, from inside the interval. */
function slopeAt(curve: (x: number) => number, x: number, side: 1 | -1): number {
  const step = 1e-6 * side;
  return (-3 * curve(x) + 4 * curve(x + step) - curve(x + 2 * step)) / (2 * step);
}

describe('monotone cubic', () => {
  // Worked by hand: points (0,0), (1,1), (3,2); steps 1 and 2, rises d0 = 1 and d1 = 1/2.
  const curve = monotoneCubic([0, 1, 3], [0, 1, 2]);

  it('takes the weighted harmonic mean of the rises as inner slope', () => {
    // weights a = 2*2 + 1 = 5, b = 2 + 2*1 = 4: (a + b)/(a/d0 + b/d1) = 9/(5 + 8) = 9/13
    expectClose('slope at 1 from below', slopeAt(curve, 1, -1), 9 / 13, { within: 1e-9 });
    expectClose('slope at 1 from above', slopeAt(curve, 1, 1), 9 / 13, { within: 1e-9 });
  });

  it('takes the three-point formula at the ends', () => {
    // ((2*1 + 2) d0 - 1 d1)/3 = 7/6; ((2*2 + 1) d1 - 2 d0)/3 = 1/6
    expectClose('slope at 0', slopeAt(curve, 0, 1), 7 / 6, { within: 1e-9 });
    expectClose('slope at 3', slopeAt(curve, 3, -1), 1 / 6, { within: 1e-9 });
  });

  it('is the cubic of those values and slopes between', () => {
    // middle of a Hermite cubic: mean of the ends plus step (left slope - right slope)/8
    expectClose('at 1/2', curve(0.5), 0.5 + (7 / 6 - 9 / 13) / 8, EXACT);
    expectClose('at 2', curve(2), 1.5 + (2 * (9 / 13 - 1 / 6)) / 8, EXACT);
  });

  it('passes through its points and holds the end values outside', () => {
    [0, 1, 3].forEach((x, k) => {
      expect(curve(x)).toBe(k);
    });
    expect(curve(-5)).toBe(0);
    expect(curve(7)).toBe(2);
  });

  it('is a line through two points, or through points on a line', () => {
    expectClose('two points', monotoneCubic([1, 3], [5, 9])(1.7), 6.4, EXACT);
    expectClose('on a line', monotoneCubic([0, 0.2, 0.7, 1], [1, 1.4, 2.4, 3])(0.45), 1.9, EXACT);
  });

  it('is level at a peak, and at an end whose slope would turn against its data', () => {
    const peak = monotoneCubic([0, 1, 2], [0, 1, 0]);
    expectClose('slope at the peak', slopeAt(peak, 1, -1), 0, { within: 1e-9 });
    // three-point slope at 0: ((2 + 1) 0.1 - 10)/2 < 0 against a rise of 0.1: level instead
    expectClose('slope at 0', slopeAt(monotoneCubic([0, 1, 2], [0, 0.1, 10.1]), 0, 1), 0, { within: 1e-9 });
    // and at most three rises where the data turn: ((2 + 1) 1 + 9)/2 = 6, limited to 3
    expectClose('slope at 0', slopeAt(monotoneCubic([0, 1, 2], [0, 1, -8]), 0, 1), 3, { within: 1e-6 });
  });

  it('never leaves the range of two neighbours', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true })),
      {
        minLength: 2,
        maxLength: 9,
      },
    );
    fc.assert(
      fc.property(steps, (pieces) => {
        let at = 0;
        const x = pieces.map(([step]) => (at += step));
        const y = pieces.map(([, value]) => value);
        const any = monotoneCubic(x, y);
        for (let k = 0; k + 1 < x.length; k++)
          for (const share of [0.1, 0.35, 0.5, 0.8, 0.97]) {
            const value = any(x[k]! + share * (x[k + 1]! - x[k]!));
            expect(value).toBeGreaterThanOrEqual(Math.min(y[k]!, y[k + 1]!) - 1e-12);
            expect(value).toBeLessThanOrEqual(Math.max(y[k]!, y[k + 1]!) + 1e-12);
          }
      }),
    );
  });

  it('refuses what is no curve', () => {
    expect(() => monotoneCubic([0], [1])).toThrow('a curve needs two points or more, found 1');
    expect(() => monotoneCubic([0, 0.5, 0.5, 1], [1, 1, 1, 1])).toThrow(
      'points must rise strictly: 0.5 is followed by 0.5',
    );
  });
});
