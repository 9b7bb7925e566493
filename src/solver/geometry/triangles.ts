/** Bodies of triangles: gathered, welded, measured. Points as x, y, z in turn; corners as three indices a triangle. */
import type { Triple } from './skin.ts';

export interface Mesh {
  points: Float64Array;
  corners: Uint32Array;
}

export class MeshBuilder {
  readonly #points: number[] = [];
  readonly #corners: number[] = [];

  /** Adds a point; its index. */
  vertex([x, y, z]: Triple): number {
    this.#points.push(x, y, z);
    return this.#points.length / 3 - 1;
  }

  triangle(a: number, b: number, c: number): void {
    this.#corners.push(a, b, c);
  }

  /** Four corners in order, split along the first diagonal. */
  quad(a: number, b: number, c: number, d: number): void {
    this.#corners.push(a, b, c, a, c, d);
  }

  mesh(): Mesh {
    return { points: Float64Array.from(this.#points), corners: Uint32Array.from(this.#corners) };
  }
}

/**
 * The body with points that coincide after `round` made one, and what collapses taken out: triangles without area at a
 * shared point, and pairs that lie back to back on the same three points. A closed body stays closed.
 */
export function weld(mesh: Mesh, round: (value: number) => number): Mesh {
  const index = new Map<string, number>();
  const points: number[] = [];
  const merged = new Uint32Array(mesh.points.length / 3);
  for (let at = 0; at < merged.length; at++) {
    const place = [0, 1, 2].map((axis) => round(mesh.points[3 * at + axis]!) + 0);
    const key = place.join(' ');
    let known = index.get(key);
    if (known === undefined) {
      known = points.length / 3;
      index.set(key, known);
      points.push(...place);
    }
    merged[at] = known;
  }
  const faces = new Map<string, [number, number, number]>();
  for (let k = 0; k < mesh.corners.length; k += 3) {
    const face = [0, 1, 2].map((corner) => merged[mesh.corners[k + corner]!]!) as [number, number, number];
    const [a, b, c] = face;
    if (a === b || b === c || c === a) continue;
    if (!faces.delete(faceKey(a, c, b))) faces.set(faceKey(a, b, c), face);
  }
  return { points: Float64Array.from(points), corners: Uint32Array.from([...faces.values()].flat()) };
}

/** The same for the same turn of three corners, whichever comes first. */
function faceKey(a: number, b: number, c: number): string {
  const least = Math.min(a, b, c);
  return least === a ? `${a} ${b} ${c}` : least === b ? `${b} ${c} ${a}` : `${c} ${a} ${b}`;
}

/** Volume inside a closed body, m3; positive when the normals point outward. Divergence theorem. */
export function volumeOf({ points, corners }: Mesh): number {
  let six = 0;
  for (let k = 0; k < corners.length; k += 3) {
    const [a, b, c] = [3 * corners[k]!, 3 * corners[k + 1]!, 3 * corners[k + 2]!];
    const cross = (axis: number) => {
      const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
      return points[b + i]! * points[c + j]! - points[b + j]! * points[c + i]!;
    };
    six += points[a]! * cross(0) + points[a + 1]! * cross(1) + points[a + 2]! * cross(2);
  }
  return six / 6;
}

export interface Box {
  least: Triple;
  most: Triple;
}

export function boundsOf({ points }: Mesh): Box {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  for (let k = 0; k < points.length; k++) {
    const axis = k % 3;
    least[axis] = Math.min(least[axis]!, points[k]!);
    most[axis] = Math.max(most[axis]!, points[k]!);
  }
  return { least: least as unknown as Triple, most: most as unknown as Triple };
}

/** Edges that are not shared by exactly two triangles running opposite ways: none on a watertight body. */
export function openEdges({ corners }: Mesh): number {
  const count = new Map<number, number>();
  const scale = 2 ** 26;
  for (let k = 0; k < corners.length; k += 3)
    for (let side = 0; side < 3; side++) {
      const from = corners[k + side]!;
      const to = corners[k + ((side + 1) % 3)]!;
      const key = from * scale + to;
      count.set(key, (count.get(key) ?? 0) + 1);
    }
  let open = 0;
  for (const [key, times] of count) {
    const from = Math.floor(key / scale);
    const back = count.get((key - from * scale) * scale + from);
    if (times !== 1 || back !== 1) open++;
  }
  return open;
}

/** The same body with its normals outward, whichever way they were. */
export function outward(mesh: Mesh): Mesh {
  if (volumeOf(mesh) >= 0) return mesh;
  const { points, corners } = mesh;
  return { points, corners: corners.map((_, k) => corners[k - (k % 3) + [0, 2, 1][k % 3]!]!) };
}
