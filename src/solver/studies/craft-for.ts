/**
 * The craft of a design with the sections that the resolution asks for: real ones, with their own zero-lift angle,
 * lift slope and moment, or thin-airfoil theory for comparison. Reynolds numbers are those of the cruise speed, so that
 * one flow still serves every speed; from take-off to top speed a section's lift slope moves by one or two per cent.
 * The strut lifts to the side as its own section does, with a turbulent layer near the surface; beyond the lattice of
 * strut-polars.ts it keeps the slope 2 pi.
 */
import type { Brief, Design, Planform, Strut } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import { stirredShare } from '../forces/profile.ts';
import { type Craft, craftOf, type Lifts, type Resolution } from '../geometry/craft.ts';
import { type SectionLift, type StrutSlope, thinStrut } from '../geometry/thin.ts';
import { sectionBlend } from '../section/blend.ts';
import { strutPolars } from './strut-polars.ts';

export type Sections = NonNullable<Resolution['sections']>;

/** Throws as `craftOf` does. */
export function craftFor(design: Design, depth: number | null, resolution: Resolution): Craft {
  return craftOf(design, depth, resolution, liftsFor(design, depth, resolution.sections));
}

/** How the sections lift at a depth (m, null: deep water); undefined leaves them to thin-airfoil theory. */
export function liftsFor(
  design: Design,
  depth: number | null,
  sections: Sections = 'real',
): Partial<Lifts> | undefined {
  if (sections === 'thin') return undefined;
  const { wing, stabilizer, strut, brief } = design;
  return {
    wing: realLift(design, wing),
    ...(stabilizer && { stabilizer: realLift(design, stabilizer) }),
    ...(strut && { strut: realSlope(brief, strut, depth) }),
  };
}

/** Polars are asked for only where the strut is cut into strips. */
function realSlope({ water, speeds }: Brief, strut: Strut, depth: number | null): StrutSlope {
  const polars = strutPolars(strut, water.clarity);
  if (!polars) return thinStrut;
  const { eta, natural, turbulent } = polars;
  const reynolds = (speeds.cruise * strut.chord) / waterProperties(water.kind, water.temperature).viscosity;
  return (from, to) => {
    const share = stirredShare(strut, depth, from, to);
    const own = share < 1 ? natural.levelSlope(eta, reynolds) : 0;
    const stirred = share > 0 ? turbulent.levelSlope(eta, reynolds) : 0;
    return (1 - share) * own + share * stirred;
  };
}

function realLift({ brief }: Design, { section }: Planform): SectionLift {
  const { clarity, kind, temperature } = brief.water;
  const blend = sectionBlend(section.root, section.tip, clarity);
  const perChord = brief.speeds.cruise / waterProperties(kind, temperature).viscosity;
  return (eta, chord) => blend.line(eta, perChord * chord);
}
