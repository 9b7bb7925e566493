/** Which profile model a design's strips pay: the one place where studies learn what sections cost. */
import type { Design, Planform, Strut } from '../design/document.ts';
import { fixedProfile, type ProfileModel } from '../forces/profile.ts';
import { strutOutline } from '../geometry/outline.ts';
import { type SectionBlend, sectionBlend } from '../section/blend.ts';
import { USABLE_SHARE, type Water } from '../section/polar.ts';
import type { Clarity } from '../section/transition.ts';
import type { Sections } from './craft-for.ts';

/** Polars of the design's own sections in its own water; with thin sections the assumed coefficients. */
export function profileFor(design: Design, sections: Sections = 'real'): ProfileModel {
  if (sections === 'thin') return fixedProfile;
  const { wing, stabilizer, strut, brief } = design;
  const { clarity } = brief.water;
  const blends = {
    wing: blendOf(wing, clarity),
    stabilizer: stabilizer && blendOf(stabilizer, clarity),
  };
  return {
    source: 'polars',
    surface(part, eta, cl, reynolds, out) {
      const blend = blends[part];
      if (!blend) throw new Error(`${part}: the design has none`);
      out.cd = known(blend.drag(eta, cl, reynolds), part);
      out.clMax = USABLE_SHARE * blend.limit(eta, reynolds);
    },
    unsettled: () => {
      const all = [blends.wing, ...(blends.stabilizer ? [blends.stabilizer] : [])];
      return [...new Set(all.flatMap((blend) => blend.unsettled))].sort((a, b) => a - b);
    },
    strutCd: strut ? strutDrag(strut, clarity) : () => null,
  };
}

const blendOf = ({ section }: Planform, clarity: Clarity): SectionBlend =>
  sectionBlend(section.root, section.tip, clarity);

/** The strut's sections stand on a lattice of thicknesses, so that a dragged thickness finds its polars made. */
const [THINNEST, THICKEST, APART] = [4, 24, 2]; // per cent

/** Kept turbulent: tripped as far forward as a trip takes hold. */
export const TRIPPED = { tripUpper: 0, tripLower: 0 };

/** Drag without side force; null outside the lattice. */
function strutDrag({ thickness, chord }: Strut, clarity: Clarity): ProfileModel['strutCd'] {
  const ratio = (100 * thickness) / chord;
  if (ratio < THINNEST || ratio > THICKEST) return () => null;
  const below = APART * Math.floor(ratio / APART);
  const outline = (percent: number) => strutOutline({ chord: 100, thickness: percent });
  const blendIn = (water: Water) => sectionBlend(outline(below), outline(below + APART), water);
  const blends = { natural: blendIn({ clarity }), turbulent: blendIn({ clarity, ...TRIPPED }) };
  return (reynolds, layer) => known(blends[layer].drag((ratio - below) / APART, 0, reynolds), 'strut');
}

function known(cd: number, part: string): number {
  if (Number.isFinite(cd)) return cd;
  throw new Error(`${part} section: no flow round it settles at any Reynolds number; look at its outline`);
}
