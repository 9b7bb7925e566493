/** The ledger of lost lift: its terms, its limits, and its twins drawn and solved as designs of their own. */
import { describe, expect, it } from 'vitest';
import type { Design, DroopLaw } from '../../../src/solver/design/document.ts';
import { solve } from '../../../src/solver/solve.ts';
import { expectClose } from '../../support/close.ts';
import {
  goodDesign,
  goodDesigns,
  plainDesign,
  plainStabilizer,
  taperedChord,
} from '../../support/designs.ts';

const DEGREE = Math.PI / 180;
const quick = { neutralDroop: false } as const;

const flatTwin = (design: Design, unrolledLength: number): Design => ({
  ...design,
  wing: { ...design.wing, droop: { kind: 'flat' }, length: { kind: 'unrolled', value: unrolledLength } },
});

describe('terms of the ledger', () => {
  for (const [name, design] of goodDesigns())
    it(`${name}: add up`, () => {
      const { ledger } = solve(design, quick);
      const { normalForce, verticalLift, leanedAway, flatLift, metAtSmallerAngle, lostLift } = ledger;
      expectClose('leaned away', leanedAway, normalForce - verticalLift, { within: 1e-9 });
      expectClose('lost', leanedAway + metAtSmallerAngle, lostLift, { within: 1e-9 });
      expectClose('kept and lost', verticalLift + lostLift, flatLift, { within: 1e-9 });
      expectClose('share', ledger.lostFraction!, lostLift / flatLift, { within: 1e-12 });
      if (design.wing.droop.kind !== 'flat') expect(ledger.pushedSideways).toBeGreaterThan(ledger.leanedAway);
    });

  it('a pure vee leans N (1 - cos) away and pushes N sin sideways', () => {
    for (const angle of [8, 20, 35]) {
      const { ledger } = solve(plainDesign({ droop: { kind: 'vee', tipAngle: angle } }), {
        alpha: 4,
        ...quick,
      });
      expectClose('leaned away', ledger.leanedAway, ledger.normalForce * (1 - Math.cos(angle * DEGREE)), {
        share: 1e-9,
      });
      expectClose('pushed sideways', ledger.pushedSideways, ledger.normalForce * Math.sin(angle * DEGREE), {
        share: 1e-9,
      });
    }
  });

  it('a flat wing loses nothing, by whichever law it is flat', () => {
    const laws: DroopLaw[] = [
      { kind: 'flat' },
      { kind: 'arc', tipAngle: 0 },
      { kind: 'vee', tipDrop: 0 },
      { kind: 'late', tipAngle: 0, from: 0.5, power: 2 },
      {
        kind: 'points',
        at: [
          [0, 0],
          [1, 0],
        ],
      },
      { kind: 'formula', expression: '0 * eta' },
    ];
    const design = goodDesign('flat-race');
    const flat = solve(design, quick);
    for (const droop of laws) {
      const { ledger, lift, inducedDrag } = solve({ ...design, wing: { ...design.wing, droop } }, quick);
      for (const key of ['leanedAway', 'lostLift', 'lostFraction', 'metAtSmallerAngle'] as const)
        expectClose(key, ledger[key]!, 0, { within: 1e-9 });
      // what the sweep alone pushes sideways is no matter of droop
      expectClose('pushed sideways', ledger.pushedSideways, flat.ledger.pushedSideways, { within: 1e-9 });
      expectClose('deep', ledger.deepWater.lostFraction!, 0, { within: 1e-12 });
      expectClose('extra angle', ledger.sameLift.unrolled.extraAlpha, 0, { within: 1e-12 });
      expectClose('extra drag', ledger.sameLift.sameSpan.extraInducedDrag, 0, { within: 1e-9 });
      expectClose('CLalpha', lift.CLalpha, flat.lift.CLalpha, { share: 1e-8 }); // areas differ by where a law has knots
      expectClose('CDi', inducedDrag.CDi, flat.inducedDrag.CDi, { share: 1e-8 });
    }
  });

  it('a vee of very high aspect ratio keeps the squared cosine', () => {
    for (const angle of [10, 20, 40]) {
      const design = plainDesign({ chord: taperedChord(2000, 1), droop: { kind: 'vee', tipAngle: angle } });
      const { ledger } = solve(design, { alpha: 3, ...quick });
      expectClose('kept', 1 - ledger.lostFraction!, Math.cos(angle * DEGREE) ** 2, { share: 0.001 });
    }
  });

  it('a wing without lift to lose says nothing of shares', () => {
    const { ledger } = solve(plainDesign({ droop: { kind: 'arc', tipAngle: 20 } }), { alpha: -2, ...quick });
    expect(ledger.lostFraction).toBeNull();
    expect(ledger.deepWater.lostFraction).toBeNull();
  });
});

describe('twins, drawn and solved as designs of their own', () => {
  for (const [name, design] of goodDesigns()) {
    const report = solve(design, quick);
    const { alpha, depth } = report.condition;
    const twin = flatTwin(design, report.geometry.wing.unrolledLength);

    it(`${name}: the unrolled twin lifts that much at the same angle`, () => {
      const flat = solve(twin, { alpha, depth, ...quick });
      expectClose('flat lift', report.ledger.flatLift, flat.ledger.verticalLift, { share: 1e-9 });
    });

    it(`${name}: and needs that much less angle and drag at the same lift`, () => {
      const flat = solve(twin, { lift: report.lift.total, depth, ...quick });
      const { extraAlpha, extraInducedDrag } = report.ledger.sameLift.unrolled;
      expectClose('extra angle', extraAlpha, alpha - flat.condition.alpha, { within: 1e-9 });
      const difference = report.inducedDrag.farField - flat.inducedDrag.farField;
      expectClose('extra drag', extraInducedDrag, difference, { within: 1e-6 });
    });

    it(`${name}: in deep water the account is that of deep water`, () => {
      // the foil alone: a strut changes nothing in level running
      const deep = solve(design, { alpha, depth: null, ...quick });
      expectClose('share', report.ledger.deepWater.lostFraction!, deep.ledger.lostFraction!, {
        within: 1e-9,
      });
    });
  }

  it('the same-span twin of a vee is a flat wing with the chords it has at the same y', () => {
    const droop = { kind: 'vee', tipAngle: 25 } as const;
    const chord = taperedChord(9, 0.5);
    const bent = solve(plainDesign({ chord, droop }), { lift: 400, ...quick });
    const length = { kind: 'tipToTip', value: Math.cos(25 * DEGREE) } as const;
    const flat = solve(plainDesign({ chord, length }), { lift: 400, ...quick });
    expectClose('area', flat.geometry.wing.projectedArea, bent.geometry.wing.projectedArea, { share: 1e-9 });
    const { extraAlpha, extraInducedDrag } = bent.ledger.sameLift.sameSpan;
    expectClose('extra angle', extraAlpha, bent.condition.alpha - flat.condition.alpha, { within: 1e-9 });
    const difference = bent.inducedDrag.farField - flat.inducedDrag.farField;
    expectClose('extra drag', extraInducedDrag, difference, { within: 1e-9 });
    expect(extraInducedDrag).toBeLessThan(0); // at the same span the nonplanar wake gives back
  });

  it('a design at the steepest angle allowed has its account, though a twin stands steeper', () => {
    for (const alpha of [-45, 45]) {
      const { ledger } = solve(goodDesign('downwind'), { alpha, ...quick });
      const { sameSpan } = ledger.sameLift;
      expect(Math.abs(sameSpan.alpha)).toBeGreaterThan(45);
      expectClose('extra angle', sameSpan.extraAlpha, alpha - sameSpan.alpha, { within: 1e-9 });
    }
  });

  it('a flat twin that would run into the stabilizer is refused by name', () => {
    const length = { kind: 'unrolled', value: 0.62 } as const;
    const stabilizer = { ...plainStabilizer(), length, arm: 0.2, height: 0 };
    const sweep = { kind: 'straight', angle: 38 } as const;
    const design = plainDesign({ sweep, droop: { kind: 'arc', tipAngle: -30 } }, { stabilizer });
    expect(() => solve(design, quick)).toThrow(
      /^stabilizer: found it touching the flat twin that the wing is compared with 0\.\d+ m from the middle, allowed clear/,
    );
  });

  it('drooped tips run deeper, and the surface takes less from them', () => {
    for (const name of ['curved-race', 'downwind']) {
      const design = goodDesign(name);
      const { ledger } = solve(design, { depth: 0.25, ...quick });
      expect(ledger.lostFraction!).toBeLessThan(ledger.deepWater.lostFraction!);
    }
  });
});
