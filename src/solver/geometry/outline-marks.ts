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
  const estimate = ({ x, thickness }: NosePlace) => thickness ** 2 / (8 * x);
  const [near, far] = nosePlaces(outline);
  const root = Math.sqrt(near.x / far.x); // the estimate strays from its limit as the root of x
  return (estimate(near) - root * estimate(far)) / (1 - root);
}

/** Thickness at a place behind the nose, shares of the chord. */
export interface NosePlace {
  x: number;
  thickness: number;
}

/** The two places that the nose radius is found from. */
export function nosePlaces(outline: Outline): [NosePlace, NosePlace] {
  const at = surfacePoint(outline);
  const place = (x: number): NosePlace => {
    const [up, down] = [at(x, 1), at(x, -1)];
    return { x, thickness: Math.hypot(up[0] - down[0], up[1] - down[1]) };
  };
  return [place(0.0025), place(0.01)];
}

/** Distance between the two sides at the trailing edge. */
export function edgeThickness(outline: Outline): number {
  const at = surfacePoint(outline);
  const [up, down] = [at(1, 1), at(1, -1)];
  return Math.hypot(up[0] - down[0], up[1] - down[1]);
}
