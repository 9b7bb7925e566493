/**
 * Whether a stabilizer runs into the wing: two surfaces in one place cannot be built, and their vortices would meet.
 * Stations of the two touch where their chords overlap in x and they lie, seen head-on, closer than half their
 * thicknesses together, taken as a twentieth of each chord.
 */
import type { Surface } from './surface.ts';

const STATIONS = 48; // along each half
const HALF_THICKNESS = 0.05; // of the chord

interface Edges {
  ahead: Float64Array; // x of the leading edge
  chord: Float64Array;
}

interface Line extends Edges {
  y: Float64Array;
  z: Float64Array;
}

const each = (value: (eta: number) => number): Float64Array =>
  Float64Array.from({ length: STATIONS + 1 }, (_, k) => value(k / STATIONS));

function edgesOf(surface: Surface): Edges {
  const chord = each(surface.chord);
  return { ahead: each(surface.x).map((x, k) => x - 0.25 * chord[k]!), chord };
}

function lineOf(surface: Surface, edges: Edges): Line {
  const points = Array.from(edges.chord, (_, k) => surface.point(k / STATIONS));
  return { ...edges, y: Float64Array.from(points, ({ y }) => y), z: Float64Array.from(points, ({ z }) => z) };
}

/** Where the two touch first from the root: the wing's y there, m; null when they do not. */
export function touchingAt(wing: Surface, stabilizer: Surface): number | null {
  const [ahead, aft] = [edgesOf(wing), edgesOf(stabilizer)];
  if (aftEnd(ahead) < Math.min(...aft.ahead) || aftEnd(aft) < Math.min(...ahead.ahead)) return null;
  const one = lineOf(wing, ahead);
  const other = lineOf(stabilizer, aft);
  for (let i = 0; i < STATIONS; i++)
    for (let j = 0; j < STATIONS; j++)
      if (overlapInX(one, i, other, j) && isNear(one, i, other, j)) return one.y[i]!;
  return null;
}

const aftEnd = ({ ahead, chord }: Edges) => Math.max(...ahead.map((x, k) => x + chord[k]!));

function overlapInX(one: Edges, i: number, other: Edges, j: number): boolean {
  return one.ahead[i]! < other.ahead[j]! + other.chord[j]! && other.ahead[j]! < one.ahead[i]! + one.chord[i]!;
}

/** Whether the pieces from stations i and j on come nearer, seen head-on, than the thicknesses allow. */
function isNear(one: Line, i: number, other: Line, j: number): boolean {
  const clearance = HALF_THICKNESS * (one.chord[i]! + other.chord[j]!);
  return (
    distance(one, i, other, j) < clearance ||
    distance(one, i, other, j + 1) < clearance ||
    distance(other, j, one, i) < clearance ||
    distance(other, j, one, i + 1) < clearance
  );
}

/** Distance in the y-z plane from a piece of one line to a station of the other. */
function distance(one: Line, i: number, other: Line, j: number): number {
  const [ay, az] = [one.y[i]!, one.z[i]!];
  const [by, bz] = [one.y[i + 1]! - ay, one.z[i + 1]! - az];
  const [py, pz] = [other.y[j]! - ay, other.z[j]! - az];
  const share = Math.max(0, Math.min(1, (py * by + pz * bz) / (by * by + bz * bz)));
  return Math.hypot(py - share * by, pz - share * bz);
}
