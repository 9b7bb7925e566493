/**
 * Profile drag of the lifting surfaces: what a strip of section pays for friction and pressure, and how much lift
 * coefficient it can carry. With thin sections a fixed coefficient stands in, and says so.
 */
import type { Strut } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import type { Craft } from '../geometry/craft.ts';
import type { Stream } from './drag-sources.ts';

export interface ProfileModel {
  readonly source: 'polars' | 'fixed';
  /** Chord Reynolds numbers asked for so far at which no flow settled: the next higher one that does answers there. */
  unsettled?(): number[];
  /** Drag coefficient of a strip at eta with lift coefficient cl at a chord Reynolds number. */
  cd(part: LiftingPart, eta: number, cl: number, reynolds: number): number;
  /** Its greatest usable lift coefficient; infinite where the model does not know. */
  clMax(part: LiftingPart, eta: number, reynolds: number): number;
  /**
   * The strut's section without side force, its layer left alone or kept turbulent from the nose; null leaves it to
   * turbulent friction with a form factor.
   */
  strutCd(reynolds: number, layer: StrutLayer): number | null;
}

export type LiftingPart = 'wing' | 'stabilizer';

export type StrutLayer = 'natural' | 'turbulent';

/** Length (m) of a strut, from the surface down, whose layer spray and waves keep turbulent; none in deep water. */
export function turbulentLength({ turbulentTo }: Strut, depth: number | null): number {
  return depth === null ? 0 : Math.min(depth, turbulentTo ?? RANGES['strut.turbulentTo'].default);
}

/** Share of a piece of strut, `from` to `to` (m) down from its upper end, whose layer is kept turbulent. */
export function stirredShare(strut: Strut, depth: number | null, from: number, to: number): number {
  return Math.min(1, Math.max(0, (turbulentLength(strut, depth) - from) / (to - from)));
}

/** Greatest lift coefficient of a section where no polar is at hand: a clean cambered section at Re 5e5 (common practice). */
export const FIXED_CL_MAX = 1.2;

/** Section drag coefficient used where no polar is at hand: about a clean 10 to 12 % section at Re 5e5 (common practice). */
export const FIXED_CD = 0.008;

export const fixedProfile: ProfileModel = {
  source: 'fixed',
  cd: () => FIXED_CD,
  clMax: () => FIXED_CL_MAX,
  strutCd: () => null,
};

/**
 * Profile drag of wing and stabilizer, both halves, N. `circulation`: per strip, wing then stabilizer, of a stream of
 * speed 1.
 */
export function profileDrag(
  { parts }: Craft,
  circulation: Float64Array,
  { speed, density, viscosity }: Stream,
  profile: ProfileModel,
): number {
  let sum = 0;
  let first = 0;
  for (const part of ['wing', 'stabilizer'] as const) {
    const strips = parts[part];
    if (!strips) continue;
    for (let k = 0; k < strips.count; k++) {
      const chord = strips.chord[k]!;
      const cl = (2 * circulation[first + k]!) / chord;
      sum += profile.cd(part, strips.eta[k]!, cl, (speed * chord) / viscosity) * chord * strips.width[k]!;
    }
    first += strips.count;
  }
  return density * speed * speed * sum;
}
