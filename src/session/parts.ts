/** Fuselage, strut and stabilizer as a builder speaks of them. Lengths in m. */

import type { Design, Fuselage, Stabilizer, Strut } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { scaledPlanform } from '../solver/geometry/scale.ts';
import type { Change } from './edits.ts';
import { writeFixed } from './number-format.ts';
import { surfaceFor, tidy } from './planform-edits.ts';
import { formatWithUnit, type UnitSystem } from './units.ts';

export type Part = 'stabilizer' | 'fuselage' | 'strut';

const ARM = RANGES['stabilizer.arm'];

/** Nose tip to the stabilizer's trailing edge at the root (common practice); null without both parts. */
export function fuselageLength({ fuselage, stabilizer }: Design): number | null {
  if (!fuselage || !stabilizer) return null;
  return fuselage.nose + stabilizer.arm + sternOf(stabilizer);
}

/** The edit that gives the fuselage this length: the arm follows, nose and strut stay. */
export function fuselageLengthChanges(design: Design, wanted: number, units: UnitSystem) {
  const present = fuselageLength(design);
  if (present === null || !design.stabilizer) return 'There is no stabilizer to measure to.';
  const rest = present - design.stabilizer.arm;
  const arm = tidy(wanted - rest);
  if (arm >= ARM.min && arm <= ARM.max) return [{ path: 'stabilizer.arm', value: arm }];
  const write = (length: number) => formatWithUnit(length, 'length', units);
  return `${write(wanted)} is out of range: ${write(rest + ARM.min)} to ${write(rest + ARM.max)} with this nose and stabilizer.`;
}

/**
 * The edit that takes a stabilizer sized elsewhere: arm, incidence and every length times `scale`, to a tenth of a
 * millimetre and a hundredth of a degree, as a builder would write them.
 */
export function stabilizerTaken(
  { stabilizer }: Design,
  { arm, incidence, scale }: Pick<Stabilizer, 'arm' | 'incidence'> & { scale: number },
): Change[] {
  if (!stabilizer) return [];
  const sized = scaledPlanform(stabilizer, Number(scale.toFixed(4)));
  const value = {
    ...(inTenths(sized, stabilizer) as Stabilizer),
    arm: inTenths(arm, stabilizer.arm),
    incidence: incidence === stabilizer.incidence ? incidence : Number(incidence.toFixed(2)),
  };
  return [{ path: 'stabilizer', value }];
}

/** Lengths that differ from those before, in tenths of a millimetre; all else as it was. */
function inTenths(value: unknown, before: unknown): unknown {
  if (typeof value === 'number') return value === before ? value : Number(value.toFixed(4));
  if (typeof value !== 'object' || value === null || value === before) return value;
  const known = (before ?? {}) as Record<string, unknown>;
  const entries = Object.entries(value).map(([key, inner]) => [key, inTenths(inner, known[key])] as const);
  return Array.isArray(value) ? entries.map(([, inner]) => inner) : Object.fromEntries(entries);
}

/** Trailing edge of the root behind its quarter chord. */
function sternOf(stabilizer: Stabilizer): number {
  return 0.75 * (surfaceFor(stabilizer)?.chord(0) ?? 0);
}

/** "11.3 % of the chord". */
export function describeThickness({ thickness, chord }: Strut): string {
  return `${writeFixed((100 * thickness) / chord, 1)} % of the chord`;
}

/** A part to begin with, in proportion to the wing. Usual proportions: common practice. */
export function newPart(part: Part, design: Design): Stabilizer | Fuselage | Strut {
  switch (part) {
    case 'fuselage':
      return { diameter: 0.022, nose: 0.14 };
    case 'strut':
      return {
        x: 0.1,
        length: Math.max(0.9, tidy((design.brief.depth ?? 0) + 0.3)),
        chord: 0.115,
        thickness: 0.013,
      };
    case 'stabilizer':
      return newStabilizer(design);
  }
}

function newStabilizer({ wing }: Design): Stabilizer {
  const surface = surfaceFor(wing);
  const span = Number(((surface?.unrolledLength ?? 0.74) * 0.48).toFixed(3));
  const chord = Number(((surface?.meanChord ?? 0.09) * 0.6).toFixed(3));
  const section = { kind: 'naca4' as const, code: '0010' };
  return {
    length: { kind: 'unrolled', value: span },
    chord: { kind: 'taper', root: chord, tip: Number((chord * 0.6).toFixed(3)) },
    sweep: { kind: 'straight', angle: 8 },
    droop: { kind: 'flat' },
    twist: { kind: 'linear', tip: 0 },
    section: { root: section, tip: section },
    incidence: -1.2,
    arm: 0.6,
    height: 0.015,
  };
}
