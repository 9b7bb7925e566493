/** Closed outlines moved inward or outward by an even distance, loops and folds taken out. */
import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import type { Point } from './drawing.ts';

const DECIMALS = 4; // 0.1 micrometre

/** The outlines that are left `inward` mm inside this one: none, one, or several. */
export function inset(points: readonly Point[], inward: number): Point[][] {
  const path = points.map(([x, y]) => ({ x, y }));
  const left = inflatePathsD([path], -inward, JoinType.Miter, EndType.Polygon, 2, DECIMALS);
  return left.map((loop) => loop.map(({ x, y }): Point => [x, y]));
}

/** Area inside a closed outline, mm2; positive when it runs anticlockwise. */
export function areaInside(points: readonly Point[]): number {
  let twice = 0;
  for (const [k, [x, y]] of points.entries()) {
    const [nextX, nextY] = points[(k + 1) % points.length]!;
    twice += x * nextY - nextX * y;
  }
  return 0.5 * twice;
}
