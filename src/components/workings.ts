/**
 * How the headline figures are worked out: the formula, the numbers put in, the source, how far to trust it. Words
 * only; every number comes from the report.
 */
import { formatWithUnit, type Quantity, type UnitSystem } from '../session/units.ts';
import type { BandName } from '../solver/bands.ts';
import type { Report } from '../solver/report.ts';
import { coherent, type Given, plain, type Working } from './working-parts.ts';

const METHOD = 'extended lifting line with the surface’s mirror image (theory: Vortices, Forces)';
const TRUST_FORCE =
  'Linear and without friction: good to about 1 % for slender wings; several percent near the surface and for short ones. Compares designs well.';
const TRUST_DERIVATIVE =
  'Vortex forces alone, without section drag; legs of the vortices straight aft. Within 3 % of this program’s own finite differences.';

const write = (value: number, quantity: Quantity, units: UnitSystem) =>
  formatWithUnit(value, quantity, units);

const ratioText = (value: number | null) => (value === null ? 'none' : plain(value, 3));

const stream = ({ condition }: Report, units: UnitSystem): Array<readonly [string, string]> => [
  ['ρ', write(condition.density, 'density', units)],
  ['V', coherent(condition.speed, 'speed', units)],
];

export function lostLift({ report, units }: Given): Working {
  const { flatLift, verticalLift, lostFraction } = report.ledger;
  return {
    band: 'lostFraction',
    formula: 'lost = (Z₀ − Z) / Z₀',
    numbers: [
      ['Z₀, unrolled twin at the same angle', write(flatLift, 'force', units)],
      ['Z, this wing', write(verticalLift, 'force', units)],
      ['lost', lostFraction === null ? 'none' : write(lostFraction, 'share', units)],
    ],
    source: `${METHOD}; the twin keeps chords, twist, sections and unrolled length, and loses its droop`,
    trust: TRUST_FORCE,
  };
}

export function leanedAway({ report, units }: Given): Working {
  const { normalForce, verticalLift } = report.ledger;
  return {
    band: 'leanedAway',
    formula: 'leaned away = N − Z',
    numbers: [
      ['N, sum of the forces along the strips’ own normals', write(normalForce, 'force', units)],
      ['Z, sum of their upward parts', write(verticalLift, 'force', units)],
      ['leaned away', write(report.ledger.leanedAway, 'force', units)],
    ],
    source: `${METHOD}; for a plain vee it is N (1 − cos Γ)`,
    trust: TRUST_FORCE,
  };
}

export function metAtSmallerAngle({ report, units }: Given): Working {
  const { flatLift, normalForce } = report.ledger;
  return {
    band: 'metAtSmallerAngle',
    formula: 'met at a smaller angle = Z₀ − N',
    numbers: [
      ['Z₀, unrolled twin at the same angle', write(flatLift, 'force', units)],
      ['N, along the strips’ own normals', write(normalForce, 'force', units)],
      ['met at a smaller angle', write(report.ledger.metAtSmallerAngle, 'force', units)],
    ],
    source: `${METHOD}; a strip that leans by Γ meets the stream at about α cos Γ`,
    trust: TRUST_FORCE,
  };
}

export function inducedDrag({ report, units }: Given): Working {
  const { farField, nearField, CDi } = report.inducedDrag;
  return {
    band: 'inducedDrag',
    formula: 'D = ½ ρ V² S C_Di',
    numbers: [
      ['C_Di', plain(CDi, 6)],
      ...stream(report, units),
      ['S, wing, projected', coherent(report.geometry.wing.projectedArea, 'area', units)],
      ['D, far field', coherent(farField, 'force', units)],
      ['near field, a check', write(nearField, 'force', units)],
    ],
    source: `${METHOD}; the wake’s energy far behind, −(ρ/2) Σ γ (w · n) Δs, wing and stabilizer together, images included`,
    trust:
      'Far field within about 0.5 % of the converged value. The near-field figure runs 5 to 15 % low with sweep and one row.',
  };
}

export function spanEfficiency({ report }: Given): Working {
  const { lift, geometry, inducedDrag: drag } = report;
  return {
    band: 'spanEfficiency',
    formula: 'e = C_L² / (π A C_Di)',
    numbers: [
      ['C_L, total', plain(lift.CL, 4)],
      ['A, b²/S on the tip-to-tip span', plain(geometry.wing.aspectRatio, 3)],
      ['C_Di', plain(drag.CDi, 6)],
      ['e', drag.spanEfficiency === null ? 'none' : plain(drag.spanEfficiency, 3)],
    ],
    source: 'definition; 1 is the flat elliptic wing in deep water',
    trust: 'The whole foil’s lift and drag on the wing’s span: a stabilizer that pushes down lowers it.',
  };
}

export function leastFactor({ report, units }: Given): Working {
  return {
    band: 'leastFactor',
    formula: 'k = Z² / (½ ρ V² π b² D_least)',
    numbers: [
      ['Z, the wing’s vertical lift', coherent(report.ledger.verticalLift, 'force', units)],
      ...stream(report, units),
      ['b, span', coherent(report.geometry.wing.span, 'length', units)],
      [
        'D_least, of the wing alone with its image',
        coherent(report.inducedDrag.leastForWing, 'force', units),
      ],
      ['k', plain(report.inducedDrag.leastFactor, 3)],
    ],
    source:
      'M. M. Munk, NACA Report 121 (1921): least drag leaves a downwash proportional to cos Γ. In deep water a circular arc has k = 1 + 2 (d/b)², d the tip drop',
    trust: 'Exact within linear theory; the surface’s image lowers it.',
  };
}

function sameLift({ report, units }: Given, twin: 'unrolled' | 'sameSpan', band: BandName): Working {
  const price = report.ledger.sameLift[twin];
  const name =
    twin === 'unrolled'
      ? 'same chords, twist, sections and unrolled length, no droop'
      : 'flat; chord, twist and section taken at the same y';
  return {
    band,
    formula: 'extra angle = α − α_t; extra drag = D − D_t',
    numbers: [
      ['lift carried by both', write(report.lift.total, 'force', units)],
      ['α, this design', write(report.condition.alpha, 'angle', units)],
      ['α_t, the twin', write(price.alpha, 'angle', units)],
      ['extra angle', formatWithUnit(price.extraAlpha, 'angle', units, { sign: true })],
      ['D, induced drag of this design', write(report.inducedDrag.farField, 'force', units)],
      ['D_t, of the twin', write(price.inducedDrag, 'force', units)],
      ['extra drag', formatWithUnit(price.extraInducedDrag, 'force', units, { sign: true })],
    ],
    source: `${METHOD}; the twin: ${name}`,
    trust:
      'A difference of two solves of the same kind: better than either by itself. Friction is not in it.',
  };
}

export const extraAngle = (given: Given): Working => sameLift(given, 'unrolled', 'extraAlpha');
export const extraDrag = (given: Given): Working => sameLift(given, 'unrolled', 'extraDrag');
export const sameSpanAngle = (given: Given): Working => sameLift(given, 'sameSpan', 'sameSpanAlpha');
export const sameSpanDrag = (given: Given): Working => sameLift(given, 'sameSpan', 'sameSpanDrag');

export function holdIndex({ report, design, units }: Given): Working {
  const { holdTerms, holdIndex: index } = report.stability;
  const { wing, stabilizer } = report.geometry;
  const arm = design.stabilizer?.arm ?? 0;
  const area = stabilizer?.unrolledArea ?? 0;
  return {
    band: 'holdIndex',
    formula: 'hold index = 1000 (G_w / C_L) V_Y; V_Y = X_s S_s l_s / (S b)',
    numbers: [
      [
        `G_w, effective droop of ${plain(wing.effectiveDroop, 2)}°, in radians`,
        plain((wing.effectiveDroop * Math.PI) / 180, 4),
      ],
      ['C_L, total', plain(report.lift.CL, 4)],
      ['roll term', holdTerms.roll === null ? 'none' : plain(holdTerms.roll, 4)],
      ['X_s, mean of sin² Γ over the stabilizer', plain(stabilizer?.sidewaysShare ?? 0, 5)],
      ['S_s, stabilizer, unrolled', write(area, 'area', units)],
      ['l_s, arm', write(arm, 'length', units)],
      ['S, wing, projected', write(wing.projectedArea, 'area', units)],
      ['b, span', write(wing.span, 'length', units)],
      ['V_Y, yaw term', plain(holdTerms.yaw, 6)],
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
    band: 'rollFromYaw',
    formula: 'roll from yaw = C_lr / |C_lp|',
    numbers: [
      ['C_lr', plain(Clr, 5)],
      ['C_lp', plain(Clp, 5)],
      ['roll from yaw', ratioText(report.stability.rollFromYaw)],
    ],
    source: `${METHOD}; wing and stabilizer about the wing’s root, along the design’s own axes, no strut`,
    trust: TRUST_DERIVATIVE,
  };
}

export function yawFromRoll({ report }: Given): Working {
  const { Cnp, Cnr } = report.stability.foil;
  return {
    band: 'yawFromRoll',
    formula: 'yaw from roll = C_np / |C_nr|',
    numbers: [
      ['C_np', plain(Cnp, 5)],
      ['C_nr', plain(Cnr, 5)],
      ['yaw from roll', ratioText(report.stability.yawFromRoll)],
    ],
    source: `${METHOD}; wing and stabilizer about the wing’s root, along the design’s own axes, no strut`,
    trust: `${TRUST_DERIVATIVE} On a flat foil C_nr is nearly nothing, and the ratio says nothing.`,
  };
}

export function neutralDroop({ report, design }: Given): Working {
  const { neutralDroop: neutral, neutralDroopTries: tries, foil } = report.stability;
  const [one, other] = tries;
  return {
    band: 'neutralDroop',
    formula: 'δ = δ₁ − C₁ (δ₂ − δ₁) / (C₂ − C₁)',
    numbers: [
      [
        'δ, tip angle at which C_lr is nothing, at this lift',
        neutral === null ? 'none' : `${plain(neutral, 2)}°`,
      ],
      ...(one && other
        ? ([
            ['δ₁, a bend tried', `${plain(one.tipAngle, 4)}°`],
            ['C₁, a million times C_lr there', plain(1e6 * one.Clr, 3)],
            ['δ₂, the next one tried', `${plain(other.tipAngle, 4)}°`],
            ['C₂, a million times C_lr there', plain(1e6 * other.Clr, 3)],
          ] as const)
        : []),
      ['droop law bent', design.wing.droop.kind],
      ['C_lr as drawn', plain(foil.Clr, 5)],
    ],
    source: `${METHOD}, the wing bent by its own law and solved anew each time: no closed formula, a search whose last two bends enclose it`,
    trust: 'Solved, nothing linearised in the droop. Without strut and section drag.',
  };
}

export function neutralPoint({ report, units }: Given): Working {
  return {
    band: 'neutralPoint',
    formula: 'x_n = −c̄ C_mα / C_zα',
    numbers: [
      ['C_mα, slope of the moment about the wing’s root', plain(report.stability.Cmalpha, 4)],
      ['C_zα, slope of the vertical force', plain(report.stability.Czalpha, 4)],
      ['c̄, mean chord', write(report.geometry.wing.meanChord, 'length', units)],
      ['x_n', write(report.stability.neutralPoint, 'length', units)],
    ],
    source: `${METHOD}; wing and stabilizer, the wake of one on the other included`,
    trust: 'A few millimetres. Drag acting at its depth is not in it.',
  };
}

export function staticMargin({ report, design, units }: Given): Working {
  return {
    band: 'staticMargin',
    formula: 'static margin = (x_n − x_b) / c̄',
    numbers: [
      ['x_n, neutral point', write(report.stability.neutralPoint, 'length', units)],
      ['x_b, balance point', write(design.brief.balance.x, 'length', units)],
      ['c̄, mean chord', write(report.geometry.wing.meanChord, 'length', units)],
      ['static margin', plain(report.stability.staticMargin, 2)],
    ],
    source: 'definition; geometry alone',
    trust:
      'Ranges known from aircraft do not apply: the weight stands far above the wing, and its drag acts deep below. Compare foils that you have ridden.',
  };
}

export function stabilizerVolume({ report, design, units }: Given): Working {
  const { wing, stabilizer } = report.geometry;
  return {
    band: 'stabilizerVolume',
    formula: 'V_H = S_s l_s / (S c̄)',
    numbers: [
      ['S_s, stabilizer, projected', write(stabilizer?.projectedArea ?? 0, 'area', units)],
      ['l_s, arm', write(design.stabilizer?.arm ?? 0, 'length', units)],
      ['S, wing, projected', write(wing.projectedArea, 'area', units)],
      ['c̄, mean chord', write(wing.meanChord, 'length', units)],
      ['V_H', plain(report.stability.holdTerms.pitch, 3)],
    ],
    source: 'definition, the usual tail volume',
    trust: 'Exact; it knows nothing of downwash.',
  };
}
