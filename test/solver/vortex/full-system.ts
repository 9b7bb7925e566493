/**
 * The same vortex model, written a second time and plainly: both halves of the foil, the strut and every image as
 * horseshoes of their own in one unsplit system, solved for a whole onset flow at once, forces summed by Kutta and
 * Joukowski. Nothing is split by symmetry, nothing superposed, no slope taken but by differences. It takes only the
 * strips' nodes, stations and angles from the program.
 *
 * Stream speed and density 1: forces in m2, moments in m3. x aft, y starboard, z up.
 */
import type { Craft } from '../../../src/solver/geometry/craft.ts';
import type { Strips } from '../../../src/solver/geometry/strips.ts';

export type Vector = [number, number, number];

interface Horseshoe {
  a: Vector;
  b: Vector;
}

interface Segment extends Horseshoe {
  control: Vector;
  normal: Vector; // of the untwisted strip
  turned: Vector; // with twist, incidence and zero-lift angle
  surface: number;
  core: number; // m, softens the x-velocity of its bound segment on other surfaces
  image: Horseshoe | null;
}

export interface Motion {
  alpha?: number; // rad
  beta?: number; // rad, water from starboard
  p?: number; // rad/s at stream speed 1
  q?: number;
  r?: number;
  about?: Vector; // the point the rates turn about, and moments are taken about
}

export interface Sums {
  force: Vector;
  moment: Vector;
}

export interface FullSystem {
  solve(motion: Motion): Sums & { circulation: number[] };
}

const plus = (u: Vector, v: Vector, share = 1): Vector => [
  u[0] + share * v[0],
  u[1] + share * v[1],
  u[2] + share * v[2],
];
const minus = (u: Vector, v: Vector): Vector => plus(u, v, -1);
const dot = (u: Vector, v: Vector) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
const cross = (u: Vector, v: Vector): Vector => [
  u[1] * v[2] - u[2] * v[1],
  u[2] * v[0] - u[0] * v[2],
  u[0] * v[1] - u[1] * v[0],
];
const size = (u: Vector) => Math.sqrt(dot(u, u));
const toPort = ([x, y, z]: Vector): Vector => [x, -y, z];

/** Velocity of a straight filament from a to b of circulation 1, by the angles at its ends. */
function straight(a: Vector, b: Vector, point: Vector): Vector {
  const along = minus(b, a);
  const direction = plus([0, 0, 0], along, 1 / size(along));
  return byAngles(direction, minus(point, a), dot(direction, minus(point, b)) / size(minus(point, b)));
}

/** Velocity of a filament from a along +x without end. */
function endless(a: Vector, point: Vector): Vector {
  return byAngles([1, 0, 0], minus(point, a), -1);
}

function byAngles(direction: Vector, fromStart: Vector, cosineAtEnd: number): Vector {
  const swirl = cross(direction, fromStart); // its size is the distance to the filament's line
  const distance = size(swirl);
  if (distance < 1e-9 * size(fromStart)) return [0, 0, 0];
  const strength = dot(direction, fromStart) / size(fromStart) - cosineAtEnd;
  return plus([0, 0, 0], swirl, strength / (4 * Math.PI * distance * distance));
}

const legs = ({ a, b }: Horseshoe, point: Vector): Vector => minus(endless(b, point), endless(a, point));

/** The whole velocity of a horseshoe, for the tangency. */
const whole = (shoe: Horseshoe, point: Vector): Vector =>
  plus(straight(shoe.a, shoe.b, point), legs(shoe, point));

/** What a bound segment adds at the middle of another: no x-velocity on its own surface, a softened one elsewhere. */
function boundForForces(source: Segment, target: Segment, point: Vector): Vector {
  const velocity = straight(source.a, source.b, point);
  if (source.surface === target.surface) return [0, velocity[1], velocity[2]];
  const along = minus(source.b, source.a);
  const distance = size(cross(along, minus(point, source.a))) / size(along);
  const softened = distance / Math.sqrt(distance * distance + source.core * source.core);
  return [velocity[0] * softened, velocity[1], velocity[2]];
}

/** Both halves of a surface as segments that all run to starboard. */
function segmentsOf(strips: Strips, surface: number, depth: number | null): Segment[] {
  const made: Segment[] = [];
  const { count, rows } = strips;
  const node = (k: number): Vector => [strips.nodeX[k]!, strips.nodeY[k]!, strips.nodeZ[k]!];
  for (let r = 0; r < rows; r++)
    for (let k = 0; k < count; k++) {
      const [a, b] = [node(r * (count + 1) + k), node(r * (count + 1) + k + 1)];
      const at = r * count + k;
      const control: Vector = [strips.controlX[at]!, strips.controlY[at]!, strips.controlZ[at]!];
      const normal: Vector = [0, Math.sin(strips.droop[k]!), Math.cos(strips.droop[k]!)];
      const pitch = strips.pitch[k]!;
      const turned = plus([Math.sin(pitch), 0, 0], normal, Math.cos(pitch));
      const shared = { surface, core: strips.chord[0]! / (Math.PI * rows) };
      made.push({ a, b, control, normal, turned, ...shared, image: imageOf(a, b, depth) });
      if (surface === STRUT) continue;
      const [pa, pb] = [toPort(b), toPort(a)];
      const mirror = { control: toPort(control), normal: toPort(normal), turned: toPort(turned) };
      made.push({ a: pa, b: pb, ...mirror, ...shared, image: imageOf(pa, pb, depth) });
    }
  return made;
}

function imageOf(a: Vector, b: Vector, depth: number | null): Horseshoe | null {
  if (depth === null) return null;
  const above = ([x, y, z]: Vector): Vector => [x, y, 2 * depth - z];
  return { a: above(a), b: above(b) };
}

const STRUT = 2;

/** `exact`: the induced flow too meets the turned normal, where the program takes the untwisted one. */
export function fullSystem(craft: Craft, withStrut: boolean, exact = false): FullSystem {
  const { wing, stabilizer, strut } = craft.parts;
  const segments = [
    ...segmentsOf(wing, 0, craft.depth),
    ...(stabilizer ? segmentsOf(stabilizer, 1, craft.depth) : []),
    ...(strut && withStrut ? segmentsOf(strut, STRUT, craft.depth) : []),
  ];
  const induced = (source: Segment, point: Vector) => {
    const velocity = whole(source, point);
    return source.image ? plus(velocity, whole(source.image, point)) : velocity;
  };
  const matrix = segments.map(({ control, normal, turned }) =>
    segments.map((source) => dot(induced(source, control), exact ? turned : normal)),
  );
  const middles = segments.map(({ a, b }): Vector => plus(plus([0, 0, 0], a, 0.5), b, 0.5));
  const velocities = segments.map((target, i) =>
    segments.map((source) => {
      const own = plus(boundForForces(source, target, middles[i]!), legs(source, middles[i]!));
      return source.image ? plus(own, whole(source.image, middles[i]!)) : own;
    }),
  );
  return {
    solve(motion) {
      const about = motion.about ?? [0, 0, 0];
      const stream = streamOf(motion, about);
      const circulation = gauss(
        matrix,
        segments.map(({ control, turned }) => -dot(stream(control), turned)),
      );
      let force: Vector = [0, 0, 0];
      let moment: Vector = [0, 0, 0];
      segments.forEach(({ a, b }, i) => {
        let velocity = stream(middles[i]!);
        circulation.forEach((value, j) => {
          velocity = plus(velocity, velocities[i]![j]!, value);
        });
        const pull = plus([0, 0, 0], cross(velocity, minus(b, a)), circulation[i]!);
        force = plus(force, pull);
        moment = plus(moment, cross(minus(middles[i]!, about), pull));
      });
      return { force, moment, circulation };
    },
  };
}

/** Onset flow in the foil's own frame: the free stream less the foil's turning. */
function streamOf(
  { alpha = 0, beta = 0, p = 0, q = 0, r = 0 }: Motion,
  about: Vector,
): (point: Vector) => Vector {
  const free: Vector = [Math.cos(alpha) * Math.cos(beta), -Math.sin(beta), Math.sin(alpha) * Math.cos(beta)];
  return (point) => minus(free, cross([-p, q, -r], minus(point, about)));
}

/** Gauss with row pivoting on a copy. */
function gauss(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    for (let i = k + 1; i < n; i++) {
      const share = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j++) rows[i]![j]! -= share * rows[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = rows[k]![n]!;
    for (let j = k + 1; j < n; j++) sum -= rows[k]![j]! * x[j]!;
    x[k] = sum / rows[k]![k]!;
  }
  return x;
}
