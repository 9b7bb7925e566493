/**
 * The flat plane at which the mould of a half is parted, and what will not come out of it. The plane holds the x
 * direction; the mould is drawn square to it. Lengths in m.
 */
import type { Skin, Triple } from './skin.ts';

export interface Parting {
  normal: Triple; // of length 1, upward: the way the upper mould is drawn
  offset: number;
}

/** Drawn square to the plane that fits the edges of the half best, or straight up. */
export const DRAWS = ['fitted', 'upright'] as const;
export type Draw = (typeof DRAWS)[number];

const STATIONS = 40;

/** Least squares through leading and trailing edge of the starboard half. */
export function partingOf(skin: Skin, draw: Draw): Parting {
  const edges: Array<[y: number, z: number]> = [];
  for (let k = 0; k <= STATIONS; k++) {
    const rib = skin.rib(Math.sin((0.5 * Math.PI * k) / STATIONS));
    for (const share of [0, 1, 2]) {
      const [, y, z] = skin.point(rib, share);
      edges.push([y, z]);
    }
  }
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const y0 = mean(edges.map(([y]) => y));
  const z0 = mean(edges.map(([, z]) => z));
  const slope =
    draw === 'upright'
      ? 0
      : mean(edges.map(([y, z]) => (y - y0) * (z - z0))) / mean(edges.map(([y]) => (y - y0) ** 2));
  const length = Math.hypot(1, slope);
  return { normal: [0, -slope / length, 1 / length], offset: (z0 - slope * y0) / length };
}

export interface Undercut {
  eta: number;
  depth: number; // m that the skin leans over past the plane before it turns back
  upper: boolean; // in the upper mould
}

/** The worst undercut of every station looked at, root to tip; none where the halves come off freely. */
export function undercutsOf(skin: Skin, { normal, offset }: Parting): Undercut[] {
  const around = 160;
  return Array.from({ length: STATIONS + 1 }, (_, k) => k / STATIONS).flatMap((eta): Undercut[] => {
    const rib = skin.rib(eta);
    const heights = Array.from({ length: around + 1 }, (_, j) => {
      const [x, y, z] = skin.point(rib, (2 * j) / around);
      return { x, height: x * normal[0] + y * normal[1] + z * normal[2] - offset };
    });
    let worst: Undercut | null = null;
    for (let j = 0; j < around; j++) {
      const [a, b] = [heights[j]!, heights[j + 1]!];
      // Round the outline upper skin runs forward and lower skin aft: where it runs the other way it faces away.
      const facesUp = b.x < a.x;
      const height = 0.5 * (a.height + b.height);
      const depth = facesUp ? -height : height;
      if (depth > 0 && depth > (worst?.depth ?? 0)) worst = { eta, depth, upper: !facesUp };
    }
    return worst ? [worst] : [];
  });
}
