/** Pitch: what trims, trims; downwash and neutral point in the limits that have closed forms. */
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { solve } from '../../../src/solver/solve.ts';
import { expectClose } from '../../support/close.ts';
import {
  ellipticChord,
  goodDesign,
  goodDesigns,
  plainDesign,
  plainStabilizer,
  taperedChord,
} from '../../support/designs.ts';

const quick = { neutralDroop: false } as const;
const withBalance = (design: Design, x: number): Design => ({
  ...design,
  brief: { ...design.brief, balance: { ...design.brief.balance, x } },
});

describe('trim', () => {
  for (const [name, design] of goodDesigns()) {
    const report = solve(design, quick);
    const weightTimesMillimetre = report.lift.total * 1e-3;

    it(`${name}: with the balance point at the trim stance the moment vanishes`, () => {
      const { trimStance } = report.pitch;
      const { pitch } = solve(withBalance(design, trimStance!), quick);
      expectClose('moment', pitch.momentAboutBalance, 0, { within: 1e-6 * weightTimesMillimetre });
      expectClose('stance', pitch.trimStance!, trimStance!, { within: 1e-9 });
    });

    it(`${name}: with the stabilizer at the trim incidence the moment vanishes at the same lift`, () => {
      const { trimIncidence } = report.pitch;
      if (!design.stabilizer) {
        expect(trimIncidence).toBeNull();
        return;
      }
      const trimmed: Design = { ...design, stabilizer: { ...design.stabilizer, incidence: trimIncidence! } };
      const { pitch, lift } = solve(trimmed, quick);
      expectClose('lift', lift.total, report.lift.total, { share: 1e-9 });
      // incidence enters as a tangent: within a millimetre of stance
      expectClose('moment', pitch.momentAboutBalance, 0, { within: weightTimesMillimetre });
      expectClose('incidence', pitch.trimIncidence!, trimIncidence!, { within: 0.02 });
    });
  }

  it('more nose-up incidence of the stabilizer moves the stance aft', () => {
    const design = goodDesign('curved-race');
    const turned = structuredClone(design);
    turned.stabilizer!.incidence += 0.1;
    expect(solve(turned, quick).pitch.trimStance!).toBeGreaterThan(solve(design, quick).pitch.trimStance!);
  });

  it('the moment about another point is the moment here less the lift on its arm', () => {
    const design = plainDesign({ chord: taperedChord(8, 0.4) }, { stabilizer: plainStabilizer() });
    const [one, other] = [0, 0.1].map((x) => solve(withBalance(design, x), { alpha: 3, ...quick })) as [
      ReturnType<typeof solve>,
      ReturnType<typeof solve>,
    ];
    // z force from lift L and drag along the stream D: Z = L cos a + D sin a
    const a = (3 * Math.PI) / 180;
    const up = one.lift.total * Math.cos(a) + one.inducedDrag.nearField * Math.sin(a);
    expectClose('moment', other.pitch.momentAboutBalance - one.pitch.momentAboutBalance, 0.1 * up, {
      share: 1e-9,
    });
  });
});

describe('neutral point', () => {
  it('of a straight untapered wing lies at its quarter chord: one row has no other place for the lift', () => {
    const { stability } = solve(plainDesign({}), { alpha: 0, ...quick });
    expectClose('neutral point', stability.neutralPoint, 0, { within: 1e-12 });
  });

  it('lies where wing and stabilizer share the lift slope', () => {
    const { stability, geometry } = solve(goodDesign('curved-race'), quick);
    expect(stability.neutralPoint).toBeGreaterThan(0);
    expectClose(
      'static margin',
      stability.staticMargin,
      (stability.neutralPoint - 0.14) / geometry.wing.meanChord,
      { share: 1e-9 },
    );
  });

  it('moves aft with the arm', () => {
    const at = (arm: number) =>
      solve(plainDesign({}, { stabilizer: plainStabilizer({ arm }) }), { alpha: 2, ...quick }).stability
        .neutralPoint;
    expect(at(0.8)).toBeGreaterThan(at(0.6));
  });
});

describe('downwash at the stabilizer', () => {
  it('far behind an elliptic wing is 2 CLalpha/(pi AR) (Glauert 1926, ch. XI)', () => {
    const stabilizer = plainStabilizer({
      length: { kind: 'unrolled', value: 0.05 },
      chord: { kind: 'taper', root: 0.0004, tip: 0.0004 }, // it must not lift to speak of
      arm: 10,
    });
    const { pitch, lift } = solve(plainDesign({ chord: ellipticChord(40) }, { stabilizer }), {
      alpha: 0,
      ...quick,
    });
    expectClose('downwash slope', pitch.downwashSlope!, (2 * lift.CLalpha) / (Math.PI * 40), { share: 0.01 });
  });

  it('falls with the arm, rises under the surface, and is none without a stabilizer', () => {
    const slope = (arm: number, depth: number | null = null) =>
      solve(plainDesign({}, { stabilizer: plainStabilizer({ arm }) }), { alpha: 1, depth, ...quick }).pitch
        .downwashSlope!;
    expect(slope(0.6)).toBeGreaterThan(slope(1.5));
    expect(slope(0.6, 0.2)).toBeGreaterThan(slope(0.6));
    expect(solve(plainDesign({}), { alpha: 1, ...quick }).pitch.downwashSlope).toBeNull();
  });
});
