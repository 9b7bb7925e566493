/**
 * The outer skin of a surface: where every point of every section stands, as it is cut, moulded and drawn.
 *
 * A section stands square to the quarter-chord line as seen from ahead, along x; incidence and twist turn it about its
 * quarter chord, nose up positive (contract of the document). With `aft` and `up` measured from the quarter chord in
 * the turned section's own plane, a point is (x + aft, y + up sin droop, z + up cos droop).
 *
 * `share` runs round an outline: 0 at the trailing edge, along the upper side to 1 at the leading edge, along the lower
 * side back to 2 at the trailing edge; x/c = (1 + cos(pi share))/2, the order of `outlinePoints`. Lengths in m.
 */
import type { Planform } from '../design/document.ts';
import { surfacePoint } from './outline.ts';
import { type Surface, surfaceOf } from './surface.ts';

const RADIANS = Math.PI / 180;

/** One section in place. */
export interface Rib {
  eta: number;
  distance: number; // along the unrolled line from the root
  chord: number;
  angle: number; // rad, incidence and twist together, nose up
  twist: number; // rad, twist alone
  droop: number; // rad, positive down
  x: number; // quarter chord
  y: number;
  z: number;
}

export type Pair = readonly [number, number];
export type Triple = readonly [number, number, number];

export interface Skin {
  readonly surface: Surface;
  readonly incidence: number; // rad
  rib(eta: number): Rib;
  /** A point of the section on a chord of 1 along x, the least trailing edge worked in. */
  outline(rib: Rib, share: number): Pair;
  /** The point in the section's plane, turned by its angle: aft of the quarter chord and up from it. */
  local(rib: Rib, share: number): Pair;
  point(rib: Rib, share: number): Triple;
}

/**
 * The skin of a planform. Where the trailing edge is thinner than `leastEdge` (m), the section is opened evenly about
 * its mean line, by an amount that grows linearly from the nose. Throws GeometryError like `surfaceOf`.
 */
export function skinOf(planform: Planform, place?: { arm: number; height: number }, leastEdge = 0): Skin {
  const surface = surfaceOf(planform, place);
  const incidence = planform.incidence * RADIANS;
  const outlineAt = blendedOutline(planform);
  const rib = (eta: number): Rib => {
    const { y, z } = surface.point(eta);
    const twist = surface.twist(eta);
    return {
      eta,
      distance: eta * surface.halfLength,
      chord: surface.chord(eta),
      angle: incidence + twist,
      twist,
      droop: surface.droop(eta),
      x: surface.x(eta),
      y,
      z,
    };
  };
  const outline = ({ eta, chord }: Rib, share: number): Pair => {
    const [x, y] = outlineAt(eta, share);
    if (!(leastEdge > 0 && chord > 0)) return [x, y];
    const missing = leastEdge / chord - (outlineAt(eta, 0)[1] - outlineAt(eta, 2)[1]);
    if (missing <= 0) return [x, y];
    return [x, y + (share <= 1 ? 0.5 : -0.5) * missing * x];
  };
  const local = (at: Rib, share: number): Pair => turned(at, outline(at, share));
  const point = (at: Rib, share: number): Triple => placed(at, local(at, share));
  return { surface, incidence, rib, outline, local, point };
}

/** From the unit chord to the section's plane: scaled, and turned nose up about the quarter chord. */
export function turned({ chord, angle }: Rib, [x, y]: Pair): Pair {
  const aft = (x - 0.25) * chord;
  const up = y * chord;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [aft * c + up * s, up * c - aft * s];
}

/** From the section's plane to the craft's axes. */
export function placed({ x, y, z, droop }: Rib, [aft, up]: Pair): Triple {
  return [x + aft, y + up * Math.sin(droop), z + up * Math.cos(droop)];
}

/** Root and tip outlines blended point by point, each looked up once a share. */
function blendedOutline({ section }: Planform): (eta: number, share: number) => Pair {
  const root = surfacePoint(section.root);
  const tip = surfacePoint(section.tip);
  const known = new Map<number, readonly [Pair, Pair]>();
  const ends = (share: number) => {
    let found = known.get(share);
    if (!found) {
      const x = 0.5 * (1 + Math.cos(Math.PI * share));
      const side = share <= 1 ? 1 : -1;
      found = [root(x, side), tip(x, side)];
      known.set(share, found);
    }
    return found;
  };
  return (eta, share) => {
    const [a, b] = ends(share);
    return [a[0] + (b[0] - a[0]) * eta, a[1] + (b[1] - a[1]) * eta];
  };
}
