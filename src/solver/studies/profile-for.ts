/** Which profile model a design's strips pay: the one place where studies learn what sections cost. */
import type { Design, Planform, Strut } from '../design/document.ts';
import { fixedProfile, type LiftingPart, type ProfileModel } from '../forces/profile.ts';
import { type SectionBlend, sectionBlend } from '../section/blend.ts';
import { USABLE_SHARE } from '../section/polar.ts';
import type { Clarity } from '../section/transition.ts';
import type { Sections } from './craft-for.ts';
import { strutPolars } from './strut-polars.ts';

/** Polars of the design's own sections in its own water; with thin sections the assumed coefficients. */
export function profileFor(design: Design, sections: Sections = 'real'): ProfileModel {
  if (sections === 'thin') return fixedProfile;
  const { wing, stabilizer, strut, brief } = design;
  const { clarity } = brief.water;
  const blends = {
    wing: blendOf(wing, clarity),
    stabilizer: stabilizer && blendOf(stabilizer, clarity),
  };
  const blend = (part: LiftingPart): SectionBlend => {
    const found = blends[part];
    if (!found) throw new Error(`${part}: the design has none`);
    return found;
  };
  return {
    source: 'polars',
    cd: (part, eta, cl, reynolds) => known(blend(part).drag(eta, cl, reynolds), part),
    clMax: (part, eta, reynolds) => USABLE_SHARE * blend(part).limit(eta, reynolds),
    unsettled: () => {
      const all = [blends.wing, ...(blends.stabilizer ? [blends.stabilizer] : [])];
      return [...new Set(all.flatMap((blend) => blend.unsettled))].sort((a, b) => a - b);
    },
    strutCd: strut ? strutDrag(strut, clarity) : () => null,
  };
}

const blendOf = ({ section }: Planform, clarity: Clarity): SectionBlend =>
  sectionBlend(section.root, section.tip, clarity);

/** Drag without side force; null outside the lattice of thicknesses. */
function strutDrag(strut: Strut, clarity: Clarity): ProfileModel['strutCd'] {
  const polars = strutPolars(strut, clarity);
  if (!polars) return () => null;
  return (reynolds, layer) => known(polars[layer].drag(polars.eta, 0, reynolds), 'strut');
}

function known(cd: number, part: string): number {
  if (Number.isFinite(cd)) return cd;
  throw new Error(`${part} section: no flow round it settles at any Reynolds number; look at its outline`);
}
