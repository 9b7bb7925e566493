/** The flat face that closes a body after a cut. */
import earcut from 'earcut';
import type { Triple } from '../solver/geometry/skin.ts';
import type { MeshBuilder } from '../solver/geometry/triangles.ts';

/** Fills the cut: loops from the rim, holes given to the loop round them, triangles by ear cutting. */
export function closeFace(
  builder: MeshBuilder,
  rim: Map<number, number[]>,
  places: readonly Triple[],
  normal: Triple,
): void {
  const flat = flattener(normal);
  const loops = loopsOf(rim).map((loop) => {
    const points = loop.map((at) => flat(places[at]!));
    return { loop, points, area: areaOf(points) };
  });
  const outer = loops.filter(({ area }) => area > 0);
  const holes = loops.filter(({ area }) => area < 0);
  for (const around of outer) {
    const within = holes.filter(
      (hole) =>
        outer
          .filter((other) => contains(other.points, hole.points[0]!))
          .sort((a, b) => a.area - b.area)[0] === around,
    );
    const rings = [around, ...within];
    const order = rings.flatMap(({ loop }) => loop);
    const starts = rings
      .slice(1)
      .map((_, k) => rings.slice(0, k + 1).reduce((sum, { loop }) => sum + loop.length, 0));
    const cut = earcut(
      rings.flatMap(({ points }) => points.flat()),
      starts,
    );
    const faces: Face[] = [];
    for (let k = 0; k < cut.length; k += 3)
      faces.push([order[cut[k]!]!, order[cut[k + 1]!]!, order[cut[k + 2]!]!]);
    // All run the same way round; which way, a thin one could not tell.
    const turn = faces.reduce((sum, face) => sum + areaOf(face.map((at) => flat(places[at]!))), 0);
    if (turn < 0) for (const face of faces) face.reverse();
    for (const face of withEveryPoint(
      faces,
      rings.map(({ loop }) => loop),
    ))
      builder.triangle(...face);
  }
}

type Face = [number, number, number];
type Flat = [number, number];

/** Coordinates in the plane, anticlockwise as seen from outside the kept body (against the normal). */
function flattener(normal: Triple): (place: Triple) => Flat {
  const [x, y, z] = normal;
  const helper: Triple = Math.abs(x) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const across = unit(crossed(helper, normal));
  const up = crossed(across, [x, y, z]); // across, up and minus the normal are right-handed
  return (place) => [dot(place, across), dot(place, up)];
}

function crossed(a: Triple, b: Triple): Triple {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function unit(a: Triple): Triple {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
}

function areaOf(points: readonly Flat[]): number {
  return points.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = points[(k + 1) % points.length]!;
    return sum + 0.5 * (x * nextY - nextX * y);
  }, 0);
}

function contains(points: readonly Flat[], [x, y]: Flat): boolean {
  let inside = false;
  for (const [k, [ax, ay]] of points.entries()) {
    const [bx, by] = points[(k + 1) % points.length]!;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

/** Chains the rim; takes its map apart. */
function loopsOf(rim: Map<number, number[]>): number[][] {
  const loops: number[][] = [];
  for (const start of rim.keys()) {
    const loop: number[] = [];
    let at = start;
    for (let next = rim.get(at)?.pop(); next !== undefined; next = rim.get(at)?.pop()) {
      loop.push(at);
      at = next;
    }
    if (loop.length > 2) loops.push(loop);
  }
  return loops;
}

/**
 * Ear cutting leaves out points that lie straight between their neighbours, but the rest of the body has corners there:
 * a triangle whose side skips them is fanned out to each.
 */
function withEveryPoint(faces: readonly Face[], loops: readonly number[][]): Face[] {
  const next = new Map(
    loops.flatMap((loop) => loop.map((at, k) => [at, loop[(k + 1) % loop.length]!] as const)),
  );
  const sides = new Set(faces.flatMap(([a, b, c]) => [`${a} ${b}`, `${b} ${c}`, `${c} ${a}`]));
  const whole: Face[] = [];
  const queue = [...faces];
  for (let face = queue.pop(); face; face = queue.pop()) {
    const [a, b, c] = face;
    const turned: Face[] = [face, [b, c, a], [c, a, b]];
    const skipping = turned.find(([from, to]) => next.get(from) !== to && !sides.has(`${to} ${from}`));
    const between = skipping && pointsBetween(next, skipping[0], skipping[1]);
    if (!skipping || !between) {
      whole.push(face);
      continue;
    }
    const chain = [skipping[0], ...between, skipping[1]];
    for (let k = 1; k < chain.length; k++) {
      const part: Face = [chain[k - 1]!, chain[k]!, skipping[2]];
      for (const [from, to] of [
        [part[0], part[1]],
        [part[1], part[2]],
        [part[2], part[0]],
      ])
        sides.add(`${from} ${to}`);
      queue.push(part);
    }
  }
  return whole;
}

function pointsBetween(next: Map<number, number>, from: number, to: number): number[] | null {
  const between: number[] = [];
  for (let at = next.get(from); at !== undefined && between.length <= next.size; at = next.get(at)) {
    if (at === to) return between;
    between.push(at);
  }
  return null;
}
