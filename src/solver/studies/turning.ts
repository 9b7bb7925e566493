/**
 * A steady carve at a heel angle, the foil's lift leaning into the turn: radius, load factor, lift coefficient and its
 * margin, tip depth, drag, and what the turn asks of the stabilizer. Level water, no slip, no pull from a rig; SI,
 * angles in degrees where handed out.
 *
 * Load factor 1/cos(heel), radius V^2/(g tan(heel)), turn rate g tan(heel)/V, of which q = (g/V) sin(heel) tan(heel) is
 * a pitch rate along the foil's own axes: kinematics of the level turn (B. Etkin and L. D. Reid, Dynamics of Flight,
 * 3rd ed. 1996, from memory).
 */
import { addLoads, type Load, mixAlpha, sumLoads } from '../forces/loads.ts';
import { upperTipDepth } from '../geometry/heel.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import type { Rig } from './rig.ts';
import type { LevelRunner } from './speed.ts';

const RADIANS = Math.PI / 180;

export interface CarveRow {
  heel: number; // degrees
  depth: number | null; // m
  radius: number; // m
  loadFactor: number;
  CLwing: number;
  stallMargin: number | null; // null where the sections are not known
  total: number; // N
  upperTipDepth: number | null; // m; null in deep water
  pitchRate: number; // rad/s
  /** Stabilizer incidence (degrees) that the pitch rate asks for with the feet where they are; null without one. */
  stabilizerTurn: number | null;
  /** Or how far the feet move instead, m, positive aft. */
  stanceShift: number;
}

/** A carve at each heel (degrees, above 0 and below 80); null where no angle carries the load. */
export function carve(runner: LevelRunner, speed: number, heels: readonly number[]): Array<CarveRow | null> {
  const depth = depthAtSpeed(runner.design.brief, speed);
  return heels.map((degrees) => {
    const heel = degrees * RADIANS;
    const loadFactor = 1 / Math.cos(heel);
    const pitchRate = (GRAVITY / speed) * Math.sin(heel) * Math.tan(heel);
    try {
      const state = runner.run(speed, 'incidence', depth, runner.weight * loadFactor);
      const rig = runner.rigFor(depth);
      return {
        heel: degrees,
        depth,
        radius: speed ** 2 / (GRAVITY * Math.tan(heel)),
        loadFactor,
        CLwing: state.liftCoefficients.wing,
        stallMargin: Number.isFinite(state.stallMargin) ? state.stallMargin : null,
        total: state.totalDrag,
        upperTipDepth: depth === null ? null : upperTipDepth(rig.craft.wing, depth, heel),
        pitchRate,
        ...answerPitchRate(rig, state.alpha, state.stance, pitchRate / speed),
      };
    } catch {
      return null;
    }
  });
}

/** What keeps lift and moment when the foil pitches at `rate` (rad/s at stream speed 1). */
function answerPitchRate(rig: Rig, alpha: number, stance: number, rate: number) {
  const { flow, design, craft } = rig;
  const { height } = design.brief.balance;
  mixAlpha(flow.symmetric, alpha, flow.base);
  const byRate = sumLoads(flow.system, flow.base, flow.symmetric.pitchRate);
  addLoads(byRate, sumLoads(flow.system, flow.symmetric.pitchRate, flow.base), 1);
  const step = 1e-5;
  const here = balanceOf(rig.loads.at(alpha, 0), stance, height);
  const byAlpha = slope(here, balanceOf(rig.loads.at(alpha + step, 0), stance, height), step);
  const byTurn = slope(here, balanceOf(rig.loads.at(alpha, step), stance, height), step);
  const asked = balanceOf(byRate, stance, height);
  const lift = -asked.z * rate;
  const moment = -asked.m * rate;
  const alphaAlone = lift / byAlpha.z;
  const left = moment - byAlpha.m * alphaAlone; // what the feet would have to balance
  if (!craft.stabilizer) return { stabilizerTurn: null, stanceShift: left / here.z };
  const determinant = byAlpha.z * byTurn.m - byTurn.z * byAlpha.m;
  const turn = (byAlpha.z * moment - byAlpha.m * lift) / determinant;
  return { stabilizerTurn: turn / RADIANS, stanceShift: left / here.z };
}

interface Balance {
  z: number; // vertical force, m2
  m: number; // nose-up moment about the balance point, m3
}

function balanceOf([wing, stabilizer]: [Load, Load], stance: number, height: number): Balance {
  const x = wing.x + stabilizer.x;
  const z = wing.z + stabilizer.z;
  return { z, m: wing.pitch + stabilizer.pitch - height * x + stance * z };
}

function slope(here: Balance, there: Balance, step: number): Balance {
  return { z: (there.z - here.z) / step, m: (there.m - here.m) / step };
}
