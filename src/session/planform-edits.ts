/**
 * What a builder enters in place of the document's own keys: a length the other way round, a tip drop for a tip
 * angle, an area for a tip chord. Each answers with the part of the document that gives it. Lengths in m, areas in
 * m2, angles in degrees.
 */
import type { ChordLaw, DroopLaw, Length, Planform } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { type Surface, surfaceOf } from '../solver/geometry/surface.ts';
import { findRoot } from '../solver/numeric/roots.ts';
import { scaledFormula } from './scaled-formula.ts';

export type TipMeasureKind = 'tipAngle' | 'tipDrop';

/** A droop law whose tip is bent by a measure: all but flat, points and formula. */
export type BentDroop = Extract<DroopLaw, { kind: 'vee' | 'arc' | 'late' | 'gull' }>;

const DEGREES = 180 / Math.PI;
const LARGEST_CHORD = RANGES['*.chord.tip'].max;

const surfaces = new WeakMap<Planform, Surface | null>();

/** The surface that a planform draws, computed once; null where none can be drawn. */
export function surfaceFor(planform: Planform): Surface | null {
  const known = surfaces.get(planform);
  if (known !== undefined) return known;
  let surface: Surface | null = null;
  try {
    surface = surfaceOf(planform);
  } catch {
    // an unreachable drop or length: the page says so elsewhere
  }
  surfaces.set(planform, surface);
  return surface;
}

/** The same wing with its length said the other way. */
export function lengthAs(planform: Planform, kind: Length['kind']): Length {
  const surface = surfaceOf(planform);
  return { kind, value: tidy(kind === 'unrolled' ? surface.unrolledLength : surface.span) };
}

/** The length that gives `value` measured as `kind`, said the way the document says it. Throws GeometryError. */
export function lengthFor(planform: Planform, kind: Length['kind'], value: number): Length {
  return lengthAs({ ...planform, length: { kind, value } }, planform.length.kind);
}

export function isBent(droop: DroopLaw): droop is BentDroop {
  return droop.kind !== 'flat' && droop.kind !== 'points' && droop.kind !== 'formula';
}

export function tipMeasureOf(droop: BentDroop): TipMeasureKind {
  return droop.tipDrop === undefined ? 'tipAngle' : 'tipDrop';
}

/** The same droop with its tip measured the other way. Throws GeometryError. */
export function droopAs(planform: Planform, droop: BentDroop, measure: TipMeasureKind): BentDroop {
  const surface = surfaceOf({ ...planform, droop });
  const value = measure === 'tipAngle' ? tidyAngle(surface.tipAngle * DEGREES) : tidy(surface.tipDrop);
  return withTip(droop, measure, value);
}

/** The droop that gives `value` in this measure, kept in the measure the document uses. Throws GeometryError. */
export function droopFor(
  planform: Planform,
  droop: BentDroop,
  measure: TipMeasureKind,
  value: number,
): BentDroop {
  return droopAs(planform, withTip(droop, measure, value), tipMeasureOf(droop));
}

export function withTip(droop: BentDroop, measure: TipMeasureKind, value: number): BentDroop {
  const { tipAngle: _angle, tipDrop: _drop, ...rest } = droop;
  return { ...rest, [measure]: value } as BentDroop;
}

/**
 * The chord law that gives this projected area: by the tip chord where the law has one, else by scaling every
 * chord. A sentence where no chord within the document's limits gives it.
 */
export function chordForArea(
  planform: Planform,
  area: number,
  write: (area: number) => string,
): ChordLaw | string {
  const { chord } = planform;
  const areaWith = (law: ChordLaw) => surfaceOf({ ...planform, chord: law }).projectedArea;
  if (chord.kind !== 'taper') return scaledChord(chord, area / areaWith(chord));
  const least = areaWith({ ...chord, tip: 0 });
  const most = areaWith({ ...chord, tip: LARGEST_CHORD });
  const tip = findRoot(
    (length) => areaWith({ ...chord, tip: length }) - area,
    0,
    LARGEST_CHORD,
    1e-9,
    least - area,
    most - area,
  );
  if (tip === null)
    return `No tip chord gives ${write(area)}: with this span and root chord the area lies between ${write(least)} (pointed tip) and ${write(most)}.`;
  return { ...chord, tip: tidy(tip) };
}

function scaledChord(chord: Exclude<ChordLaw, { kind: 'taper' }>, factor: number): ChordLaw {
  switch (chord.kind) {
    case 'points':
      return { ...chord, at: chord.at.map(([eta, length]) => [eta, tidy(length * factor)]) };
    case 'formula':
      return { ...chord, expression: scaledFormula(chord.expression, factor) };
    default:
      return { ...chord, root: tidy(chord.root * factor) };
  }
}

/** Metres to a tenth of a micrometre: far below what any tool can cut, and short to read in a file. */
export function tidy(length: number): number {
  return Number(length.toFixed(7));
}

/** Degrees to a hundred-thousandth. */
export function tidyAngle(angle: number): number {
  return Number(angle.toFixed(5));
}
