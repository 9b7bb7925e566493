/**
 * What to build so that it flies as drawn: droop and twist of wing or stabilizer turned back by what the load turns them,
 * again and again until the bent foil has the drawn angles. The answer's laws are points; its unrolled length, chords,
 * sweep and sections are those drawn.
 */
import type { Design, Pair, Planform, Stabilizer } from '../design/document.ts';
import { droopLaw } from '../design/laws.ts';
import type { Resolution } from '../geometry/craft.ts';
import { surfaceOf } from '../geometry/surface.ts';
import { type Curve, monotoneCubic } from '../numeric/spline.ts';
import type { ConditionOptions } from '../report.ts';
import { turnNormal } from '../structure/flex.ts';
import { seenFrom } from '../structure/pose.ts';
import { FlowPool } from '../vortex/flow.ts';
import { conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { type FlyingFoil, flyFoil } from './flying-foil.ts';
import { type SurfaceShape, surfaceShape } from './flying-shape.ts';

const DEGREES = 180 / Math.PI;
const INTERVALS = 24; // of the points of the built laws
const MOST_ROUNDS = 12;
const CLOSE = 0.002; // degrees between flying and wanted

export interface BuiltShape {
  planform: Planform; // to build; keys of a stabilizer kept
  tipDroop: { wanted: number; build: number }; // degrees, positive down
  tipTwist: { wanted: number; build: number }; // degrees against the root
  miss: number; // degrees, largest difference of flying and wanted droop or twist
  rounds: number;
}

/** Throws an Error with one sentence where no shape flies as drawn. */
export function builtPlanform(
  design: Design,
  part: 'wing' | 'stabilizer' = 'wing',
  options: ConditionOptions = {},
): BuiltShape {
  const drawn = design[part];
  if (!drawn) throw new Error(`${part}: the design has none to build`);
  const surface = surfaceOf(drawn);
  const etas = etasOf(drawn);
  const wanted = {
    droop: etas.map((eta) => surface.droop(eta) * DEGREES),
    twist: etas.map((eta) => surface.twist(eta) * DEGREES),
  };
  const planformOf = (droop: readonly number[], twist: readonly number[], incidence: number): Planform => ({
    ...drawn,
    length: { kind: 'unrolled', value: surface.unrolledLength },
    droop: { kind: 'points', at: pairs(etas, droop) },
    twist: { kind: 'points', at: pairs(etas, twist) },
    incidence,
  });
  const pool = new FlowPool();
  const resolution = resolutionOf(options);
  let [droop, twist, incidence] = [wanted.droop, wanted.twist, drawn.incidence];
  for (let rounds = 1; rounds <= MOST_ROUNDS; rounds++) {
    const planform = planformOf(droop, twist, incidence);
    const { shape, turn } = flownShape(
      pool,
      { ...design, [part]: planform } as Design,
      part,
      options,
      resolution,
    );
    const given = changeOf(shape);
    const next = {
      droop: etas.map((eta, k) => wanted.droop[k]! - given.droop(eta)),
      twist: etas.map((eta, k) => wanted.twist[k]! - given.twist(eta)),
      incidence: drawn.incidence - turn,
    };
    const miss = Math.max(
      largest(next.droop, droop),
      largest(next.twist, twist),
      Math.abs(next.incidence - incidence),
    );
    if (miss < CLOSE)
      return {
        planform,
        tipDroop: { wanted: wanted.droop[etas.length - 1]!, build: droop[etas.length - 1]! },
        tipTwist: { wanted: wanted.twist[etas.length - 1]!, build: twist[etas.length - 1]! },
        miss,
        rounds,
      };
    ({ droop, twist, incidence } = next);
  }
  throw new Error(`${part}: no shape to build flies as drawn; it bends too far under its load`);
}

/** The whole design to build so that wing and stabilizer fly as drawn. */
export function builtDesign(design: Design, options: ConditionOptions = {}): Design {
  const tailed = design.stabilizer
    ? { ...design, stabilizer: builtPlanform(design, 'stabilizer', options).planform as Stabilizer }
    : design;
  return { ...tailed, wing: builtPlanform(tailed, 'wing', options).planform };
}

/** How a design flies: one surface against its own root, and how far a stabilizer's root turns nose up (degrees). */
function flownShape(
  pool: FlowPool,
  design: Design,
  part: 'wing' | 'stabilizer',
  options: ConditionOptions,
  resolution: Resolution,
): { shape: SurfaceShape; turn: number } {
  const condition = conditionOf(design.brief, options);
  const foil: FlyingFoil = flyFoil(
    pool,
    design,
    condition,
    resolution,
    'angle',
    craftFor(design, condition.depth, resolution),
  );
  const { drawn, skeleton, pose } = foil;
  if (part === 'wing')
    return { shape: surfaceShape(drawn.wing, drawn.parts.wing, skeleton.wing.starboard, pose), turn: 0 };
  const { starboard } = skeleton.stabilizer!;
  const own = seenFrom(pose, skeleton.stabilizerRoot);
  return {
    shape: surfaceShape(drawn.stabilizer!, drawn.parts.stabilizer!, starboard, own),
    turn: turnNormal(pose, skeleton.stabilizerRoot, 0, 0).pitch * DEGREES,
  };
}

/** Flying less built along eta; nothing at the root. */
function changeOf({ eta, droop, twist }: SurfaceShape): { droop: Curve; twist: Curve } {
  const at = [0, ...eta];
  const curve = ({ built, flying }: SurfaceShape['droop']) =>
    monotoneCubic(at, [0, ...Array.from(built, (value, k) => flying[k]! - value)]);
  return { droop: curve(droop), twist: curve(twist) };
}

/** Even steps of eta and the knots of the drawn droop, where it is not smooth. */
function etasOf(planform: Planform | Stabilizer): number[] {
  const even = Array.from({ length: INTERVALS + 1 }, (_, k) => k / INTERVALS);
  const knots = droopLaw(planform.droop).knots.filter((knot) =>
    even.every((eta) => Math.abs(eta - knot) > 0.005),
  );
  return [...even, ...knots].sort((a, b) => a - b).slice(0, 100);
}

function pairs(etas: readonly number[], values: readonly number[]): Pair[] {
  return etas.map((eta, k): Pair => [Number(eta.toFixed(6)), Number(values[k]!.toFixed(4))]);
}

function largest(one: readonly number[], other: readonly number[]): number {
  return one.reduce((most, value, k) => Math.max(most, Math.abs(value - other[k]!)), 0);
}
