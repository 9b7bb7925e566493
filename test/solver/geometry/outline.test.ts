import { describe, expect, it } from 'vitest';
import type { Outline, Pair } from '../../../src/solver/design/document.ts';
import { outlineProblem } from '../../../src/solver/geometry/contour.ts';
import {
  blendOutlines,
  camberRatio,
  fourDigitMeanLine,
  fourDigitThickness,
  outlinePoints,
  readFourDigit,
  thicknessRatio,
} from '../../../src/solver/geometry/outline.ts';
import { edgeThickness, noseRadius } from '../../../src/solver/geometry/outline-marks.ts';
import { zeroLiftAngle } from '../../../src/solver/geometry/thin.ts';

const naca = (code: string): Outline => ({ kind: 'naca4', code });
const pairs = ({ x, y }: { x: Float64Array; y: Float64Array }): Pair[] =>
  Array.from(x, (at, k): Pair => [at, y[k]!]);
const imported = (code: string, count = 81): Outline => ({
  kind: 'coordinates',
  name: code,
  points: pairs(outlinePoints(naca(code), count)),
});

describe('four-digit codes', () => {
  it('say camber, its place and thickness', () => {
    expect(readFourDigit('2412')).toEqual({ camber: 0.02, position: 0.4, thickness: 0.12 });
    expect(readFourDigit('0009')).toEqual({ camber: 0, position: 0, thickness: 0.09 });
  });

  it.each(['241', '24120', '2a12', '2400', '2012', ''])('"%s" is none', (code) => {
    expect(readFourDigit(code)).toBeNull();
  });

  // NACA 0012 half ordinates in per cent of the chord: equation of the series, agrees with the NACA Report 824 table.
  it.each([
    [1.25, 1.894],
    [5, 3.555],
    [10, 4.683],
    [20, 5.738],
    [30, 6.002],
    [40, 5.803],
    [60, 4.563],
    [70, 3.664],
    [80, 2.623],
    [90, 1.448],
    [100, 0.126],
  ])('NACA 0012 at %d %% of the chord is %d %% half thick', (x, half) => {
    const found = 100 * fourDigitThickness(readFourDigit('0012')!, x / 100);
    expect(Math.abs(found - half)).toBeLessThanOrEqual(0.001);
  });

  it('have a nose radius of 1.1019 t^2 (NACA Report 460, from memory)', () => {
    const x = 1e-9; // y^2 = 2 r x at the nose
    expect(fourDigitThickness(readFourDigit('0012')!, x) ** 2 / (2 * x)).toBeCloseTo(1.1019 * 0.12 ** 2, 5);
  });

  it('have a mean line highest at its place, from zero to zero, without a kink', () => {
    const digits = readFourDigit('4412')!;
    expect(fourDigitMeanLine(digits, 0).y).toBe(0);
    expect(fourDigitMeanLine(digits, 1).y).toBeCloseTo(0, 15);
    expect(fourDigitMeanLine(digits, 0.4)).toEqual({ y: expect.closeTo(0.04, 12), slope: 0 });
    expect(fourDigitMeanLine(digits, 0.4 - 1e-9).slope).toBeCloseTo(fourDigitMeanLine(digits, 0.4).slope, 8);
  });
});

describe('outline points', () => {
  it('run from the trailing edge over the top to the leading edge and back below', () => {
    const { x, y } = outlinePoints(naca('2412'), 61);
    expect([x.length, x[30], y[30]]).toEqual([61, 0, 0]);
    expect(y[0]).toBeGreaterThan(0); // open trailing edge
    expect(y[60]).toBeLessThan(0);
    expect(y[15]!).toBeGreaterThan(y[45]!);
    for (let k = 1; k <= 30; k++) expect(x[k]!).toBeLessThan(x[k - 1]!);
    for (let k = 31; k <= 60; k++) expect(x[k]!).toBeGreaterThan(x[k - 1]!);
  });

  it('stand cosine spaced on a symmetric section', () => {
    const { x } = outlinePoints(naca('0012'), 9);
    expect(Array.from(x.slice(0, 5))).toEqual(
      [1, 0.75 + 0.1035533905932738, 0.5, 0.1464466094067262, 0].map((at) => expect.closeTo(at, 12)),
    );
  });

  it('follow imported points where they are, and keep their thickness and camber', () => {
    for (const code of ['0012', '2412', '4409']) {
      const again = outlinePoints(imported(code, 121), 121);
      const once = outlinePoints(naca(code), 121);
      // Compared as heights over the same x: the imported outline is sampled straight above each x.
      for (let k = 10; k < 50; k++) {
        const near = Array.from(once.x).findIndex((at, j) => j < 60 && at <= again.x[k]!);
        const share = (again.x[k]! - once.x[near]!) / (once.x[near - 1]! - once.x[near]!);
        const height = once.y[near]! + share * (once.y[near - 1]! - once.y[near]!);
        expect(Math.abs(again.y[k]! - height)).toBeLessThan(2e-4);
      }
      expect(thicknessRatio(imported(code))).toBeCloseTo(thicknessRatio(naca(code)), 3);
      expect(camberRatio(imported(code))).toBeCloseTo(camberRatio(naca(code)), 4);
    }
  });

  it('blend thickness and camber linearly', () => {
    const half = blendOutlines(naca('0010'), naca('0014'), 0.5, 41);
    const whole = outlinePoints(naca('0012'), 41);
    for (let k = 0; k < 41; k++) expect(half.y[k]).toBeCloseTo(whole.y[k]!, 12);
    const cambered = blendOutlines(naca('2412'), naca('4412'), 0.5, 81);
    expect(camberRatio({ kind: 'coordinates', name: '', points: pairs(cambered) })).toBeCloseTo(0.03, 4);
  });

  it('at the ends of a blend are the outlines themselves', () => {
    const [root, tip] = [naca('2412'), naca('0009')];
    expect(blendOutlines(root, tip, 0, 41)).toEqual(outlinePoints(root, 41));
    const end = blendOutlines(root, tip, 1, 41);
    for (let k = 0; k < 41; k++) expect(end.y[k]).toBeCloseTo(outlinePoints(tip, 41).y[k]!, 15);
  });
});

describe('scaling', () => {
  const scaled = (outline: Outline, thicknessScale: number, camberScale: number): Outline => ({
    ...outline,
    thicknessScale,
    camberScale,
  });

  it('of a code gives the section of the scaled digits', () => {
    const found = outlinePoints(scaled(naca('2410'), 1.2, 2), 61);
    const wanted = outlinePoints(naca('4412'), 61);
    for (let k = 0; k < 61; k++) expect(found.y[k]).toBeCloseTo(wanted.y[k]!, 12);
  });

  it('of points changes thickness and camber apart, and turns a camber over', () => {
    for (const [thick, camber] of [
      [1.25, 1],
      [1, 1.5],
      [0.8, -1],
    ] as const) {
      const found = scaled(imported('2412'), thick, camber);
      expect(thicknessRatio(found)).toBeCloseTo(0.12 * thick, 3);
      expect(camberRatio(found)).toBeCloseTo(0.02 * camber, 4);
    }
  });

  it('goes into the zero-lift angle of thin-airfoil theory in proportion to camber', () => {
    for (const outline of [naca('2412'), imported('2412')]) {
      const drawn = zeroLiftAngle(outline);
      expect(zeroLiftAngle(scaled(outline, 1.3, 1.5))).toBeCloseTo(1.5 * drawn, 10);
      expect(zeroLiftAngle(scaled(outline, 1, -1))).toBeCloseTo(-drawn, 10);
    }
  });
});

describe('marks of a section', () => {
  it.each(['0006', '0012', '2411', '4415'])(
    '%s has a nose of 1.1019 t^2 (NACA Report 460, from memory)',
    (code) => {
      const exact = 1.1019 * (Number(code.slice(2)) / 100) ** 2;
      expect(Math.abs(noseRadius(naca(code)) / exact - 1)).toBeLessThan(0.02);
      // Points of a cambered code are met where the outline is foremost, beside the middle of its nose.
      expect(Math.abs(noseRadius(imported(code, 121)) / exact - 1)).toBeLessThan(
        code === '4415' ? 0.12 : 0.05,
      );
    },
  );

  it('a four-digit trailing edge is 0.0021 over 0.20 of the thickness open on either side (NACA Report 460)', () => {
    expect(edgeThickness(naca('0012'))).toBeCloseTo((2 * 0.0021 * 0.12) / 0.2, 4);
  });
});

describe('points that are no outline', () => {
  const points = pairs(outlinePoints(naca('2412'), 41));

  it('are told from those that are', () => {
    expect(outlineProblem(points)).toBeNull();
    expect(outlineProblem([...points].reverse())).toBeNull();
  });

  it.each<[string, Pair[], string]>([
    ['half a chord', points.map(([x, y]): Pair => [x / 2, y]), 'x from 0 to'],
    ['only one side', points.slice(0, 21), 'as point'],
    ['a step back', points.map((p, k): Pair => (k === 10 ? [p[0] + 0.2, p[1]] : p)), 'as point 11'],
    ['sides that cross', points.map(([x, y], k): Pair => [x, k < 15 ? -0.05 : y]), 'cross'],
  ])('%s', (_what, wrong, found) => {
    expect(outlineProblem(wrong)?.found).toContain(found);
  });
});
