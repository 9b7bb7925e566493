/**
 * The skin of a surface as it is shown: both halves at a fixed number of rings and points, so that a shape that moves
 * keeps its triangles and only its points are filled anew. True sections as in mesh.ts, without its guarantee of how far
 * a triangle may stand off. Lengths in m.
 *
 * A half is a grid of rings, root to tip, each from the trailing edge over the upper side to the nose and back below, one
 * ring after the other; then the edge, two points a ring; then the tip's cap. Starboard comes first.
 */

import type { Planform } from '../design/document.ts';
import { chordLaw, droopLaw } from '../design/laws.ts';
import { evenly } from '../numeric/refine.ts';
import { ringsOf, trimmedLength } from './mesh.ts';
import type { Skin } from './skin.ts';

export interface ShellSize {
  rings: number; // root and tip among them
  around: number; // points of a ring, odd: the nose is one of them
}

export interface Shell {
  size: ShellSize;
  positions: Float32Array; // x, y, z a vertex
  normals: Float32Array; // unit, outward
  /** Two a vertex: place along the half (see `placeOf`), and round the section (0 aft, 0.5 the nose, 1 aft below). */
  places: Float32Array;
  corners: Uint16Array; // three a triangle, outward by the right hand
  etas: Float64Array; // of the rings
}

/** Place along a half from 0 to 1 for eta: closer at the tip, where shapes and loads turn fastest. */
export const placeOf = (eta: number): number => (2 / Math.PI) * Math.asin(Math.min(1, Math.max(0, eta)));
export const etaOf = (place: number): number => Math.sin(0.5 * Math.PI * place);

/** An empty shell: its triangles stand, its points are for `fillShell`. */
export function makeShell(size: ShellSize): Shell {
  const half = verticesOf(size);
  const corners = cornersOf(size);
  const port = corners.map((_, k) => half + corners[k - (k % 3) + [0, 2, 1][k % 3]!]!);
  return {
    size,
    positions: new Float32Array(6 * half),
    normals: new Float32Array(6 * half),
    places: new Float32Array(4 * half),
    corners: Uint16Array.from([...corners, ...port]),
    etas: new Float64Array(size.rings),
  };
}

/** The shell of a skin, in place. */
export function fillShell(shell: Shell, skin: Skin, planform: Planform): void {
  const { size } = shell;
  const shares = evenly(0, 2, size.around - 1);
  const etas = etasOf(skin, planform, size.rings);
  shell.etas.set(etas);
  const rings = ringsOf(skin, { etas, shares, endsInPoint: false });
  let at = 0;
  const put = (ring: number, point: number) => {
    shell.positions.set(rings[ring]![point]!, 3 * at);
    shell.places[2 * at] = placeOf(etas[ring]!);
    shell.places[2 * at + 1] = shares[point]! / 2;
    at++;
  };
  for (let ring = 0; ring < size.rings; ring++)
    for (let point = 0; point < size.around; point++) put(ring, point);
  for (let ring = 0; ring < size.rings; ring++) for (const point of [0, size.around - 1]) put(ring, point);
  for (let point = 0; point < size.around; point++) put(size.rings - 1, point);
  fillNormals(shell, skin.surface.droop(0) === 0);
  mirror(shell);
}

const verticesOf = ({ rings, around }: ShellSize) => rings * (around + 2) + around;

function cornersOf({ rings, around }: ShellSize): number[] {
  const corners: number[] = [];
  const quad = (a: number, b: number, c: number, d: number) => corners.push(a, b, c, a, c, d);
  const edge = rings * around;
  for (let ring = 1; ring < rings; ring++) {
    const [inner, outer] = [(ring - 1) * around, ring * around];
    for (let k = 1; k < around; k++) quad(inner + k - 1, outer + k - 1, outer + k, inner + k);
    const at = edge + 2 * ring;
    quad(at - 1, at + 1, at, at - 2);
  }
  const cap = edge + 2 * rings;
  const last = around - 1;
  for (let k = 0; k < last - k; k++) quad(cap + last - k, cap + last - k - 1, cap + k + 1, cap + k);
  return corners;
}

/** As sines of equal angles; the ring nearest to a kink of a law stands on it. */
function etasOf(skin: Skin, planform: Planform, count: number): number[] {
  const first = Math.min(0.5, (2 * trimmedLength(skin)) / skin.surface.halfLength);
  const etas = evenly(0, 1, count - 1).map((place) => (place === 0 ? 0 : first + (1 - first) * etaOf(place)));
  for (const knot of [...droopLaw(planform.droop).knots, ...chordLaw(planform.chord).knots]) {
    let nearest = 1;
    for (let k = 2; k < count - 1; k++)
      if (Math.abs(etas[k]! - knot) < Math.abs(etas[nearest]! - knot)) nearest = k;
    if (knot > etas[nearest - 1]! && knot < etas[nearest + 1]!) etas[nearest] = knot;
  }
  return etas;
}

/** Square to the way round the section and the way along the span, both from the neighbours of a point. */
function fillNormals({ size: { rings, around }, positions, normals }: Shell, isSmoothAtRoot: boolean): void {
  const spread = (axis: number, a: number, b: number) => positions[3 * b + axis]! - positions[3 * a + axis]!;
  for (let ring = 0; ring < rings; ring++)
    for (let k = 0; k < around; k++) {
      const at = ring * around + k;
      const [before, after] = [at - (k > 0 ? 1 : 0), at + (k < around - 1 ? 1 : 0)];
      const inner = at - (ring > 0 ? around : 0);
      const outer = at + (ring < rings - 1 ? around : 0);
      const [ax, ay, az] = [spread(0, before, after), spread(1, before, after), spread(2, before, after)];
      const [bx, by, bz] = [spread(0, inner, outer), spread(1, inner, outer), spread(2, inner, outer)];
      const x = by * az - bz * ay;
      const y = ring === 0 && isSmoothAtRoot ? 0 : bz * ax - bx * az;
      const z = bx * ay - by * ax;
      const length = Math.hypot(x, y, z);
      // A tip that comes to a point has no way round: it looks as the ring before it does.
      for (const [axis, value] of [x, y, z].entries())
        normals[3 * at + axis] =
          length > 1e-12 ? value / length : ring > 0 ? normals[3 * (at - around) + axis]! : 0;
    }
  const edge = rings * around;
  const cap = edge + 2 * rings;
  for (let at = edge; at < cap; at++) normals[3 * at] = 1;
  for (let at = cap; at < cap + around; at++) normals.set(capNormal(positions, cap, around), 3 * at);
}

/** Outward along the last ring's own plane: square to its chord and to its height. */
function capNormal(positions: Float32Array, cap: number, around: number): [number, number, number] {
  const quarter = Math.floor(around / 4);
  const from = (a: number, b: number) =>
    [0, 1, 2].map((axis) => positions[3 * (cap + b) + axis]! - positions[3 * (cap + a) + axis]!);
  const [chord, height] = [from((around - 1) / 2, 0), from(around - 1 - quarter, quarter)];
  const cross = [1, 2, 0].map(
    (i, axis) => height[i]! * chord[(axis + 2) % 3]! - height[(axis + 2) % 3]! * chord[i]!,
  );
  const length = Math.hypot(...cross);
  return length > 1e-12 ? [cross[0]! / length, cross[1]! / length, cross[2]! / length] : [0, 1, 0];
}

function mirror({ positions, normals, places }: Shell): void {
  const half = positions.length / 2;
  for (const values of [positions, normals])
    for (let k = 0; k < half; k++) values[half + k] = k % 3 === 1 ? -values[k]! : values[k]!;
  places.copyWithin(places.length / 2, 0, places.length / 2);
}
