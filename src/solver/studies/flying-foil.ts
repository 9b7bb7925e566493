/**
 * The shape a foil takes under its own lift: flow and structure in turn until neither moves. The document's shape is what
 * is built; loaded, the wing bends up and its droop lessens. Lift is carried by angle alone, stabilizer as drawn, as in a
 * solve. Seen from the wing's root: what strut and box do as a whole is for the account and the ride to say.
 *
 * Beams bend by Euler and Bernoulli on lines that turn as far as they like; loads act on the bent foil.
 */
import type { Design } from '../design/document.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../forces/loads.ts';
import type { Craft, Resolution } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import { flexCraft } from '../structure/flex.ts';
import { type Pose, posedPlaces, poseOf, seenFrom } from '../structure/pose.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import type { Flow, FlowPool, Scope } from '../vortex/flow.ts';
import type { Condition } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { addCamber, addSymmetric, carriersOf, segmentForces } from './strip-forces.ts';

const MOST_STEPS = 30;
const SETTLED = 1e-6; // rad, of any strip's droop and pitch from step to step

export interface FlyingFoil {
  drawn: Craft;
  craft: Craft; // as it flies
  skeleton: Skeleton;
  flow: Flow; // of the flying craft; good until the pool solves its role again
  alpha: number; // rad
  moments: Float64Array; // about the hinges, N m
  pose: Pose; // seen from the wing's root
  steps: number;
}

/**
 * Throws an Error with one sentence where no angle carries the lift, or where bending feeds the load that bends it
 * (divergence) and no shape holds.
 */
export function flyFoil(
  pool: FlowPool,
  design: Design,
  condition: Condition,
  resolution: Resolution,
  scope: Scope = 'angle',
  drawn: Craft = craftFor(design, condition.depth, resolution),
): FlyingFoil {
  const skeleton = skeletonOf(design, drawn);
  const carriers = carriersOf(drawn, skeleton);
  const pressure = condition.density * condition.speed ** 2;
  let craft = drawn;
  let pose = poseOf(skeleton.frame, new Float64Array(skeleton.frame.count));
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    const flow = pool.solve('flying', craft, scope);
    const loads = alphaLoads(flow.system, flow.symmetric);
    const alpha = condition.alpha ?? alphaForLift(loads, condition.lift / pressure);
    mixAlpha(flow.symmetric, alpha, flow.base);
    const forces = segmentForces(flow.system, flow.base, flow.base, flow.system.foil);
    const carried = skeleton.frame.makeLoads();
    addSymmetric(carried, flow.system, carriers, forces, pressure);
    addCamber(carried, craft, skeleton, pressure / 2);
    const moments = skeleton.frame.carry(carried, posedPlaces(skeleton.frame, pose));
    pose = seenFrom(poseOf(skeleton.frame, skeleton.frame.turns(moments)), skeleton.wingRoot);
    const next = flexCraft(drawn, skeleton, pose);
    const moved = Math.max(
      movedBy(craft.parts.wing, next.parts.wing),
      movedBy(craft.parts.stabilizer, next.parts.stabilizer),
    );
    if (moved < SETTLED) return { drawn, craft, skeleton, flow, alpha, moments, pose, steps };
    if (!(moved < 1)) break;
    craft = next;
  }
  throw new Error(
    'the foil finds no shape at this speed: it gives way under its own load (laminate and joints say how stiff it is)',
  );
}

/** Largest change of droop and pitch of any strip, rad. */
function movedBy(before: Strips | null, after: Strips | null): number {
  if (!before || !after) return 0;
  let most = 0;
  for (let k = 0; k < before.count; k++)
    most = Math.max(
      most,
      Math.abs(after.droop[k]! - before.droop[k]!),
      Math.abs(after.pitch[k]! - before.pitch[k]!),
    );
  return Number.isFinite(most) && after.droop.every(Number.isFinite) ? most : Number.POSITIVE_INFINITY;
}
