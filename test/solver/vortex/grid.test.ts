/**
 * Doubling the strips: CL 0.3 %, CDi 0.5 %, lost lift 0.002, derivatives 2 %, at the same angle. A derivative that is a
 * small difference of what wing, stabilizer and strut add (yaw from roll about a balance point two metres up) is held to
 * half a percent of the largest of these instead.
 */
import { describe, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { solve } from '../../../src/solver/solve.ts';
import { expectClose } from '../../support/close.ts';
import { type DerivativeName, lateralParts } from '../../support/derivative-parts.ts';
import { goodDesigns } from '../../support/designs.ts';

function expectDerivativesStand(design: Design, alpha: number): void {
  const [coarse, fine] = [40, 80].map((strips) => lateralParts(design, alpha, strips)) as [
    ReturnType<typeof lateralParts>,
    ReturnType<typeof lateralParts>,
  ];
  for (const who of ['foil', 'craft'] as const)
    for (const name of Object.keys(fine[who]) as DerivativeName[]) {
      const { value, largest } = fine[who][name];
      const within = Math.max(0.02 * Math.abs(value), 0.005 * largest);
      expectClose(`${name} of the ${who}`, coarse[who][name].value, value, { within });
    }
}

describe('the answer stands as strips double', () => {
  for (const [name, design] of goodDesigns())
    it(name, () => {
      const coarse = solve(design, { neutralDroop: false });
      const fine = solve(design, { alpha: coarse.condition.alpha, strips: 80, neutralDroop: false });
      expectClose('CL', coarse.lift.CL, fine.lift.CL, { share: 0.003 });
      expectClose('CLalpha', coarse.lift.CLalpha, fine.lift.CLalpha, { share: 0.003 });
      expectClose('CDi', coarse.inducedDrag.CDi, fine.inducedDrag.CDi, { share: 0.005 });
      expectClose('k', coarse.inducedDrag.leastFactor, fine.inducedDrag.leastFactor, { share: 0.001 });
      expectClose('lost share', coarse.ledger.lostFraction!, fine.ledger.lostFraction!, { within: 0.002 });
      const deep = [coarse, fine].map(({ ledger }) => ledger.deepWater.lostFraction!) as [number, number];
      expectClose('lost share, deep', ...deep, { within: 0.002 });
      const { meanChord } = fine.geometry.wing;
      expectClose('neutral point', coarse.stability.neutralPoint, fine.stability.neutralPoint, {
        within: 0.005 * meanChord,
      });
      expectDerivativesStand(design, coarse.condition.alpha);
    });

  it('and when the stabilizer takes one strip more or less', () => {
    for (const [, design] of goodDesigns()) {
      if (!design.stabilizer) continue;
      const base = solve(design, { neutralDroop: false });
      for (const stabilizerStrips of [19, 21]) {
        const other = solve(design, { alpha: base.condition.alpha, stabilizerStrips, neutralDroop: false });
        expectClose('CL', other.lift.CL, base.lift.CL, { share: 0.005 });
        expectClose('CDi', other.inducedDrag.CDi, base.inducedDrag.CDi, { share: 0.005 });
        expectClose('lost share', other.ledger.lostFraction!, base.ledger.lostFraction!, { within: 0.002 });
      }
    }
  });
});
