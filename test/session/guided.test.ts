/** Guided starts and edits of what is wanted. */
import { describe, expect, it, vi } from 'vitest';
import { GUIDED, type GuidedKind, guidedDesign, HOLDS, usualAnswers } from '../../src/session/guided.ts';
import { withValueAt } from '../../src/session/paths.ts';
import { freeChanges, limitChanges } from '../../src/session/wanted-edits.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import { planOf } from '../../src/solver/studies/propose/plan.ts';
import { makeRunner } from '../../src/solver/studies/speed-study.ts';
import { takeOff } from '../../src/solver/studies/take-off.ts';
import { demo as makeDemo } from './designs.ts';

const demo = makeDemo();

vi.setConfig({ testTimeout: 60_000 }); // sections are worked out at first use

const KINDS = Object.keys(GUIDED) as GuidedKind[];

describe.each(KINDS)('the guided start %s', (kind) => {
  it('gives a document that loads, heavy and light, slow and fast', () => {
    const usual = usualAnswers(kind);
    for (const allUpMass of [45, usual.allUpMass, 130])
      for (const quicker of [0.8, 1, 1.3]) {
        const answers = {
          ...usual,
          allUpMass,
          takeOff: quicker * usual.takeOff,
          cruise: quicker * usual.cruise,
        };
        expect(readDesignValue(guidedDesign(kind, answers))).toMatchObject({ ok: true });
      }
  });

  it('says in the document what was answered, with ten quantities free', () => {
    const design = guidedDesign(kind, { ...usualAnswers(kind), allUpMass: 77, hold: 'firm' });
    expect(design.brief.allUpMass).toBe(77);
    expect(design.wanted?.limits?.holdIndex).toEqual({ least: HOLDS.firm });
    expect(design.wanted?.limits?.takeOffSpeed).toEqual({ most: design.brief.speeds.takeOff });
    const plan = planOf(design);
    expect(plan.problem).toBeNull();
    expect(plan.quantities.filter(({ isFree }) => isFree)).toHaveLength(10);
  });

  it('begins with a wing that lifts off about as slowly as asked', () => {
    const design = guidedDesign(kind, usualAnswers(kind));
    expect(takeOff(makeRunner, design)!.speed / design.brief.speeds.takeOff).toBeCloseTo(0.95, 0.7);
  });
});

describe('edits of what is wanted', () => {
  const edited = (design: Design, changes: ReturnType<typeof limitChanges>): Design =>
    changes.reduce((whole, { path, value }) => withValueAt(whole, path, value), design);

  it('keep the other limits that held silently', () => {
    const before = planOf(demo);
    const after = planOf(edited(demo, limitChanges(before, { name: 'span', side: 'most' }, 0.9)));
    const held = ({ limits }: typeof before) => limits.filter((limit) => limit.held !== null);
    expect(held(after)).toHaveLength(held(before).length + 1);
    for (const limit of held(before)) expect(held(after)).toContainEqual(limit);
  });

  it('let one limit go and no other', () => {
    const before = planOf(demo);
    const after = planOf(edited(demo, limitChanges(before, { name: 'holdIndex', side: 'least' }, null)));
    expect(after.limits.find(({ name }) => name === 'holdIndex')?.held).toBeNull();
    expect(after.limits.filter(({ held }) => held !== null)).toHaveLength(
      before.limits.filter(({ held }) => held !== null).length - 1,
    );
  });

  it('hold a quantity, and free another within a range', () => {
    const before = planOf(demo);
    const held = planOf(edited(demo, freeChanges(before, 'droop', null)));
    expect(held.quantities.filter(({ isFree }) => isFree).map(({ name }) => name)).not.toContain('droop');
    const freed = planOf(edited(demo, freeChanges(before, 'sweep', { least: 0, most: 12 })));
    expect(freed.quantities.find(({ name }) => name === 'sweep')).toMatchObject({
      isFree: true,
      least: 0,
      most: 12,
    });
    expect(freed.quantities.filter(({ isFree }) => isFree)).toHaveLength(
      before.quantities.filter(({ isFree }) => isFree).length + 1,
    );
  });
});
