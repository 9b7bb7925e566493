/**
 * Where on the bound segment a -> b its force is taken, as a share from a: abreast of the control station, seen from
 * behind. On the segment itself, since beside it the line would act on itself without bound; not in its middle, since
 * sums over stations at the mid-angles settle at once and sums over middles as one over the strip count.
 */
export function forcePlace(
  ay: number,
  az: number,
  by: number,
  bz: number,
  controlY: number,
  controlZ: number,
): number {
  const [ly, lz] = [by - ay, bz - az];
  return ((controlY - ay) * ly + (controlZ - az) * lz) / (ly * ly + lz * lz);
}

/** That place on the segment from node a: x, y, z. */
export function forcePoint(
  nodes: Float64Array,
  a: number,
  controlY: number,
  controlZ: number,
): [number, number, number] {
  const from = nodes.subarray(3 * a, 3 * a + 3);
  const to = nodes.subarray(3 * a + 3, 3 * a + 6);
  const share = forcePlace(from[1]!, from[2]!, to[1]!, to[2]!, controlY, controlZ);
  const at = (axis: number) => from[axis]! + share * (to[axis]! - from[axis]!);
  return [at(0), at(1), at(2)];
}
