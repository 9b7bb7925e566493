import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../src/solver/numeric/roots.ts';
import { expectClose } from '../../support/close.ts';

/** Runs findRoot and counts how often it asks. */
function counted(f: (x: number) => number, low: number, high: number, tolerance: number) {
  let asked = 0;
  const root = findRoot(
    (x) => {
      asked++;
      return f(x);
    },
    low,
    high,
    tolerance,
  );
  return { root, asked };
}

describe('findRoot', () => {
  it('finds roots known in closed form', () => {
    const cases: Array<[(x: number) => number, number, number, number]> = [
      [(x) => x ** 3 - 2, 0, 2, Math.cbrt(2)],
      [(x) => Math.cos(x) - x, 0, 1, 0.7390851332151607], // Dottie's number
      [(x) => Math.exp(x) - 10, -5, 5, Math.LN10],
      [(x) => Math.atan(x - 0.3), -100, 1, 0.3],
      [(x) => 1 / (x - 3) + 1, -4, 2.9999, 2],
    ];
    for (const [f, low, high, expected] of cases)
      expectClose('root', findRoot(f, low, high, 1e-12)!, expected, { within: 1e-12 });
  });

  it('takes the bracket from either side', () => {
    expectClose('root', findRoot((x) => 2 - x * x, 3, 0, 1e-12)!, Math.SQRT2, { within: 1e-12 });
  });

  it('answers an end of the bracket that is a root, and asks no further', () => {
    expect(findRoot((x) => x, 0, 1, 1e-9)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1, 1e-9)).toBe(1);
  });

  it('says when both ends have one sign, or no value', () => {
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeNull();
    expect(findRoot((x) => x * x - 0.25, -1, 1, 1e-9)).toBeNull();
    expect(findRoot(() => Number.NaN, -1, 1, 1e-9)).toBeNull();
  });

  it('takes end values that are already known', () => {
    const { asked } = counted((x) => x - 0.4, 0, 1, 1e-9);
    let again = 0;
    findRoot(
      (x) => {
        again++;
        return x - 0.4;
      },
      0,
      1,
      1e-9,
      -0.4,
      0.6,
    );
    expect(again).toBe(asked - 2);
  });

  it('comes down on a flat root, a step and a pole without losing the bracket', () => {
    const flat = counted((x) => (x - 0.2) ** 9, -1, 4, 1e-9);
    expectClose('flat root', flat.root!, 0.2, { within: 1e-9 });
    const step = counted((x) => (x < Math.PI ? -1 : 1), 0, 10, 1e-10);
    expectClose('step', step.root!, Math.PI, { within: 1e-10 });
    expect(flat.asked).toBeLessThan(200);
    expect(step.asked).toBeLessThan(100);
  });

  it('is quick on a smooth function (Brent: about ten asks)', () => {
    expect(counted((x) => Math.exp(-x) - x, 0, 1, 1e-12).asked).toBeLessThan(12);
  });
});
