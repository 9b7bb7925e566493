/**
 * The shape to build so that the wing flies as the document draws it: droop and twist taken back by what the loads at
 * cruise add, until the flying shape is the drawn one.
 */
import type { Design, Pair } from '../solver/design/document.ts';
import { surfaceOf } from '../solver/geometry/surface.ts';
import { flyingShape } from '../solver/studies/flying-shape.ts';

const ROUNDS = 8;
const CLOSE = 0.005; // degrees
const DEGREES = 180 / Math.PI;

/** Throws an Error with a sentence where the design cannot run at cruise or its wing is too soft to be built back. */
export function shapeToBuild(design: Design): Design {
  const drawn = surfaceOf(design.wing);
  // The length along the curve stays what is drawn; a span tip to tip would change with the droop.
  let built: Design = {
    ...design,
    wing: { ...design.wing, length: { kind: 'unrolled', value: drawn.unrolledLength } },
  };
  for (let round = 0; round < ROUNDS; round++) {
    const { wing } = flyingShape(built);
    const present = surfaceOf(built.wing);
    const miss = (column: { flying: Float64Array }, law: (eta: number) => number) =>
      Float64Array.from(wing.eta, (eta, k) => law(eta) * DEGREES - column.flying[k]!);
    const droop = miss(wing.droop, drawn.droop);
    const twist = miss(wing.twist, (eta) => drawn.twist(eta) - drawn.twist(0));
    if (Math.max(...droop.map(Math.abs), ...twist.map(Math.abs)) < CLOSE) return built;
    built = {
      ...built,
      wing: {
        ...built.wing,
        droop: { kind: 'points', at: pointsOf(wing.eta, present.droop, droop) },
        twist: { kind: 'points', at: pointsOf(wing.eta, present.twist, twist) },
      },
    };
  }
  throw new Error(
    'wing: found too soft to be built so that it flies as drawn, allowed a stiffer laminate or section',
  );
}

/** A law of degrees at the stations: what it is now and what is missing; the root misses nothing. */
function pointsOf(etas: Float64Array, law: (eta: number) => number, missing: Float64Array): Pair[] {
  const inner = [...etas].flatMap((eta, k): Pair[] =>
    eta > 1e-6 && eta < 1 - 1e-6 ? [[eta, law(eta) * DEGREES + missing[k]!]] : [],
  );
  const last = missing[missing.length - 1]!;
  return [[0, law(0) * DEGREES], ...inner, [1, law(1) * DEGREES + last]];
}
