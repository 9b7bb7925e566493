/**
 * Added mass of the foil by strips: a strip of chord c moves rho pi c^2/4 of water a metre when it moves along its
 * normal, acting at mid-chord (a flat plate across a stream: H. Lamb, Hydrodynamics, 6th ed. 1932, art. 71; J. N.
 * Newman, Marine Hydrodynamics, 1977, table 4.3). Ends (some 5 % at an aspect ratio of 10), thickness and the free
 * surface's share are left out.
 *
 * Body axes: x ahead, y to starboard, z down, from a reference point. The matrix is symmetric 6 by 6, row after row,
 * for (u, v, w, p, q, r), in kg, kg m, kg m2: with n the normal and R the place of a strip, g = (n, R x n), and the
 * matrix is the sum of strip mass times g g^T.
 */
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';

export function addedMass(craft: Craft, density: number, point: { x: number; height: number }): Float64Array {
  const matrix = new Float64Array(36);
  const { wing, stabilizer, strut } = craft.parts;
  addStrips(matrix, wing, density, point, [1, -1]);
  if (stabilizer) addStrips(matrix, stabilizer, density, point, [1, -1]);
  if (strut) addStrips(matrix, strut, density, point, [1]);
  return matrix;
}

function addStrips(
  matrix: Float64Array,
  strips: Strips,
  density: number,
  point: { x: number; height: number },
  sides: readonly number[],
): void {
  for (let k = 0; k < strips.count; k++) {
    const chord = strips.chord[k]!;
    const mass = 0.25 * density * Math.PI * chord * chord * strips.width[k]!;
    const x = point.x - (strips.quarterX[k]! + 0.25 * chord);
    const z = point.height - strips.controlZ[k]!;
    for (const side of sides) {
      const y = side * strips.controlY[k]!;
      const ny = side * Math.sin(strips.droop[k]!);
      const nz = -Math.cos(strips.droop[k]!);
      const g = [0, ny, nz, y * nz - z * ny, -x * nz, x * ny];
      for (let i = 0; i < 6; i++) for (let j = 0; j < 6; j++) matrix[6 * i + j]! += mass * g[i]! * g[j]!;
    }
  }
}
