/** The six points of a half that reach furthest along each axis: they set the size of the block it is cut from. */
import type { Skin } from './skin.ts';

export interface Extremes {
  etas: number[];
  shares: number[];
}

const RINGS = 40;
const AROUND = 64;

/** eta and share of the points of least and greatest x, y and z, each searched from the best of a coarse grid. */
export function findExtremes(skin: Skin): Extremes {
  const found: Extremes = { etas: [], shares: [] };
  const etaOf = (v: number) => Math.sin(0.5 * Math.PI * Math.min(1, Math.max(0, v)));
  const ribs = Array.from({ length: RINGS + 1 }, (_, k) => skin.rib(etaOf(k / RINGS)));
  for (const axis of [0, 1, 2])
    for (const sign of [1, -1]) {
      let best = Number.NEGATIVE_INFINITY;
      let v = 0;
      let share = 0;
      for (const [k, rib] of ribs.entries())
        for (let j = 0; j <= AROUND; j++) {
          const value = sign * skin.point(rib, (2 * j) / AROUND)[axis]!;
          if (value > best) [best, v, share] = [value, k / RINGS, (2 * j) / AROUND];
        }
      for (let round = 0; round < 4; round++) {
        const rib = skin.rib(etaOf(v));
        share = climb((at) => sign * skin.point(rib, at)[axis]!, share, 2 / AROUND, 0, 2);
        v = climb((at) => sign * skin.point(skin.rib(etaOf(at)), share)[axis]!, v, 1 / RINGS, 0, 1);
      }
      found.etas.push(etaOf(v));
      found.shares.push(share);
    }
  return found;
}

/** The highest place of f within a step either way, by golden section; ends stay where they are as high. */
function climb(f: (at: number) => number, from: number, step: number, least: number, most: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let low = Math.max(least, from - step);
  let high = Math.min(most, from + step);
  const ends = [low, high, from];
  while (high - low > 1e-9) {
    const [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
    if (f(a) >= f(b)) high = b;
    else low = a;
  }
  return [0.5 * (low + high), ...ends].reduce((best, at) => (f(at) > f(best) ? at : best));
}
