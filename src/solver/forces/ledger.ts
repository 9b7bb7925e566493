/**
 * Where the lift goes: what the wing's curve leans away and gives up against two flat twins (docs/theory.md, "Ledger").
 * Wing strips only, both halves, the stabilizer present and unchanged; forces in N along the design's z.
 */

import type { Planform } from '../design/document.ts';
import { assemble, type Craft, type Resolution, sameSpanTwin, touchingProblem } from '../geometry/craft.ts';
import { type Surface, surfaceOf } from '../geometry/surface.ts';
import type { Ledger, TwinPrice } from '../report.ts';
import type { Flow, FlowPool } from '../vortex/flow.ts';
import { gatherStrips, inducedDrag } from '../vortex/wake.ts';
import type { Stream } from './drag-sources.ts';
import { alphaForLift, alphaLoads, loadsAt, mixAlpha, STEEPEST } from './loads.ts';
import { type ProfileModel, profileDrag } from './profile.ts';

/** The design's own running state, which the twins are measured against. */
export interface Running {
  alpha: number; // rad
  pressure: number; // rho V^2, N/m2
  lift: number; // N, whole foil, across the stream
  drag: number; // N, far-field induced drag
  profileDrag: number; // N, wing and stabilizer
  stream: Stream;
  normalForce: number; // N, wing, sum of F_n
  verticalLift: number; // N, wing, sum of F_z
  pushedSideways: number; // N, wing, sum of |F_y|
  deepLift: number | null; // N, wing, vertical at the same angle in deep water; null where it runs there
}

const DEGREES = 180 / Math.PI;
const TWIN_STEEPEST = STEEPEST * 1.5; // rad: a twin may need more angle than a design that stands at its own limit

export function drawLedger(
  pool: FlowPool,
  craft: Craft,
  planform: Planform,
  resolution: Resolution,
  running: Running,
  profile: ProfileModel,
): Ledger {
  const { normalForce, verticalLift, pushedSideways } = running;
  const bent = isBent(craft.wing);
  const twin = bent ? runTwin(pool, unrolledTwin(craft, planform, resolution), running, profile, true) : null;
  const sameSpan = bent ? runTwin(pool, sameSpanTwin(craft), running, profile, false) : null;
  const flatLift = twin?.verticalLift ?? verticalLift;
  const lostLift = flatLift - verticalLift;
  const lostFraction = share(lostLift, flatLift);
  const deepOwn = running.deepLift;
  const deepFlat = twin?.deepLift ?? null;
  const isDeep = deepOwn === null || deepFlat === null;
  return {
    normalForce,
    verticalLift,
    leanedAway: normalForce - verticalLift,
    pushedSideways,
    flatLift,
    metAtSmallerAngle: flatLift - normalForce,
    lostLift,
    lostFraction,
    deepWater: isDeep
      ? { lostFraction, flatLift, verticalLift }
      : {
          lostFraction: share(deepFlat - deepOwn, deepFlat),
          flatLift: deepFlat,
          verticalLift: deepOwn,
        },
    sameLift: { unrolled: twin?.price ?? noPrice(running), sameSpan: sameSpan?.price ?? noPrice(running) },
  };
}

/** A wing with no droop anywhere is its own twin. */
export function isBent(wing: Surface): boolean {
  for (let k = 0; k <= 100; k++) if (wing.droop(k / 100) !== 0) return true;
  return false;
}

/** What a wing pays that is its own twin. */
const noPrice = ({ alpha, drag }: Running): TwinPrice => ({
  extraAlpha: 0,
  extraInducedDrag: 0,
  extraProfileDrag: 0,
  extraTotalDrag: 0,
  alpha: alpha * DEGREES,
  inducedDrag: drag,
});

/** A share of a lift that is not positive says nothing. */
function share(lost: number, flat: number): number | null {
  return flat > 0 ? lost / flat : null;
}

/**
 * Same chords, twist, sections and unrolled length, droop removed; nothing else of the foil changes. Throws where it would
 * run into the stabilizer, which stands clear of the bent wing: vortices that meet compare with nothing.
 */
function unrolledTwin(craft: Craft, planform: Planform, resolution: Resolution): Craft {
  const length = { kind: 'unrolled', value: craft.wing.unrolledLength } as const;
  const flat = surfaceOf({ ...planform, droop: { kind: 'flat' }, length }, undefined, craft.wing.lift);
  const problem = touchingProblem(flat, craft.stabilizer, 'the flat twin that the wing is compared with');
  if (problem) throw new Error(problem);
  return assemble(flat, craft.stabilizer, null, craft.depth, resolution);
}

function runTwin(
  pool: FlowPool,
  twin: Craft,
  running: Running,
  profile: ProfileModel,
  besideDeep: boolean,
): { verticalLift: number; deepLift: number | null; price: TwinPrice } {
  const flow = pool.solve('twin', twin, 'angle', besideDeep);
  const loads = alphaLoads(flow.system, flow.symmetric);
  const alpha = alphaForLift(loads, running.lift / running.pressure, TWIN_STEEPEST);
  const drag = farField(flow, alpha) * running.pressure;
  const extraInducedDrag = running.drag - drag;
  const extraProfileDrag =
    running.profileDrag - profileDrag(twin, flow.stripCirculation, running.stream, profile);
  return {
    verticalLift: loadsAt(loads, running.alpha)[0].z * running.pressure,
    deepLift: deepLift(flow, running),
    price: {
      extraAlpha: (running.alpha - alpha) * DEGREES,
      extraInducedDrag,
      extraProfileDrag,
      extraTotalDrag: extraInducedDrag + extraProfileDrag,
      alpha: alpha * DEGREES,
      inducedDrag: drag,
    },
  };
}

/** Far-field induced drag per rho V^2 (m2) of a flow at an angle (rad). */
export function farField(flow: Flow, alpha: number): number {
  mixAlpha(flow.symmetric, alpha, flow.base);
  gatherStrips(flow.system, flow.base.circulation, flow.stripCirculation);
  return inducedDrag(flow.system.fillWakes().free, flow.stripCirculation);
}

/** Vertical lift (N) of the wing at the running angle in deep water; null where the flow is deep already. */
export function deepLift(
  { deep }: Flow,
  { alpha, pressure }: Pick<Running, 'alpha' | 'pressure'>,
): number | null {
  return deep && loadsAt(alphaLoads(deep.system, deep.symmetric), alpha)[0].z * pressure;
}
