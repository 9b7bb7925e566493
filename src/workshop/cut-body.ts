/**
 * A closed body cut by a plane: what stands on the side the normal points to, closed again by a flat face with holes.
 * Points on the plane count as kept.
 */
import type { Triple } from '../solver/geometry/skin.ts';
import { type Mesh, MeshBuilder } from '../solver/geometry/triangles.ts';
import { closeFace } from './close-face.ts';

export interface Plane {
  normal: Triple; // of length 1
  offset: number; // of the plane from the origin along the normal
}

const ON_PLANE = 1e-10; // m

export function keepAbove(mesh: Mesh, plane: Plane): Mesh {
  const builder = new MeshBuilder();
  const cutter = new Cutter(mesh, plane, builder);
  for (let k = 0; k < mesh.corners.length; k += 3)
    cutter.cut([mesh.corners[k]!, mesh.corners[k + 1]!, mesh.corners[k + 2]!]);
  closeFace(builder, cutter.rim, cutter.places, plane.normal);
  return builder.mesh();
}

export function below({ normal: [x, y, z], offset }: Plane): Plane {
  return { normal: [-x, -y, -z], offset: -offset };
}

class Cutter {
  /** The edge of the cut as the closing face runs along it: from each point to the next. */
  readonly rim = new Map<number, number[]>();
  readonly places: Triple[] = []; // of the builder's points

  readonly #height: Float64Array;
  readonly #kept = new Map<number, number>(); // old index to new
  readonly #crossings = new Map<string, number>();

  constructor(
    private readonly mesh: Mesh,
    plane: Plane,
    private readonly builder: MeshBuilder,
  ) {
    this.#height = Float64Array.from({ length: mesh.points.length / 3 }, (_, at) => {
      const [x, y, z] = this.#place(at);
      const height = x * plane.normal[0] + y * plane.normal[1] + z * plane.normal[2] - plane.offset;
      return Math.abs(height) < ON_PLANE ? 0 : height;
    });
  }

  cut(face: readonly [number, number, number]): void {
    const inside = face.map((at) => this.#height[at]! >= 0);
    if (!inside.some(Boolean)) return;
    const polygon: number[] = [];
    let leaves = -1;
    let enters = -1;
    for (let k = 0; k < 3; k++) {
      const [from, to] = [face[k]!, face[(k + 1) % 3]!];
      if (inside[k]) polygon.push(this.#keep(from));
      if (inside[k] === inside[(k + 1) % 3]) continue;
      const crossing = this.#cross(from, to);
      polygon.push(crossing);
      if (inside[k]) leaves = crossing;
      else enters = crossing;
    }
    const corners = polygon.filter((at, k) => at !== polygon[(k + polygon.length - 1) % polygon.length]);
    for (let k = 2; k < corners.length; k++) this.builder.triangle(corners[0]!, corners[k - 1]!, corners[k]!);
    if (leaves !== enters) this.rim.set(enters, [...(this.rim.get(enters) ?? []), leaves]);
  }

  #place(at: number): Triple {
    const { points } = this.mesh;
    return [points[3 * at]!, points[3 * at + 1]!, points[3 * at + 2]!];
  }

  #add(place: Triple): number {
    this.places.push(place);
    return this.builder.vertex(place);
  }

  #keep(at: number): number {
    let index = this.#kept.get(at);
    if (index === undefined) {
      index = this.#add(this.#place(at));
      this.#kept.set(at, index);
    }
    return index;
  }

  /** Where the edge passes the plane; the same point from both triangles that share the edge. */
  #cross(one: number, other: number): number {
    const [from, to] = one < other ? [one, other] : [other, one];
    const [low, high] = [this.#height[from]!, this.#height[to]!];
    if (low === 0) return this.#keep(from);
    if (high === 0) return this.#keep(to);
    const key = `${from} ${to}`;
    let index = this.#crossings.get(key);
    if (index === undefined) {
      const share = low / (low - high);
      const [a, b] = [this.#place(from), this.#place(to)];
      index = this.#add(
        [0, 1, 2].map((axis) => a[axis]! + share * (b[axis]! - a[axis]!)) as unknown as Triple,
      );
      this.#crossings.set(key, index);
    }
    return index;
  }
}
