/** What a builder measures on a section: the radius of its nose and its trailing edge. Shares of the chord. */
import type { Outline } from '../design/document.ts';
import { surfacePoint } from './outline.ts';

/** Nearest the tip, as eta, that a section is looked at: beyond it chord and lift run out. */
export const LAST_STATION = 0.97;

/**
 * Radius of the circle that fits the nose: the limit of h^2/(2 x), h half the thickness x behind the nose, found from
 * two places near it. A four-digit section has 1.1019 times its thickness squared (NACA Report 460).
 */
export function noseRadius(outline: Outline): number {
  const at = surfacePoint(outline);
  const estimate = (x: number) => {
    const [up, down] = [at(x, 1), at(x, -1)];
    return Math.hypot(up[0] - down[0], up[1] - down[1]) ** 2 / (8 * x);
  };
  const [near, far] = [0.0025, 0.01];
  const root = Math.sqrt(near / far); // the estimate strays from its limit as the root of x
  return (estimate(near) - root * estimate(far)) / (1 - root);
}

/** Distance between the two sides at the trailing edge. */
export function edgeThickness(outline: Outline): number {
  const at = surfacePoint(outline);
  const [up, down] = [at(1, 1), at(1, -1)];
  return Math.hypot(up[0] - down[0], up[1] - down[1]);
}
