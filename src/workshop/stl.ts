/** A body as binary STL in millimetres. */
import { type Mesh, weld } from '../solver/geometry/triangles.ts';

const HEADER = 80; // bytes
const TRIANGLE = 50; // bytes

/** Points are rounded to the single precision of the file first, so that neighbours still share them when read back. */
export function stlOf(mesh: Mesh, remark: string): Uint8Array {
  const { points, corners } = weld(mesh, (value) => Math.fround(value * 1000));
  const count = corners.length / 3;
  const bytes = new Uint8Array(HEADER + 4 + TRIANGLE * count);
  const view = new DataView(bytes.buffer);
  // A header that begins with "solid" is taken for the text form by some readers.
  const words = new TextEncoder().encode(`Downcurve, millimetres. ${remark}`);
  bytes.set(words.subarray(0, HEADER));
  view.setUint32(HEADER, count, true);
  for (let k = 0; k < count; k++) {
    const offset = HEADER + 4 + TRIANGLE * k;
    const at = [0, 1, 2].map((corner) => 3 * corners[3 * k + corner]!);
    for (const [axis, value] of normal(points, at as [number, number, number]).entries())
      view.setFloat32(offset + 4 * axis, value, true);
    for (let corner = 0; corner < 3; corner++)
      for (let axis = 0; axis < 3; axis++)
        view.setFloat32(offset + 12 + 12 * corner + 4 * axis, points[at[corner]! + axis]!, true);
  }
  return bytes;
}

function normal(points: Float64Array, [a, b, c]: [number, number, number]): number[] {
  const edge = (to: number, axis: number) => points[to + axis]! - points[a + axis]!;
  const cross = [0, 1, 2].map((axis) => {
    const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
    return edge(b, i) * edge(c, j) - edge(b, j) * edge(c, i);
  });
  const length = Math.hypot(...cross);
  return length > 0 ? cross.map((value) => value / length) : [0, 0, 0];
}
