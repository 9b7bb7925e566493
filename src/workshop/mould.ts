/**
 * Moulds: a block with the part taken out of it, parted at the centre plane into left and right, and into upper and lower
 * at one flat plane or along the edges. Lengths in m; the port moulds mirror the starboard ones.
 */
import { meshSkin } from '../solver/geometry/mesh.ts';
import { type Draw, partingOf } from '../solver/geometry/parting.ts';
import type { Skin, Triple } from '../solver/geometry/skin.ts';
import { type Box, boundsOf, type Mesh, MeshBuilder, weld } from '../solver/geometry/triangles.ts';
import { below, keepAbove, type Plane } from './cut-body.ts';
import { edgeMoulds } from './edge-mould.ts';

const WALL = 0.02; // m of block round the part

export interface Mould {
  name: string; // "starboard-upper"
  mesh: Mesh;
}

/** Generator: yields the share done. */
export function* mouldsOf(skin: Skin, tolerance: number, draw: Draw): Generator<number, Mould[], void> {
  if (draw === 'edges') {
    const { upper, lower } = yield* edgeMoulds(skin, tolerance, WALL);
    return fourMoulds(upper, lower);
  }
  const meshing = meshSkin(skin, { tolerance, side: 'whole' });
  let part: Mesh | null = null;
  while (!part) {
    const step = meshing.next();
    if (step.done) part = step.value;
    else yield 0.5 * step.value;
  }
  const hollow = hollowBlock(weld(part, (value) => Number(value.toFixed(10))));
  yield 0.6;
  const starboard = keepAbove(hollow, { normal: [0, 1, 0], offset: 0 });
  yield 0.7;
  const plane: Plane = partingOf(skin, draw);
  const upper = keepAbove(starboard, plane);
  yield 0.8;
  return fourMoulds(upper, keepAbove(starboard, below(plane)));
}

function fourMoulds(upper: Mesh, lower: Mesh): Mould[] {
  return [
    { name: 'starboard-upper', mesh: upper },
    { name: 'starboard-lower', mesh: lower },
    { name: 'port-upper', mesh: mirrored(upper) },
    { name: 'port-lower', mesh: mirrored(lower) },
  ];
}

/** A block with the part as a void: the part's skin turned inside out within the block's. */
function hollowBlock(part: Mesh): Mesh {
  const builder = new MeshBuilder();
  const box = boundsOf(part);
  addBlock(builder, {
    least: box.least.map((value) => value - WALL) as unknown as Triple,
    most: box.most.map((value) => value + WALL) as unknown as Triple,
  });
  const points = Array.from({ length: part.points.length / 3 }, (_, at) =>
    builder.vertex([part.points[3 * at]!, part.points[3 * at + 1]!, part.points[3 * at + 2]!]),
  );
  for (let k = 0; k < part.corners.length; k += 3)
    builder.triangle(points[part.corners[k]!]!, points[part.corners[k + 2]!]!, points[part.corners[k + 1]!]!);
  return builder.mesh();
}

function addBlock(builder: MeshBuilder, { least, most }: Box): void {
  const at = [0, 1, 2, 3, 4, 5, 6, 7].map((corner) =>
    builder.vertex([
      corner & 1 ? most[0] : least[0],
      corner & 2 ? most[1] : least[1],
      corner & 4 ? most[2] : least[2],
    ]),
  );
  for (const [a, b, c, d] of [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ] as const)
    builder.quad(at[a]!, at[b]!, at[c]!, at[d]!);
}

function mirrored({ points, corners }: Mesh): Mesh {
  return {
    points: points.map((value, k) => (k % 3 === 1 ? -value : value)),
    corners: corners.map((_, k) => corners[k - (k % 3) + [0, 2, 1][k % 3]!]!),
  };
}
