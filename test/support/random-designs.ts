/** Random designs for fast-check: anything that can be drawn, in steps of a ten-thousandth, as a builder can type it. */
import fc from 'fast-check';
import type { Design } from '../../src/solver/design/document.ts';
import { touchingProblem } from '../../src/solver/geometry/craft.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { plainDesign, plainStabilizer, taperedChord } from './designs.ts';

export const number = (min: number, max: number) =>
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

/** Whether neither the wing nor its flat twin runs into the stabilizer. */
function standsClear({ wing, stabilizer: tail }: Design): boolean {
  if (!tail) return true;
  const drawn = surfaceOf(wing);
  const length = { kind: 'unrolled', value: drawn.unrolledLength } as const;
  const flat = surfaceOf({ ...wing, droop: { kind: 'flat' }, length });
  return [drawn, flat].every((surface) => touchingProblem(surface, surfaceOf(tail, tail)) === null);
}

/** Wing, perhaps stabilizer and strut, at a depth or in deep water. */
export const anyDesign = fc
  .tuple(planform, fc.option(stabilizer), fc.option(number(0, 0.4)), fc.option(number(0.9, 3)))
  .map(([wing, tail, strutAt, depth]): Design => {
    const strut = strutAt === null ? null : { x: strutAt, length: 3, chord: 0.115, thickness: 0.013 };
    return plainDesign(wing, { stabilizer: tail, strut, brief: { depth } });
  })
  .filter(standsClear);

/** The same in deep water. */
export const anyDeepDesign = anyDesign.map(
  (design): Design => ({ ...design, brief: { ...design.brief, depth: null } }),
);

/** A wing alone, flat and unswept, in deep water. */
export const anyPlanarWing = fc
  .record({ chord, twist })
  .map((drawn) => plainDesign({ ...drawn, droop: { kind: 'flat' }, sweep: { kind: 'straight', angle: 0 } }));
