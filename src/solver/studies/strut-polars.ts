/** Polars of the strut's section: the symmetric four-digit form of its thickness. */
import type { Strut } from '../design/document.ts';
import { strutOutline } from '../geometry/outline.ts';
import { type SectionBlend, sectionBlend } from '../section/blend.ts';
import type { Water } from '../section/polar.ts';
import type { Clarity } from '../section/transition.ts';

/** Sections stand on a lattice of thicknesses, so that a dragged thickness finds its polars made. */
const [THINNEST, THICKEST, APART] = [4, 24, 2]; // per cent

/** Kept turbulent: tripped as far forward as a trip takes hold. */
export const TRIPPED = { tripUpper: 0, tripLower: 0 };

export interface StrutPolars {
  eta: number; // at which both blends have this thickness
  natural: SectionBlend;
  turbulent: SectionBlend;
}

/** Null where the thickness lies outside the lattice. */
export function strutPolars({ thickness, chord }: Strut, clarity: Clarity): StrutPolars | null {
  const ratio = (100 * thickness) / chord;
  if (ratio < THINNEST || ratio > THICKEST) return null;
  const below = APART * Math.floor(ratio / APART);
  const outline = (percent: number) => strutOutline({ chord: 100, thickness: percent });
  const blendIn = (water: Water) => sectionBlend(outline(below), outline(below + APART), water);
  return {
    eta: (ratio - below) / APART,
    natural: blendIn({ clarity }),
    turbulent: blendIn({ clarity, ...TRIPPED }),
  };
}
