/**
 * Velocity of horseshoe vortices by the law of Biot and Savart: the only place where it is written down.
 *
 *            trailing legs run along +x to infinity
 *      a o=================>          A strip's vortex of circulation 1 comes in along the leg of its root-side
 *        |                            node a, runs along the bound segment a -> b and leaves along the leg of b.
 *        | bound                      Right-handed about its direction, so that with the stream along +x a positive
 *        v                            circulation lifts: F = rho Gamma V x l, l = b - a.
 *      b o=================>
 *
 * With r1 = P - a, r2 = P - b (J. Katz and A. Plotkin, Low-Speed Aerodynamics, 2nd ed. 2001, section 2.12):
 *   bound segment  (1/4 pi) (r1 x r2) (|r1| + |r2|) / (|r1||r2| (|r1||r2| + r1.r2))
 *   leg from a     (1/4 pi) (1 + dx/|r1|) / (dy^2 + dz^2) (0, -dz, dy)
 * A point on the filament's own line gets nothing from it: the principal value of a straight filament.
 *
 * Lines are polylines of nodes; strips follow one another, so each node's distance and leg serve two strips.
 * Velocities are per unit circulation (1/m). Nothing here allocates.
 */

const OVER_4_PI = 1 / (4 * Math.PI);
const TINY = 1e-30;

/** Many points or velocities, an array for each of their components. */
export interface Vectors {
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

/** A polyline of `count` bound segments: nodes `node` .. `node + count`, its strips' columns from `column`. */
export interface BoundLine {
  node: number;
  column: number;
  count: number;
  surface: number; // which surface it belongs to
  core: number; // m, over which its bound vorticity spreads
}

/**
 * Adds to out[offset + column + j] the component along (0, ay, az) of the velocity that segment j of the line, with
 * its two legs, induces at P. With n(r) = az dy - ay dz the bound segment's is n of (dx r2 - ex r1).
 */
export function addComponent(
  out: Float64Array,
  offset: number,
  line: BoundLine,
  nodes: Vectors,
  px: number,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  const { x: nodeX, y: nodeY, z: nodeZ } = nodes;
  let n = line.node;
  let dx = px - nodeX[n]!;
  let dy = py - nodeY[n]!;
  let dz = pz - nodeZ[n]!;
  let side = dy * dy + dz * dz;
  let r = Math.sqrt(dx * dx + side + TINY);
  let across = az * dy - ay * dz;
  let leg = ((r + dx) * across) / (r * (side + TINY));
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n++;
    const ex = px - nodeX[n]!;
    const ey = py - nodeY[n]!;
    const ez = pz - nodeZ[n]!;
    side = ey * ey + ez * ez;
    const s = Math.sqrt(ex * ex + side + TINY);
    const nextAcross = az * ey - ay * ez;
    const nextLeg = ((s + ex) * nextAcross) / (s * (side + TINY));
    const rs = r * s;
    const lean = rs + dx * ex + dy * ey + dz * ez;
    const strength = lean > 1e-12 * rs ? (r + s) / (rs * lean) : 0;
    out[at]! += OVER_4_PI * (strength * (dx * nextAcross - ex * across) + nextLeg - leg);
    dx = ex;
    dy = ey;
    dz = ez;
    r = s;
    across = nextAcross;
    leg = nextLeg;
  }
}

/**
 * Over a chord of 1, the distance between two elements of vorticity spread as thin-airfoil theory has it for a flat plate,
 * its mean by logarithms: exp(-ln 2 - 1/2)/2. What a straight line of circulation lacks beside a surface goes with the
 * logarithm of a distance, so this is the one length that stands for the chord (docs/theory.md, "Near field").
 */
export const MEAN_DISTANCE = 0.25 * Math.exp(-0.5);

/**
 * Adds the velocity itself, its components multiplied by the signs (sx, sy, sz), to out[offset + column + j].
 * Two lengths (m) stand for vorticity that is spread over a chord, since a line has none to cut its velocity off:
 * - on another surface, `core` softens the x-velocity of the bound segments to d/sqrt(d^2 + core^2) of itself at distance
 *   d from their line: chord/pi makes circulation/(2 chord) at the middle of an evenly spread chord;
 * - on the line's own surface, `spread` is the mean distance across the chord at P: it is the core of the bound segments,
 *   whose x-velocity is left out, and e times as much that of the legs' dx/|r1|. 0 on other surfaces.
 */
export function addVelocity(
  out: Vectors,
  offset: number,
  line: BoundLine,
  nodes: Vectors,
  px: number,
  py: number,
  pz: number,
  sx: number,
  sy: number,
  sz: number,
  core: number,
  spread: number,
): void {
  const { x: outX, y: outY, z: outZ } = out;
  const { x: nodeX, y: nodeY, z: nodeZ } = nodes;
  let n = line.node;
  let dx = px - nodeX[n]!;
  let dy = py - nodeY[n]!;
  let dz = pz - nodeZ[n]!;
  const inner = spread * spread + TINY;
  const outer = Math.E * Math.E * spread * spread + TINY;
  let side = dy * dy + dz * dz;
  let square = dx * dx + side;
  let r = Math.sqrt(square + inner);
  let far = spread > 0 ? Math.sqrt(square + outer) : r;
  let reach = (far + dx) / (far * (side + TINY));
  const kx = spread > 0 ? 0 : OVER_4_PI * sx;
  const ky = OVER_4_PI * sy;
  const kz = OVER_4_PI * sz;
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n++;
    const ex = px - nodeX[n]!;
    const ey = py - nodeY[n]!;
    const ez = pz - nodeZ[n]!;
    side = ey * ey + ez * ez;
    square = ex * ex + side;
    const s = Math.sqrt(square + inner);
    far = spread > 0 ? Math.sqrt(square + outer) : s;
    const nextReach = (far + ex) / (far * (side + TINY));
    const rs = r * s;
    const lean = rs + dx * ex + dy * ey + dz * ez + spread * spread;
    const strength = lean > 1e-12 * rs ? (r + s) / (rs * lean) : 0;
    const crossX = dy * ez - dz * ey;
    const crossY = dz * ex - dx * ez;
    const crossZ = dx * ey - dy * ex;
    let ahead = kx * strength * crossX;
    if (core > 0) {
      const cross = crossX * crossX + crossY * crossY + crossZ * crossZ;
      const length = (ex - dx) * (ex - dx) + (ey - dy) * (ey - dy) + (ez - dz) * (ez - dz);
      ahead *= Math.sqrt(cross / (cross + core * core * length));
    }
    outX[at]! += ahead;
    outY[at]! += ky * (strength * crossY - nextReach * ez + reach * dz);
    outZ[at]! += kz * (strength * crossZ + nextReach * ey - reach * dy);
    dx = ex;
    dy = ey;
    dz = ez;
    r = s;
    reach = nextReach;
  }
}

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
  { x, y, z }: Vectors,
  a: number,
  controlY: number,
  controlZ: number,
): [number, number, number] {
  const share = forcePlace(y[a]!, z[a]!, y[a + 1]!, z[a + 1]!, controlY, controlZ);
  const at = (axis: Float64Array) => axis[a]! + share * (axis[a + 1]! - axis[a]!);
  return [at(x), at(y), at(z)];
}

/**
 * Far behind, in the y-z plane, the legs are whole vortex lines. Adds to out[offset + column + j] the component along
 * (ay, az) of the velocity of segment j's pair of lines.
 */
export function addWakeComponent(
  out: Float64Array,
  offset: number,
  line: BoundLine,
  nodes: Vectors,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  const { y: nodeY, z: nodeZ } = nodes;
  let n = line.node;
  let dy = py - nodeY[n]!;
  let dz = pz - nodeZ[n]!;
  let leg = (az * dy - ay * dz) / (dy * dy + dz * dz + TINY);
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n++;
    dy = py - nodeY[n]!;
    dz = pz - nodeZ[n]!;
    const nextLeg = (az * dy - ay * dz) / (dy * dy + dz * dz + TINY);
    out[at]! += 2 * OVER_4_PI * (nextLeg - leg);
    leg = nextLeg;
  }
}

/** The same of each pair of lines and its mirror in the plane of symmetry together. */
export function addMirroredWake(
  out: Float64Array,
  offset: number,
  line: BoundLine,
  nodes: Vectors,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  const { y: nodeY, z: nodeZ } = nodes;
  let n = line.node;
  let leg = mirroredLeg(nodeY[n]!, nodeZ[n]!, py, pz, ay, az);
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n++;
    const nextLeg = mirroredLeg(nodeY[n]!, nodeZ[n]!, py, pz, ay, az);
    out[at]! += 2 * OVER_4_PI * (nextLeg - leg);
    leg = nextLeg;
  }
}

/** The mirror of a line at P is the line itself at (-py, pz), seen by (-ay, az). */
function mirroredLeg(y: number, z: number, py: number, pz: number, ay: number, az: number): number {
  const dy = py - y;
  const ey = -py - y;
  const dz = pz - z;
  return (az * dy - ay * dz) / (dy * dy + dz * dz + TINY) + (az * ey + ay * dz) / (ey * ey + dz * dz + TINY);
}
