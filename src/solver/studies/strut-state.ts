/**
 * What strut and foil do under the loads of a running state and under the standard test load: deflections at the strut's
 * foot, and the strain at the most strained place of each part against what its laminate bears.
 *
 * Running: lift and induced drag strip by strip, the other drags where they act, and the leeway that holds the rig's
 * sideways pull. Test: TEST_FORCE to the side at the foot and TEST_MOMENT of twist. On the drawn shape; angles in
 * degrees.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { mixAlpha } from '../forces/loads.ts';
import { fixedProfile, type ProfileModel } from '../forces/profile.ts';
import { craftOf } from '../geometry/craft.ts';
import type { ConditionOptions } from '../report.ts';
import { strutBeam } from '../structure/beam.ts';
import { addForce, addMoment, moveOf, turnOf } from '../structure/frame.ts';
import { type LaminatePart, materialOf } from '../structure/laminate.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import { FlowPool } from '../vortex/flow.ts';
import { TEST_FORCE, TEST_MOMENT } from './compliance.ts';
import { type Condition, conditionOf, GRAVITY, resolutionOf } from './condition.ts';
import { lateralLoads } from './derivatives.ts';
import { dragOf, type FoilDrag, type RunningFoil, runFoil } from './running.ts';
import { addAntisymmetric, addCamber, addSymmetric, carriersOf, segmentForces } from './strip-forces.ts';

const DEGREES = 180 / Math.PI;

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
  leeway: number; // degrees, that the running state needs
  running: LoadState;
  test: LoadState;
}

export interface StrutStateOptions {
  condition?: ConditionOptions;
  profile?: ProfileModel;
}

export function strutState(
  design: Design,
  { condition: options = {}, profile = fixedProfile }: StrutStateOptions = {},
): StrutState {
  const pool = new FlowPool();
  const condition = conditionOf(design.brief, options);
  const craft = craftOf(design, condition.depth, resolutionOf(options));
  const foil = runFoil(pool, 'strut', craft, condition, 'whole');
  const skeleton = skeletonOf(design, craft);
  const { loads, leeway } = runningLoads(
    design,
    condition,
    foil,
    dragOf(design, foil, condition, profile),
    skeleton,
  );
  const test = skeleton.frame.makeLoads();
  addForce(test, skeleton.foot, skeleton.places.foot, [0, TEST_FORCE, 0]);
  addMoment(test, skeleton.foot, [0, 0, -TEST_MOMENT]);
  const beam = design.strut && strutBeam(design.strut, design.laminate?.strut)(0);
  const safety = design.laminate?.safety ?? RANGES['laminate.safety'].default;
  return {
    EI: beam && { side: beam.flap, aft: beam.lag },
    GJ: beam?.torsion ?? null,
    safety,
    leeway: leeway * DEGREES,
    running: stateUnder(design, skeleton, loads, safety),
    test: stateUnder(design, skeleton, test, safety),
  };
}

/** Loads of a running state on the frame, and the leeway (rad) they include. The foil: scope 'whole'. */
export function runningLoads(
  design: Design,
  condition: Condition,
  foil: RunningFoil,
  { sources }: FoilDrag,
  skeleton: Skeleton,
): { loads: Float64Array; leeway: number } {
  const { craft, flow, alpha, pressure } = foil;
  const { system } = flow;
  const carriers = carriersOf(craft, skeleton);
  const loads = skeleton.frame.makeLoads();
  mixAlpha(flow.symmetric, alpha, flow.base);
  addSymmetric(loads, system, carriers, segmentForces(system, flow.base, flow.base, system.foil), pressure);
  addCamber(loads, design, craft, skeleton, pressure / 2);
  const { wingRoot, stabilizerRoot, junction, foot, places, strut } = skeleton;
  addForce(loads, wingRoot, places.wing, [sources.wingProfile, 0, 0]);
  if (places.stabilizer)
    addForce(loads, stabilizerRoot, places.stabilizer, [sources.stabilizerProfile, 0, 0]);
  addForce(loads, junction, places.foot, [sources.fuselage + sources.junctions + sources.wave, 0, 0]);
  const wet = strut?.strips.length ?? 0;
  for (let k = 0; k < wet; k++) {
    const share = craft.parts.strut!.width[k]! / (craft.depth ?? design.strut!.length);
    addForce(loads, strut!.strips[k]!, strut!.middle[k]!, [sources.strutProfile * share, 0, 0]);
  }
  const waterline = strut?.edges[wet] ?? foot;
  addForce(loads, waterline, [places.foot[0], 0, craft.depth ?? 0], [sources.spray, 0, 0]);
  return { loads, leeway: addLeeway(loads, design, condition, foil, carriers) };
}

/** The leeway whose side force on foil and strut holds the rig's pull, its loads added. The foil counts as upright. */
function addLeeway(
  loads: Float64Array,
  design: Design,
  { density, speed }: Condition,
  { flow, craft }: RunningFoil,
  carriers: ReturnType<typeof carriersOf>,
): number {
  const pull = (design.brief.sidePull?.share ?? 0) * design.brief.allUpMass * GRAVITY;
  if (pull === 0) return 0;
  const { system, base } = flow;
  const pressure = density * speed ** 2;
  const { beta } = lateralLoads(system, base, flow.craft);
  const slope = pressure * beta.reduce((sum, part) => sum + part.y, 0);
  if (!(Math.abs(slope) > 0)) return 0;
  const leeway = -pull / slope;
  const unit = flow.craft.beta;
  const count = craft.parts.strut ? system.all : system.foil;
  const own = segmentForces(system, unit, base, count);
  const turned = segmentForces(system, base, unit, system.foil);
  turned.forEach((value, i) => {
    own[i]! += value;
  });
  addAntisymmetric(loads, system, carriers, own, pressure * leeway);
  return leeway;
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

/** The most strained hinge of each part. Bending across and along the chord strain different fibres most: the larger. */
function strainsOf(design: Design, skeleton: Skeleton, moments: Float64Array, safety: number): PartStrain[] {
  const { frame, places } = skeleton;
  const { laminate } = design;
  const held = { strut: places.box, fuselage: places.foot, wing: places.wing, stabilizer: places.stabilizer };
  return (['strut', 'fuselage', 'wing', 'stabilizer'] as const).flatMap((part): PartStrain[] => {
    const from = held[part];
    if (!from) return [];
    let strain = 0;
    let at = -1;
    for (let j = 0; j < frame.count; j++) {
      if (!frame.groups[frame.groupOf[j]!]!.startsWith(`${part}.`)) continue;
      const here = Math.abs(moments[j]!) * frame.strain[j]!;
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
