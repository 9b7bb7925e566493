/** Polars made ahead in slices: all that a solve asks for, and the same figures. */
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { SectionLayer } from '../../../src/solver/section/layer.ts';
import { createPolarTable, type PolarTable } from '../../../src/solver/section/table.ts';
import { solve } from '../../../src/solver/solve.ts';
import { prepareSections } from '../../../src/solver/studies/prepare-sections.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { goodDesign } from '../../support/designs.ts';

/** A design whose wing has sections that no cache has met. */
function fresh(camberScale: number): Design {
  const design = goodDesign('curved-race');
  const root = { kind: 'naca4', code: '3411', camberScale } as const;
  return { ...design, wing: { ...design.wing, section: { ...design.wing.section, root } } };
}

describe('sections made ahead', { timeout: 60_000 }, () => {
  it('leave a solve nothing to make', () => {
    const design = fresh(1.001);
    finish(prepareSections(design, [design.brief.speeds.cruise]));
    const solves = vi.spyOn(SectionLayer.prototype, 'solve');
    const { drag } = solve(design, { neutralDroop: false });
    expect(solves).not.toHaveBeenCalled();
    expect(drag.total).toBeGreaterThan(0);
    solves.mockRestore();
  });

  it('hold the stirred part of a strut that pierces the surface at one speed only', () => {
    const { brief, strut, ...rest } = goodDesign('curved-race');
    const atCruise = { ...brief, depth: null, depths: { cruise: 0.5 } };
    const thick = 1.25 * strut!.thickness; // whose polars no other test has made
    const design: Design = { ...rest, brief: atCruise, strut: { ...strut!, thickness: thick } };
    finish(prepareSections(design, [brief.speeds.cruise]));
    const solves = vi.spyOn(SectionLayer.prototype, 'solve');
    expect(solve(design, { neutralDroop: false }).condition.depth).toBe(0.5);
    expect(solves).not.toHaveBeenCalled();
    solves.mockRestore();
  });

  it('give way often: no slice solves more than three angles', () => {
    const solves = vi.spyOn(SectionLayer.prototype, 'solve');
    const design = fresh(1.002);
    let most = 0;
    let before = 0;
    for (const _ of prepareSections(design, [design.brief.speeds.cruise])) {
      most = Math.max(most, solves.mock.calls.length - before);
      before = solves.mock.calls.length;
    }
    expect(before).toBeGreaterThan(20);
    expect(most).toBeLessThanOrEqual(3); // zero lift, a step below it, and the first of the walk
    solves.mockRestore();
  });

  it('are the same, whoever makes them and however often they pause', () => {
    const outline = (k: number) => ({ kind: 'naca4', code: '2411', camberScale: 1 + 1e-13 * k }) as const;
    const [whole, paused, shared] = [1, 2, 3].map((k) => createPolarTable(outline(k), 'clean'));
    const same = (table: PolarTable) => {
      expect(table.drag(0.4, 4e5)).toBeCloseTo(whole!.drag(0.4, 4e5), 10);
      expect(table.limit(4e5)).toBeCloseTo(whole!.limit(4e5), 8);
    };
    finish(paused!.prepare(4e5));
    same(paused!);
    const [one, other] = [shared!.prepare(4e5), shared!.prepare(4e5)];
    let isDone = false;
    while (!isDone) isDone = [one.next(), other.next()].every(({ done }) => done);
    same(shared!);
  });
});
