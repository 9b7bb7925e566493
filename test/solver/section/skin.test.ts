/** Rough walls and grits against handbook laws; the heights a layer bears are in the published table (transition.ts). */
import { describe, expect, it } from 'vitest';
import { GRADES, grainOf } from '../../../src/solver/section/grit.ts';
import { roughFriction, roughnessDrag, speedLoss } from '../../../src/solver/section/rough-wall.ts';
import { turbulentLocal } from '../../../src/solver/section/skin.ts';
import { sectionState } from '../../../src/solver/section/state.ts';

/** Mean friction of a rough plate of length 1: local friction raised station by station, under the layer it makes. */
function roughPlate(reynolds: number, k: number): number {
  const steps = 2000;
  let smooth = 0; // momentum thickness
  let rough = 0;
  for (let i = 0; i < steps; i++) {
    const cf = turbulentLocal((reynolds * (i + 0.5)) / steps);
    smooth += cf / 2 / steps;
    rough += roughFriction(cf, k * reynolds, Math.max(1, rough / smooth)) / 2 / steps;
  }
  return 2 * rough;
}

describe('rough walls', () => {
  it('lose no speed below 2.25 wall units and follow Nikuradse above 90 (Cebeci and Bradshaw 1977, from memory)', () => {
    expect(speedLoss(2.2)).toBe(0);
    // u+ = ln(y+)/0.41 + 5.2 less the loss is ln(y/k)/0.41 + 8.5.
    expect(speedLoss(200)).toBeCloseTo(Math.log(200) / 0.41 + 5.2 - 8.5, 12);
    expect(Math.abs(speedLoss(89.9) - speedLoss(90.1))).toBeLessThan(0.01);
    for (let k = 3; k < 300; k += 3) expect(speedLoss(k + 3)).toBeGreaterThan(speedLoss(k));
  });

  it('leave friction alone up to five wall units or so, the hydraulically smooth limit (Schlichting, ch. XX)', () => {
    const cf = turbulentLocal(1e6);
    const unit = 1 / Math.sqrt(cf / 2); // u/u_tau
    expect(roughFriction(cf, 2 * unit)).toBeCloseTo(cf, 9);
    expect(roughFriction(cf, 5 * unit) / cf).toBeLessThan(1.06);
    expect(roughFriction(cf, 50 * unit) / cf).toBeGreaterThan(1.6);
  });

  // CF = (1.89 + 1.62 log10(L/k))^-2.5: H. Schlichting, Boundary-Layer Theory, ch. XXI, from memory. It comes out 8 to 12 % low.
  it.each([1e3, 3e3, 1e4])(
    'give a plate of L/k %d the drag of the fully rough law within 12 %%',
    (length) => {
      const wanted = (1.89 + 1.62 * Math.log10(length)) ** -2.5;
      expect(Math.abs(roughPlate(1e7, 1 / length) / wanted - 1)).toBeLessThan(0.12);
    },
  );

  it('add nothing to a section whose grains are finer than the limit, and more the coarser they are', () => {
    const reynolds = 8e5;
    const { upper } = sectionState(
      { kind: 'naca4', code: '2411' },
      { reynolds, alpha: 0.02, clarity: 'coastal' },
    )!;
    const drag = [0.2, 1, 2, 4].map((share) => roughnessDrag(upper, (share * 100) / reynolds, reynolds));
    expect(drag[0]).toBeCloseTo(0, 12);
    expect(drag[2]!).toBeGreaterThan(drag[1]!);
    expect(drag[3]!).toBeGreaterThan(drag[2]!);
    expect(drag[3]!).toBeLessThan(0.01);
  });
});

describe('grit', () => {
  it('between two grades lies between their grains, and at a grade is its own', () => {
    for (const { name, median } of GRADES)
      expect(grainOf(Number(name.slice(1)))).toBeCloseTo(median * 1e-6, 12);
    expect(grainOf(900)).toBeLessThan(grainOf(800));
    expect(grainOf(900)).toBeGreaterThan(grainOf(1000));
  });
});
