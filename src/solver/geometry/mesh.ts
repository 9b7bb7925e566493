/**
 * The outer skin as a closed body of triangles: true sections from centre plane to tip, trailing edge and tips closed.
 * Rings of points at chosen places along the half, the same shares round every ring; both are set closer where the skin
 * bends, until chords stay within half the tolerance of it each way. Lengths in m; outward normals by the right hand.
 *
 * Halves meet in the centre plane: where the wing line is bent at its root, every line along the span is trimmed or
 * carried on straight to y = 0, so that the halves fit without a gap.
 */
import { evenly, leavesChord, refine } from '../numeric/refine.ts';
import { findExtremes } from './extremes.ts';
import { placed, type Rib, type Skin, type Triple } from './skin.ts';
import { type Mesh, MeshBuilder } from './triangles.ts';

export type Side = 'whole' | 'starboard' | 'port';

export interface MeshOptions {
  tolerance: number; // m, chord height: how far the skin may stand off a triangle
  side: Side;
}

const LEAST_CHORD = 0.0005; // m; a wing that comes to a point is closed from here by a fan
const LOOKED_AT = evenly(0, 2, 16); // shares at which the spacing along the span is judged
const MOST_TRIANGLES = 4_000_000;

/** Where rings and points stand: eta of the rings root to tip, shares from 0 to 2. */
export interface Grid {
  etas: number[];
  shares: number[];
  endsInPoint: boolean; // the tip has no chord: one point closes it
}

/**
 * A generator that yields the share done.
 * Throws an Error with a sentence when the tolerance asks for more triangles than a file can hold.
 */
export function* meshSkin(skin: Skin, { tolerance, side }: MeshOptions): Generator<number, Mesh, void> {
  const grid = gridOf(skin, tolerance);
  const { etas, shares } = grid;
  if (etas.length * shares.length * 4 > MOST_TRIANGLES)
    throw new Error(
      `tolerance: found ${(tolerance * 1000).toPrecision(2)} mm, which makes more than ${MOST_TRIANGLES} triangles; allowed a coarser one`,
    );
  yield 0.2;
  const builder = new MeshBuilder();
  const rings: number[][] = [];
  for (const [k, eta] of etas.entries()) {
    const rib = skin.rib(eta);
    const points = k === 0 ? centreRing(skin, rib, shares) : shares.map((share) => skin.point(rib, share));
    rings.push(points.map((point) => builder.vertex(point)));
    yield 0.2 + (0.7 * k) / etas.length;
  }
  for (let k = 1; k < rings.length; k++) joinRings(builder, rings[k - 1]!, rings[k]!);
  const last = rings[rings.length - 1]!;
  if (grid.endsInPoint) closeToPoint(builder, last, builder.vertex(skin.point(skin.rib(1), 1)));
  else closeFlat(builder, last, true);
  const half = builder.mesh();
  if (side === 'whole') return mirrored(half, true);
  closeFlat(builder, rings[0]!, false);
  return side === 'starboard' ? builder.mesh() : mirrored(builder.mesh(), false);
}

/** Chooses rings and shares for a tolerance; the places that reach furthest each way are among them. */
export function gridOf(skin: Skin, tolerance: number): Grid {
  const { surface } = skin;
  const extremes = findExtremes(skin);
  const endsInPoint = surface.chord(1) < LEAST_CHORD;
  const last = endsInPoint ? lastFullChord(surface.chord) : 1;
  // Along the span the angle whose sine is eta: an elliptic tip is then a smooth curve.
  const etaOf = (v: number) => Math.min(last, Math.sin(0.5 * Math.PI * v));
  const end = (2 / Math.PI) * Math.asin(last);
  const curves = LOOKED_AT.map((share) => (v: number) => skin.point(skin.rib(etaOf(v)), share));
  const places = refine(
    evenly(0, end, 8),
    (a, b) => curves.some((curve) => leavesChord(curve, a, b, 0.5 * tolerance)),
    1 / 8192,
  );
  const reach = (2 * trimmedLength(skin)) / surface.halfLength;
  const etas = merge(
    places.map(etaOf),
    extremes.etas.filter((eta) => eta < last),
    1e-6,
  ).filter((eta) => eta === 0 || eta > reach);
  const ribs = [0, 0.4, 0.7, 0.9, 1].map((share) => skin.rib(share * last));
  const half = refine(
    evenly(0, 1, 8),
    (a, b) =>
      ribs.some(
        (rib) =>
          leavesChord((share) => skin.local(rib, share), a, b, 0.5 * tolerance) ||
          leavesChord((share) => skin.local(rib, 2 - share), a, b, 0.5 * tolerance),
      ),
    1 / 4096,
  );
  const folded = extremes.shares.map((share) => Math.min(share, 2 - share));
  const upper = merge(half, folded, 1e-7);
  const shares = [
    ...upper,
    ...upper
      .slice(0, -1)
      .map((share) => 2 - share)
      .reverse(),
  ];
  return { etas, shares, endsInPoint };
}

/** Two sorted lists as one, without near twins; the first list's values stay. */
function merge(values: readonly number[], more: readonly number[], apart: number): number[] {
  const news = more.filter((value) => values.every((known) => Math.abs(known - value) > apart));
  return [...values, ...new Set(news)].sort((a, b) => a - b);
}

function lastFullChord(chord: (eta: number) => number): number {
  let low = 0;
  let high = 1;
  for (let k = 0; k < 60; k++) {
    const middle = 0.5 * (low + high);
    if (chord(middle) >= LEAST_CHORD) low = middle;
    else high = middle;
  }
  return low;
}

/** How far along the line the centre plane cuts into the half, at most. */
export function trimmedLength(skin: Skin): number {
  const root = skin.rib(0);
  if (root.droop === 0) return 0;
  const heights = LOOKED_AT.map((share) => Math.abs(skin.local(root, share)[1]));
  return Math.max(...heights) * Math.abs(Math.tan(root.droop));
}

/** The points of every ring, root to tip; the first in the plane y = 0. */
export function ringsOf(skin: Skin, { etas, shares }: Grid): Triple[][] {
  return etas.map((eta, k) => {
    const rib = skin.rib(eta);
    return k === 0 ? centreRing(skin, rib, shares) : shares.map((share) => skin.point(rib, share));
  });
}

/** The section in the plane y = 0. */
function centreRing(skin: Skin, root: Rib, shares: readonly number[]): Triple[] {
  if (root.droop === 0) return shares.map((share) => skin.point(root, share));
  const { halfLength } = skin.surface;
  const step = 1e-5;
  const lean = (skin.surface.x(step) - root.x) / (step * halfLength);
  return shares.map((share) => {
    let [aft, up] = skin.local(root, share);
    let distance = -up * Math.tan(root.droop); // along the root's tangent; negative: carried on past the root
    if (distance <= 0) {
      const [x, , z] = placed(root, [aft, up]);
      return [x + lean * distance, 0, z - distance * Math.sin(root.droop)];
    }
    let rib = root;
    for (let k = 0; k < 40; k++) {
      rib = skin.rib(distance / halfLength);
      [aft, up] = skin.local(rib, share);
      const y = placed(rib, [aft, up])[1];
      distance -= y / Math.cos(rib.droop);
      if (Math.abs(y) < 1e-15) break;
    }
    const [x, , z] = placed(rib, [aft, up]);
    return [x, 0, z];
  });
}

/** Outboard seen from the root a ring runs from aft over the top to the nose: this order turns the normals outward. */
function joinRings(builder: MeshBuilder, inner: readonly number[], outer: readonly number[]): void {
  const count = inner.length;
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count;
    builder.quad(inner[k]!, outer[k]!, outer[next]!, inner[next]!);
  }
}

function closeToPoint(builder: MeshBuilder, ring: readonly number[], tip: number): void {
  for (let k = 0; k < ring.length; k++) builder.triangle(ring[(k + 1) % ring.length]!, ring[k]!, tip);
}

/** A flat cap between upper and lower side, in slices from the trailing edge to the nose. */
function closeFlat(builder: MeshBuilder, ring: readonly number[], outward: boolean): void {
  const last = ring.length - 1;
  for (let k = 0; k < last - k; k++) {
    const [a, b, c, d] = [ring[k]!, ring[k + 1]!, ring[last - k - 1]!, ring[last - k]!];
    if (outward) builder.quad(d, c, b, a);
    else builder.quad(a, b, c, d);
  }
}

/** The port half; together with the starboard half when `joined`, sharing the points of the centre plane. */
function mirrored(half: Mesh, joined: boolean): Mesh {
  const builder = new MeshBuilder();
  const place = (at: number, sign: number): Triple => [
    half.points[3 * at]!,
    half.points[3 * at + 1]! === 0 ? 0 : sign * half.points[3 * at + 1]!,
    half.points[3 * at + 2]!,
  ];
  const count = half.points.length / 3;
  const port = Array.from({ length: count }, (_, at) => builder.vertex(place(at, -1)));
  const starboard = joined
    ? Array.from({ length: count }, (_, at) =>
        half.points[3 * at + 1] === 0 ? port[at]! : builder.vertex(place(at, 1)),
      )
    : null;
  for (let k = 0; k < half.corners.length; k += 3) {
    const [a, b, c] = [half.corners[k]!, half.corners[k + 1]!, half.corners[k + 2]!];
    builder.triangle(port[a]!, port[c]!, port[b]!);
    if (starboard) builder.triangle(starboard[a]!, starboard[b]!, starboard[c]!);
  }
  return builder.mesh();
}
