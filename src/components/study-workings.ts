/** Workings of figures that a study answers; like `workings.ts`, words only, and evaluated by the same test. */
import { writeFixed } from '../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { SectionView } from '../solver/studies/section-view.ts';
import type { StallMark, StallStudy } from '../solver/studies/stall.ts';
import type { Working } from './workings.ts';

/** What any of them is worked out from. */
export interface StudyGiven {
  stall: StallStudy;
  mark: StallMark;
  section: SectionView;
  units: UnitSystem;
}

type Figures = Pick<Working, 'formula' | 'numbers'>;

/** The speed at which a state on the way to stall carries the weight. */
export function stallSpeed({ stall, mark, units }: Pick<StudyGiven, 'stall' | 'mark' | 'units'>): Figures {
  const { weight, density, area } = stall;
  return {
    formula: 'V = (2 W / (ρ S C_L))^½; C_L = C_Lw + C_Ls',
    numbers: [
      ['W, carried', formatWithUnit(weight, 'force', units)],
      ['ρ', formatWithUnit(density, 'density', units)],
      ['S, wing, projected', formatWithUnit(area, 'area', units)],
      ['C_L, on S', writeFixed(mark.CL, 3)],
      ['C_Lw, the wing’s part', writeFixed(mark.CLwing, 3)],
      ['C_Ls, the stabilizer’s', writeFixed(mark.CL - mark.CLwing, 3)],
      ['V', formatWithUnit(mark.speed, 'speed', units)],
    ],
  };
}

/** The drag of a section, by what makes it; thousandths. */
export function sectionDrag({ section: { flow } }: Pick<StudyGiven, 'section'>): Figures {
  const thousandths = (value: number | undefined) =>
    value === undefined ? 'none' : writeFixed(1000 * value, 2);
  return {
    formula: 'c_d = c_df + c_dp',
    numbers: [
      ['c_d, 2 θ u^((H + 5)/2) at the end of the wake, thousandths', thousandths(flow?.cd)],
      ['c_df, friction', thousandths(flow?.cdFriction)],
      ['c_dp, pressure', thousandths(flow ? flow.cd - flow.cdFriction : undefined)],
    ],
  };
}
