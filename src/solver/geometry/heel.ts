/**
 * A foil heeled about its origin, which stays at its depth: how near its stations come to the water surface. Lengths in
 * m, heel in radians, positive starboard down; by symmetry one half answers for both.
 */
import { findRoot } from '../numeric/roots.ts';
import type { Surface } from './surface.ts';

const STATIONS = 60;

/** Height of the highest station over the origin at a heel. */
export function highestStation(surface: Surface, heel = 0): number {
  const [cos, sin] = [Math.cos(heel), Math.abs(Math.sin(heel))];
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= STATIONS; k++) {
    const { y, z } = surface.point(k / STATIONS);
    top = Math.max(top, z * cos + y * sin);
  }
  return top;
}

/**
 * Heel at which the first station reaches the surface from below; null where even a right angle does not bring it there,
 * or where a station is out of the water when level.
 */
export function breachHeel(surface: Surface, depth: number): number | null {
  if (highestStation(surface) >= depth) return null;
  let least: number | null = null;
  for (let k = 1; k <= STATIONS; k++) {
    const { y, z } = surface.point(k / STATIONS);
    const rise = (heel: number) => z * Math.cos(heel) + y * Math.sin(heel) - depth;
    // The station climbs until it stands over the origin, at atan2(y, z).
    const heel = findRoot(rise, 0, Math.min(Math.PI / 2, Math.atan2(y, z)), 1e-6);
    if (heel !== null && (least === null || heel < least)) least = heel;
  }
  return least;
}

/** Depth of the upper tip below the surface at a heel; negative above it. */
export function upperTipDepth(surface: Surface, depth: number, heel: number): number {
  const { y, z } = surface.point(1);
  return depth - (z * Math.cos(heel) + y * Math.abs(Math.sin(heel)));
}
