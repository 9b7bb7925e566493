/**
 * The strips of a foil moved with the bodies that carry them, seen from the wing's root, which stays where it is drawn:
 * droop, twist and place of every strip follow from the turn of its body. Port and starboard must bend alike.
 */
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import type { HalfBodies } from './hinge-chain.ts';
import { type Pose, posedDirection, posedPoint } from './pose.ts';
import type { Skeleton } from './skeleton.ts';

/** `pose` as `seenFrom` the wing's root. Surfaces, strut and depth stay those drawn. */
export function flexCraft(craft: Craft, skeleton: Skeleton, pose: Pose): Craft {
  const { wing, stabilizer, strut } = craft.parts;
  return {
    ...craft,
    parts: {
      wing: flexStrips(wing, skeleton.wing.starboard, pose),
      stabilizer:
        stabilizer && skeleton.stabilizer
          ? flexStrips(stabilizer, skeleton.stabilizer.starboard, pose)
          : stabilizer,
      strut,
    },
  };
}

function flexStrips(drawn: Strips, half: HalfBodies, pose: Pose): Strips {
  const { count, rows } = drawn;
  const own = (values: Float64Array) => values.slice();
  const strips: Strips = {
    ...drawn,
    nodeX: own(drawn.nodeX),
    nodeY: own(drawn.nodeY),
    nodeZ: own(drawn.nodeZ),
    controlX: own(drawn.controlX),
    controlY: own(drawn.controlY),
    controlZ: own(drawn.controlZ),
    quarterX: own(drawn.quarterX),
    width: own(drawn.width),
    droop: own(drawn.droop),
    pitch: own(drawn.pitch),
  };
  for (let r = 0; r < rows; r++) {
    for (let k = 0; k <= count; k++) {
      const i = r * (count + 1) + k;
      const at = posedPoint(pose, half.edges[k]!, [drawn.nodeX[i]!, drawn.nodeY[i]!, drawn.nodeZ[i]!]);
      [strips.nodeX[i], strips.nodeY[i], strips.nodeZ[i]] = at;
    }
    for (let k = 0; k < count; k++) {
      const i = r * count + k;
      const at = posedPoint(pose, half.strips[k]!, [
        drawn.controlX[i]!,
        drawn.controlY[i]!,
        drawn.controlZ[i]!,
      ]);
      [strips.controlX[i], strips.controlY[i], strips.controlZ[i]] = at;
    }
  }
  // The root's edge lies in the plane of symmetry whatever the joint does.
  for (let k = 0; k < count; k++) {
    const turned = turnNormal(pose, half.strips[k]!, drawn.droop[k]!, drawn.pitch[k]!);
    strips.droop[k] = turned.droop;
    strips.pitch[k] = turned.pitch;
    const [y, z] = [drawn.controlY[k]!, drawn.controlZ[k]!];
    strips.quarterX[k] = posedPoint(pose, half.strips[k]!, [drawn.quarterX[k]!, y, z])[0];
    strips.width[k] = Math.hypot(
      strips.nodeY[k + 1]! - strips.nodeY[k]!,
      strips.nodeZ[k + 1]! - strips.nodeZ[k]!,
    );
  }
  return strips;
}

/** Droop (positive down) and pitch of a strip whose normal turns with its body, rad. */
export function turnNormal(
  pose: Pose,
  body: number,
  droop: number,
  pitch: number,
): { droop: number; pitch: number } {
  const across = Math.cos(pitch);
  const [x, y, z] = posedDirection(pose, body, [
    Math.sin(pitch),
    across * Math.sin(droop),
    across * Math.cos(droop),
  ]);
  return { droop: Math.atan2(y, z), pitch: Math.asin(Math.max(-1, Math.min(1, x))) };
}
