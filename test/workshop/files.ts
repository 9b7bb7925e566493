/** Builds a kind of file and hands out its bytes by name, for tests that read them back with parsers of their own. */
import type { Design } from '../../src/solver/design/document.ts';
import { buildFiles } from '../../src/workshop/build.ts';
import { type Kind, type Order, USUAL_ORDER } from '../../src/workshop/order.ts';

const DATE = new Date('2027-03-21T12:00:00Z');

export async function built(design: Design, kind: Kind, changes: Partial<Order> = {}) {
  const files = await buildFiles(design, { ...USUAL_ORDER, kind, date: DATE, ...changes });
  return {
    names: files.map(({ name }) => name),
    bytes: (end: string) => files.find(({ name }) => name.endsWith(end))!.bytes,
    text: (end: string) => new TextDecoder().decode(files.find(({ name }) => name.endsWith(end))!.bytes),
  };
}

export type Point = readonly [number, number];

export function lengthOf(points: readonly Point[], isClosed: boolean): number {
  const ends = isClosed ? [...points, points[0]!] : points;
  return ends.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - ends[k]![0], y - ends[k]![1]), 0);
}

export function areaOf(points: readonly Point[]): number {
  return Math.abs(
    points.reduce((sum, [x, y], k) => {
      const [nextX, nextY] = points[(k + 1) % points.length]!;
      return sum + 0.5 * (x * nextY - nextX * y);
    }, 0),
  );
}
