/**
 * The same wing bent further or less by its own droop law, one of its measures kept. Lengths in m, droop in degrees
 * of the law's amplitude (its tip angle, positive down).
 *
 * - unrolled length kept: the wing is bent as a strip of paper is; tip-to-tip span and projected area shrink;
 * - tip-to-tip span kept: it grows along the curve, chords by eta unchanged; unrolled length and wetted area grow;
 * - projected area kept: it grows until the area seen from above is what it was, chords by eta unchanged.
 */
import type { DroopLaw, Length, Planform } from '../design/document.ts';
import { withDroopAmplitude } from '../design/laws.ts';
import { type Surface, surfaceOf } from './surface.ts';

export type Kept = 'unrolled' | 'tipToTip' | 'projectedArea';

const DEGREES = 180 / Math.PI;

/** Makes bent copies of one planform; what is kept is taken from the planform as it is now. */
export class Bender {
  readonly present: number; // degrees, the planform's own amplitude
  private readonly surface: Surface;
  private readonly law: DroopLaw;

  constructor(
    private readonly planform: Planform,
    private readonly kept: Kept,
  ) {
    this.surface = surfaceOf(planform);
    this.present = this.surface.amplitude * DEGREES;
    // Points or a formula that are flat have no shape to scale: they bend as a flat wing does.
    const isShapeless = Math.abs(this.present) < 1e-9 && ['points', 'formula'].includes(planform.droop.kind);
    this.law = isShapeless ? { kind: 'flat' } : planform.droop;
  }

  /** The planform bent to an amplitude in degrees. Throws GeometryError where it cannot be drawn. */
  at(amplitude: number): Planform {
    const droop = withDroopAmplitude(this.law, this.present, amplitude);
    return { ...this.planform, droop, length: this.lengthFor(droop) };
  }

  /**
   * The same with the document's own ways of saying it kept: its kind of length, and a tip drop where it gives one.
   * Values rounded to a tenth of a millimetre and a hundredth of a degree.
   */
  document(amplitude: number): { droop: DroopLaw; length: Length } {
    const bent = this.at(rounded(amplitude, 100));
    const surface = surfaceOf(bent);
    const { kind } = this.planform.length;
    const value = kind === 'unrolled' ? surface.unrolledLength : surface.span;
    const isMoved = this.kept !== kind;
    return {
      droop: withMeasureOf(this.planform.droop, bent.droop, surface.tipDrop),
      length: isMoved ? { kind, value: rounded(value, 1e4) } : this.planform.length,
    };
  }

  private lengthFor(droop: DroopLaw): Length {
    const { unrolledLength, span, projectedArea } = this.surface;
    if (this.kept === 'unrolled') return { kind: 'unrolled', value: unrolledLength };
    if (this.kept === 'tipToTip') return { kind: 'tipToTip', value: span };
    // With chords and droop fixed by eta the projected area is proportional to the unrolled length.
    const bent = surfaceOf({ ...this.planform, droop, length: { kind: 'unrolled', value: unrolledLength } });
    return { kind: 'unrolled', value: (unrolledLength * projectedArea) / bent.projectedArea };
  }
}

function withMeasureOf(before: DroopLaw, bent: DroopLaw, tipDrop: number): DroopLaw {
  const givesDrop = 'tipDrop' in before && before.tipDrop !== undefined;
  if (!givesDrop || !('tipAngle' in bent)) return bent;
  const { tipAngle: _angle, ...law } = bent;
  return { ...law, tipDrop: rounded(tipDrop, 1e4) } as DroopLaw;
}

function rounded(value: number, steps: number): number {
  return Math.round(value * steps) / steps;
}

/**
 * The largest amplitude (degrees, up to 90) at which `fits` holds, to a tenth of a degree; 0 when it fails from the
 * start. `fits` must not come back once it has failed.
 */
export function largestAmplitude(fits: (amplitude: number) => boolean): number {
  if (fits(90)) return 90;
  let good = 0;
  let bad = 900; // tenths of a degree
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (fits(middle / 10)) good = middle;
    else bad = middle;
  }
  return good / 10;
}
