/** The upper strut, whose layer spray and waves keep turbulent: the same in totals, Speed, Hold and Skin. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { RANGES } from '../../../src/solver/design/ranges.ts';
import { readDesign } from '../../../src/solver/design/read.ts';
import { sectionForm, turbulentFriction } from '../../../src/solver/forces/drag-sources.ts';
import { solve } from '../../../src/solver/solve.ts';
import { finishStudy } from '../../../src/solver/studies/finish-study.ts';
import { profileFor } from '../../../src/solver/studies/profile-for.ts';
import { skinView } from '../../../src/solver/studies/skin-study.ts';
import { speedStudy } from '../../../src/solver/studies/speed-study.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign } from '../../support/designs.ts';

const drawn = goodDesign('curved-race');
const { depth, speeds } = drawn.brief;
const kept = (turbulentTo?: number, changes: Partial<Design> = {}): Design => {
  const { turbulentTo: _, ...strut } = drawn.strut!;
  return {
    ...drawn,
    ...changes,
    strut: turbulentTo === undefined ? strut : { ...strut, turbulentTo },
  };
};
const strutDrag = (design: Design, deep = false) =>
  solve(design, { neutralDroop: false, ...(deep && { depth: null }) }).drag.strutProfile;
describe('upper strut kept turbulent', { timeout: 60_000 }, () => {
  it('counts by its length, up to all that is wetted', () => {
    const [none, part, whole, more] = [0, 0.2, depth!, 3].map((to) => strutDrag(kept(to))) as [
      number,
      number,
      number,
      number,
    ];
    expectClose('by length', part, none + (whole - none) * (0.2 / depth!), { share: 1e-9 });
    expect(more).toBe(whole);
    expect(whole).toBeGreaterThan(1.2 * none);
    expect(strutDrag(kept())).toBe(strutDrag(kept(RANGES['strut.turbulentTo'].default)));
  });

  it('is no matter in deep water, where the strut meets no surface', () => {
    expect(strutDrag(kept(0.3), true)).toBe(strutDrag(kept(0), true));
  });

  it('drags about as a turbulent plate with a form factor', () => {
    // ITTC-1957 line; S. F. Hoerner, Fluid-Dynamic Drag (1965), ch. 6, from memory: 1 + 2 t/c + 60 (t/c)^4.
    const { chord, thickness } = drawn.strut!;
    for (const reynolds of [5e5, 1e6, 2e6]) {
      const cd = profileFor(drawn).strutCd(reynolds, 'turbulent')!;
      const plate = 2 * turbulentFriction(reynolds) * sectionForm(thickness / chord);
      expectClose(`cd at Re ${reynolds}`, cd, plate, { share: 0.12 });
      expect(cd).toBeGreaterThan(profileFor(drawn).strutCd(reynolds, 'natural')!);
    }
  });

  it('counts in the derivatives of the craft: a dragging strut resists slipping', () => {
    const none = solve(kept(0), { neutralDroop: false }).stability.craftProfile;
    const some = solve(kept(0.2), { neutralDroop: false }).stability.craftProfile;
    expect(Math.abs(some.CYbeta)).toBeGreaterThan(Math.abs(none.CYbeta));
  });

  it('is the same newtons in Speed', () => {
    const { named } = finish(
      speedStudy(kept(0.2), { from: speeds.cruise, to: speeds.top, count: 2, fix: 'incidence' }),
    );
    expectClose('strut', named.cruise.point!.drag.strutProfile, strutDrag(kept(0.2)), { share: 1e-9 });
  });

  it('is turbulent from the nose in Skin, and left alone below', () => {
    const at = (eta: number) => skinView(kept(0.1), { part: 'strut', eta, speed: speeds.cruise });
    const [low, high] = [at(0.4), at(0.95)];
    expect(low.upper.transition).toBeGreaterThan(0.25);
    expect(high.upper.transition).toBeLessThan(0.1);
    expect(high.least.spread).toBeGreaterThan(0);
    expect(low.strutRun.cruise).toBeCloseTo(high.strutRun.cruise!, 12);
  });

  it('pays more for a coarse finish: grains that do not trip the layer cost only behind transition', () => {
    const costOf = (to: number) => {
      const { chosen } = finish(finishStudy(kept(to, { finish: { grade: 80 } })));
      return chosen!.top!.parts.strut;
    };
    expect(costOf(0.3)).toBeGreaterThan(costOf(0));
    expect(costOf(0)).toBeGreaterThan(0);
  });

  it('is read with its range', () => {
    const reading = readDesign(JSON.stringify(kept(6)));
    expect(reading).toEqual({ ok: false, message: 'strut.turbulentTo: found 6, allowed 0 to 5 m' });
  });
});
