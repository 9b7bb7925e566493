/**
 * What a place on a droop curve or map asks of the document: the wing bent to a droop with one of its measures kept, the
 * stabilizer made another size. Lengths in m, areas in m2, angles in degrees.
 */
import type { Design, Planform, Stabilizer } from '../solver/design/document.ts';
import { Bender, type Kept } from '../solver/geometry/bend.ts';
import {
  resizedStabilizer,
  type StabilizerMeasure,
  stabilizerSize,
} from '../solver/geometry/stabilizer-size.ts';
import { bentTo } from './droop-drag.ts';
import type { Change } from './edits.ts';
import { tidy } from './planform-edits.ts';
import { round } from './rounding.ts';

/** Throws GeometryError where the wing cannot be drawn so. */
export function bendChanges(wing: Planform, kept: Kept, droop: number): Change[] {
  const bent = new Bender(wing, kept).document(droop);
  const law = wing.droop.kind === 'formula' ? bentTo(wing, round(droop, 2)) : bent.droop;
  const changes: Change[] = [{ path: 'wing.droop', value: law }];
  if (bent.length !== wing.length) changes.push({ path: 'wing.length', value: bent.length });
  return changes;
}

/** Where a design stands on a map of wing droop against a measure of the stabilizer; null without a stabilizer. */
export function mapPlaceOf(
  { wing, stabilizer }: Design,
  measure: StabilizerMeasure,
): { droop: number; size: number } | null {
  if (!stabilizer) return null;
  return { droop: new Bender(wing, 'unrolled').present, size: stabilizerSize(stabilizer, measure) };
}

export function mapChanges(
  design: Design & { stabilizer: Stabilizer },
  kept: Kept,
  measure: StabilizerMeasure,
  { droop, size }: { droop: number; size: number },
): Change[] {
  return [...bendChanges(design.wing, kept, droop), ...stabilizerChanges(design.stabilizer, measure, size)];
}

function stabilizerChanges(stabilizer: Stabilizer, measure: StabilizerMeasure, size: number): Change[] {
  if (measure === 'arm') return [{ path: 'stabilizer.arm', value: round(size, 4) }];
  if (measure === 'droop') {
    const { droop } = resizedStabilizer(stabilizer, measure, round(size, 2));
    return [{ path: 'stabilizer.droop', value: droop }];
  }
  const { length, chord, sweep, droop } = resizedStabilizer(stabilizer, measure, size);
  return [
    { path: 'stabilizer.length', value: { ...length, value: tidy(length.value) } },
    { path: 'stabilizer.chord', value: chord },
    { path: 'stabilizer.sweep', value: sweep },
    { path: 'stabilizer.droop', value: droop },
  ];
}
