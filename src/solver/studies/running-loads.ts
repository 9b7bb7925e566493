/**
 * The loads of a running state on the frame: lift and induced drag strip by strip with the sections' moments, the other
 * drags where they act, and, against a sideways pull of the rig, what leeway puts on foil and strut. Leeway and the
 * strut's side force are those Speed finds (side-trim.ts); how they spread along the strut is the upright foil's. N, N m.
 */
import type { Design } from '../design/document.ts';
import { mixAlpha } from '../forces/loads.ts';
import { addForce } from '../structure/frame.ts';
import type { Skeleton } from '../structure/skeleton.ts';
import type { FoilDrag, RunningFoil } from './running.ts';
import type { SideTrim } from './side-trim.ts';
import {
  addAntisymmetric,
  addCamber,
  addSymmetric,
  type Carriers,
  carriersOf,
  segmentForces,
} from './strip-forces.ts';

const RADIANS = Math.PI / 180;

/** The foil: scope 'whole'. `pulled`: how it holds the rig's pull, null without one. */
export function runningLoads(
  design: Design,
  foil: RunningFoil,
  { sources }: FoilDrag,
  skeleton: Skeleton,
  pulled: Pick<SideTrim, 'leeway' | 'strutForce'> | null,
): Float64Array {
  const { craft, flow, alpha, pressure } = foil;
  const { system } = flow;
  const carriers = carriersOf(craft, skeleton);
  const loads = skeleton.frame.makeLoads();
  mixAlpha(flow.symmetric, alpha, flow.base);
  addSymmetric(loads, system, carriers, segmentForces(system, flow.base, flow.base, system.foil), pressure);
  addCamber(loads, craft, skeleton, pressure / 2);
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
  if (pulled) addLeeway(loads, foil, carriers, pulled);
  return loads;
}

/** What leeway adds on both halves, and the strut's side force along its wetted strips. */
function addLeeway(
  loads: Float64Array,
  { flow, craft, pressure }: RunningFoil,
  carriers: Carriers,
  { leeway, strutForce }: Pick<SideTrim, 'leeway' | 'strutForce'>,
): void {
  const { system, base } = flow;
  const unit = flow.craft.beta;
  const forces = segmentForces(system, unit, base, craft.parts.strut ? system.all : system.foil);
  const turned = segmentForces(system, base, unit, system.foil);
  const scale = pressure * leeway * RADIANS;
  let onStrut = 0; // to the side, before it is brought to the strut's own force
  for (let i = 0; i < forces.length; i++) {
    forces[i] = scale * (forces[i]! + (turned[i] ?? 0));
    if (i >= turned.length && i % 3 === 1) onStrut += forces[i]!;
  }
  if (onStrut !== 0) for (let i = turned.length; i < forces.length; i++) forces[i]! *= strutForce / onStrut;
  addAntisymmetric(loads, system, carriers, forces, 1);
}
