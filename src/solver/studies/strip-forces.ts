/**
 * The flow's forces on the strips, as loads on the bodies of the frame that carry them: both halves, the strut where it is
 * loaded, with the sections' own pitching moment. Per strip as forces.ts sums them: F = rho V^2 circulation V x l on each
 * bound segment. N and N m in the axes of the flow's own geometry.
 */
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import type { Surface } from '../geometry/surface.ts';
import { addForce, addMoment } from '../structure/frame.ts';
import type { HalfBodies } from '../structure/hinge-chain.ts';
import type { PointForces } from '../structure/press.ts';
import type { Skeleton } from '../structure/skeleton.ts';
import type { Triple } from '../structure/triple.ts';
import type { Unit } from '../vortex/causes.ts';
import type { VortexSystem } from '../vortex/system.ts';

/** Force of every segment of the starboard half per rho V^2, triples: circulations of `a` in the velocities of `b`. */
export function segmentForces(system: VortexSystem, a: Unit, b: Unit, count: number): Float64Array {
  const { alongX, alongY, alongZ } = system;
  const { x, y, z } = b.field;
  const forces = new Float64Array(3 * count);
  for (let i = 0; i < count; i++) {
    const g = a.circulation[i]!;
    forces[3 * i] = g * (y[i]! * alongZ[i]! - z[i]! * alongY[i]!);
    forces[3 * i + 1] = g * (z[i]! * alongX[i]! - x[i]! * alongZ[i]!);
    forces[3 * i + 2] = g * (x[i]! * alongY[i]! - y[i]! * alongX[i]!);
  }
  return forces;
}

/** Which bodies the segments of wing and stabilizer hang on, in the order of the vortex system. */
export interface Carriers {
  starboard: Int32Array;
  port: Int32Array;
  strut: Int32Array;
}

export function carriersOf(craft: Craft, skeleton: Skeleton): Carriers {
  const { rows } = craft.parts.wing;
  const list = (halves: ReadonlyArray<HalfBodies | null | undefined>) =>
    Int32Array.from(
      halves.flatMap((half) => (half ? Array.from({ length: rows }, () => [...half.strips]).flat() : [])),
    );
  return {
    starboard: list([skeleton.wing.starboard, skeleton.stabilizer?.starboard]),
    port: list([skeleton.wing.port, skeleton.stabilizer?.port]),
    strut: list([skeleton.strut]),
  };
}

/** Adds symmetric segment forces (starboard half, times `scale`) to both halves. */
export function addSymmetric(
  loads: Float64Array,
  system: VortexSystem,
  { starboard, port }: Carriers,
  forces: Float64Array,
  scale: number,
): void {
  for (let i = 0; i < starboard.length; i++) {
    const [x, y, z]: Triple = [system.placeX[i]!, system.placeY[i]!, system.placeZ[i]!];
    const [fx, fy, fz] = [scale * forces[3 * i]!, scale * forces[3 * i + 1]!, scale * forces[3 * i + 2]!];
    addForce(loads, starboard[i]!, [x, y, z], [fx, fy, fz]);
    addForce(loads, port[i]!, [x, -y, z], [fx, -fy, fz]);
  }
}

/** The same as points, for what a load does to stiffness; per rho V^2. */
export function symmetricPoints(
  system: VortexSystem,
  { starboard, port }: Carriers,
  forces: Float64Array,
): PointForces {
  const n = starboard.length;
  const points: PointForces = {
    body: Int32Array.from([...starboard, ...port]),
    at: new Float64Array(6 * n),
    force: new Float64Array(6 * n),
  };
  for (let i = 0; i < n; i++)
    for (const [half, side] of [
      [0, 1],
      [n, -1],
    ] as const) {
      const p = 3 * (half + i);
      points.at.set([system.placeX[i]!, side * system.placeY[i]!, system.placeZ[i]!], p);
      points.force.set([forces[3 * i]!, side * forces[3 * i + 1]!, forces[3 * i + 2]!], p);
    }
  return points;
}

/** Adds the pitching moment of the sections' camber about the quarter chord: cm q c^2 a metre, nose up positive. */
export function addCamber(
  loads: Float64Array,
  craft: Craft,
  skeleton: Skeleton,
  dynamicPressure: number,
): void {
  const { wing, stabilizer, parts } = craft;
  addCamberOf(loads, wing, parts.wing, skeleton.wing, dynamicPressure);
  if (stabilizer && parts.stabilizer && skeleton.stabilizer)
    addCamberOf(loads, stabilizer, parts.stabilizer, skeleton.stabilizer, dynamicPressure);
}

function addCamberOf(
  loads: Float64Array,
  { lift }: Surface,
  strips: Strips,
  { starboard, port }: { starboard: HalfBodies; port: HalfBodies },
  q: number,
): void {
  for (let k = 0; k < strips.count; k++) {
    const cm = lift(strips.eta[k]!, strips.chord[k]!).moment;
    const moment = cm * q * strips.chord[k]! ** 2 * strips.width[k]!;
    const [y, z] = [moment * Math.cos(strips.droop[k]!), moment * Math.sin(strips.droop[k]!)];
    addMoment(loads, starboard.strips[k]!, [0, y, -z]);
    addMoment(loads, port.strips[k]!, [0, y, z]);
  }
}

/** Adds antisymmetric segment forces (starboard half, then the strut): to port they come mirrored and turned round. */
export function addAntisymmetric(
  loads: Float64Array,
  system: VortexSystem,
  { starboard, port, strut }: Carriers,
  forces: Float64Array,
  scale: number,
): void {
  const force = (i: number): Triple => [
    scale * forces[3 * i]!,
    scale * forces[3 * i + 1]!,
    scale * forces[3 * i + 2]!,
  ];
  for (let i = 0; i < starboard.length; i++) {
    const [x, y, z]: Triple = [system.placeX[i]!, system.placeY[i]!, system.placeZ[i]!];
    const [fx, fy, fz] = force(i);
    addForce(loads, starboard[i]!, [x, y, z], [fx, fy, fz]);
    addForce(loads, port[i]!, [x, -y, z], [-fx, fy, -fz]);
  }
  for (let k = 0; k < strut.length; k++) {
    const i = system.foil + k;
    if (i < system.all) addForce(loads, strut[k]!, [system.placeX[i]!, 0, system.placeZ[i]!], force(i));
  }
}
