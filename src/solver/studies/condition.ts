/** The condition a study runs at: options with every default filled in. Angles in radians, SI. */
import type { Brief } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import type { Resolution } from '../geometry/craft.ts';
import { monotoneCubic } from '../numeric/spline.ts';
import type { ConditionOptions } from '../report.ts';

export const GRAVITY = 9.80665; // m/s2, standard

export interface Condition {
  speed: number;
  depth: number | null;
  density: number;
  viscosity: number;
  weight: number; // N, (1-u) m g
  alpha: number | null; // rad, where the angle is given
  lift: number; // N, where it is not
}

const RADIANS = Math.PI / 180;

export function resolutionOf(options: ConditionOptions): Required<Omit<Resolution, 'spacing'>> {
  const strips = options.strips ?? 40;
  return {
    strips,
    stabilizerStrips: options.stabilizerStrips ?? Math.max(2, Math.round(strips / 2)),
    rows: options.rows ?? 1,
    sections: options.sections ?? 'real',
  };
}

export function conditionOf(brief: Brief, options: ConditionOptions): Condition {
  if (options.alpha !== undefined && options.lift !== undefined)
    throw new Error('alpha and lift: found both, allowed one of the two');
  const { density, viscosity } = waterProperties(brief.water.kind, brief.water.temperature);
  const weight = (1 - brief.upwardPull) * brief.allUpMass * GRAVITY;
  return {
    speed: options.speed ?? brief.speeds.cruise,
    depth: options.depth === undefined ? depthAt(brief, options.speed) : options.depth,
    density,
    viscosity,
    weight,
    alpha: options.alpha === undefined ? null : options.alpha * RADIANS,
    lift: options.lift ?? weight,
  };
}

/** `depths`, where present, replaces the depth at the speed it names; other speeds keep `depth`. */
function depthAt(brief: Brief, speed: number | undefined): number | null {
  const { speeds, depths, depth } = brief;
  if (speed === undefined || speed === speeds.cruise) return depths?.cruise ?? depth;
  if (speed === speeds.takeOff) return depths?.takeOff ?? depth;
  if (speed === speeds.top) return depths?.top ?? depth;
  return depth;
}

/**
 * Depth at any speed (m, null in deep water): `depths` at the speeds it names and `depth` at the others of the three,
 * joined by a monotone curve and held beyond its ends. Without `depths` it is `depth` throughout.
 */
export function depthAtSpeed({ speeds, depths, depth }: Brief, speed: number): number | null {
  if (!depths) return depth;
  const known: Array<[number, number]> = [];
  for (const name of ['takeOff', 'cruise', 'top'] as const) {
    const at = depths[name] ?? depth;
    if (at !== null && (known.length === 0 || speeds[name] > known[known.length - 1]![0]))
      known.push([speeds[name], at]);
  }
  if (known.length === 0) return null;
  if (known.length === 1) return known[0]![1];
  const curve = monotoneCubic(
    known.map(([at]) => at),
    known.map(([, value]) => value),
  );
  return curve(speed);
}
