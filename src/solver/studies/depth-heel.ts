/**
 * Depth and heel: what the free surface takes as the foil runs shallower, how deep the tips run, and at which heel the
 * upper tip breaks the surface. Lengths in m, forces in N, angles in degrees.
 */
import type { Design } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import type { Resolution } from '../geometry/craft.ts';
import { highestStation, upperTipDepth } from '../geometry/heel.ts';
import { surfaceOf } from '../geometry/surface.ts';
import { findRoot } from '../numeric/roots.ts';
import { solveWhole, type UnitStream, wholeFoil } from '../vortex/whole.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import { craftFor } from './craft-for.ts';
import type { LevelRunner } from './speed.ts';

const RADIANS = Math.PI / 180;

export interface DepthRow {
  depth: number;
  tipDepth: number; // of the wing's tip, level
  lift: number; // N at the angle that carries the weight at the brief's depth
  alpha: number; // degrees that carry the weight at this depth
  inducedDrag: number; // N carrying the weight, with waves
  froudeDepth: number; // V / sqrt(g h)
}

/** Lift and drag against depth at a speed, from half a mean chord to `deepest` or the strut's length. */
export function depthStudy(runner: LevelRunner, speed: number, deepest: number, count = 24): DepthRow[] {
  const { design } = runner;
  const shallowest = leastDepth(design);
  const briefDepth = depthAtSpeed(design.brief, speed);
  const reference = runner.run(speed, 'incidence', briefDepth);
  const { density } = waterProperties(design.brief.water.kind, design.brief.water.temperature);
  const pressure = density * speed * speed;
  const end = Math.min(deepest, design.strut?.length ?? deepest);
  return Array.from({ length: count }, (_, k) => {
    const depth = shallowest * (end / shallowest) ** (k / (count - 1));
    const state = runner.run(speed, 'incidence', depth);
    const rig = runner.rigFor(depth);
    const [wing, stabilizer] = rig.loads.at(reference.alpha, 0);
    const cos = Math.cos(reference.alpha);
    const sin = Math.sin(reference.alpha);
    return {
      depth,
      tipDepth: depth + rig.craft.wing.tipDrop,
      lift: ((wing.z + stabilizer.z) * cos - (wing.x + stabilizer.x) * sin) * pressure,
      alpha: state.alpha / RADIANS,
      inducedDrag: state.drag.wingInduced + state.drag.stabilizerInduced + state.drag.wave,
      froudeDepth: speed / Math.sqrt(GRAVITY * depth),
    };
  });
}

/** The shallowest depth worth asking about: half a mean chord over the highest station. */
function leastDepth(design: Design): number {
  const wing = surfaceOf(design.wing);
  const { stabilizer } = design;
  const tail = stabilizer ? surfaceOf(stabilizer, { arm: stabilizer.arm, height: stabilizer.height }) : null;
  return Math.max(highestStation(wing), tail ? highestStation(tail) : 0) + 0.5 * wing.meanChord;
}

export interface HeelRow {
  heel: number; // degrees, starboard down
  alpha: number; // degrees along the heeled foil that hold its lift
  verticalLift: number; // N
  sideForce: number; // N to starboard
  inducedDrag: number; // N, strut included
  upperTipDepth: number; // m
}

/**
 * A heeled foil under a level surface, carrying `lift` (N) at right angles to its own span and the stream: the whole unsplit system is
 * solved at each heel, since port and starboard now differ.
 */
export function heelStudy(
  design: Design,
  speed: number,
  lift: number,
  heels: readonly number[],
  resolution: Resolution,
): HeelRow[] {
  const depth = depthAtSpeed(design.brief, speed);
  const craft = craftFor(design, depth, resolution);
  const { density } = waterProperties(design.brief.water.kind, design.brief.water.temperature);
  const pressure = density * speed * speed;
  return heels.map((degrees) => {
    const heel = degrees * RADIANS;
    const solveAt = solveWhole(wholeFoil(craft, heel), depth);
    const at = (alpha: number) => {
      const { loads, inducedDrag: drag } = solveAt(heeledStream(alpha, 0, heel));
      const sum = (axis: 'x' | 'y' | 'z') => loads.reduce((total, load) => total + load[axis], 0) * pressure;
      const [x, y, z] = [sum('x'), sum('y'), sum('z')];
      const across = y * Math.sin(heel) + z * Math.cos(heel);
      return { y, z, own: across * Math.cos(alpha) - x * Math.sin(alpha), drag };
    };
    const alpha = findRoot((a) => at(a).own - lift, -0.3, 0.4, 1e-7) ?? Number.NaN;
    const result = at(alpha);
    return {
      heel: degrees,
      alpha: alpha / RADIANS,
      verticalLift: result.z,
      sideForce: result.y,
      inducedDrag: result.drag() * pressure,
      upperTipDepth: upperTipDepth(craft.wing, depth ?? Number.POSITIVE_INFINITY, heel),
    };
  });
}

/** A unit stream at an angle of attack and leeway (rad) in a heeled foil's own axes, turned into the level frame. */
export function heeledStream(alpha: number, leeway: number, heel: number): UnitStream {
  const x = Math.cos(alpha) * Math.cos(leeway);
  const y = -Math.sin(leeway);
  const z = Math.sin(alpha) * Math.cos(leeway);
  const c = Math.cos(heel);
  const s = Math.sin(heel);
  return [x, y * c + z * s, z * c - y * s];
}
