/**
 * Neutral droop: how far the wing must bend, by its own law, for the foil's C_lr about the origin to vanish at the lift
 * it carries - a yaw then no longer rolls the foil. Found by re-solving the bent wing, nothing linearised.
 */
import type { Design } from '../design/document.ts';
import { withDroopAmplitude } from '../design/laws.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../forces/loads.ts';
import type { Resolution } from '../geometry/craft.ts';
import { surfaceOf } from '../geometry/surface.ts';
import { findRoot } from '../numeric/roots.ts';
import type { DroopTry } from '../report.ts';
import type { FlowPool } from '../vortex/flow.ts';
import { craftFor } from './craft-for.ts';
import { derivativesOf, lateralLoads } from './derivatives.ts';

const DEGREES = 180 / Math.PI;
const MOST = 75; // degrees of tip angle searched, down; half of it up

/** Tip angle in degrees (positive down), and the two bends tried next to it, one either way. */
export interface NeutralDroop {
  tipAngle: number;
  tries: [DroopTry, DroopTry];
}

/** Null when no bend within the range does it. `lift` in m2, per rho V^2; `depth` in m or null. */
export function neutralDroop(
  pool: FlowPool,
  design: Design,
  depth: number | null,
  lift: number,
  resolution: Resolution,
): NeutralDroop | null {
  const present = surfaceOf(design.wing).amplitude * DEGREES;
  const memory = new Map<number, number>();
  const rollFromYaw = (amplitude: number): number => {
    const known = memory.get(amplitude);
    if (known !== undefined) return known;
    const value = clrAt(pool, bend(design, present, amplitude), depth, lift, resolution);
    memory.set(amplitude, value);
    return value;
  };
  for (const [low, high] of [
    [0, 30],
    [30, MOST],
    [-MOST / 2, 0],
  ] as const) {
    const atLow = attempt(rollFromYaw, low);
    const atHigh = attempt(rollFromYaw, high);
    if (atLow === null || atHigh === null) continue;
    const root = findRoot(rollFromYaw, low, high, 1e-4, atLow, atHigh);
    if (root !== null) return { tipAngle: root, tries: nextTo(root, memory) };
  }
  return null;
}

/** The bends tried on either side of the root, the nearest of each. */
function nextTo(root: number, tried: ReadonlyMap<number, number>): [DroopTry, DroopTry] {
  const sorted = [...tried].sort(([one], [other]) => one - other);
  const at = Math.max(
    1,
    sorted.findIndex(([angle]) => angle > root),
  );
  const pair = sorted.slice(at - 1, at + 1).map(([tipAngle, Clr]): DroopTry => ({ tipAngle, Clr }));
  return pair as [DroopTry, DroopTry];
}

function bend(design: Design, present: number, amplitude: number): Design {
  return {
    ...design,
    wing: { ...design.wing, droop: withDroopAmplitude(design.wing.droop, present, amplitude) },
  };
}

/** A bend that the geometry, the surface or the lift forbids has no value. */
function attempt(f: (x: number) => number, x: number): number | null {
  try {
    return f(x);
  } catch {
    return null;
  }
}

function clrAt(
  pool: FlowPool,
  design: Design,
  depth: number | null,
  lift: number,
  resolution: Resolution,
): number {
  const craft = craftFor(design, depth, resolution);
  const flow = pool.solve('bent', craft, 'lateral');
  const alpha = alphaForLift(alphaLoads(flow.system, flow.symmetric), lift);
  mixAlpha(flow.symmetric, alpha, flow.base);
  const loads = lateralLoads(flow.system, flow.base, flow.foil);
  const { projectedArea, span } = craft.wing;
  return derivativesOf(loads, { area: projectedArea, span, x: 0, z: 0 }).Clr;
}
