/**
 * Whether a stabilizer runs into the wing: two surfaces in one place cannot be built, and their vortices would meet.
 * Stations of the two touch where their chords overlap in x and they lie, seen head-on, closer than half their
 * thicknesses together, taken as a twentieth of each chord.
 */
import type { Surface } from './surface.ts';

const STATIONS = 48; // along each half
const HALF_THICKNESS = 0.05; // of the chord

/** A surface by stations. */
interface Line {
  ahead: Float64Array; // x of the leading edge
  chord: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

const each = (value: (eta: number) => number): Float64Array =>
  Float64Array.from({ length: STATIONS + 1 }, (_, k) => value(k / STATIONS));

function lineOf(surface: Surface): Line {
  return {
    ahead: each((eta) => surface.x(eta) - 0.25 * surface.chord(eta)),
    chord: each(surface.chord),
    y: each((eta) => surface.point(eta).y),
    z: each((eta) => surface.point(eta).z),
  };
}

/** From where to where its stations reach, x. */
function reachOf(surface: Surface): { ahead: number; aft: number } {
  const reach = { ahead: Number.POSITIVE_INFINITY, aft: Number.NEGATIVE_INFINITY };
  for (let k = 0; k <= STATIONS; k++) {
    const chord = surface.chord(k / STATIONS);
    const quarter = surface.x(k / STATIONS);
    reach.ahead = Math.min(reach.ahead, quarter - 0.25 * chord);
    reach.aft = Math.max(reach.aft, quarter + 0.75 * chord);
  }
  return reach;
}

/** Where the two touch first from the root: the wing's y there, m; null when they do not. */
export function touchingAt(wing: Surface, stabilizer: Surface): number | null {
  const [here, there] = [reachOf(wing), reachOf(stabilizer)];
  if (here.aft < there.ahead || there.aft < here.ahead) return null;
  const [one, other] = [lineOf(wing), lineOf(stabilizer)];
  for (let i = 0; i < STATIONS; i++)
    for (let j = 0; j < STATIONS; j++)
      if (overlapInX(one, i, other, j) && isNear(one, i, other, j)) return one.y[i]!;
  return null;
}

function overlapInX(one: Line, i: number, other: Line, j: number): boolean {
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
