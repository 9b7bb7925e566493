/**
 * The craft of a design with the sections that the resolution asks for: real ones, with their own zero-lift angle,
 * lift slope and moment, or thin-airfoil theory for comparison. Reynolds numbers are those of the cruise speed, so that
 * one flow still serves every speed; from take-off to top speed a section's lift slope moves by one or two per cent.
 * The strut, which lifts to the side only, keeps the slope 2 pi.
 */
import type { Design, Planform } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import { type Craft, craftOf, type Lifts, type Resolution } from '../geometry/craft.ts';
import type { SectionLift } from '../geometry/thin.ts';
import { sectionBlend } from '../section/blend.ts';

export type Sections = NonNullable<Resolution['sections']>;

/** Throws as `craftOf` does. */
export function craftFor(design: Design, depth: number | null, resolution: Resolution): Craft {
  return craftOf(design, depth, resolution, liftsFor(design, resolution.sections));
}

/** How both surfaces' sections lift; undefined leaves them to thin-airfoil theory. */
export function liftsFor(design: Design, sections: Sections = 'real'): Partial<Lifts> | undefined {
  if (sections === 'thin') return undefined;
  const { wing, stabilizer } = design;
  return { wing: realLift(design, wing), ...(stabilizer && { stabilizer: realLift(design, stabilizer) }) };
}

function realLift({ brief }: Design, { section }: Planform): SectionLift {
  const { clarity, kind, temperature } = brief.water;
  const blend = sectionBlend(section.root, section.tip, clarity);
  const perChord = brief.speeds.cruise / waterProperties(kind, temperature).viscosity;
  const line = (eta: number, chord: number) => blend.line(eta, perChord * chord);
  return {
    zeroLift: (eta, chord) => line(eta, chord).zeroLift,
    slope: (eta, chord) => line(eta, chord).slope,
    moment: (eta, chord) => line(eta, chord).moment,
  };
}
