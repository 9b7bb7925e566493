/** Wings whose strips lift and drag as their own sections do, against closed forms and the sections themselves. */
import { describe, expect, it } from 'vitest';
import type { Outline } from '../../../src/solver/design/document.ts';
import { sectionPolar } from '../../../src/solver/section/polar.ts';
import { createPolarTable } from '../../../src/solver/section/table.ts';
import { solve } from '../../../src/solver/solve.ts';
import { profileFor } from '../../../src/solver/studies/profile-for.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, plainDesign, plainStabilizer, taperedChord } from '../../support/designs.ts';

const quick = { neutralDroop: false, strips: 24 } as const;
const CAMBERED: Outline = { kind: 'naca4', code: '3412' };
const cambered = { root: CAMBERED, tip: CAMBERED };

describe('a wing with real sections', () => {
  it('is what a solve takes; thin sections are there for comparison', { timeout: 60_000 }, () => {
    const design = plainDesign({ section: cambered });
    const [real, thin] = [solve(design, quick), solve(design, { ...quick, sections: 'thin' })];
    expect(solve(design, { ...quick, sections: 'real' })).toEqual(real);
    expect([real.sections.source, thin.sections.source]).toEqual(['polars', 'fixed']);
    expect(thin.strips.wing.every(({ cd, usableCl }) => cd === 0.008 && usableCl === 1.2)).toBe(true);
    expect(real.condition.alpha).not.toBeCloseTo(thin.condition.alpha, 2);
  });

  it('lifts nothing at the zero-lift angle of its section', () => {
    const design = plainDesign({ section: cambered });
    const { zeroLift } = createPolarTable(CAMBERED, 'clean').viscousLine((10 * 0.1) / viscosityOf(design));
    const { CL } = solve(design, { ...quick, alpha: (zeroLift * 180) / Math.PI }).lift;
    expect(Math.abs(CL)).toBeLessThan(1e-6);
  });

  it('has a lift slope that goes with its section as lifting-line theory says', () => {
    // L. Prandtl, elliptic wing: CLalpha = a0/(1 + a0/(pi AR)), H. Glauert (1926), ch. XI. The extended line lies below it
    // by a share that is the same for either a0, so the ratio of the two is compared; rectangular, AR 20.
    const design = plainDesign({ section: cambered, chord: taperedChord(20, 1) });
    const slopeOf = (sections: 'real' | 'thin') => solve(design, { ...quick, sections }).lift.CLalpha;
    const reynolds = (10 * 0.05) / viscosityOf(design);
    const a0 = createPolarTable(CAMBERED, 'clean').viscousLine(reynolds).slope;
    const line = (slope: number) => slope / (1 + slope / (Math.PI * 20));
    expectClose('ratio', slopeOf('real') / slopeOf('thin'), line(a0) / line(2 * Math.PI), { share: 0.005 });
  });

  it('pays the drag that its sections have at their own lift and Reynolds number', {
    timeout: 60_000,
  }, () => {
    const design = plainDesign({ section: cambered, chord: taperedChord(8, 0.5) }, { brief: { depth: 0.5 } });
    const found = solve(design, quick);
    let sum = 0;
    for (const strip of found.strips.wing) {
      sum += 2 * 0.5 * found.condition.density * 100 * strip.chord * strip.width * strip.cd;
      expect(strip.reynolds).toBeCloseTo((10 * strip.chord) / found.condition.viscosity, 3);
    }
    expectClose('sum over the strips', found.drag.wingProfile, sum, { share: 1e-9 });
    const strip = found.strips.wing[12]!;
    const { points } = sectionPolar(CAMBERED, {
      reynolds: strip.reynolds,
      clarity: 'clean',
      alphas: Array.from({ length: 13 }, (_, k) => ((k - 6) * Math.PI) / 360),
    });
    const k = points.findIndex(({ figures }) => figures!.cl > strip.cl);
    const [low, high] = [points[k - 1]!.figures!, points[k]!.figures!];
    const cd = low.cd + ((strip.cl - low.cl) / (high.cl - low.cl)) * (high.cd - low.cd);
    expectClose('cd of a strip', strip.cd, cd, { share: 0.04 });
  });

  it('pays less in clean water than in silty', { timeout: 60_000 }, () => {
    const drag = (clarity: 'clean' | 'silty') =>
      solve(
        plainDesign({ section: cambered }, { brief: { water: { kind: 'fresh', temperature: 15, clarity } } }),
        quick,
      ).drag.wingProfile;
    expect(drag('clean')).toBeLessThan(drag('silty'));
  });
});

describe('drag by source', () => {
  it('adds up to the total', { timeout: 60_000 }, () => {
    const { drag, inducedDrag } = solve(goodDesign('curved-race'), quick);
    const { total, ...sources } = drag;
    const sum = Object.values(sources).reduce((all, value) => all + value, 0);
    expectClose('total', total, sum, { share: 1e-12 });
    expectClose('induced', drag.wingInduced + drag.stabilizerInduced, inducedDrag.farField, { share: 1e-9 });
  });

  it('is compared at the same lift, induced and profile together', { timeout: 60_000 }, () => {
    for (const twin of Object.values(solve(goodDesign('curved-race'), quick).ledger.sameLift)) {
      expectClose('total', twin.extraTotalDrag, twin.extraInducedDrag + twin.extraProfileDrag, {
        within: 1e-12,
      });
      expect(twin.extraProfileDrag).not.toBe(0);
    }
    const flat = solve(plainDesign({ section: cambered }), quick).ledger.sameLift;
    expect(flat.unrolled.extraTotalDrag).toBe(0);
  });
});

describe("the strut's drag", () => {
  const drag = (thickness: number) =>
    profileFor(plainDesign({}, { strut: { length: 1, chord: 0.1, thickness } })).strutCd(7e5, 'natural')!;

  it('is that of a symmetric section of its thickness', { timeout: 60_000 }, () => {
    const own = createPolarTable({ kind: 'naca4', code: '0013' }, 'clean').drag(0, 7e5);
    expectClose('cd at 13 %', drag(0.013), own, { share: 0.01 });
  });

  it('moves without a jump as the thickness is dragged', () => {
    for (let percent = 11; percent <= 13; percent += 0.25)
      expect(Math.abs(drag((percent + 0.25) / 1000) / drag(percent / 1000) - 1)).toBeLessThan(0.02);
  });

  it('is left to turbulent friction where no such section stands', () => {
    const { strutCd } = profileFor(plainDesign({}, { strut: { length: 1, chord: 0.05, thickness: 0.02 } }));
    expect(strutCd(7e5, 'natural')).toBeNull();
  });
});

describe('a stabilizer that pushes down', () => {
  it('pays for lift of either sign alike where its section is symmetric', { timeout: 60_000 }, () => {
    const profile = profileFor(plainDesign({}, { stabilizer: plainStabilizer() }));
    const [up, down] = [0.3, -0.3].map((cl) => profile.cd('stabilizer', 0.5, cl, 4e5));
    expectClose('cd', down!, up!, { share: 1e-9 });
  });
});

function viscosityOf(design: Parameters<typeof solve>[0]): number {
  return solve(design, { ...quick, sections: 'thin' }).condition.viscosity;
}
