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
 * Nodes and velocities stand in their arrays as x, y and z in turn: a loop that reads one array is the quicker for it.
 * Velocities are per unit circulation (1/m). Nothing here allocates.
 */

const OVER_4_PI = 1 / (4 * Math.PI);
const TINY = 1e-30;

/** A polyline of `count` bound segments: nodes `node` .. `node + count`, its strips' columns from `column`. */
export interface BoundLine {
  node: number;
  column: number;
  count: number;
  surface: number; // which surface it belongs to
  core: number; // m, over which its bound vorticity spreads
}

/** (1 + dx/|r|)/(dy^2 + dz^2) of a leg; `side` is dy^2 + dz^2, `r` the distance. */
function reachOf(r: number, dx: number, side: number): number {
  return (r + dx) / (r * (side + TINY));
}

/** (|r1| + |r2|)/(|r1||r2| (|r1||r2| + r1.r2)) of a bound segment, 0 on its own line; r and s are its ends' distances. */
function strengthOf(r: number, s: number, product: number): number {
  const rs = r * s;
  const lean = rs + product;
  return lean > 1e-12 * rs ? (r + s) / (rs * lean) : 0;
}

/**
 * Adds to out[offset + column + j] the component along (0, ay, az) of the velocity that segment j of the line, with
 * its two legs, induces at P. With n(r) = az dy - ay dz the bound segment's is n of (dx r2 - ex r1).
 */
export function addComponent(
  out: Float64Array,
  offset: number,
  line: BoundLine,
  nodes: Float64Array,
  px: number,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  let n = 3 * line.node;
  let dx = px - nodes[n]!;
  let dy = py - nodes[n + 1]!;
  let dz = pz - nodes[n + 2]!;
  let side = dy * dy + dz * dz;
  let r = Math.sqrt(dx * dx + side + TINY);
  let across = az * dy - ay * dz;
  let leg = across * reachOf(r, dx, side);
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n += 3;
    const ex = px - nodes[n]!;
    const ey = py - nodes[n + 1]!;
    const ez = pz - nodes[n + 2]!;
    side = ey * ey + ez * ez;
    const s = Math.sqrt(ex * ex + side + TINY);
    const nextAcross = az * ey - ay * ez;
    const nextLeg = nextAcross * reachOf(s, ex, side);
    const strength = strengthOf(r, s, dx * ex + dy * ey + dz * ez);
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
 * The same of a line into `own`, and of its mirror in the plane of symmetry into `mirrored`: that is the line itself at
 * (px, -py, pz), seen along (0, -ay, az). They may be one row.
 * One loop for both, written out, takes four fifths of the time of two: they share nodes and half of the distances.
 */
export function addComponents(
  own: Float64Array,
  ownOffset: number,
  mirrored: Float64Array,
  mirroredOffset: number,
  line: BoundLine,
  nodes: Float64Array,
  px: number,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  let n = 3 * line.node;
  let dx = px - nodes[n]!;
  let dy = py - nodes[n + 1]!;
  let fy = -py - nodes[n + 1]!;
  let dz = pz - nodes[n + 2]!;
  let flat = dx * dx + dz * dz + TINY;
  let r = Math.sqrt(flat + dy * dy);
  let q = Math.sqrt(flat + fy * fy);
  let across = az * dy - ay * dz;
  let over = az * fy + ay * dz;
  let leg = across * reachOf(r, dx, dy * dy + dz * dz);
  let other = over * reachOf(q, dx, fy * fy + dz * dz);
  const last = line.column + line.count;
  for (let j = line.column; j < last; j++) {
    n += 3;
    const ex = px - nodes[n]!;
    const ey = py - nodes[n + 1]!;
    const gy = -py - nodes[n + 1]!;
    const ez = pz - nodes[n + 2]!;
    flat = ex * ex + ez * ez + TINY;
    const s = Math.sqrt(flat + ey * ey);
    const t = Math.sqrt(flat + gy * gy);
    const nextAcross = az * ey - ay * ez;
    const nextOver = az * gy + ay * ez;
    const nextLeg = nextAcross * reachOf(s, ex, ey * ey + ez * ez);
    const nextOther = nextOver * reachOf(t, ex, gy * gy + ez * ez);
    const level = dx * ex + dz * ez;
    const strength = strengthOf(r, s, level + dy * ey);
    const power = strengthOf(q, t, level + fy * gy);
    own[ownOffset + j]! += OVER_4_PI * (strength * (dx * nextAcross - ex * across) + nextLeg - leg);
    mirrored[mirroredOffset + j]! += OVER_4_PI * (power * (dx * nextOver - ex * over) + nextOther - other);
    dx = ex;
    dy = ey;
    fy = gy;
    dz = ez;
    r = s;
    q = t;
    across = nextAcross;
    over = nextOver;
    leg = nextLeg;
    other = nextOther;
  }
}

/**
 * Over a chord of 1, the distance between two elements of vorticity spread as thin-airfoil theory has it for a flat plate,
 * its mean by logarithms: exp(-ln 2 - 1/2)/2. What a straight line of circulation lacks beside a surface goes with the
 * logarithm of a distance, so this is the one length that stands for the chord (docs/theory.md, "Near field").
 */
export const MEAN_DISTANCE = 0.25 * Math.exp(-0.5);

/**
 * Adds the velocity itself, its components multiplied by the signs (sx, sy, sz), to `out` from 3 (offset + column + j) on.
 * Two lengths (m) stand for vorticity that is spread over a chord, since a line has none to cut its velocity off:
 * - on another surface, `core` softens the x-velocity of the bound segments to d/sqrt(d^2 + core^2) of itself at distance
 *   d from their line: chord/pi makes circulation/(2 chord) at the middle of an evenly spread chord;
 * - on the line's own surface, `spread` is the mean distance across the chord at P: it is the core of the bound segments,
 *   whose x-velocity is left out, and e times as much that of the legs' dx/|r1|. 0 on other surfaces.
 */
export function addVelocity(
  out: Float64Array,
  offset: number,
  line: BoundLine,
  nodes: Float64Array,
  px: number,
  py: number,
  pz: number,
  sx: number,
  sy: number,
  sz: number,
  core: number,
  spread: number,
): void {
  let n = 3 * line.node;
  let dx = px - nodes[n]!;
  let dy = py - nodes[n + 1]!;
  let dz = pz - nodes[n + 2]!;
  const near = spread * spread;
  const inner = near + TINY;
  const outer = Math.E * Math.E * near + TINY;
  let side = dy * dy + dz * dz;
  let square = dx * dx + side;
  let r = Math.sqrt(square + inner);
  let reach = reachOf(spread > 0 ? Math.sqrt(square + outer) : r, dx, side);
  const kx = spread > 0 ? 0 : OVER_4_PI * sx;
  const ky = OVER_4_PI * sy;
  const kz = OVER_4_PI * sz;
  const first = 3 * (offset + line.column);
  const last = first + 3 * line.count;
  for (let at = first; at < last; at += 3) {
    n += 3;
    const ex = px - nodes[n]!;
    const ey = py - nodes[n + 1]!;
    const ez = pz - nodes[n + 2]!;
    side = ey * ey + ez * ez;
    square = ex * ex + side;
    const s = Math.sqrt(square + inner);
    const nextReach = reachOf(spread > 0 ? Math.sqrt(square + outer) : s, ex, side);
    const strength = strengthOf(r, s, dx * ex + dy * ey + dz * ez + near);
    const crossX = dy * ez - dz * ey;
    const crossY = dz * ex - dx * ez;
    const crossZ = dx * ey - dy * ex;
    let ahead = kx * strength * crossX;
    if (core > 0) {
      const length = (ex - dx) * (ex - dx) + (ey - dy) * (ey - dy) + (ez - dz) * (ez - dz);
      ahead *= softening(crossX, crossY, crossZ, core * core * length);
    }
    out[at]! += ahead;
    out[at + 1]! += ky * (strength * crossY - nextReach * ez + reach * dz);
    out[at + 2]! += kz * (strength * crossZ + nextReach * ey - reach * dy);
    dx = ex;
    dy = ey;
    dz = ez;
    r = s;
    reach = nextReach;
  }
}

/** d/sqrt(d^2 + core^2): the cross product of r1 and r2 is the length of the segment times d. */
function softening(x: number, y: number, z: number, soft: number): number {
  const cross = x * x + y * y + z * z;
  return Math.sqrt(cross / (cross + soft));
}

/**
 * The same of a line into `own`, with the signs (way, way, 1), and of its mirror into `mirrored`: the line itself at
 * (px, -py, pz), with the signs (way, -way, 1). They may be one row.
 */
export function addVelocities(
  own: Float64Array,
  ownOffset: number,
  mirrored: Float64Array,
  mirroredOffset: number,
  line: BoundLine,
  nodes: Float64Array,
  px: number,
  py: number,
  pz: number,
  way: 1 | -1,
  core: number,
  spread: number,
): void {
  let n = 3 * line.node;
  let dx = px - nodes[n]!;
  let dy = py - nodes[n + 1]!;
  let fy = -py - nodes[n + 1]!;
  let dz = pz - nodes[n + 2]!;
  const near = spread * spread;
  const inner = near + TINY;
  const outer = Math.E * Math.E * near + TINY;
  let flat = dx * dx + dz * dz;
  let r = Math.sqrt(flat + dy * dy + inner);
  let q = Math.sqrt(flat + fy * fy + inner);
  let reach = reachOf(spread > 0 ? Math.sqrt(flat + dy * dy + outer) : r, dx, dy * dy + dz * dz);
  let other = reachOf(spread > 0 ? Math.sqrt(flat + fy * fy + outer) : q, dx, fy * fy + dz * dz);
  const kx = spread > 0 ? 0 : OVER_4_PI * way;
  const ky = OVER_4_PI * way;
  const last = line.column + line.count;
  for (let j = line.column; j < last; j++) {
    n += 3;
    const ex = px - nodes[n]!;
    const ey = py - nodes[n + 1]!;
    const gy = -py - nodes[n + 1]!;
    const ez = pz - nodes[n + 2]!;
    flat = ex * ex + ez * ez;
    const s = Math.sqrt(flat + ey * ey + inner);
    const t = Math.sqrt(flat + gy * gy + inner);
    const nextReach = reachOf(spread > 0 ? Math.sqrt(flat + ey * ey + outer) : s, ex, ey * ey + ez * ez);
    const nextOther = reachOf(spread > 0 ? Math.sqrt(flat + gy * gy + outer) : t, ex, gy * gy + ez * ez);
    const level = dx * ex + dz * ez + near;
    const strength = strengthOf(r, s, level + dy * ey);
    const power = strengthOf(q, t, level + fy * gy);
    const crossX = dy * ez - dz * ey;
    const crossY = dz * ex - dx * ez;
    const crossZ = dx * ey - dy * ex;
    const turnX = fy * ez - dz * gy;
    const turnZ = dx * gy - fy * ex;
    let ahead = kx * strength * crossX;
    let aside = kx * power * turnX;
    if (core > 0) {
      const length = (ex - dx) * (ex - dx) + (ey - dy) * (ey - dy) + (ez - dz) * (ez - dz);
      ahead *= softening(crossX, crossY, crossZ, core * core * length);
      aside *= softening(turnX, crossY, turnZ, core * core * length);
    }
    const at = 3 * (ownOffset + j);
    own[at]! += ahead;
    own[at + 1]! += ky * (strength * crossY - nextReach * ez + reach * dz);
    own[at + 2]! += OVER_4_PI * (strength * crossZ + nextReach * ey - reach * dy);
    const to = 3 * (mirroredOffset + j);
    mirrored[to]! += aside;
    mirrored[to + 1]! -= ky * (power * crossY - nextOther * ez + other * dz);
    mirrored[to + 2]! += OVER_4_PI * (power * turnZ + nextOther * gy - other * fy);
    dx = ex;
    dy = ey;
    fy = gy;
    dz = ez;
    r = s;
    q = t;
    reach = nextReach;
    other = nextOther;
  }
}

/**
 * Far behind, in the y-z plane, the legs are whole vortex lines. Adds to out[offset + column + j] the component along
 * (ay, az) of the velocity of segment j's pair of lines.
 */
export function addWakeComponent(
  out: Float64Array,
  offset: number,
  line: BoundLine,
  nodes: Float64Array,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  let n = 3 * line.node;
  let dy = py - nodes[n + 1]!;
  let dz = pz - nodes[n + 2]!;
  let leg = (az * dy - ay * dz) / (dy * dy + dz * dz + TINY);
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n += 3;
    dy = py - nodes[n + 1]!;
    dz = pz - nodes[n + 2]!;
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
  nodes: Float64Array,
  py: number,
  pz: number,
  ay: number,
  az: number,
): void {
  let n = 3 * line.node;
  let leg = mirroredLeg(nodes[n + 1]!, nodes[n + 2]!, py, pz, ay, az);
  const first = offset + line.column;
  const last = first + line.count;
  for (let at = first; at < last; at++) {
    n += 3;
    const nextLeg = mirroredLeg(nodes[n + 1]!, nodes[n + 2]!, py, pz, ay, az);
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
