/**
 * What strut and foil do under the loads of a running state and under the standard test load: deflections at the strut's
 * foot, and the strain at the most strained place of each part against what its laminate bears.
 *
 * Running: the loads of running-loads.ts. Test: TEST_FORCE to the side at the foot and TEST_MOMENT of twist. On the drawn
 * shape; angles in degrees.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { fixedProfile, type ProfileModel } from '../forces/profile.ts';
import type { Resolution } from '../geometry/craft.ts';
import type { ConditionOptions } from '../report.ts';
import { strutBeam } from '../structure/beam.ts';
import { addForce, addMoment, moveOf, turnOf } from '../structure/frame.ts';
import { LAMINATE_PARTS, type LaminatePart, materialOf } from '../structure/laminate.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import { FlowPool } from '../vortex/flow.ts';
import { TEST_FORCE, TEST_MOMENT } from './compliance.ts';
import { conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { dragOf, runFoil } from './running.ts';
import { runningLoads } from './running-loads.ts';
import { type SideRule, type SideTrim, sideTrim } from './side-trim.ts';
import { makeRunner } from './speed-study.ts';

const DEGREES = 180 / Math.PI;
const SIDE_RESOLUTION: Resolution = { strips: 20, stabilizerStrips: 10, rows: 1 };

/** Motion of the strut's foot against the board. */
export interface FootMotion {
  side: number; // m to starboard
  aft: number; // m
  twist: number; // degrees, nose to starboard
}

export interface PartStrain {
  part: LaminatePart;
  strain: number; // largest, as a share
  from: number; // m from the held end of the part
  allowable: number;
  /** Allowable over strain times the safety factor: 1 is just enough. Null without strain. */
  reserve: number | null;
}

export interface LoadState {
  foot: FootMotion | null; // null without a strut
  ofWhichBox: FootMotion | null;
  strains: PartStrain[];
}

export interface StrutState {
  EI: { side: number; aft: number } | null; // N m2 at the foot
  GJ: number | null;
  safety: number;
  /** How it holds the rig's sideways pull; null without one, or where none is found, and why. */
  pulled: SideTrim | null;
  problem: string | null;
  running: LoadState;
  test: LoadState;
}

export interface StrutStateOptions {
  condition?: ConditionOptions;
  profile?: ProfileModel;
  side?: SideRule; // how the rig's pull is held; upright when left out
}

const UPRIGHT: SideRule = { by: 'heel', heel: 0 };

export function strutState(
  design: Design,
  { condition: options = {}, profile = fixedProfile, side = UPRIGHT }: StrutStateOptions = {},
): StrutState {
  const pool = new FlowPool();
  const condition = conditionOf(design.brief, options);
  const craft = craftFor(design, condition.depth, resolutionOf(options));
  const foil = runFoil(pool, 'strut', craft, condition, 'whole');
  const skeleton = skeletonOf(design, craft);
  const { pulled, problem } = pulledTrim(design, condition.speed, side);
  const drag = dragOf(design, foil, condition, profile);
  const loads = runningLoads(design, foil, drag, skeleton, pulled);
  const test = skeleton.frame.makeLoads();
  addForce(test, skeleton.foot, skeleton.places.foot, [0, TEST_FORCE, 0]);
  addMoment(test, skeleton.foot, [0, 0, -TEST_MOMENT]);
  const beam = design.strut && strutBeam(design.strut, design.laminate?.strut)(0);
  const safety = design.laminate?.safety ?? RANGES['laminate.safety'].default;
  return {
    EI: beam && { side: beam.flap, aft: beam.lag },
    GJ: beam?.torsion ?? null,
    safety,
    pulled,
    problem,
    running: stateUnder(design, skeleton, loads, safety),
    test: stateUnder(design, skeleton, test, safety),
  };
}

/** The balance that Speed finds against the rig's pull, at its resolution. */
function pulledTrim(design: Design, speed: number, side: SideRule): Pick<StrutState, 'pulled' | 'problem'> {
  if (!design.brief.sidePull?.share) return { pulled: null, problem: null };
  try {
    return { pulled: sideTrim(makeRunner(design), speed, side, 'incidence', SIDE_RESOLUTION), problem: null };
  } catch (error) {
    return { pulled: null, problem: error instanceof Error ? error.message : String(error) };
  }
}

function stateUnder(design: Design, skeleton: Skeleton, loads: Float64Array, safety: number): LoadState {
  const { frame } = skeleton;
  const moments = frame.carry(loads);
  const turns = frame.turns(moments);
  const box = turns.map((turn, j) => (frame.groups[frame.groupOf[j]!]!.startsWith('box.') ? turn : 0));
  return {
    foot: design.strut && footMotion(skeleton, frame.motion(turns)),
    ofWhichBox: design.strut && footMotion(skeleton, frame.motion(box)),
    strains: strainsOf(design, skeleton, moments, safety),
  };
}

function footMotion({ foot, places }: Skeleton, motion: Float64Array): FootMotion {
  const [aft, side] = moveOf(motion, foot, places.foot);
  return { side, aft, twist: -turnOf(motion, foot)[2] * DEGREES };
}

/**
 * The most strained hinge of each part. In a foil section bending across and along the chord strain different fibres most:
 * the larger counts. A round fuselage has one fibre that takes both: their resultant.
 */
function strainsOf(design: Design, skeleton: Skeleton, moments: Float64Array, safety: number): PartStrain[] {
  const { frame, places } = skeleton;
  const { laminate } = design;
  const held = { strut: places.box, fuselage: places.foot, wing: places.wing, stabilizer: places.stabilizer };
  const own = (j: number) => Math.abs(moments[j]!) * frame.strain[j]!;
  return LAMINATE_PARTS.flatMap((part): PartStrain[] => {
    const from = held[part];
    if (!from) return [];
    let strain = 0;
    let at = -1;
    for (let j = 0; j < frame.count; j++) {
      const group = frame.groups[frame.groupOf[j]!]!;
      if (!group.startsWith(`${part}.`)) continue;
      const here = group === 'fuselage.flap' ? Math.hypot(own(j), own(j + 1)) : own(j);
      if (at < 0 || here > strain) [strain, at] = [here, j];
    }
    if (at < 0) return [];
    const place = frame.drawn.at.subarray(3 * at, 3 * at + 3);
    const allowable = materialOf(laminate?.[part]).strain;
    return [
      {
        part,
        strain,
        from: Math.hypot(place[0]! - from[0], place[1]! - from[1], place[2]! - from[2]),
        allowable,
        reserve: strain > 0 ? allowable / (strain * safety) : null,
      },
    ];
  });
}
