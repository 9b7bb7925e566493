/** A foil solved at one depth, with what its running states of any speed share. SI. */
import type { Design } from '../design/document.ts';
import { type PitchLoads, pitchLoads } from '../forces/pitch-loads.ts';
import type { Craft, Resolution } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import type { Flow, FlowPool } from '../vortex/flow.ts';
import type { Wakes } from '../vortex/system.ts';
import { craftFor } from './craft-for.ts';

/** A foil at one depth with all that running states of any speed share. */
export interface Rig {
  design: Design;
  craft: Craft;
  flow: Flow;
  loads: PitchLoads;
  wakes: Wakes;
  chord: Float64Array; // per strip, wing then stabilizer
  area: Float64Array; // chord times unrolled width, one half
  height: Float64Array; // z
  eta: Float64Array;
}

/** Solves the flow at a depth. The rig is good until the pool solves the role 'running' again. */
export function rigAt(pool: FlowPool, design: Design, depth: number | null, resolution: Resolution): Rig {
  const craft = craftFor(design, depth, resolution);
  return rigOf(design, craft, pool.solve('running', craft, 'pitch'));
}

/** The rig of a flow already solved with scope 'pitch' or 'whole'. */
export function rigOf(design: Design, craft: Craft, flow: Flow): Rig {
  const { wing, stabilizer } = craft.parts;
  const join = (pick: (strips: Strips, k: number) => number) => {
    const joined = new Float64Array(flow.system.strips);
    for (let k = 0; k < wing.count; k++) joined[k] = pick(wing, k);
    for (let k = 0; stabilizer && k < stabilizer.count; k++) joined[wing.count + k] = pick(stabilizer, k);
    return joined;
  };
  return {
    design,
    craft,
    flow,
    loads: pitchLoads(flow),
    wakes: flow.system.fillWakes(),
    chord: join((strips, k) => strips.chord[k]!),
    area: join((strips, k) => strips.chord[k]! * strips.width[k]!),
    height: join((strips, k) => strips.controlZ[k]!),
    eta: join((strips, k) => strips.eta[k]!),
  };
}

/** Nose to the stabilizer's trailing edge, or to the wing's or the strut's where there is none (common practice). */
export function fuselageLength({ fuselage, strut }: Design, { wing, stabilizer }: Craft): number {
  const aft = stabilizer
    ? stabilizer.arm + 0.75 * stabilizer.chord(0)
    : Math.max(0.75 * wing.chord(0), strut ? (strut.x ?? 0) + 0.75 * strut.chord : 0);
  return (fuselage?.nose ?? 0) + aft;
}
