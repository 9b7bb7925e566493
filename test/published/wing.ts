/** What the tables ask of a plain wing, through the program's public door. */
import type { ChordLaw, Design } from '../../src/solver/design/document.ts';
import type { ConditionOptions, Report } from '../../src/solver/report.ts';
import { solve } from '../../src/solver/solve.ts';
import { ellipticChord, taperedChord } from '../support/designs.ts';

/**
 * Degrees. The published values are linear in the angle; this program's forces are not quite: the lift turns with the
 * stream and the surface's image slows it, by some thousandths at 6 degrees. So they are compared at a small angle.
 */
export const SMALL_ANGLE = 0.5;

/** A solve at the small angle without the search for the neutral droop; then what differs. */
export function solveSmall(design: Design, options: ConditionOptions = {}): Report {
  return solve(design, { alpha: SMALL_ANGLE, neutralDroop: false, sections: 'thin', ...options });
}

/** Twelve rows: 20 strips a side agree with 60 to 1e-4 where the tip has a chord; a pointed tip needs 40. */
export const SURFACE: ConditionOptions = { rows: 12, strips: 20 };
export const POINTED_SURFACE: ConditionOptions = { rows: 12, strips: 40 };

/** Lift slope on the projected area and span efficiency. */
export function slopeAndEfficiency(design: Design, options: ConditionOptions = {}): [number, number] {
  const report = solveSmall(design, options);
  return [report.lift.CLalpha, report.inducedDrag.spanEfficiency ?? Number.NaN];
}

export type Shape = number | 'elliptic'; // taper, or an elliptic chord

export function chordOf(aspectRatio: number, shape: Shape): ChordLaw {
  return shape === 'elliptic' ? ellipticChord(aspectRatio) : taperedChord(aspectRatio, shape);
}

export function nameOf(shape: Shape): string {
  return shape === 'elliptic' ? 'elliptic chord' : `taper ${shape}`;
}

export const OWN_LATTICE = 'own lattice, independent of this program';
