/** The hold index worked by hand, and the neutral droop fed back. */
import { describe, expect, it } from 'vitest';
import { withDroopAmplitude } from '../../../src/solver/design/laws.ts';
import { surfaceOf } from '../../../src/solver/geometry/surface.ts';
import { solve } from '../../../src/solver/solve.ts';
import { holdTerms } from '../../../src/solver/studies/hold.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, goodDesigns, plainDesign, plainStabilizer, plainWing } from '../../support/designs.ts';

const DEGREE = Math.PI / 180;

describe('hold index', () => {
  // Wing: 1 m unrolled, chord 0.1 m, vee of 10 degrees. Stabilizer: 0.4 m, chord 0.05 m, vee of 30 degrees, arm 0.6 m.
  const wing = surfaceOf(plainWing({ droop: { kind: 'vee', tipAngle: 10 } }));
  const tail = plainStabilizer({ droop: { kind: 'vee', tipAngle: 30 }, arm: 0.6 });
  const stabilizer = surfaceOf(tail, { arm: 0.6, height: 0 });
  const CL = 0.3;

  it('step by step', () => {
    const droop = 0.174533; // G_w: 10 degrees everywhere
    const roll = 0.581776; // G_w/C_L
    const share = 0.25; // X_s: squared sine of 30 degrees
    const area = 0.02; // S_s, unrolled: 0.4 * 0.05
    const span = 0.984808; // b: 1 * cos 10
    const projected = 0.0984808; // S: 0.1 * b
    const yaw = 0.0309326; // X_s S_s l_s/(S b) = 0.25 * 0.02 * 0.6/(0.0984808 * 0.984808)
    const tailProjected = 0.0173205; // 0.02 * cos 30
    const pitch = 1.055263; // 0.0173205 * 0.6/(0.0984808 * 0.1)
    const index = 17.9959; // 1000 * 0.581776 * 0.0309326
    const digits = { share: 2e-5 };
    expectClose('G_w', wing.effectiveDroop, droop, digits);
    expectClose('X_s', stabilizer.sidewaysShare, share, digits);
    expectClose('S_s', stabilizer.unrolledArea, area, digits);
    expectClose('S_s projected', stabilizer.projectedArea, tailProjected, digits);
    expectClose('b', wing.span, span, digits);
    expectClose('S', wing.projectedArea, projected, digits);
    const terms = holdTerms(wing, stabilizer, CL);
    expectClose('G_w/C_L', terms.roll!, roll, digits);
    expectClose('V_Y', terms.yaw, yaw, digits);
    expectClose('V_H', terms.pitch, pitch, digits);
    expectClose('index', terms.index!, index, digits);
  });

  it('is nothing without a stabilizer or with a flat one, and has no value without lift', () => {
    const none = holdTerms(wing, null, CL);
    expect([none.yaw, none.pitch, none.index]).toEqual([0, 0, 0]);
    const flat = surfaceOf(plainStabilizer(), { arm: 0.6, height: 0 });
    expect(holdTerms(wing, flat, CL).index).toBe(0);
    for (const lift of [0, -0.2]) {
      const terms = holdTerms(wing, stabilizer, lift);
      expect([terms.roll, terms.index]).toEqual([null, null]);
      expect(terms.yaw).toBeGreaterThan(0);
    }
  });

  it('grows as a stabilizer droops either way, and turns its sign with the wing', () => {
    const up = surfaceOf(plainStabilizer({ droop: { kind: 'vee', tipAngle: -30 } }), { arm: 0.6, height: 0 });
    expectClose('drooped up', holdTerms(wing, up, CL).index!, holdTerms(wing, stabilizer, CL).index!, {
      share: 1e-9,
    });
    const raised = surfaceOf(plainWing({ droop: { kind: 'vee', tipAngle: -10 } }));
    expect(holdTerms(raised, stabilizer, CL).index!).toBeLessThan(0);
  });

  it('stands in the report with its three terms, at the C_L of the condition', () => {
    const { stability, lift, geometry } = solve(goodDesign('curved-race'), { neutralDroop: false });
    const { roll, yaw, pitch } = stability.holdTerms;
    expectClose('roll', roll!, (geometry.wing.effectiveDroop * DEGREE) / lift.CL, { share: 1e-9 });
    expect([yaw, pitch]).toEqual([geometry.stabilizer!.sidewaysVolume, geometry.stabilizer!.volume]);
    expectClose('index', stability.holdIndex!, 1000 * roll! * yaw, { share: 1e-12 });
  });
});

describe('neutral droop', () => {
  for (const [name, design] of goodDesigns()) {
    const report = solve(design);
    const { neutralDroop } = report.stability;
    const rollFromYaw = (degrees: number) => {
      const present = surfaceOf(design.wing).amplitude / DEGREE;
      const droop = withDroopAmplitude(design.wing.droop, present, degrees);
      const options = { lift: report.lift.total, neutralDroop: false };
      return solve({ ...design, wing: { ...design.wing, droop } }, options).stability.foil.Clr;
    };
    if (neutralDroop !== null)
      it(`${name}: drawn with it, a yaw no longer rolls the foil`, () => {
        expect(Math.abs(rollFromYaw(neutralDroop))).toBeLessThan(1e-4 * Math.abs(rollFromYaw(0)));
        expect(rollFromYaw(neutralDroop - 3)).toBeGreaterThan(0);
        expect(rollFromYaw(neutralDroop + 3)).toBeLessThan(0);
      });
    else
      it(`${name}: has none, and no bend from 35 degrees up to 75 down stops a yaw from rolling the foil`, () => {
        for (let degrees = -35; degrees <= 75; degrees += 10) expect(rollFromYaw(degrees)).toBeGreaterThan(0);
      });
  }

  it('is smaller for a wing that carries less', () => {
    const design = goodDesign('curved-race');
    const [heavy, light] = [700, 350].map((lift) => solve(design, { lift }).stability.neutralDroop!) as [
      number,
      number,
    ];
    expect(light).toBeLessThan(heavy);
  });

  it('is a few degrees up or down of nothing for a symmetric foil without lift', () => {
    const { neutralDroop } = solve(plainDesign({}), { alpha: 0 }).stability;
    expectClose('neutral droop', neutralDroop!, 0, { within: 1e-3 });
  });
});
