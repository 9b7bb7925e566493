import { describe, expect, it } from 'vitest';
import type { Outline, Pair } from '../../../src/solver/design/document.ts';
import { outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { momentCoefficient, zeroLiftAngle } from '../../../src/solver/geometry/thin.ts';

const naca = (code: string): Outline => ({ kind: 'naca4', code });
const DEGREES = 180 / Math.PI;

/** A four-digit section as imported points. */
function pointsOf(code: string, count: number): Pair[] {
  const { x, y } = outlinePoints(naca(code), count);
  return Array.from(x, (at, k): Pair => [at, y[k]!]);
}

const coordinates = (points: Pair[]): Outline => ({ kind: 'coordinates', name: 'test', points });

describe('thin-airfoil angles of four-digit sections', () => {
  // Thin-airfoil integrals by quadrature, derived independently of this program (H. Glauert 1926, ch. VII).
  it.each([
    ['1412', -1.0386, -0.02656],
    ['4412', -4.1545, -0.10624],
    ['4415', -4.1545, -0.10624],
    ['2312', -1.9179, -0.04473],
  ])('NACA %s', (code, angle, moment) => {
    expect(Math.abs(zeroLiftAngle(naca(code)) * DEGREES - angle)).toBeLessThan(1e-3);
    expect(Math.abs(momentCoefficient(naca(code)) - moment)).toBeLessThan(1e-5);
  });

  it('a mean line highest at mid-chord is one parabola: -2 m and -pi m (Glauert 1926, ch. VII)', () => {
    expect(zeroLiftAngle(naca('2512'))).toBeCloseTo(-2 * 0.02, 12);
    expect(momentCoefficient(naca('2512'))).toBeCloseTo(-Math.PI * 0.02, 12);
  });

  it('a symmetric section lifts nothing at no angle', () => {
    expect(zeroLiftAngle(naca('0012'))).toBe(0);
    expect(momentCoefficient(naca('0012'))).toBe(0);
  });

  it('does not depend on thickness', () => {
    expect(zeroLiftAngle(naca('2408'))).toBe(zeroLiftAngle(naca('2418')));
  });
});

describe('thin-airfoil angles of imported points', () => {
  /** An outline with this mean line and a thickness straight above and below it. */
  const outline = (mean: (x: number) => number, count = 81): Outline =>
    coordinates(
      Array.from({ length: count }, (_, k): Pair => {
        const turn = (2 * Math.PI * k) / (count - 1);
        const x = (1 + Math.cos(turn)) / 2;
        return [x, mean(x) + (2 * k < count ? 1 : -1) * 0.06 * Math.sqrt(x) * (1 - x)];
      }),
    );

  it('a parabola of height h: -2 h and -pi h, to 1e-6', () => {
    const found = outline((x) => 4 * 0.03 * x * (1 - x));
    expect(Math.abs(zeroLiftAngle(found) + 2 * 0.03)).toBeLessThan(1e-6);
    expect(Math.abs(momentCoefficient(found) + Math.PI * 0.03)).toBeLessThan(1e-6);
  });

  it('a reflexed cubic: the integrals in closed form, to 1e-6', () => {
    // y = k x (1 - x)(7/8 - x). The means of x^n over theta are 1/2, 3/8, 5/16, 35/128 for n = 1 to 4, so that the
    // zero-lift angle is -k (7/16 - 3/8) and the moment pi k (7/32 - 7/32).
    const k = 0.2;
    const found = outline((x) => k * x * (1 - x) * (0.875 - x));
    expect(Math.abs(zeroLiftAngle(found) + k / 16)).toBeLessThan(1e-6);
    expect(Math.abs(momentCoefficient(found))).toBeLessThan(1e-6); // the classic reflex without moment
  });

  it('points of a symmetric section lift nothing at no angle', () => {
    expect(Math.abs(zeroLiftAngle(coordinates(pointsOf('0012', 61))))).toBeLessThan(1e-9);
  });

  it('points of a four-digit section answer within 4 % of its code', () => {
    for (const count of [41, 161])
      for (const code of ['1412', '2412', '4412', '2310']) {
        const ratio = zeroLiftAngle(coordinates(pointsOf(code, count))) / zeroLiftAngle(naca(code));
        expect(ratio, code).toBeGreaterThan(1);
        expect(ratio, code).toBeLessThan(1.045);
      }
  });

  it('which way round the points run makes no difference', () => {
    const points = pointsOf('2412', 61);
    expect(zeroLiftAngle(coordinates([...points].reverse()))).toBeCloseTo(
      zeroLiftAngle(coordinates(points)),
      12,
    );
  });

  it('turning an outline nose down by a small angle adds that angle', () => {
    const turn = 0.01;
    const flat = outline((x) => 4 * 0.03 * x * (1 - x));
    const turned = outline((x) => 4 * 0.03 * x * (1 - x) + turn * x);
    expect(zeroLiftAngle(turned) - zeroLiftAngle(flat)).toBeCloseTo(turn, 8);
  });
});
