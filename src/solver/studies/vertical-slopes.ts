/**
 * Lift and pitch of a running foil by what it does: angle of attack, pitch rate, depth; part by part. Loads per rho V^2
 * about the origin (forces m2, moments m3), derivatives about a chosen point.
 */
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
import { atDepth, type Craft } from '../geometry/craft.ts';
import type { Flow, FlowPool } from '../vortex/flow.ts';
import { STABILIZER, WING } from '../vortex/system.ts';
import type { RunningFoil } from './running.ts';
import { sumOf } from './sums.ts';

export interface VerticalDerivatives {
  CLalpha: number;
  Cmalpha: number;
  CLq: number;
  Cmq: number;
  CLdepth: number; // per mean chord of depth
  Cmdepth: number;
}

export interface VerticalByPart {
  wing: VerticalDerivatives;
  stabilizer: VerticalDerivatives;
  total: VerticalDerivatives;
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

/** Wing and stabilizer about a point at (x, height) above the origin. */
export function verticalByPart(
  pool: FlowPool,
  foil: RunningFoil,
  { x, height }: { x: number; height: number },
): VerticalByPart {
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
