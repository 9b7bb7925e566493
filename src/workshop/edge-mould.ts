/**
 * Moulds of a half parted along leading and trailing edge: no step of the curve is left in either. Between the edges the
 * mould is the skin itself; ahead and behind the parting runs level from each point of the edges to the block's faces, and
 * beyond the tip outward. Upper and lower mould share every point of the parting, so they close without a gap. Lengths in m.
 */
import { gridOf, ringsOf } from '../solver/geometry/mesh.ts';
import type { Skin, Triple } from '../solver/geometry/skin.ts';
import { type Mesh, MeshBuilder } from '../solver/geometry/triangles.ts';
import { closeFace } from './close-face.ts';

/** Lines of the parting and one skin, from the block's front to its back: root, rings, tip, the block's outer face. */
type Chain = Triple[];

interface Block {
  front: number; // x
  back: number;
  outer: number; // y
  top: number; // z
  bottom: number;
}

/**
 * A generator that yields the share done.
 * Throws an Error with a sentence where an edge turns back on itself, seen from above.
 */
export function* edgeMoulds(
  skin: Skin,
  tolerance: number,
  wall: number,
): Generator<number, { upper: Mesh; lower: Mesh }, void> {
  const grid = gridOf(skin, tolerance);
  yield 0.2;
  const rings = ringsOf(skin, grid);
  const tip = grid.endsInPoint ? skin.point(skin.rib(1), 1) : null;
  const block = blockRound(tip ? [...rings, [tip]] : rings, wall);
  const mould = (side: 'upper' | 'lower') => closedMould(chainsOf(rings, tip, side, block), side, block);
  yield 0.4;
  const upper = mould('upper');
  yield 0.7;
  return { upper, lower: mould('lower') };
}

function blockRound(rings: readonly Triple[][], wall: number): Block {
  const points = rings.flat();
  const reach = (axis: 0 | 1 | 2, sign: 1 | -1) =>
    points.reduce((most, point) => Math.max(most, sign * point[axis]), -Infinity) + wall;
  return {
    front: -reach(0, -1),
    back: reach(0, 1),
    outer: reach(1, 1),
    top: reach(2, 1),
    bottom: -reach(2, -1),
  };
}

function chainsOf(
  rings: readonly Triple[][],
  tip: Triple | null,
  side: 'upper' | 'lower',
  { front, back, outer }: Block,
): Chain[] {
  const middle = (rings[0]!.length - 1) / 2; // the leading edge
  const toFaces = (points: Triple[]): Chain => {
    const [nose, tail] = [points[0]!, points[points.length - 1]!];
    return [[front, nose[1], nose[2]], ...points, [back, tail[1], tail[2]]];
  };
  /** Leading edge, skin, and the middle of the trailing edge. */
  const along = (ring: Triple[]): Triple[] => {
    const skin = side === 'upper' ? ring.slice(0, middle + 1).reverse() : ring.slice(middle);
    return [...skin, between(ring[0]!, ring[ring.length - 1]!)];
  };
  const last = rings[rings.length - 1]!;
  // A flat tip is parted along its mean line; one that comes to a point, there.
  const end = tip
    ? along(last).map(() => tip)
    : [...middleLine(last, middle), between(last[0]!, last[last.length - 1]!)];
  const chains = [...rings.map((ring) => toFaces(along(ring))), toFaces(end)];
  for (const at of [1, chains[0]!.length - 2])
    for (let k = 1; k < chains.length; k++)
      if (chains[k]![at]![1] < chains[k - 1]![at]![1] - 1e-9)
        throw new Error(
          'parting: the edges turn back under themselves, so no parting along them opens; allowed a flat one',
        );
  return [...chains, toFaces(end).map(([x, , z]): Triple => [x, outer, z])];
}

function middleLine(ring: Triple[], middle: number): Triple[] {
  return Array.from({ length: middle + 1 }, (_, k) => between(ring[middle - k]!, ring[middle + k]!));
}

function between(a: Triple, b: Triple): Triple {
  return [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1]), 0.5 * (a[2] + b[2])];
}

/** What stands between the chains and the top of the block, or its bottom. */
function closedMould(chains: readonly Chain[], side: 'upper' | 'lower', block: Block): Mesh {
  const body = new Body();
  const indices = chains.map((chain) => chain.map((point) => body.vertex(point)));
  for (let k = 1; k < indices.length; k++)
    for (let j = 1; j < indices[k]!.length; j++) {
      const [a, b, c, d] = [
        indices[k - 1]![j - 1]!,
        indices[k]![j - 1]!,
        indices[k]![j]!,
        indices[k - 1]![j]!,
      ];
      // The same diagonal in both moulds.
      for (const [p, q, r] of [
        [a, b, c],
        [a, c, d],
      ] as const)
        if (side === 'upper') body.triangle(p, q, r);
        else body.triangle(p, r, q);
    }
  const { front, back, outer } = block;
  const level = side === 'upper' ? block.top : block.bottom;
  const corner = (x: number, y: number) => body.vertex([x, y, level]);
  const [a, b, c, d] = [corner(front, 0), corner(back, 0), corner(back, outer), corner(front, outer)];
  const last = indices.length - 1;
  const end = indices[0]!.length - 1;
  body.close([...indices[0]!, b, a], [0, 1, 0]);
  body.close([...indices[last]!, c, d], [0, -1, 0]);
  body.close([...indices.map((chain) => chain[0]!), d, a], [1, 0, 0]);
  body.close([...indices.map((chain) => chain[end]!), c, b], [-1, 0, 0]);
  body.close([a, b, c, d], [0, 0, side === 'upper' ? -1 : 1]);
  return body.builder.mesh();
}

const SAME = 10; // decimals of a metre: points that agree so far are one

/** A mesh in which every place has one point, and triangles that collapse are left out. */
class Body {
  readonly builder = new MeshBuilder();
  readonly #places: Triple[] = [];
  readonly #known = new Map<string, number>();

  vertex(place: Triple): number {
    const key = place.map((value) => value.toFixed(SAME)).join();
    let index = this.#known.get(key);
    if (index === undefined) {
      index = this.builder.vertex(place);
      this.#places.push(place);
      this.#known.set(key, index);
    }
    return index;
  }

  triangle(a: number, b: number, c: number): void {
    if (a !== b && b !== c && c !== a) this.builder.triangle(a, b, c);
  }

  /** A flat wall with this outline; `inward` is the normal into the body. */
  close(outline: readonly number[], inward: Triple): void {
    const loop = outline.filter((at, k) => at !== outline[(k + 1) % outline.length]);
    const turned = this.#facing(loop, inward) > 0 ? [...loop].reverse() : loop;
    const rim = new Map(turned.map((at, k) => [at, [turned[(k + 1) % turned.length]!]]));
    closeFace(this.builder, rim, this.#places, inward);
  }

  /** Twice the area inside a loop, positive where it runs anticlockwise as seen from the tip of the normal. */
  #facing(loop: readonly number[], normal: Triple): number {
    return loop.reduce((sum, at, k) => {
      const [a, b] = [this.#places[at]!, this.#places[loop[(k + 1) % loop.length]!]!];
      const cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
      return sum + cross[0]! * normal[0] + cross[1]! * normal[1] + cross[2]! * normal[2];
    }, 0);
  }
}
