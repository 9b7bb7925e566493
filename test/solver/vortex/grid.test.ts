/**
 * Doubling the strips: CL 0.3 %, CDi 0.5 %, lost lift 0.002, derivatives 2 %, at the same angle. A derivative that is a
 * small difference of large ones (yaw from roll about a balance point two metres up, the yaw damping of a flat foil)
 * is held to 2 % of a hundredth of the largest coefficient of its own cause instead.
 */
import { describe, it } from 'vitest';
import type { Derivatives } from '../../../src/solver/report.ts';
import { solve } from '../../../src/solver/solve.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesigns } from '../../support/designs.ts';

const CAUSES = ['beta', 'p', 'r'] as const;
const KINDS = ['CY', 'Cl', 'Cn'] as const;

function expectSame(coarse: Derivatives, fine: Derivatives): void {
  for (const cause of CAUSES) {
    const largest = Math.max(...KINDS.map((kind) => Math.abs(fine[`${kind}${cause}`])));
    for (const kind of KINDS) {
      const key = `${kind}${cause}` as const;
      const within = 0.02 * Math.max(Math.abs(fine[key]), 0.01 * largest);
      expectClose(key, coarse[key], fine[key], { within });
    }
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
      expectSame(coarse.stability.foil, fine.stability.foil);
      expectSame(coarse.stability.craft, fine.stability.craft);
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
