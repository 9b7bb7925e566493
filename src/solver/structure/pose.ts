/**
 * The foil bent for good, by turns of any size: each body as a rotation and a shift from where it was drawn. Twelve
 * numbers a body, the board last: the rotation row after row, then the shift; a drawn point p comes to rest at R p + shift.
 */
import type { Frame, Places } from './frame.ts';
import type { Triple } from './triple.ts';

export type Pose = Float64Array;

/** Where a body's twelve numbers begin; the board (-1) comes last. */
const startOf = (pose: Pose, body: number): number => (body < 0 ? pose.length - 12 : 12 * body);

/** All bodies when every hinge turns about its axis by the given angle, from the board outward. */
export function poseOf(frame: Frame, turns: Float64Array): Pose {
  const { at, axis } = frame.drawn;
  const pose = new Float64Array(12 * (frame.count + 1));
  for (let i = 0; i < 9; i += 4) pose[12 * frame.count + i] = 1;
  const own = new Float64Array(12);
  for (let j = 0; j < frame.count; j++) {
    turnAbout(own, axis, at, 3 * j, turns[j]!);
    const up = frame.parent[j]!;
    if (up < 0) pose.set(own, 12 * j);
    else follow(pose, 12 * up, own, 0, pose, 12 * j);
  }
  return pose;
}

/** Rotation by `angle` about an axis through a point (O. Rodrigues 1840). */
function turnAbout(to: Float64Array, axis: Float64Array, at: Float64Array, p: number, angle: number): void {
  const x = axis[p]!;
  const y = axis[p + 1]!;
  const z = axis[p + 2]!;
  const s = Math.sin(angle);
  const c = Math.cos(angle);
  const v = 1 - c;
  to[0] = c + x * x * v;
  to[1] = x * y * v - z * s;
  to[2] = x * z * v + y * s;
  to[3] = y * x * v + z * s;
  to[4] = c + y * y * v;
  to[5] = y * z * v - x * s;
  to[6] = z * x * v - y * s;
  to[7] = z * y * v + x * s;
  to[8] = c + z * z * v;
  for (let i = 0; i < 3; i++) {
    const row = 3 * i;
    to[9 + i] = at[p + i]! - (to[row]! * at[p]! + to[row + 1]! * at[p + 1]! + to[row + 2]! * at[p + 2]!);
  }
}

/** to = outer after inner, from the places o, n and t on; to may be outer, further along. */
function follow(
  outer: Float64Array,
  o: number,
  inner: Float64Array,
  n: number,
  to: Float64Array,
  t: number,
): void {
  for (let i = 0; i < 3; i++) {
    const a = outer[o + 3 * i]!;
    const b = outer[o + 3 * i + 1]!;
    const c = outer[o + 3 * i + 2]!;
    for (let k = 0; k < 3; k++)
      to[t + 3 * i + k] = a * inner[n + k]! + b * inner[n + 3 + k]! + c * inner[n + 6 + k]!;
    to[t + 9 + i] = a * inner[n + 9]! + b * inner[n + 10]! + c * inner[n + 11]! + outer[o + 9 + i]!;
  }
}

/** Every pose seen from a body that is held where it was drawn. */
export function seenFrom(pose: Pose, body: number): Pose {
  const b = startOf(pose, body);
  const back = new Float64Array(12);
  for (let i = 0; i < 3; i++) {
    for (let k = 0; k < 3; k++) back[3 * i + k] = pose[b + 3 * k + i]!;
    back[9 + i] = 0;
    for (let k = 0; k < 3; k++) back[9 + i]! -= back[3 * i + k]! * pose[b + 9 + k]!;
  }
  const seen = new Float64Array(pose.length);
  for (let j = 0; j < pose.length; j += 12) follow(back, 0, pose, j, seen, j);
  return seen;
}

export function posedPoint(pose: Pose, body: number, [x, y, z]: Triple): Triple {
  const p = startOf(pose, body);
  const row = (i: number) =>
    pose[p + 3 * i]! * x + pose[p + 3 * i + 1]! * y + pose[p + 3 * i + 2]! * z + pose[p + 9 + i]!;
  return [row(0), row(1), row(2)];
}

export function posedDirection(pose: Pose, body: number, [x, y, z]: Triple): Triple {
  const p = startOf(pose, body);
  const row = (i: number) => pose[p + 3 * i]! * x + pose[p + 3 * i + 1]! * y + pose[p + 3 * i + 2]! * z;
  return [row(0), row(1), row(2)];
}

/** Hinges where the pose has brought them: each sits on its parent's body. */
export function posedPlaces(frame: Frame, pose: Pose): Places {
  const { at, axis } = frame.drawn;
  const places: Places = { at: new Float64Array(at.length), axis: new Float64Array(axis.length) };
  for (let j = 0; j < frame.count; j++) {
    const p = 3 * j;
    const b = startOf(pose, frame.parent[j]!);
    for (let i = 0; i < 3; i++) {
      const x = pose[b + 3 * i]!;
      const y = pose[b + 3 * i + 1]!;
      const z = pose[b + 3 * i + 2]!;
      places.at[p + i] = x * at[p]! + y * at[p + 1]! + z * at[p + 2]! + pose[b + 9 + i]!;
      places.axis[p + i] = x * axis[p]! + y * axis[p + 1]! + z * axis[p + 2]!;
    }
  }
  return places;
}
