/** Sums of forces: against the unsplit system, their slopes by differences, and the angle that carries a lift. */
import { describe, expect, it } from 'vitest';
import { alphaForLift, alphaLoads, liftOf, liftSlopeAt, loadsAt } from '../../../src/solver/forces/loads.ts';
import { craftOf } from '../../../src/solver/geometry/craft.ts';
import { solve } from '../../../src/solver/solve.ts';
import { FlowPool } from '../../../src/solver/vortex/flow.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign, goodDesigns, plainDesign } from '../../support/designs.ts';
import { fullSystem } from '../vortex/full-system.ts';
import { validate } from './validate.ts';

const at = (strips: number) => ({ strips, stabilizerStrips: strips / 2, rows: 1 });
const DEGREE = Math.PI / 180;

function loadsOf(design: ReturnType<typeof goodDesign>, strips = 16) {
  const craft = craftOf(design, design.brief.depth, at(strips));
  const flow = new FlowPool().solve('loads', craft, 'angle');
  return { craft, loads: alphaLoads(flow.system, flow.symmetric) };
}

describe('loads of wing and stabilizer', () => {
  for (const [name, design] of goodDesigns()) {
    const { craft, loads } = loadsOf(design);
    it(`${name}: forces and pitching moment are those of the unsplit system`, () => {
      const full = fullSystem(craft, false);
      for (const alpha of [-0.03, 0, 0.06, 0.1]) {
        const [wing, stabilizer] = loadsAt(loads, alpha);
        const { force, moment } = full.solve({ alpha });
        const scale = Math.abs(force[2]) + 0.01;
        expectClose('x', wing.x + stabilizer.x, force[0], { within: 1e-9 * scale });
        expectClose('z', wing.z + stabilizer.z, force[2], { within: 1e-9 * scale });
        expectClose('pitch', wing.pitch + stabilizer.pitch, moment[1], { within: 1e-9 * scale });
      }
    });

    it(`${name}: slopes are those of small differences`, () => {
      const step = 1e-5;
      for (const alpha of [-0.02, 0.05]) {
        const difference = (f: (angle: number) => number) => (f(alpha + step) - f(alpha - step)) / (2 * step);
        const total = (angle: number) =>
          loadsAt(loads, angle).reduce((sum, load) => sum + liftOf(load, angle), 0);
        expectClose('lift slope', liftSlopeAt(loads, alpha), difference(total), { share: 1e-7 });
        const [wing] = loadsAt(loads, alpha, true);
        expectClose(
          'z',
          wing.z,
          difference((angle) => loadsAt(loads, angle)[0].z),
          { share: 1e-7 },
        );
        expectClose(
          'pitch',
          wing.pitch,
          difference((angle) => loadsAt(loads, angle)[0].pitch),
          { within: 1e-9 },
        );
      }
    });

    it(`${name}: lift is linear within 0.5 % from no lift to 6 degrees above it`, () => {
      const nothing = alphaForLift(loads, 0);
      const slope = liftSlopeAt(loads, nothing);
      for (const degrees of [1, 2, 4, 6]) {
        const angle = nothing + degrees * DEGREE;
        const lift = loadsAt(loads, angle).reduce((sum, load) => sum + liftOf(load, angle), 0);
        expectClose(`lift at ${degrees} degrees`, lift, slope * degrees * DEGREE, { share: 0.005 });
      }
    });
  }
});

describe('the angle that carries a lift', () => {
  const { loads } = loadsOf(goodDesign('curved-race'));

  it('carries it', () => {
    for (const lift of [-0.01, 0, 0.005, 0.02]) {
      const alpha = alphaForLift(loads, lift);
      const found = loadsAt(loads, alpha).reduce((sum, load) => sum + liftOf(load, alpha), 0);
      expectClose('lift', found, lift, { within: 1e-12 });
    }
  });

  it('is refused beyond 45 degrees, in one sentence', () => {
    expect(() => alphaForLift(loads, 1)).toThrow(
      'no angle between -45 and 45 degrees carries this lift at this speed',
    );
    expect(() => solve(goodDesign('curved-race'), { speed: 1 })).toThrow('carries this lift at this speed');
  });

  it('is asked either as an angle or as a lift', () => {
    expect(() => solve(plainDesign({}), { alpha: 2, lift: 100 })).toThrow(
      'alpha and lift: found both, allowed one of the two',
    );
  });

  it('carries (1 - u) m g by default, and the lift asked for otherwise', () => {
    for (const [name, design] of goodDesigns()) {
      const { allUpMass, upwardPull } = design.brief;
      const report = solve(design, { neutralDroop: false });
      expectClose(name, report.lift.total, (1 - upwardPull) * allUpMass * 9.80665, { share: 1e-9 });
      expectClose(name, solve(design, { lift: 500, neutralDroop: false }).lift.total, 500, { share: 1e-9 });
    }
  });
});

describe('the report', () => {
  for (const [name, design] of goodDesigns())
    it(`${name}: figures are numbers, and sums of strips, surfaces and coefficients agree`, () => {
      const report = solve(design, { neutralDroop: false });
      validate(report);
      const { condition, lift, ledger, strips } = report;
      const pressure = condition.density * condition.speed;
      const best = strips.wing.reduce(
        (sum, { leastCirculation, width, droop }) =>
          sum + 2 * pressure * leastCirculation * width * Math.cos(droop * DEGREE),
        0,
      );
      // the slope at the station against the segment's: second order in the strip's width
      expectClose('lift of the least-drag loading', best, ledger.verticalLift, { share: 2e-3 });
      // across the stream: z cos(alpha) - x sin(alpha), the second a thousandth
      expectClose('wing lift', lift.wing, ledger.verticalLift, { share: 0.01 });
    });
});
