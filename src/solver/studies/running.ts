/**
 * A foil running at a condition: what the studies build on. One flow solve, the angle that carries the lift (or the
 * angle given), stabilizer as drawn. Forces in N, angles in radians.
 */
import type { Design } from '../design/document.ts';
import { type AlphaLoads, alphaForLift, alphaLoads, liftOf, loadsAt } from '../forces/loads.ts';
import type { ProfileModel } from '../forces/profile.ts';
import type { Craft } from '../geometry/craft.ts';
import type { DragSources } from '../report.ts';
import type { Flow, FlowPool, Scope } from '../vortex/flow.ts';
import type { Condition } from './condition.ts';
import { runLevel } from './level-running.ts';
import { rigOf } from './rig.ts';

export interface RunningFoil {
  craft: Craft;
  flow: Flow; // its arrays are refilled by the next flow of the same role
  loads: AlphaLoads;
  alpha: number;
  pressure: number; // rho V^2, N/m2
  lift: { total: number; wing: number; stabilizer: number }; // N across the stream
  CL: number; // on the wing's projected area
}

export function runFoil(
  pool: FlowPool,
  role: string,
  craft: Craft,
  condition: Condition,
  scope: Scope,
): RunningFoil {
  return settleFoil(craft, pool.solve(role, craft, scope), condition);
}

/** A solved flow at a condition of the same depth: its unit solutions serve any speed, lift or angle. */
export function settleFoil(craft: Craft, flow: Flow, condition: Condition): RunningFoil {
  const loads = alphaLoads(flow.system, flow.symmetric);
  const pressure = condition.density * condition.speed ** 2;
  const alpha = condition.alpha ?? alphaForLift(loads, condition.lift / pressure);
  const [onWing, onStabilizer] = loadsAt(loads, alpha);
  const wing = liftOf(onWing, alpha) * pressure;
  const stabilizer = liftOf(onStabilizer, alpha) * pressure;
  const total = wing + stabilizer;
  const CL = total / (0.5 * pressure * craft.wing.projectedArea);
  return { craft, flow, loads, alpha, pressure, lift: { total, wing, stabilizer }, CL };
}

export interface FoilDrag {
  sources: DragSources; // N
  induced: number; // N, wing and stabilizer
  profile: number; // N, wing, stabilizer and strut
  total: number; // N, every source
}

/** Drag by source of a foil solved with scope 'pitch' or 'whole', carrying its lift with the stabilizer as drawn. */
export function dragOf(
  design: Design,
  foil: RunningFoil,
  condition: Condition,
  profile: ProfileModel,
): FoilDrag {
  const rig = rigOf(design, foil.craft, foil.flow);
  const { drag: sources, totalDrag: total } = runLevel(rig, condition, foil.lift.total, 'incidence', profile);
  return {
    sources,
    induced: sources.wingInduced + sources.stabilizerInduced,
    profile: sources.wingProfile + sources.stabilizerProfile + sources.strutProfile,
    total,
  };
}
