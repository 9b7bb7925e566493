/** Polars, states and tables: what callers rely on. */
import { describe, expect, it } from 'vitest';
import { outlinePoints } from '../../../src/solver/geometry/outline.ts';
import { sectionPolar } from '../../../src/solver/section/polar.ts';
import { sectionFlow } from '../../../src/solver/section/section.ts';
import { sectionState } from '../../../src/solver/section/state.ts';
import { createPolarTable, emptySample } from '../../../src/solver/section/table.ts';
import { RADIANS } from '../../published/sections.ts';

const section = { kind: 'naca4', code: '2412' } as const;
const degrees = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, k) => (from + k) * RADIANS);

describe('a polar', () => {
  it('answers in the order asked for, whatever that is', () => {
    const alphas = [6, -2, 3, 0].map((deg) => deg * RADIANS);
    const { points } = sectionPolar(section, { reynolds: 1e6, alphas });
    expect(points.map(({ alpha }) => alpha)).toEqual(alphas);
    const lifts = points.map(({ figures }) => figures!.cl);
    expect(lifts[0]).toBeGreaterThan(lifts[2]!);
    expect(lifts[2]).toBeGreaterThan(lifts[3]!);
    expect(lifts[3]).toBeGreaterThan(lifts[1]!);
  });

  it('finds stall, and says when the angles asked for end before it', () => {
    const far = sectionPolar(section, { reynolds: 1e6, alphas: degrees(-4, 20) });
    expect(far.clMax.isStall).toBe(true);
    expect(far.clMax.cl).toBeGreaterThan(1.1);
    expect(far.clMax.cl).toBeLessThan(1.6);
    const near = sectionPolar(section, { reynolds: 1e6, alphas: degrees(0, 5) });
    expect(near.clMax).toMatchObject({ isStall: false, alpha: 5 * RADIANS });
  });

  it('reports angles that do not settle as such, without figures, and stops trying behind stall', () => {
    const { points } = sectionPolar(
      { kind: 'naca4', code: '0004' },
      { reynolds: 1e5, alphas: degrees(0, 60), criticalN: 9 },
    );
    const states = points.map(({ state }) => state);
    expect(states).toContain('did not settle');
    expect(states[60]).toBe('not tried behind stall');
    for (const { state, figures } of points) expect(figures === null).toBe(state !== 'converged');
  });

  it('steps to a single far angle through nearer ones', () => {
    const alone = sectionPolar(section, { reynolds: 1e6, alphas: [10 * RADIANS] }).points[0]!;
    const among = sectionPolar(section, { reynolds: 1e6, alphas: degrees(0, 10) }).points[10]!;
    expect(alone.figures!.cd / among.figures!.cd).toBeCloseTo(1, 2);
  });
});

describe('the state of a section', () => {
  it('runs from the stagnation point to the trailing edge on both sides and agrees with the figures', () => {
    const state = sectionState(section, { reynolds: 1e6, alpha: 4 * RADIANS })!;
    for (const side of [state.upper, state.lower]) {
      expect(side.x[side.x.length - 1]).toBeGreaterThan(0.99);
      expect(side.arc.every((arc, k) => k === 0 || arc > side.arc[k - 1]!)).toBe(true);
      expect(side.cp[0]).toBeGreaterThan(0.5);
    }
    const turn = state.upper.isTurbulent.indexOf(1);
    expect(state.upper.x[turn - 1]).toBeLessThanOrEqual(state.figures.upper.transition);
    expect(state.upper.x[turn]).toBeGreaterThanOrEqual(state.figures.upper.transition);
    expect(Math.min(...state.upper.cp)).toBeCloseTo(state.figures.cpMin, 3);
  });
});

describe('a polar table', () => {
  const table = createPolarTable(section, 'coastal');
  const sample = emptySample();

  it('is kept: the same request, worded anew, gives the same table, and equal shapes share their flow', () => {
    expect(createPolarTable({ kind: 'naca4', code: '2412' }, 'coastal')).toBe(table);
    expect(createPolarTable(section, 'silty')).not.toBe(table);
    const points = outlinePoints(section, 241);
    expect(sectionFlow(points)).toBe(sectionFlow({ x: points.x.slice(), y: points.y.slice() }));
  });

  it('agrees with polars solved at the same place: 3 % of drag, 0.2 degrees', () => {
    for (const reynolds of [2e5, 7e5])
      for (const { alpha, figures } of sectionPolar(section, {
        reynolds,
        clarity: 'coastal',
        alphas: [-3.3, 0.4, 3.3, 7.2].map((deg) => deg * RADIANS),
      }).points) {
        table.lookup(figures!.cl, reynolds, sample);
        expect(sample.state).toBe('inside');
        expect(Math.abs(sample.cd / figures!.cd - 1)).toBeLessThan(0.03);
        expect(Math.abs(sample.alpha - alpha)).toBeLessThan(0.2 * RADIANS);
        expect(sample.cm).toBeCloseTo(figures!.cm, 2);
        table.lookupAngle(alpha, reynolds, sample);
        expect(Math.abs(sample.cl - figures!.cl)).toBeLessThan(0.02);
      }
  });

  it('says when lift is asked for beyond stall, on either side', () => {
    table.lookup(1, 5e5, sample);
    expect(sample.state).toBe('inside');
    const { clLimit } = sample;
    table.lookup(clLimit + 0.05, 5e5, sample);
    expect(sample.state).toBe('beyond');
    expect(sample.cl).toBeCloseTo(clLimit, 2);
    table.lookup(-2, 5e5, sample);
    expect(sample.state).toBe('beyond');
    expect(sample.clLimit).toBeLessThan(-0.4);
  });

  it('runs on without a jump from branch to branch and from line to line', () => {
    let before = Number.NaN;
    for (let cl = -0.3; cl <= 0.3; cl += 0.005) {
      table.lookup(cl, 5e5, sample);
      if (!Number.isNaN(before)) expect(Math.abs(sample.cd / before - 1)).toBeLessThan(0.02);
      before = sample.cd;
    }
    for (let re = 3e5; re <= 6e5; re *= 1.01) {
      table.lookup(0.4, re, sample);
      expect(Math.abs(sample.cd / before - 1)).toBeLessThan(re === 3e5 ? 1 : 0.01);
      before = sample.cd;
    }
  });

  it('mirrors a symmetric section', () => {
    const symmetric = createPolarTable({ kind: 'naca4', code: '0010' }, 'clean');
    symmetric.lookup(0.4, 5e5, sample);
    const { cd, alpha, transitionUpper } = sample;
    symmetric.lookup(-0.4, 5e5, sample);
    expect(sample.cd).toBeCloseTo(cd, 8);
    expect(sample.alpha).toBeCloseTo(-alpha, 8);
    expect(sample.transitionLower).toBeCloseTo(transitionUpper, 8);
  });

  it('gives the viscous zero-lift angle and slope: less lift than inviscid flow', () => {
    const viscous = table.viscousLine(5e5);
    expect(Math.abs(viscous.zeroLift - table.line.zeroLift)).toBeLessThan(0.5 * RADIANS);
    expect(viscous.slope).toBeLessThan(table.line.slope);
    expect(viscous.slope).toBeGreaterThan(0.8 * table.line.slope);
  });
});
