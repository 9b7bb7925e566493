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
  spread: number; // m, mean distance across its chord, the core on its own surface
  place: Vector; // where its force is taken
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

/** The same as felt on its own surface: what the leg's end adds to a line without ends is softened. */
function endlessNear(a: Vector, point: Vector, core: number): Vector {
  const [x, y, z] = minus(point, a);
  const reach = (1 + x / Math.hypot(x, y, z, core)) / (y * y + z * z);
  return [0, (-z * reach) / (4 * Math.PI), (y * reach) / (4 * Math.PI)];
}

/** A straight filament from a to b that is as thick as its core (L. Rosenhead, Proc. Roy. Soc. A 127, 1930, 590). */
function thick(a: Vector, b: Vector, point: Vector, core: number): Vector {
  const along = minus(b, a);
  const direction = plus([0, 0, 0], along, 1 / size(along));
  const swirl = cross(direction, minus(point, a));
  const cosine = (end: Vector) => dot(direction, minus(point, end)) / Math.hypot(...minus(point, end), core);
  return plus([0, 0, 0], swirl, (cosine(a) - cosine(b)) / (4 * Math.PI * (dot(swirl, swirl) + core * core)));
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

/** What a horseshoe adds to the flow on a bound segment: on its own surface it is spread over the chord there. */
function forForces(source: Segment, target: Segment): Vector {
  const { place: point, spread } = target;
  if (source.surface !== target.surface) return plus(boundElsewhere(source, point), legs(source, point));
  const [, y, z] = thick(source.a, source.b, point, spread);
  const [near, far] = [source.a, source.b].map((end) => endlessNear(end, point, Math.E * spread));
  return plus([0, y, z], minus(far!, near!));
}

/** What a bound segment adds on another surface: its x-velocity is softened. */
function boundElsewhere(source: Segment, point: Vector): Vector {
  const velocity = straight(source.a, source.b, point);
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
      const shared = {
        surface,
        core: strips.chord[0]! / (Math.PI * rows),
        spread: strips.chord[k]! / rows / (4 * Math.sqrt(Math.E)),
      };
      const place = abreast(a, b, control);
      made.push({ a, b, control, normal, turned, place, ...shared, image: imageOf(a, b, depth) });
      if (surface === STRUT) continue;
      const [pa, pb] = [toPort(b), toPort(a)];
      const mirror = {
        control: toPort(control),
        normal: toPort(normal),
        turned: toPort(turned),
        place: toPort(place),
      };
      made.push({ a: pa, b: pb, ...mirror, ...shared, image: imageOf(pa, pb, depth) });
    }
  return made;
}

/** The point of a segment that is nearest to a station, seen from behind. */
function abreast(a: Vector, b: Vector, station: Vector): Vector {
  const flat = ([, y, z]: Vector): Vector => [0, y, z];
  const along = minus(b, a);
  return plus(a, along, dot(flat(minus(station, a)), flat(along)) / dot(flat(along), flat(along)));
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
  const velocities = segments.map((target) =>
    segments.map((source) => {
      const own = forForces(source, target);
      return source.image ? plus(own, whole(source.image, target.place)) : own;
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
      segments.forEach(({ a, b, place }, i) => {
        let velocity = stream(place);
        circulation.forEach((value, j) => {
          velocity = plus(velocity, velocities[i]![j]!, value);
        });
        const pull = plus([0, 0, 0], cross(velocity, minus(b, a)), circulation[i]!);
        force = plus(force, pull);
        moment = plus(moment, cross(minus(place, about), pull));
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
