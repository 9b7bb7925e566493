/**
 * The whole foil of a design at a depth: its surfaces, and their strips with shared edges. Lengths in m.
 */
import type { Design, Strut } from '../design/document.ts';
import {
  cutStrips,
  cutStrut,
  flatten,
  type Parts,
  type Spacing,
  type Stations,
  shareStations,
  spaceStations,
} from './strips.ts';
import { type Surface, surfaceOf } from './surface.ts';
import { type SectionLift, type StrutSlope, thinStrut } from './thin.ts';
import { touchingAt } from './touching.ts';

export interface Resolution {
  strips: number; // wing, per side
  stabilizerStrips: number;
  rows: number;
  spacing?: Spacing; // equal strips are for worked examples; they do not share edges
  /** How sections lift and drag: by their own polars (default), or by thin-airfoil theory and assumed coefficients. */
  sections?: 'thin' | 'real';
}

export interface Craft {
  wing: Surface;
  stabilizer: Surface | null;
  strut: Strut | null;
  strutSlope: StrutSlope;
  depth: number | null; // of the origin; null: deep water
  parts: Parts;
}

/** How the sections of both surfaces lift, and the strut's to the side. */
export interface Lifts {
  wing: SectionLift;
  stabilizer: SectionLift;
  strut: StrutSlope;
}

/**
 * The foil as drawn; without `lifts` its sections follow thin-airfoil theory. Throws a plain sentence when depth
 * or surfaces do not fit, GeometryError when a surface cannot be drawn.
 */
export function craftOf(
  design: Design,
  depth: number | null,
  resolution: Resolution,
  lifts?: Partial<Lifts>,
): Craft {
  const wing = surfaceOf(design.wing, undefined, lifts?.wing);
  const { stabilizer: drawn, strut } = design;
  const stabilizer = drawn
    ? surfaceOf(drawn, { arm: drawn.arm, height: drawn.height }, lifts?.stabilizer)
    : null;
  const problem = touchingProblem(wing, stabilizer) ?? depthProblem(wing, stabilizer, strut, depth);
  if (problem) throw new Error(problem);
  return assemble(wing, stabilizer, strut, depth, resolution, lifts?.strut);
}

export function assemble(
  wing: Surface,
  stabilizer: Surface | null,
  strut: Strut | null,
  depth: number | null,
  resolution: Resolution,
  strutSlope: StrutSlope = thinStrut,
): Craft {
  const { rows } = resolution;
  const stations = stationsFor(wing, stabilizer, resolution);
  const parts: Parts = {
    wing: cutStrips(wing, stations.wing, rows),
    stabilizer: stabilizer && stations.stabilizer ? cutStrips(stabilizer, stations.stabilizer, rows) : null,
    strut: strut ? strutStrips(strut, stabilizer, depth, resolution, strutSlope) : null,
  };
  return { wing, stabilizer, strut, strutSlope, depth, parts };
}

function stationsFor(
  wing: Surface,
  stabilizer: Surface | null,
  { strips, stabilizerStrips, spacing }: Resolution,
): { wing: Stations; stabilizer: Stations | null } {
  if (!stabilizer) return { wing: spaceStations(strips, spacing), stabilizer: null };
  if (spacing === 'equal')
    return { wing: spaceStations(strips, spacing), stabilizer: spaceStations(stabilizerStrips, spacing) };
  return shareStations(wing, stabilizer, strips, stabilizerStrips);
}

function strutStrips(
  strut: Strut,
  stabilizer: Surface | null,
  depth: number | null,
  resolution: Resolution,
  slope: StrutSlope,
) {
  const count = Math.max(2, Math.round(resolution.strips / 2));
  const crossing = stabilizer && stabilizer.height > 0 ? stabilizer.height : null;
  return cutStrut(strut.x ?? 0, strut.chord, depth ?? strut.length, count, resolution.rows, crossing, slope);
}

/** The flat twin of the same span: strips keep y, x, chord and pitch; the rest of the foil is unchanged. */
export function sameSpanTwin(craft: Craft): Craft {
  return { ...craft, parts: { ...craft.parts, wing: flatten(craft.parts.wing, craft.wing.height) } };
}

/** The foil alone: no strips of the strut. */
export function withoutStrut(craft: Craft): Craft {
  return { ...craft, parts: { ...craft.parts, strut: null } };
}

/** The same foil at another depth; the strut's strips, which reach to the surface, are left out. */
export function atDepth(craft: Craft, depth: number | null): Craft {
  return { ...craft, depth, strut: null, parts: { ...craft.parts, strut: null } };
}

/** Why two surfaces cannot stand where they do, in one sentence with the key path; null when they can. */
export function touchingProblem(
  wing: Surface,
  stabilizer: Surface | null,
  named = 'the wing',
): string | null {
  const y = stabilizer && touchingAt(wing, stabilizer);
  if (y === null) return null;
  return `stabilizer: found it touching ${named} ${y.toFixed(3)} m from the middle, allowed clear of it: further aft, higher or lower`;
}

/** Why a foil cannot run at this depth, in one sentence with the key path; null when it can. */
export function depthProblem(
  wing: Surface,
  stabilizer: Surface | null,
  strut: Strut | null,
  depth: number | null,
): string | null {
  if (depth === null) return null;
  if (!(depth > 0)) return `brief.depth: found ${depth} m, allowed above 0 to 5 m, or null for deep water`;
  if (strut && depth > strut.length)
    return `brief.depth: found ${depth} m, allowed up to the strut's length, ${strut.length} m`;
  for (const [name, surface] of [
    ['wing', wing],
    ['stabilizer', stabilizer],
  ] as const) {
    if (!surface) continue;
    let top = Number.NEGATIVE_INFINITY;
    for (let k = 0; k <= 40; k++) top = Math.max(top, surface.point(Math.sin((Math.PI * k) / 80)).z);
    if (top >= depth)
      return `${name}: found a station ${top.toFixed(3)} m above the origin, allowed below the surface at ${depth} m`;
  }
  return null;
}
