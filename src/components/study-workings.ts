/** How the figures of stall are worked out; evaluated by the same test as all workings. */
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { StallMark, StallStudy } from '../solver/studies/stall.ts';
import { coherent, plain, type Working } from './working-parts.ts';

/** What any of them is worked out from: the study and one of its marks. */
export interface StallGiven {
  stall: StallStudy;
  mark: StallMark;
  units: UnitSystem;
}

const SOURCE =
  'strips turned until line and sections agree: decambering, R. Mukherjee and A. Gopalarathnam, J. Aircraft 43 (2006) 660, from memory (theory: Stall)';
const TRUST =
  'The greatest lift of a section stands some 5 to 10 % high of clean measurements and more of rough ones; comparing wings does better. Beyond the greatest lift the flow is unsteady and only the trend counts.';

/** The speed at which a state on the way to stall carries the weight. */
export function stallSpeed({ stall, mark, units }: StallGiven): Working {
  const { weight, density, area } = stall;
  return {
    formula: 'V = (2 W / (ρ S C_L))^½; C_L = C_Lw + C_Ls',
    numbers: [
      ['W, carried', coherent(weight, 'force', units)],
      ['ρ', formatWithUnit(density, 'density', units)],
      ['S, wing, projected', coherent(area, 'area', units)],
      ['C_L, on S', plain(mark.CL, 3)],
      ['C_Lw, the wing’s part', plain(mark.CLwing, 3)],
      ['C_Ls, the stabilizer’s', plain(mark.CL - mark.CLwing, 3)],
      ['V', coherent(mark.speed, 'speed', units)],
    ],
    source: SOURCE,
    trust: TRUST,
  };
}

/** The angle at which the first strip reaches a share of its section's greatest lift. */
export function stalledStrip({ stall, mark }: StallGiven): Working {
  const [one, other] = mark.between;
  const isBetween = one.share !== other.share;
  const limit = stall.limit[Math.max(0, stall.eta.indexOf(mark.eta))]!;
  return {
    formula: `c = s c_max; ${isBetween ? 'α = α₁ + (α₂ − α₁) (s − s₁) / (s₂ − s₁)' : 'α = α₁'}`,
    numbers: [
      ['c_max, greatest lift coefficient of that section', plain(limit, 3)],
      ['s, share of it that the strip reaches', plain(mark.share, 4)],
      ['c, lift coefficient there', plain(mark.share * limit, 3)],
      ['α, angle', `${plain(mark.alpha, 1)}°`],
      ['α₁, an angle solved', `${plain(one.alpha, 3)}°`],
      ['s₁, share there', plain(one.share, 4)],
      ...(isBetween
        ? ([
            ['α₂, the next one', `${plain(other.alpha, 3)}°`],
            ['s₂, share there', plain(other.share, 4)],
          ] as const)
        : []),
      ['strip at, of the half length', formatWithUnit(mark.eta, 'share', 'si')],
    ],
    source: `${SOURCE}; no closed formula: read between two angles that were solved. Nine tenths of the greatest lift count as usable: common practice`,
    trust: TRUST,
  };
}
