/**
 * Joints as springs against roll (about x), pitch (about y) and yaw (about z), N m/rad. The defaults are assumptions of
 * the size a sound bolted joint has (common practice); the bench test replaces them by what a foil really does.
 */
import type { Joints } from '../design/document.ts';

export type JointName = 'box' | 'strut' | 'wing' | 'stabilizer';
export type SpringAxis = 'roll' | 'pitch' | 'yaw';

export const JOINT_NAMES: readonly JointName[] = ['box', 'strut', 'wing', 'stabilizer'];
export const SPRING_AXES: readonly SpringAxis[] = ['roll', 'pitch', 'yaw'];

export const JOINT_DEFAULTS: Readonly<Record<JointName, Record<SpringAxis, number>>> = {
  box: { roll: 8000, pitch: 20000, yaw: 4000 },
  strut: { roll: 10000, pitch: 15000, yaw: 8000 },
  wing: { roll: 8000, pitch: 8000, yaw: 8000 },
  stabilizer: { roll: 3000, pitch: 2500, yaw: 3000 },
};

export function springOf(joints: Joints | undefined, name: JointName, axis: SpringAxis): number {
  return joints?.[name]?.[axis] ?? JOINT_DEFAULTS[name][axis];
}
