/**
 * The coupling of sideslip, roll and yaw, solved, part by part: what wing, stabilizer and strut each add to every
 * lateral derivative, the part that strip drag adds, and the same for lift and pitch by angle, pitch rate and depth.
 *
 * Lateral derivatives as in derivatives.ts, along the design's axes. Vertical ones: lift CL and pitching moment Cm (nose
 * up, on the mean chord) about a point, by alpha (rad), by pitch rate q cbar/2V, and by depth in mean chords.
 */

import type { Stream } from '../forces/drag-sources.ts';
import {
  type AlphaLoads,
  addLoads,
  alphaLoads,
  type Load,
  liftOf,
  loadsAt,
  mixAlpha,
  sumLoads,
} from '../forces/loads.ts';
import type { ProfileModel } from '../forces/profile.ts';
import { atDepth, type Craft } from '../geometry/craft.ts';
import type { Derivatives } from '../report.ts';
import type { Flow, FlowPool } from '../vortex/flow.ts';
import { STABILIZER, STRUT, WING } from '../vortex/system.ts';
import { derivativesAbout, type LateralLoads, lateralLoads, type Reference } from './derivatives.ts';
import { profileLoads, stripDrags } from './profile-derivatives.ts';
import type { RunningFoil } from './running.ts';

/** One derivative set for each part of the craft and for all of it. */
export interface ByPart<T> {
  wing: T;
  stabilizer: T;
  strut: T;
  total: T;
}

export interface LateralCoupling {
  vortex: ByPart<Derivatives>;
  profile: ByPart<Derivatives>; // the part of strip drag, to be added
}

export interface VerticalDerivatives {
  CLalpha: number;
  Cmalpha: number;
  CLq: number;
  Cmq: number;
  CLdepth: number; // per mean chord of depth
  Cmdepth: number;
}

export interface Coupling {
  foil: LateralCoupling; // about the origin, without the strut
  craft: LateralCoupling; // about the balance point, with the strut
  vertical: { wing: VerticalDerivatives; stabilizer: VerticalDerivatives; total: VerticalDerivatives };
}

/** Everything at once for a foil whose flow was solved with scope 'whole'. `balance` in m, z up from the origin. */
export function couplingOf(
  pool: FlowPool,
  foil: RunningFoil,
  stream: Stream,
  profile: ProfileModel,
  balance: { x: number; height: number },
): Coupling {
  const { craft, flow, alpha } = foil;
  const { projectedArea: area, span } = craft.wing;
  mixAlpha(flow.symmetric, alpha, flow.base);
  const origin = { area, span, x: 0, z: 0 };
  const point = { area, span, x: balance.x, z: balance.height };
  const drags = stripDrags(craft, flow, stream, profile);
  return {
    foil: {
      vortex: byPart(lateralLoads(flow.system, flow.base, flow.foil), origin),
      profile: byPart(profileLoads(craft, flow, flow.foil, alpha, drags, false), origin),
    },
    craft: {
      vortex: byPart(lateralLoads(flow.system, flow.base, flow.craft), point),
      profile: byPart(profileLoads(craft, flow, flow.craft, alpha, drags, true), point),
    },
    vertical: verticalByPart(pool, foil, balance),
  };
}

function byPart(loads: LateralLoads, reference: Reference): ByPart<Derivatives> {
  const of = (part: number) =>
    derivativesAbout(loads.beta[part]!, loads.rollRate[part]!, loads.yawRate[part]!, reference);
  const [wing, stabilizer, strut] = [of(WING), of(STABILIZER), of(STRUT)];
  return { wing, stabilizer, strut, total: sumOf([wing, stabilizer, strut]) };
}

/** Adds derivative sets key by key. */
export function sumOf<T extends { [K in keyof T]: number }>(sets: readonly T[]): T {
  const keys = Object.keys(sets[0]!) as Array<keyof T>;
  return Object.fromEntries(keys.map((key) => [key, sets.reduce((sum, set) => sum + set[key], 0)])) as T;
}

/** Slopes of the load (per rho V^2) of wing and stabilizer by each cause, about the origin. */
export interface VerticalSlopes {
  alpha: [Load, Load];
  pitchRate: [Load, Load]; // per rad/s at stream speed 1
  depth: [Load, Load]; // per m
}

export function verticalSlopes(pool: FlowPool, { craft, flow, loads, alpha }: RunningFoil): VerticalSlopes {
  mixAlpha(flow.symmetric, alpha, flow.base);
  const pitchRate = sumLoads(flow.system, flow.base, flow.symmetric.pitchRate);
  addLoads(pitchRate, sumLoads(flow.system, flow.symmetric.pitchRate, flow.base), 1);
  return { alpha: loadsAt(loads, alpha, true), pitchRate, depth: depthSlope(pool, craft, alpha) };
}

/** d(load)/d(depth) at a fixed angle, by a central difference of two solves; nothing in deep water. */
function depthSlope(pool: FlowPool, craft: Craft, alpha: number): [Load, Load] {
  const slope: [Load, Load] = [
    { x: 0, z: 0, pitch: 0 },
    { x: 0, z: 0, pitch: 0 },
  ];
  if (craft.depth === null) return slope;
  const step = depthStep(craft.depth);
  for (const side of [1, -1]) {
    const flow = flowAtDepth(pool, craft, craft.depth + side * step);
    const loads: AlphaLoads = alphaLoads(flow.system, flow.symmetric);
    addLoads(slope, loadsAt(loads, alpha), side / (2 * step));
  }
  return slope;
}

export const depthStep = (depth: number): number => 0.01 * depth;

export function flowAtDepth(pool: FlowPool, craft: Craft, depth: number): Flow {
  return pool.solve('depth', atDepth(craft, depth), 'angle');
}

function verticalByPart(
  pool: FlowPool,
  foil: RunningFoil,
  { x, height }: { x: number; height: number },
): Coupling['vertical'] {
  const slopes = verticalSlopes(pool, foil);
  const { alpha, craft, loads } = foil;
  const { projectedArea, meanChord } = craft.wing;
  const here = loadsAt(loads, alpha);
  const moment = (load: Load) => load.pitch - height * load.x + x * load.z;
  const of = (part: 0 | 1): VerticalDerivatives => {
    const force = 2 / projectedArea;
    const couple = 2 / (projectedArea * meanChord);
    const rate = 2 / meanChord;
    const turned = here[part].x * Math.cos(alpha) + here[part].z * Math.sin(alpha);
    // Turning about the point moves the origin: ahead by height q, down by x q.
    const byRate = turnedAbout(slopes, loads, alpha, part, x, height);
    return {
      CLalpha: force * (liftOf(slopes.alpha[part], alpha) - turned),
      Cmalpha: couple * moment(slopes.alpha[part]),
      CLq: force * rate * liftOf(byRate, alpha),
      Cmq: couple * rate * moment(byRate),
      CLdepth: force * meanChord * liftOf(slopes.depth[part], alpha),
      Cmdepth: couple * meanChord * moment(slopes.depth[part]),
    };
  };
  const [wing, stabilizer] = [of(WING), of(STABILIZER)];
  return { wing, stabilizer, total: sumOf([wing, stabilizer]) };
}

/** d(load)/dq about (x, height) at stream speed 1: the turn about the origin and the drift of the origin. */
function turnedAbout(
  slopes: VerticalSlopes,
  loads: AlphaLoads,
  alpha: number,
  part: 0 | 1,
  x: number,
  height: number,
): Load {
  const c = Math.cos(alpha);
  const s = Math.sin(alpha);
  const { ahead, mixed, up } = loads;
  const of = (key: keyof Load) =>
    slopes.pitchRate[part][key] +
    height * (2 * c * ahead[part][key] + s * mixed[part][key]) -
    x * (c * mixed[part][key] + 2 * s * up[part][key]);
  return { x: of('x'), z: of('z'), pitch: of('pitch') };
}
