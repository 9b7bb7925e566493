/** Every report of any design that can be drawn adds up (fast-check prints seed and design of a failure). */
import fc from 'fast-check';
import { describe, it } from 'vitest';
import type { Design } from '../../../src/solver/design/document.ts';
import { solve } from '../../../src/solver/solve.ts';
import { plainDesign, plainStabilizer, taperedChord } from '../../support/designs.ts';
import { validate } from './validate.ts';

/** In steps of a ten-thousandth: what a builder can type. */
const number = (min: number, max: number) =>
  fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) }).map((steps) => steps / 1e4);

const droop = fc.oneof(
  fc.record({ kind: fc.constant('vee' as const), tipAngle: number(-20, 60) }),
  fc.record({ kind: fc.constant('arc' as const), tipAngle: number(-30, 80) }),
  fc.record({
    kind: fc.constant('late' as const),
    tipAngle: number(-40, 85),
    from: number(0, 0.9),
    power: number(0.5, 4),
  }),
  fc.record({
    kind: fc.constant('gull' as const),
    rootAngle: number(-10, 20),
    tipAngle: number(0, 60),
    knee: number(0.1, 0.9),
  }),
);
const chord = fc
  .tuple(number(3, 18), number(0.1, 1))
  .map(([aspectRatio, taper]) => taperedChord(aspectRatio, taper));
const sweep = fc.record({ kind: fc.constant('straight' as const), angle: number(-20, 45) });
const twist = fc.record({ kind: fc.constant('linear' as const), tip: number(-4, 3) });
const planform = fc.record({ chord, sweep, droop, twist, incidence: number(-2, 2) });

const stabilizer = fc
  .tuple(planform, number(0.1, 0.9), number(0.3, 1), number(-0.05, 0.1))
  .map(([{ chord: _large, ...drawn }, length, arm, height]) =>
    plainStabilizer({ ...drawn, length: { kind: 'unrolled', value: length }, arm, height }),
  );

const design = fc
  .tuple(planform, fc.option(stabilizer), fc.option(number(0, 0.4)), fc.option(number(0.9, 3)))
  .map(([wing, tail, strutAt, depth]): Design => {
    const strut = strutAt === null ? null : { x: strutAt, length: 3, chord: 0.115, thickness: 0.013 };
    return plainDesign(wing, { stabilizer: tail, strut, brief: { depth } });
  });

describe('any design', () => {
  it('answers with numbers that add up', () => {
    fc.assert(
      fc.property(design, number(1, 8), (drawn, alpha) => {
        validate(solve(drawn, { alpha, strips: 16, neutralDroop: false }));
      }),
      { numRuns: 120 },
    );
  });
});
