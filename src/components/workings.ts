/**
 * How the headline figures are worked out: the formula, the numbers put in, the source, how far to trust it. Words
 * only; every number comes from the report.
 */
import { formatValue, formatWithUnit, type Quantity, type UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';

export interface Working {
  formula: string;
  numbers: ReadonlyArray<readonly [name: string, value: string]>;
  source: string;
  trust: string;
}

/** What a figure is worked out from. */
export interface Given {
  design: Design;
  report: Report;
  units: UnitSystem;
}

const METHOD = 'extended lifting line with the surface’s mirror image (theory: Vortices, Forces)';
const TRUST_FORCE =
  'Linear and without friction: good to about 1 % for slender wings; several percent near the surface and for short ones. Compares designs well.';
const TRUST_DERIVATIVE =
  'Vortex forces alone, without section drag; legs of the vortices straight aft. Within 3 % of this program’s own finite differences.';

const write = (value: number, quantity: Quantity, units: UnitSystem) =>
  formatWithUnit(value, quantity, units);
const plain = (value: number, decimals: number) => formatValue(value, 'ratio', 'si', { decimals });

export function lostLift({ report, units }: Given): Working {
  const { flatLift, verticalLift, lostLift: lost } = report.ledger;
  return {
    formula: 'lost = Z₀ − Z, as a share of Z₀',
    numbers: [
      ['Z₀, unrolled twin at the same angle', write(flatLift, 'force', units)],
      ['Z, this wing', write(verticalLift, 'force', units)],
      ['lost', write(lost, 'force', units)],
    ],
    source: `${METHOD}; the twin keeps chords, twist, sections and unrolled length, and loses its droop`,
    trust: TRUST_FORCE,
  };
}

export function leanedAway({ report, units }: Given): Working {
  const { normalForce, verticalLift } = report.ledger;
  return {
    formula: 'leaned away = N − Z = Σ F_n − Σ F_z',
    numbers: [
      ['N, along the strips’ own normals', write(normalForce, 'force', units)],
      ['Z, upward', write(verticalLift, 'force', units)],
    ],
    source: `${METHOD}; for a plain vee it is N (1 − cos Γ)`,
    trust: TRUST_FORCE,
  };
}

export function metAtSmallerAngle({ report, units }: Given): Working {
  const { flatLift, normalForce } = report.ledger;
  return {
    formula: 'met at a smaller angle = Z₀ − N',
    numbers: [
      ['Z₀, unrolled twin at the same angle', write(flatLift, 'force', units)],
      ['N, along the strips’ own normals', write(normalForce, 'force', units)],
    ],
    source: `${METHOD}; a strip that leans by Γ meets the stream at about α cos Γ`,
    trust: TRUST_FORCE,
  };
}

export function inducedDrag({ report, units }: Given): Working {
  const { farField, nearField, CDi } = report.inducedDrag;
  return {
    formula: 'D = −(ρ/2) Σ γ (w · n) Δs, far behind the foil',
    numbers: [
      ['far field', write(farField, 'force', units)],
      ['near field, a check', write(nearField, 'force', units)],
      ['C_Di', plain(CDi, 5)],
    ],
    source: `${METHOD}; the wake’s energy far behind, wing and stabilizer together, images included`,
    trust:
      'Far field within about 0.5 % of the converged value. The near-field figure runs 10 to 30 % low with sweep and one row.',
  };
}

export function spanEfficiency({ report }: Given): Working {
  const { lift, geometry, inducedDrag: drag } = report;
  return {
    formula: 'e = C_L² / (π A C_Di)',
    numbers: [
      ['C_L, total', plain(lift.CL, 4)],
      ['A = b²/S, on the tip-to-tip span', plain(geometry.wing.aspectRatio, 3)],
      ['C_Di', plain(drag.CDi, 5)],
    ],
    source: 'definition; 1 is the flat elliptic wing in deep water',
    trust: 'The whole foil’s lift and drag on the wing’s span: a stabilizer that pushes down lowers it.',
  };
}

export function leastFactor({ report, units }: Given): Working {
  return {
    formula: 'k = L² / (½ ρ V² π b² D_least)',
    numbers: [
      ['k of the wing alone, with its image', plain(report.inducedDrag.leastFactor, 4)],
      ['D_least at this wing’s lift', write(report.inducedDrag.leastForWing, 'force', units)],
    ],
    source:
      'M. M. Munk, NACA Report 121 (1921): least drag leaves a downwash proportional to cos Γ. In deep water a circular arc has k = 1 + 2 (d/b)², d the tip drop',
    trust: 'Exact within linear theory; the surface’s image lowers it.',
  };
}

export function sameLift({ report, units }: Given, twin: 'unrolled' | 'sameSpan'): Working {
  const price = report.ledger.sameLift[twin];
  const name =
    twin === 'unrolled'
      ? 'same chords, twist, sections and unrolled length, no droop'
      : 'flat; chord, twist and section taken at the same y';
  return {
    formula: 'this design less its twin, both carrying the same lift',
    numbers: [
      ['lift carried', write(report.lift.total, 'force', units)],
      ['extra angle', formatWithUnit(price.extraAlpha, 'angle', units, { sign: true })],
      ['extra induced drag', formatWithUnit(price.extraInducedDrag, 'force', units, { sign: true })],
    ],
    source: `${METHOD}; the twin: ${name}`,
    trust:
      'A difference of two solves of the same kind: better than either by itself. Friction is not in it.',
  };
}

export function holdIndex({ report, design, units }: Given): Working {
  const { holdTerms, holdIndex: index } = report.stability;
  const { wing, stabilizer } = report.geometry;
  const arm = design.stabilizer?.arm ?? 0;
  const area = stabilizer?.unrolledArea ?? 0;
  const share = area > 0 ? (holdTerms.yaw * wing.projectedArea * wing.span) / (area * arm) : 0;
  return {
    formula: 'hold index = 1000 (G_w / C_L) V_Y, V_Y = X_s S_s l_s / (S b)',
    numbers: [
      [
        'G_w, effective droop',
        `${plain(wing.effectiveDroop, 2)}° = ${plain((wing.effectiveDroop * Math.PI) / 180, 4)} rad`,
      ],
      ['C_L, total', plain(report.lift.CL, 4)],
      ['roll term G_w / C_L', holdTerms.roll === null ? 'none' : plain(holdTerms.roll, 4)],
      ['X_s, mean of sin² Γ over the stabilizer', plain(share, 4)],
      ['S_s, stabilizer, unrolled', write(area, 'area', units)],
      ['l_s, arm', write(arm, 'length', units)],
      ['S, wing, projected', write(wing.projectedArea, 'area', units)],
      ['b, span', write(wing.span, 'length', units)],
      ['yaw term V_Y', plain(holdTerms.yaw, 6)],
      ['hold index', index === null ? 'none' : plain(index, 3)],
    ],
    source: 'this program’s own measure, closed form (theory: Hold)',
    trust:
      'Compares designs, proves nothing. It is zero for a flat stabilizer and ignores strut and sweep; published spiral-stability products count upward dihedral and do not support it. The solved figures beside it come first.',
  };
}

export function rollFromYaw({ report }: Given): Working {
  const { Clr, Clp } = report.stability.foil;
  return {
    formula: 'roll from yaw = C_lr / |C_lp|',
    numbers: [
      ['C_lr', plain(Clr, 5)],
      ['C_lp', plain(Clp, 5)],
    ],
    source: `${METHOD}; wing and stabilizer about the wing’s root, along the design’s own axes, no strut`,
    trust: TRUST_DERIVATIVE,
  };
}

export function yawFromRoll({ report }: Given): Working {
  const { Cnp, Cnr } = report.stability.foil;
  return {
    formula: 'yaw from roll = C_np / |C_nr|',
    numbers: [
      ['C_np', plain(Cnp, 5)],
      ['C_nr', plain(Cnr, 5)],
    ],
    source: `${METHOD}; wing and stabilizer about the wing’s root, along the design’s own axes, no strut`,
    trust: `${TRUST_DERIVATIVE} On a flat foil C_nr is nearly nothing, and the ratio says nothing.`,
  };
}

export function neutralDroop({ report, design }: Given): Working {
  const neutral = report.stability.neutralDroop;
  return {
    formula: 'the tip angle at which C_lr of the foil about the wing’s root vanishes at this lift',
    numbers: [
      ['neutral droop', neutral === null ? 'none found' : `${plain(neutral, 2)}°`],
      ['droop law bent', design.wing.droop.kind],
      ['C_lr as drawn', plain(report.stability.foil.Clr, 5)],
    ],
    source: `${METHOD}, the wing bent by its own law and solved anew each time`,
    trust: 'Solved, nothing linearised in the droop. Without strut and section drag.',
  };
}

export function neutralPoint({ report, units }: Given): Working {
  return {
    formula: 'x_n = −(dm/dα) / (dF_z/dα), moments about the wing’s root',
    numbers: [
      ['neutral point', write(report.stability.neutralPoint, 'length', units)],
      ['C_Lα of the foil', `${plain(report.lift.CLalpha, 3)} per rad`],
    ],
    source: `${METHOD}; wing and stabilizer, the wake of one on the other included`,
    trust: 'A few millimetres. Drag acting at its depth is not in it.',
  };
}

export function staticMargin({ report, design, units }: Given): Working {
  return {
    formula: '(x_n − x_balance) / mean chord',
    numbers: [
      ['neutral point', write(report.stability.neutralPoint, 'length', units)],
      ['balance point', write(design.brief.balance.x, 'length', units)],
      ['mean chord', write(report.geometry.wing.meanChord, 'length', units)],
    ],
    source: 'definition; geometry alone',
    trust:
      'Ranges known from aircraft do not apply: the weight stands far above the wing, and its drag acts deep below. Compare foils that you have ridden.',
  };
}

export function stabilizerVolume({ report, design, units }: Given): Working {
  const { wing, stabilizer } = report.geometry;
  return {
    formula: 'V_H = S_s l_s / (S c̄)',
    numbers: [
      ['S_s, stabilizer, projected', write(stabilizer?.projectedArea ?? 0, 'area', units)],
      ['l_s, arm', write(design.stabilizer?.arm ?? 0, 'length', units)],
      ['S, wing, projected', write(wing.projectedArea, 'area', units)],
      ['c̄, mean chord', write(wing.meanChord, 'length', units)],
    ],
    source: 'definition, the usual tail volume',
    trust: 'Exact; it knows nothing of downwash.',
  };
}
