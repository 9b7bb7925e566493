/** Stall of the whole foil, against closed forms and what is known of plain wings. */
import { describe, expect, it } from 'vitest';
import type { Design, Outline, Planform } from '../../../src/solver/design/document.ts';
import { createPolarTable } from '../../../src/solver/section/table.ts';
import { solve } from '../../../src/solver/solve.ts';
import { type StallOptions, stallStudy } from '../../../src/solver/studies/stall.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { expectClose } from '../../support/close.ts';
import { ellipticChord, goodDesign, plainDesign, taperedChord } from '../../support/designs.ts';

const CAMBERED: Outline = { kind: 'naca4', code: '2412' };
const wing = (changes: Partial<Planform>) =>
  plainDesign({ section: { root: CAMBERED, tip: CAMBERED }, ...changes });

const stallOf = (design: Design, options: StallOptions = {}) => finish(stallStudy(design, options));

describe('stall', () => {
  it('follows the straight line of a solve while the sections do', { timeout: 60_000 }, () => {
    const design = goodDesign('curved-race');
    const { points, depth } = stallOf(design);
    const point = points.find(({ CL }) => CL > 0.3)!;
    const { lift } = solve(design, { alpha: point.alpha, depth, neutralDroop: false });
    expect(point.isSettled).toBe(true);
    expectClose('CL', point.CL, lift.CL, { share: 0.03 });
  });

  it('gives an elliptic wing nearly the greatest lift of its section', { timeout: 60_000 }, () => {
    // Elliptic and untwisted: every strip has the same lift coefficient, CL = cl (Glauert 1926, ch. XI). The chord's
    // Reynolds number falls towards the tip, and the tips' sections with it.
    const study = stallOf(wing({ chord: ellipticChord(10) }));
    const { viscosity } = solve(wing({}), { sections: 'thin', neutralDroop: false }).condition;
    const rootReynolds = (study.speed * 0.4) / Math.PI / viscosity;
    const limit = createPolarTable(CAMBERED, 'clean').limit(rootReynolds);
    expect(study.greatest!.isPassed).toBe(true);
    expect(study.greatest!.CL).toBeLessThan(limit * 1.01);
    expect(study.greatest!.CL).toBeGreaterThan(limit * 0.9);
  });

  it('begins at the root of a rectangular wing and outboard on a pointed one', { timeout: 60_000 }, () => {
    // R. F. Anderson, NACA Report 572 (1936), from memory: first stalling point at the root for taper 1, beyond half of
    // the half span for taper 0.2.
    expect(stallOf(wing({ chord: taperedChord(8, 1) })).first!.eta).toBeLessThan(0.3);
    expect(stallOf(wing({ chord: taperedChord(8, 0.2) })).first!.eta).toBeGreaterThan(0.5);
  });

  it('names usable, first and greatest lift in that order, with the speeds that need them', {
    timeout: 60_000,
  }, () => {
    const design = goodDesign('curved-race');
    const { usable, first, greatest } = stallOf(design);
    expect(usable!.CL).toBeLessThan(first!.CL);
    expect(first!.CL).toBeLessThanOrEqual(greatest!.CL);
    expect(usable!.speed).toBeGreaterThan(first!.speed);
    const { condition, geometry } = solve(design, { neutralDroop: false });
    const q = 0.5 * condition.density * usable!.speed ** 2;
    expectClose('lift', q * geometry.wing.projectedArea * usable!.CL, condition.weightCarried, {
      share: 1e-9,
    });
  });

  it('spreads: more of the wing stalls as the angle grows', { timeout: 60_000 }, () => {
    const settled = stallOf(goodDesign('curved-race')).points.filter(({ isSettled }) => isSettled);
    const shares = settled.map(({ stalledShare }) => stalledShare);
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)!).toBeGreaterThan(0.5);
    for (const { CL, shares: load } of settled) {
      expect(Number.isFinite(CL)).toBe(true);
      expect(Math.max(...load)).toBeLessThan(1.05);
    }
  });
});
