/** How the figures of a section are worked out. What a solved flow or a polar gives has no closed formula: there the
 * working says so and shows between what it was read, or what is left over. */

import type { UnitSystem } from '../session/units.ts';
import { formatWithUnit } from '../session/units.ts';
import type { Between, SectionPolarSeries, SectionView } from '../solver/studies/section-view.ts';
import { coherent, plain, type Working } from './working-parts.ts';

/** A station, and its polar in its own water where that is known. */
export interface SectionGiven {
  section: SectionView;
  polar: SectionPolarSeries | null;
  units: UnitSystem;
}

type Numbers = Array<readonly [name: string, value: string]>;

const LAYER = 'panel method and integral boundary layer in step with it (theory: Sections)';
const READ = 'no closed formula: read off the polar by straight lines between its angles';
const TRUST_DRAG =
  'About 10 % of measured drag at Re 6e6; at some 1e5 and in natural water the place of transition is the doubt: read the band.';

const degrees = (value: number, decimals: number) => `${plain(value, decimals)}°`;

export function noseRadius({ section: { marks } }: SectionGiven): Working {
  const [near, far] = marks.nose;
  return {
    formula: 'r₁ = t₁² / (8 x₁); r₂ = t₂² / (8 x₂); r = 2 r₁ − r₂',
    numbers: [
      ['x₁, of the chord behind the nose', plain(near.x, 4)],
      ['t₁, thickness there', plain(near.thickness, 6)],
      ['x₂, four times as far', plain(far.x, 4)],
      ['t₂, thickness there', plain(far.thickness, 6)],
      ['r₁, circle through the first', plain(near.thickness ** 2 / (8 * near.x), 6)],
      ['r₂, through the second', plain(far.thickness ** 2 / (8 * far.x), 6)],
      ['r, of the chord', plain(marks.noseRadius, 5)],
    ],
    source:
      'circle that fits the nose, both carried on to none; a four-digit section has 1.1019 t² (NACA Report 460)',
    trust: 'Within 2 % for a four-digit section; some percent for points far apart at the nose.',
  };
}

/** The two points of the polar around a lift coefficient. */
function around({ points: [one, other] }: Between, from: 1 | 3): Numbers {
  const [a, b] = from === 1 ? ['₁', '₂'] : ['₃', '₄'];
  return [
    [`α${a}, of the polar`, degrees(one.alpha, 4)],
    [`c${a}, lift coefficient there`, plain(one.cl, 5)],
    [`α${b}, the next`, degrees(other.alpha, 4)],
    [`c${b}, lift coefficient there`, plain(other.cl, 5)],
  ];
}

export function zeroLift({ section: { line }, polar }: SectionGiven): Working {
  const own = polar?.line;
  const others: Numbers = [['thin-airfoil theory', degrees(line.thinZeroLift, 2)]];
  return {
    formula: own ? 'α₀ = α₁ − c₁ (α₂ − α₁) / (c₂ − c₁)' : 'α₀ = −atan(c₀ / c₉₀)',
    numbers: own
      ? [
          ['α₀, with friction', degrees(own.zeroLift, 2)],
          ...around(own.atZero, 1),
          ['without friction', degrees(line.zeroLift, 2)],
          ...others,
        ]
      : [['α₀, without friction', degrees(line.zeroLift, 2)], ...withoutFriction(line), ...others],
    source: own ? `${LAYER}; ${READ}` : 'panel method, until the polar is there (theory: Sections)',
    trust: 'A tenth to a quarter of a degree; it moves with the transition at low Reynolds numbers.',
  };
}

const withoutFriction = ({ level, across }: SectionView['line']): Numbers => [
  ['c₀, lift coefficient at 0° as solved', plain(level, 5)],
  ['c₉₀, and at 90°', plain(across, 5)],
];

export function liftSlope({ section: { line }, polar }: SectionGiven): Working {
  const own = polar?.line;
  return {
    formula: own
      ? 'α₅ = α₃ + (0.5 − c₃) (α₄ − α₃) / (c₄ − c₃); a = 0.5 / sin(α₅ − α₀)'
      : 'a = (c₀² + c₉₀²)^½',
    numbers: own
      ? [
          ['α₀, zero lift', degrees(own.zeroLift, 4)],
          ...around(own.atHalf, 3),
          ['α₅, where the lift coefficient is 0.5', degrees(own.atHalf.alpha, 4)],
          ['a, with friction, per radian', plain(own.slope, 3)],
          ['without friction', plain(line.slope, 3)],
          ['thin-airfoil theory, 2π', plain(2 * Math.PI, 3)],
        ]
      : [...withoutFriction(line), ['a, without friction, per radian', plain(line.slope, 3)]],
    source: own ? `${LAYER}; ${READ}` : 'panel method, until the polar is there (theory: Sections)',
    trust: 'Some percent; measured NACA 0012 at Re 6e6: 6.23 (NASA TM 4074).',
  };
}

export function zeroLiftMoment({ section: { line }, polar }: SectionGiven): Working {
  const own = polar?.line;
  const [one, other] = own?.atZero.points ?? [];
  return {
    formula: own ? 'm₀ = m₁ − c₁ (m₂ − m₁) / (c₂ − c₁)' : 'm₀ = π m',
    numbers:
      own && one && other
        ? [
            ['m₀, with friction', plain(own.moment, 4)],
            ['c₁, lift coefficient of the polar', plain(one.cl, 5)],
            ['m₁, moment coefficient there', plain(one.cm, 5)],
            ['c₂, lift coefficient of the next', plain(other.cl, 5)],
            ['m₂, moment coefficient there', plain(other.cm, 5)],
            ['thin-airfoil theory', plain(line.thinMoment, 4)],
          ]
        : [
            ['m₀, thin-airfoil theory', plain(line.thinMoment, 4)],
            ['m, mean of y (1.5 − 2 x − 4 x (1 − x)) / (1 − x)', plain(line.thinMoment / Math.PI, 5)],
          ],
    source: own
      ? `${LAYER}; ${READ}`
      : 'H. Glauert’s integral, by parts: the mean goes over even angles θ along the mean line y, x = (1 − cos θ)/2 (theory: Sections)',
    trust: 'Some percent; thin-airfoil theory overstates it by a tenth or more (from memory).',
  };
}

export function greatestLift({ polar }: SectionGiven): Working {
  const source = `${LAYER}; no closed formula: the last point of the polar up to which a step brings at least a tenth of the lift that it would without friction`;
  const trust =
    'The least sure figure of a section: a tenth, more at some 1e5 (from memory). What is counted on is set lower.';
  if (!polar) return { formula: 'c_max = c₂', numbers: [['c_max', 'none']], source, trust };
  const { points, clMax } = polar;
  const at = points.findIndex(({ alpha }) => Math.abs(alpha - clMax.alpha) < 1e-6);
  const [before, after] = [points[at - 1], points[at + 1]];
  return {
    formula: `c_max = c₂; c_u = s c_max${before ? '; g₁ = (c₂ − c₁) / (α₂ − α₁)' : ''}${after ? '; g₂ = (c₃ − c₂) / (α₃ − α₂)' : ''}`,
    numbers: [
      ['c_max, greatest lift coefficient', plain(clMax.cl, 4)],
      ['c₂, point of the polar', plain(clMax.cl, 4)],
      ['α₂, at', degrees(clMax.alpha, 3)],
      ...(before
        ? ([
            ['c₁, point before', plain(before.cl, 4)],
            ['α₁, at', degrees(before.alpha, 3)],
            [
              'g₁, gained per degree up to it',
              plain((clMax.cl - before.cl) / (clMax.alpha - before.alpha), 4),
            ],
          ] as const)
        : []),
      ...(after
        ? ([
            ['c₃, point behind', plain(after.cl, 4)],
            ['α₃, at', degrees(after.alpha, 3)],
            [
              'g₂, gained per degree behind it',
              plain((after.cl - clMax.cl) / (after.alpha - clMax.alpha), 4),
            ],
          ] as const)
        : []),
      ['s, share that is counted on', plain(polar.usableShare, 2)],
      ['c_u, counted on', plain(polar.usable, 3)],
    ],
    source,
    trust,
  };
}

export function reynolds({ section: { station }, units }: SectionGiven): Working {
  return {
    formula: 'Re = 1000 V c / ν',
    numbers: [
      ['Re, thousands', plain(station.reynolds / 1000, 0)],
      ['V', coherent(station.speed, 'speed', units)],
      ['c, chord here', coherent(station.chord, 'length', units)],
      ['ν, millionths of a square metre a second', plain(1e6 * station.viscosity, 4)],
    ],
    source: 'definition; speed and water of the brief (theory: Water)',
    trust: 'Exact for the water given; ten degrees colder lowers it by about a quarter.',
  };
}

export function liftCoefficient({ section: { station, flow } }: SectionGiven): Working {
  const { flown } = station;
  const isAsked = !flown || Math.abs(flown.cl - station.cl) > 1e-12;
  const [one, other] = flown?.strips ?? [];
  const isBetween = one && other && one.eta !== other.eta;
  const wanted = isAsked ? 'asked for' : 'as flown';
  const line = isBetween ? 'c_w = c₁ + (c₂ − c₁) (η − η₁) / (η₂ − η₁)' : 'c_w = c₁';
  const read: Numbers = [
    ...(one ? ([['c₁, 2 Γ / (V c) of a strip', plain(one.cl, 5)]] as const) : []),
    ...(isBetween
      ? ([
          ['η₁, its place along the half', plain(one.eta, 5)],
          ['c₂, of the next strip', plain(other.cl, 5)],
          ['η₂, its place', plain(other.eta, 5)],
          ['η, here', plain(station.eta, 5)],
        ] as const)
      : []),
  ];
  return {
    formula: `${isAsked ? '' : `${line}; `}left = c_l − c_w`,
    numbers: [
      ['c_l, of the flow that was solved', plain(flow?.cl ?? station.cl, 5)],
      [`c_w, ${wanted}`, plain(station.cl, 5)],
      ...(isAsked ? [] : read),
      ['left, by which the search missed', plain((flow?.cl ?? station.cl) - station.cl, 5)],
    ],
    source:
      'circulation of the strips, solved for the whole foil (theory: Forces), straight between two of them, unless another is asked for; the search ends within 0.0005',
    trust: 'About 1 % for slender wings; several percent near the tip.',
  };
}

export function angleToStream({ section: { flow, station } }: SectionGiven): Working {
  return {
    formula: 'left = c_l − c_w',
    numbers: [
      ['angle found', flow ? degrees(flow.alpha, 2) : 'none'],
      ['c_l, lift coefficient of the flow solved at it', flow ? plain(flow.cl, 5) : 'none'],
      ['c_w, wanted', plain(station.cl, 5)],
      ['left, by which the search missed', flow ? plain(flow.cl - station.cl, 5) : 'none'],
    ],
    source: `${LAYER}; no closed formula: angles are tried by secants until the flow lifts as much, within 0.0005`,
    trust: 'A tenth to a quarter of a degree.',
  };
}

export function drag({ section: { flow } }: SectionGiven): Working {
  const thousandths = (value: number | undefined) => (value === undefined ? 'none' : plain(1000 * value, 3));
  const end = flow?.wakeEnd;
  return {
    formula: 'c_d = 2 θ u^((H + 5) / 2); c_dp = c_d − c_df',
    numbers: [
      ['c_d, thousandths', thousandths(flow?.cd)],
      ['θ, momentum thickness where the wake is left, thousandths of the chord', thousandths(end?.theta)],
      ['u, speed there over the stream’s', end ? plain(end.speed, 5) : 'none'],
      ['H, shape factor there', end ? plain(end.shape, 4) : 'none'],
      ['c_df, friction, thousandths', thousandths(flow?.cdFriction)],
      ['c_dp, pressure, thousandths', thousandths(flow ? flow.cd - flow.cdFriction : undefined)],
    ],
    source: `${LAYER}; H. B. Squire and A. D. Young, ARC R&M 1838 (1937)`,
    trust: TRUST_DRAG,
  };
}

export function moment({ section: { flow, station }, units }: SectionGiven): Working {
  const { pressure, chord } = station;
  return {
    formula: 'M = 1000 c_m p c²',
    numbers: [
      ['c_m', flow ? plain(flow.cm, 5) : 'none'],
      ['p, ½ ρ V² in kilopascals', plain(pressure / 1000, 3)],
      ['c, chord here', coherent(chord, 'length', units)],
      [
        'M, about the quarter chord, nose up, N m a metre of span',
        flow ? plain(flow.cm * pressure * chord ** 2, 2) : 'none',
      ],
    ],
    source: `${LAYER}; no closed formula: pressures of the settled flow added up. M is what they make here`,
    trust: 'Some percent while the flow follows the section; no guide beyond stall.',
  };
}

export function lowestPressure({ section: { flow, station }, units }: SectionGiven): Working {
  const { density, atmosphere, vapourPressure, pressure, depth, sigma, gravity } = station;
  return {
    formula: 'C_p = 1 − u²; σ = (p_a + ρ g d / 1000 − p_v) / p',
    numbers: [
      ['C_p, lowest', flow ? plain(flow.cpMin, 3) : 'none'],
      ['u, greatest speed over the stream’s', flow ? plain(flow.greatestSpeed, 4) : 'none'],
      ['σ, the water boils where −C_p reaches it', plain(sigma, 3)],
      ['p_a, of the air, kPa', plain(atmosphere / 1000, 3)],
      ['ρ', formatWithUnit(density, 'density', units)],
      ['g, m/s²', plain(gravity, 5)],
      ['d, depth', coherent(depth, 'length', units)],
      ['p_v, at which the water boils, kPa', plain(vapourPressure / 1000, 3)],
      ['p, ½ ρ V², kPa', plain(pressure / 1000, 3)],
    ],
    source: `${LAYER}; no closed formula for u: the flow is solved`,
    trust: 'An estimate for comparing: roughness and gas in the water start it sooner.',
  };
}
