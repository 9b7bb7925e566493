/**
 * Built droop against flying droop: what the wing's curve, twist, hold and lift are when it carries the rider. The
 * document's shape is the built one, taken rigid everywhere else. Angles in degrees where handed out, droop positive
 * down.
 */
import type { Design } from '../design/document.ts';
import { alphaForLift, alphaLoads, liftOf, loadsAt, mixAlpha } from '../forces/loads.ts';
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import type { Surface } from '../geometry/surface.ts';
import type { ConditionOptions } from '../report.ts';
import { turnNormal } from '../structure/flex.ts';
import type { HalfBodies } from '../structure/hinge-chain.ts';
import { type Pose, posedPoint, seenFrom } from '../structure/pose.ts';
import type { Triple } from '../structure/triple.ts';
import { type Flow, FlowPool } from '../vortex/flow.ts';
import { gatherStrips, inducedDrag } from '../vortex/wake.ts';
import { type Condition, conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { derivativesOf, lateralLoads } from './derivatives.ts';
import { type FlyingFoil, flyFoil } from './flying-foil.ts';
import { segmentForces } from './strip-forces.ts';

const DEGREES = 180 / Math.PI;

/** One surface, starboard half, root to tip: columns over the strips, then the tip itself. */
export interface SurfaceShape {
  eta: Float64Array;
  droop: { built: Float64Array; flying: Float64Array };
  twist: { built: Float64Array; flying: Float64Array }; // against the root, nose up
  tipRise: number; // m, across the root's plane
}

/** A figure of the foil as drawn and as it flies. */
export interface BuiltAndFlying {
  built: number;
  flying: number;
}

export interface FlyingShape {
  speed: number; // m/s
  lift: number; // N
  steps: number;
  tipDroop: BuiltAndFlying;
  tipDrop: BuiltAndFlying; // m
  effectiveDroop: BuiltAndFlying;
  washout: BuiltAndFlying; // twist of the tip against the root
  alpha: BuiltAndFlying; // carrying the same lift
  liftAtSameAngle: BuiltAndFlying; // N, at the built foil's angle
  inducedDrag: BuiltAndFlying; // N
  holdIndex: { built: number | null; flying: number | null };
  rollFromYaw: { built: number | null; flying: number | null }; // C_lr/|C_lp| of the foil
  stabilizerTurn: number; // change of the stabilizer's incidence against the wing, nose up
  stabilizerTipDroop: BuiltAndFlying | null;
  wing: SurfaceShape;
  stabilizer: SurfaceShape | null;
  energy: { strain: number; work: number }; // J, of wing and stabilizer
}

export interface FlyingOptions {
  condition?: ConditionOptions;
}

export function flyingShape(design: Design, { condition: options = {} }: FlyingOptions = {}): FlyingShape {
  const pool = new FlowPool();
  const condition = conditionOf(design.brief, options);
  const drawn = craftFor(design, condition.depth, resolutionOf(options));
  const built = measure(pool.solve('built', drawn, 'lateral'), drawn, condition);
  const foil = flyFoil(pool, design, condition, resolutionOf(options), 'lateral', drawn);
  const flying = measure(foil.flow, foil.craft, condition, built.alpha);
  const pair = (read: (figures: Measures) => number): BuiltAndFlying => ({
    built: read(built),
    flying: read(flying),
  });
  const wing = surfaceShape(drawn.wing, drawn.parts.wing, foil.skeleton.wing.starboard, foil.pose);
  const tail = tailShape(foil);
  return {
    speed: condition.speed,
    lift: flying.lift,
    steps: foil.steps,
    tipDroop: lastOf(wing.droop),
    tipDrop: { built: drawn.wing.tipDrop, flying: drawn.wing.tipDrop - wing.tipRise },
    effectiveDroop: pair(({ effectiveDroop }) => effectiveDroop * DEGREES),
    washout: lastOf(wing.twist),
    alpha: pair(({ alpha }) => alpha * DEGREES),
    liftAtSameAngle: { built: built.lift, flying: flying.liftAtSameAngle },
    inducedDrag: pair(({ drag }) => drag),
    holdIndex: { built: built.holdIndex, flying: flying.holdIndex },
    rollFromYaw: { built: built.rollFromYaw, flying: flying.rollFromYaw },
    stabilizerTurn: tail ? tail.turn : 0,
    stabilizerTipDroop: tail ? lastOf(tail.shape.droop) : null,
    wing,
    stabilizer: tail?.shape ?? null,
    energy: energies(condition, foil),
  };
}

const lastOf = ({ built, flying }: SurfaceShape['droop']): BuiltAndFlying => ({
  built: built[built.length - 1]!,
  flying: flying[flying.length - 1]!,
});

interface Measures {
  alpha: number;
  lift: number;
  liftAtSameAngle: number;
  drag: number;
  effectiveDroop: number;
  holdIndex: number | null;
  rollFromYaw: number | null;
}

/** Figures of one shape from its strips; areas and lengths of reference are the drawn foil's. */
function measure(flow: Flow, craft: Craft, condition: Condition, angle?: number): Measures {
  const pressure = condition.density * condition.speed ** 2;
  const loads = alphaLoads(flow.system, flow.symmetric);
  const alpha = condition.alpha ?? alphaForLift(loads, condition.lift / pressure);
  const liftAt = (at: number) =>
    pressure * loadsAt(loads, at).reduce((sum, load) => sum + liftOf(load, at), 0);
  mixAlpha(flow.symmetric, alpha, flow.base);
  gatherStrips(flow.system, flow.base.circulation, flow.stripCirculation);
  const { projectedArea: area, span } = craft.wing;
  const by = derivativesOf(lateralLoads(flow.system, flow.base, flow.foil), { area, span, x: 0, z: 0 });
  const effectiveDroop = weighedDroop(craft.parts.wing);
  const lift = liftAt(alpha);
  const CL = lift / (0.5 * pressure * area);
  const volume =
    craft.stabilizer && craft.parts.stabilizer ? sideways(craft.parts.stabilizer) * craft.stabilizer.arm : 0;
  return {
    alpha,
    lift,
    liftAtSameAngle: liftAt(angle ?? alpha),
    drag: pressure * inducedDrag(flow.system.fillWakes().free, flow.stripCirculation),
    effectiveDroop,
    holdIndex: CL > 0 ? (1000 * effectiveDroop * volume) / (CL * area * span) : null,
    rollFromYaw: by.Clp === 0 ? null : by.Clr / Math.abs(by.Clp),
  };
}

/** integral(droop c y ds)/integral(c y ds) of a half, rad. */
function weighedDroop({ count, droop, chord, width, controlY }: Strips): number {
  let sum = 0;
  let moment = 0;
  for (let k = 0; k < count; k++) {
    const weight = chord[k]! * width[k]! * controlY[k]!;
    sum += weight;
    moment += weight * droop[k]!;
  }
  return moment / sum;
}

/** Both halves' integral of sin^2(droop) c ds, m2. */
function sideways({ count, droop, chord, width }: Strips): number {
  let sum = 0;
  for (let k = 0; k < count; k++) sum += 2 * Math.sin(droop[k]!) ** 2 * chord[k]! * width[k]!;
  return sum;
}

/** Droop and twist of a half before and after, `pose` seen from its root. */
export function surfaceShape(surface: Surface, drawn: Strips, half: HalfBodies, pose: Pose): SurfaceShape {
  const { count } = drawn;
  const each = () => new Float64Array(count + 1);
  const shape: SurfaceShape = {
    eta: each(),
    droop: { built: each(), flying: each() },
    twist: { built: each(), flying: each() },
    tipRise: 0,
  };
  for (let k = 0; k <= count; k++) {
    const isTip = k === count;
    const eta = isTip ? 1 : drawn.eta[k]!;
    const pitch = drawn.pitch[Math.min(k, count - 1)]!;
    const [droop, twist] = [surface.droop(eta), surface.twist(eta)];
    const turned = turnNormal(pose, isTip ? half.edges[count]! : half.strips[k]!, droop, pitch);
    shape.eta[k] = eta;
    shape.droop.built[k] = droop * DEGREES;
    shape.droop.flying[k] = turned.droop * DEGREES;
    shape.twist.built[k] = twist * DEGREES;
    shape.twist.flying[k] = (twist + turned.pitch - pitch) * DEGREES;
  }
  const tip: Triple = [drawn.nodeX[count]!, drawn.nodeY[count]!, drawn.nodeZ[count]!];
  shape.tipRise = posedPoint(pose, half.edges[count]!, tip)[2] - tip[2];
  return shape;
}

/** The stabilizer against its own root, and how far that root has turned nose up against the wing's (degrees). */
function tailShape({ drawn, skeleton, pose }: FlyingFoil): { shape: SurfaceShape; turn: number } | null {
  if (!drawn.stabilizer || !drawn.parts.stabilizer || !skeleton.stabilizer) return null;
  const own = seenFrom(pose, skeleton.stabilizerRoot);
  const { pitch } = turnNormal(pose, skeleton.stabilizerRoot, 0, 0);
  return {
    shape: surfaceShape(drawn.stabilizer, drawn.parts.stabilizer, skeleton.stabilizer.starboard, own),
    turn: pitch * DEGREES,
  };
}

/** Strain energy of wing and stabilizer, and half the final loads' work on the way from the drawn shape, J. */
function energies(condition: Condition, foil: FlyingFoil): FlyingShape['energy'] {
  const { skeleton, flow, moments, pose, drawn, craft } = foil;
  const { frame } = skeleton;
  const strain = frame
    .energies(moments)
    .reduce((sum, energy, i) => sum + (/^(wing|stabilizer)\./.test(frame.groups[i]!) ? energy : 0), 0);
  const pressure = condition.density * condition.speed ** 2;
  const forces = segmentForces(flow.system, flow.base, flow.base, flow.system.foil);
  const workOf = (part: 'wing' | 'stabilizer', first: number, root: number) => {
    const [before, after, halves] = [drawn.parts[part], craft.parts[part], skeleton[part]];
    const surface = drawn[part];
    if (!before || !after || !halves || !surface) return 0;
    const seen = seenFrom(pose, root);
    const across = forceWork(before, halves.starboard, seen, forces.subarray(3 * first));
    return pressure * across + 0.5 * pressure * camberWork(surface, before, halves.starboard, seen);
  };
  const { wing } = drawn.parts;
  const work =
    workOf('wing', 0, skeleton.wingRoot) +
    workOf('stabilizer', wing.count * wing.rows, skeleton.stabilizerRoot);
  return { strain, work };
}

/** Half of force times motion over both halves of a surface, per rho V^2. */
function forceWork(drawn: Strips, half: HalfBodies, pose: Pose, forces: Float64Array): number {
  let work = 0;
  for (let r = 0; r < drawn.rows; r++)
    for (let k = 0; k < drawn.count; k++) {
      const node = r * (drawn.count + 1) + k;
      const middle = (values: Float64Array) => 0.5 * (values[node]! + values[node + 1]!);
      const at: Triple = [middle(drawn.nodeX), middle(drawn.nodeY), middle(drawn.nodeZ)];
      const to = posedPoint(pose, half.strips[k]!, at);
      const i = 3 * (r * drawn.count + k);
      for (const axis of [0, 1, 2] as const) work += forces[i + axis]! * (to[axis] - at[axis]);
    }
  return work; // half of the work, twice for two halves
}

/** The same of the camber's moment and the twist, per dynamic pressure. */
function camberWork({ lift }: Surface, drawn: Strips, half: HalfBodies, pose: Pose): number {
  let work = 0;
  for (let k = 0; k < drawn.count; k++) {
    const { pitch } = turnNormal(pose, half.strips[k]!, drawn.droop[k]!, drawn.pitch[k]!);
    const cm = lift(drawn.eta[k]!, drawn.chord[k]!).moment;
    work += cm * drawn.chord[k]! ** 2 * drawn.width[k]! * (pitch - drawn.pitch[k]!);
  }
  return work;
}
