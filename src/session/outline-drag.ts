/**
 * What a handle on the outline seen from above asks of the document: chords, sweep and span. Lengths in m, angles in
 * degrees. A law that has no such measure answers null, and the view shows no handle for it.
 */
import type { ChordLaw, Length, Planform, SweepLaw } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { findRoot } from '../solver/numeric/roots.ts';
import { withPoint } from './droop-drag.ts';
import { lengthFor, surfaceFor, tidy, tidyAngle } from './planform-edits.ts';
import { clamp } from './rounding.ts';
import { splitFactor, withFactor } from './scaled-formula.ts';

const RADIANS = Math.PI / 180;
export const LEAST_ROOT = 0.005; // m
export const MOST_CHORD = RANGES['*.chord.root'].max;
export const LENGTHS = RANGES['*.length.value'];
const SWEEP = RANGES['*.sweep.angle'];
export const FULLNESS_AT = 0.8; // share of the half length where a superelliptic outline is taken hold of
export const FULLNESS = { min: 0.5, max: 12 }; // more is a rectangle with rounded corners

/** The law with this root chord; the other chords of points stay, those of a formula scale with it. */
export function withRootChord(planform: Planform, wanted: number): ChordLaw {
  const law = planform.chord;
  const chord = tidy(clamp(wanted, LEAST_ROOT, MOST_CHORD));
  switch (law.kind) {
    case 'points':
      return { ...law, at: withPoint(law.at, 0, chord) };
    case 'formula': {
      const { factor, inner } = splitFactor(law.expression);
      const present = surfaceFor(planform)?.chord(0) ?? 0;
      return present > 0 ? { ...law, expression: withFactor(inner, (factor * chord) / present) } : law;
    }
    default:
      return { ...law, root: chord };
  }
}

export function withTipChord(planform: Planform, wanted: number): ChordLaw | null {
  const law = planform.chord;
  const chord = tidy(clamp(wanted, 0, MOST_CHORD));
  if (law.kind === 'taper') return { ...law, tip: chord };
  if (law.kind === 'points') return { ...law, at: withPoint(law.at, law.at.length - 1, chord) };
  return null;
}

/** The power n of a superelliptic outline whose chord at FULLNESS_AT is this. */
export function fullnessFor(law: Extract<ChordLaw, { kind: 'superelliptic' }>, chord: number): number {
  const { min: least, max: most } = FULLNESS;
  const chordWith = (n: number) => law.root * (1 - FULLNESS_AT ** n) ** (1 / law.m);
  if (chord <= chordWith(least)) return least;
  if (chord >= chordWith(most)) return most;
  const n = findRoot((power) => chordWith(power) - chord, least, most, 1e-4);
  return Number((n ?? law.n).toFixed(2));
}

/** The length, said as the document says it, that gives this tip-to-tip span. */
export function withSpan(planform: Planform, span: number): Length {
  const length = lengthFor(planform, 'tipToTip', clamp(span, LENGTHS.min, LENGTHS.max));
  return { ...planform.length, ...length, value: clamp(length.value, LENGTHS.min, LENGTHS.max) };
}

/** What the tip's place fore and aft is called, its value and its range. */
export interface TipSweep {
  name: 'sweep' | 'rake';
  quantity: 'angle' | 'length';
  value: number;
  min: number;
  max: number;
}

export function tipSweepOf(planform: Planform): TipSweep | null {
  const law = planform.sweep;
  const surface = surfaceFor(planform);
  const reach = surface ? surface.x(1) - surface.x(0) : 0;
  const most = surface?.halfLength ?? 1;
  const range = { min: -most, max: most };
  switch (law.kind) {
    case 'straight':
      return { name: 'sweep', quantity: 'angle', value: law.angle, min: SWEEP.min, max: SWEEP.max };
    case 'rake':
      return { name: 'rake', quantity: 'length', value: law.tip, ...range };
    case 'points':
      return { name: 'rake', quantity: 'length', value: reach, ...range };
    case 'formula':
      return Math.abs(reach) < 1e-6 ? null : { name: 'rake', quantity: 'length', value: reach, ...range };
  }
}

/** The law with this tip sweep (an angle or a length, as `tipSweepOf` says). */
export function withTipSweep(planform: Planform, value: number): SweepLaw {
  const law = planform.sweep;
  const sweep = tipSweepOf(planform);
  if (!sweep) return law;
  const wanted = clamp(value, sweep.min, sweep.max);
  switch (law.kind) {
    case 'straight':
      return { ...law, angle: tidyAngle(wanted) };
    case 'rake':
      return { ...law, tip: tidy(wanted) };
    case 'points':
      return { ...law, at: withPoint(law.at, law.at.length - 1, tidy(wanted)) };
    case 'formula': {
      const { factor, inner } = splitFactor(law.expression);
      return { ...law, expression: withFactor(inner, (factor * wanted) / sweep.value) };
    }
  }
}

/** The tip sweep value that puts the tip's quarter chord this far aft of the root's. */
export function tipSweepFor(planform: Planform, reach: number): number {
  const law = planform.sweep;
  const half = surfaceFor(planform)?.halfLength ?? 1;
  if (law.kind === 'straight') return Math.atan(reach / half) / RADIANS;
  if (law.kind === 'rake') return reach - half * Math.tan(law.angle * RADIANS);
  return reach;
}

/** The angle of a raked line that puts its quarter chord this far aft at the share eta of the half length. */
export function rakedAngleFor(planform: Planform, eta: number, reach: number): number | null {
  const law = planform.sweep;
  const half = surfaceFor(planform)?.halfLength;
  if (law.kind !== 'rake' || !half) return null;
  const angle = Math.atan((reach - law.tip * eta ** law.power) / (eta * half)) / RADIANS;
  return clamp(angle, SWEEP.min, SWEEP.max);
}
