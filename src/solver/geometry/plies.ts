/**
 * How far each ply of a skin reaches. The skins are laid from the outside in; where the section is thinner than the plies
 * of both sides together, the inner ones run out: ply k (1 is the outermost) covers what is at least 2 k plies thick.
 * Places along the unrolled half and the chord; lengths in m, areas in m2.
 */
import { findRoot } from '../numeric/roots.ts';
import type { Rib, Skin } from './skin.ts';

const STATIONS = 48;
const AROUND = 96;

/** Where a ply begins and ends on one chord: shares of it. */
export interface Reach {
  eta: number;
  front: number;
  rear: number;
}

export interface PlyOutline {
  number: number; // 1: outermost
  reach: Reach[]; // root to where it runs out; empty where it fits nowhere
  area: number; // of one side, both halves, laid flat
}

/** Outlines of the plies of one side, outermost first; the list ends with the last ply that fits anywhere. */
export function plyOutlines(skin: Skin, thickness: number, most: number): PlyOutline[] {
  const plies: PlyOutline[] = [];
  for (let number = 1; number <= most; number++) {
    const reach = reachOf(skin, 2 * number * thickness);
    if (reach.length < 2) break;
    plies.push({ number, reach, area: areaOf(skin, reach) });
  }
  return plies;
}

function reachOf(skin: Skin, needed: number): Reach[] {
  const { surface } = skin;
  const thickest = (eta: number) => Math.max(...heights(skin, skin.rib(eta)).map(({ height }) => height));
  if (thickest(0) < needed) return [];
  const spare = thickest(1) - needed;
  const end =
    spare >= 0
      ? 1
      : (findRoot((eta) => thickest(eta) - needed, 0, 1, 1e-6, thickest(0) - needed, spare) ?? 1);
  return Array.from({ length: STATIONS + 1 }, (_, k) => {
    const eta = end * Math.sin((0.5 * Math.PI * k) / STATIONS);
    const along = heights(skin, skin.rib(eta));
    if (k === STATIONS && end < 1) {
      const peak = along.reduce((best, at) => (at.height > best.height ? at : best));
      return { eta, front: peak.x, rear: peak.x };
    }
    return { eta, ...limits(along, needed) };
  }).filter(({ eta }) => surface.chord(eta) > 0);
}

/** Thickness (m) along a chord, trailing edge to nose. */
export function heights(skin: Skin, rib: Rib): Array<{ x: number; height: number }> {
  return Array.from({ length: AROUND + 1 }, (_, k) => {
    const [upper, lower] = [skin.outline(rib, k / AROUND), skin.outline(rib, 2 - k / AROUND)];
    return {
      x: 0.5 * (upper[0] + lower[0]),
      height: rib.chord * Math.hypot(upper[0] - lower[0], upper[1] - lower[1]),
    };
  });
}

/** First and last place that is thick enough, straight between samples. */
function limits(
  along: ReadonlyArray<{ x: number; height: number }>,
  needed: number,
): { front: number; rear: number } {
  const enough = along.map(({ height }) => height >= needed);
  const cross = (outer: number, inner: number) => {
    const [a, b] = [along[outer], along[inner]!];
    if (!a) return b.x;
    return a.x + ((b.x - a.x) * (needed - a.height)) / (b.height - a.height);
  };
  const rearmost = enough.indexOf(true); // the list runs forward
  const foremost = enough.lastIndexOf(true);
  if (rearmost < 0) {
    const { x } = along.reduce((best, at) => (at.height > best.height ? at : best));
    return { front: x, rear: x };
  }
  return {
    rear: cross(rearmost - 1, rearmost),
    front: cross(foremost + 1, foremost),
  };
}

function areaOf({ surface }: Skin, reach: readonly Reach[]): number {
  let area = 0;
  for (let k = 1; k < reach.length; k++) {
    const [a, b] = [reach[k - 1]!, reach[k]!];
    const width = ({ eta, front, rear }: Reach) => (rear - front) * surface.chord(eta);
    area += (width(a) + width(b)) * (b.eta - a.eta) * surface.halfLength;
  }
  return area;
}
