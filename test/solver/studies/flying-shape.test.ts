/** Flying droop: convergence, energy, direction and size of the change; the shape to build. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { readDesign, readDesignValue } from '../../../src/solver/design/read.ts';
import { builtDesign, builtPlanform } from '../../../src/solver/studies/built-shape.ts';
import { flyingShape } from '../../../src/solver/studies/flying-shape.ts';

function demo(name: string): Design {
  const reading = readDesign(
    readFileSync(new URL(`../../../web/demos/${name}.json`, import.meta.url), 'utf8'),
  );
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

const DEMOS = ['curved-race', 'downwind', 'flat-race'];

/** The wing's own stiffness times `factor`; all else stays as it is. */
function withWing(design: Design, factor: number): Design {
  return {
    ...design,
    laminate: { ...design.laminate, wing: { modulus: 1e11 * factor, shear: 2e10 * factor } },
  };
}

const change = (design: Design, lift?: number) => {
  const { tipDroop } = flyingShape(design, lift === undefined ? {} : { condition: { lift } });
  return tipDroop.flying - tipDroop.built;
};

describe('the flying shape', () => {
  it.each(DEMOS)('of %s settles in under ten steps', (name) => {
    expect(flyingShape(demo(name)).steps).toBeLessThan(10);
  });

  it.each(DEMOS)('of %s stores the work of its loads within 1 % (B. P. E. Clapeyron)', (name) => {
    const { strain, work } = flyingShape(demo(name)).energy;
    expect(strain).toBeGreaterThan(0);
    expect(Math.abs(work / strain - 1)).toBeLessThan(0.01);
  });

  it.each(DEMOS)('of %s carries the same lift', (name) => {
    const design = demo(name);
    const weight = (1 - design.brief.upwardPull) * design.brief.allUpMass * 9.80665;
    expect(flyingShape(design).lift / weight).toBeCloseTo(1, 6);
  });

  it.each(DEMOS)('has less droop than the wing of %s was built with: the load is upward', (name) => {
    expect(change(demo(name))).toBeLessThan(0);
  });

  it('has more droop under a downward load', () => {
    expect(change(demo('curved-race'), -400)).toBeGreaterThan(0);
  });

  it('changes in proportion to a small load', () => {
    const stiff = withWing(demo('flat-race'), 5);
    const none = change(stiff, 0); // camber and twist bend a wing that carries nothing in all
    expect((change(stiff, 200) - none) / (change(stiff, 100) - none)).toBeCloseTo(2, 1);
  });

  it('changes in proportion to 1/E', () => {
    const [one, two] = [withWing(demo('curved-race'), 5), withWing(demo('curved-race'), 10)];
    expect(change(one) / change(two)).toBeCloseTo(2, 1);
  });

  it('of a wing that hardly gives is the drawn one', () => {
    const shape = flyingShape(withWing(demo('curved-race'), 10));
    expect(Math.abs(shape.tipDroop.flying - 26)).toBeLessThan(0.1);
    expect(shape.rollFromYaw.flying).toBeCloseTo(shape.rollFromYaw.built!, 2);
  });

  it('that would never settle is refused in a sentence', () => {
    const soft: Design = {
      ...demo('curved-race'),
      laminate: { wing: { modulus: 1e8, shear: 1e7 }, stabilizer: { modulus: 1e8, shear: 1e7 } },
    };
    expect(() => flyingShape(soft)).toThrow(/finds no shape|no angle/);
  });
});

describe('the shape to build', () => {
  it.each(DEMOS)('of %s is a valid document and flies as drawn', (name) => {
    const design = demo(name);
    const reading = readDesignValue(builtDesign(design));
    if (!reading.ok) throw new Error(reading.message);
    const drawn = flyingShape(design);
    const flown = flyingShape(reading.design);
    for (const part of ['wing', 'stabilizer'] as const) {
      const [wanted, found] = [drawn[part]!, flown[part]!];
      found.droop.flying.forEach((angle, k) => {
        expect(Math.abs(angle - wanted.droop.built[k]!)).toBeLessThan(0.05);
      });
      found.twist.flying.forEach((angle, k) => {
        expect(Math.abs(angle - wanted.twist.built[k]!)).toBeLessThan(0.02);
      });
    }
  });

  it('has more droop than what flies, and the drawn unrolled length', () => {
    const design = demo('curved-race');
    const { planform, tipDroop } = builtPlanform(design);
    expect(tipDroop.build).toBeGreaterThan(tipDroop.wanted);
    expect(planform.length).toEqual({ kind: 'unrolled', value: expect.closeTo(0.74, 9) });
    expect(planform.chord).toEqual(design.wing.chord);
  });

  it('of a stabilizer that is not there is refused', () => {
    expect(() => builtPlanform({ ...demo('curved-race'), stabilizer: null }, 'stabilizer')).toThrow(
      'stabilizer: the design has none to build',
    );
  });
});
