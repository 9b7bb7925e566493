/**
 * Where the mould of a half is parted, which way it is drawn, and what will not come out of it. The flat plane holds the x
 * direction; the mould is drawn square to it. Lengths in m.
 */
import type { Skin, Triple } from './skin.ts';

export interface Parting {
  normal: Triple; // of length 1, upward: the way the upper mould is drawn
  offset: number;
}

/**
 * Parted at the plane that fits the edges of the half best and drawn square to it; at a level plane and drawn straight up;
 * or along the edges themselves, drawn square to the plane that fits them.
 */
export const DRAWS = ['fitted', 'upright', 'edges'] as const;
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
  depth: number; // m that the skin leans over past the parting before it turns back
  upper: boolean; // in the upper mould
}

const AROUND = 160; // even

/** The worst undercut of every station looked at, root to tip; none where the halves come off freely. */
export function undercutsOf(skin: Skin, draw: Draw): Undercut[] {
  const parting = partingOf(skin, draw);
  return Array.from({ length: STATIONS + 1 }, (_, k) => k / STATIONS).flatMap((eta): Undercut[] => {
    const heights = heightsAround(skin, eta, parting);
    const [nose, tail] = [heights[AROUND / 2]!, heights[0]!];
    let worst: Undercut | null = null;
    for (let j = 0; j < AROUND; j++) {
      const [a, b] = [heights[j]!, heights[j + 1]!];
      const height = 0.5 * (a.height + b.height);
      const nearer = a.x + b.x < nose.x + tail.x ? nose : tail;
      const above = draw === 'edges' ? height - nearer.height : height;
      const upper = draw === 'edges' ? j < AROUND / 2 : above > 0;
      // Round the outline upper skin runs forward and lower skin aft: where it runs the other way it faces away.
      const facesUp = b.x < a.x;
      if (upper !== facesUp && Math.abs(above) > (worst?.depth ?? 0))
        worst = { eta, depth: Math.abs(above), upper };
    }
    return worst ? [worst] : [];
  });
}

/** Points round a section, trailing edge over the top and back: aft, and above the flat parting. */
function heightsAround(skin: Skin, eta: number, { normal, offset }: Parting) {
  const rib = skin.rib(eta);
  return Array.from({ length: AROUND + 1 }, (_, j) => {
    const [x, y, z] = skin.point(rib, (2 * j) / AROUND);
    return { x, height: x * normal[0] + y * normal[1] + z * normal[2] - offset };
  });
}
