/** The stabilizer made larger, set further aft or bent further: one measure of it varied, the rest as drawn. */
import type { Stabilizer } from '../design/document.ts';
import { withDroopAmplitude } from '../design/laws.ts';
import { scaledPlanform } from './scale.ts';
import { surfaceOf } from './surface.ts';

/** Area (m2 projected, its shape kept), arm (m) or droop amplitude (degrees). */
export type StabilizerMeasure = 'area' | 'arm' | 'droop';

const DEGREES = 180 / Math.PI;

export function stabilizerSize(stabilizer: Stabilizer, measure: StabilizerMeasure): number {
  if (measure === 'arm') return stabilizer.arm;
  const surface = surfaceOf(stabilizer);
  return measure === 'area' ? surface.projectedArea : surface.amplitude * DEGREES;
}

/** The same stabilizer with another value of the measure. */
export function resizedStabilizer(
  stabilizer: Stabilizer,
  measure: StabilizerMeasure,
  size: number,
): Stabilizer {
  if (measure === 'arm') return { ...stabilizer, arm: size };
  const present = stabilizerSize(stabilizer, measure);
  if (measure === 'area') return scaledPlanform(stabilizer, Math.sqrt(size / present));
  return { ...stabilizer, droop: withDroopAmplitude(stabilizer.droop, present, size) };
}
