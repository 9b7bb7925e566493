/** The figures of a section with their working. */
import { html, type TemplateResult } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { SectionPolars, SectionView } from '../../solver/studies/section-view.ts';
import '../figure-value.ts';
import { sectionDrag } from '../study-workings.ts';
import type { Working } from '../workings.ts';

interface Looks {
  quantity?: Quantity;
  decimals?: number;
  note?: string;
  why?: string;
  working?: () => Working;
  ghost?: number | null | undefined;
}

function figure(label: string, value: number | null, units: UnitSystem, looks: Looks = {}): TemplateResult {
  return html`<figure-value
    .label=${label}
    .value=${value}
    .quantity=${looks.quantity ?? 'ratio'}
    .units=${units}
    .decimals=${looks.decimals ?? null}
    .note=${looks.note ?? ''}
    .why=${looks.why ?? 'none'}
    .working=${looks.working ?? null}
    .ghost=${looks.ghost ?? null}
  ></figure-value>`;
}

const LAYER = 'panel method and integral boundary layer in step with it (theory: Sections)';
const TRUST_DRAG =
  'About 10 % of measured drag at Re 6e6; at some 1e5 and in natural water the place of transition is the doubt: read the band.';

const plain = (value: number, decimals: number) => writeFixed(value, decimals);

/** A station with its polars, where they are known. */
export interface Seen {
  view: SectionView;
  polars: SectionPolars | null;
}

function shapeOf({ view: { marks, station, line }, polars }: Seen) {
  const own = polars?.series.find(({ water }) => water === 'own');
  return {
    own,
    chord: station.chord,
    thickness: marks.thickness,
    camber: Math.abs(marks.camber) < 5e-5 ? 0 : marks.camber,
    noseRadius: marks.noseRadius,
    edge: marks.edge,
    zeroLift: own?.line?.zeroLift ?? line.zeroLift,
    slope: own?.line?.slope ?? line.slope,
    moment: own?.line?.moment ?? line.thinMoment,
    clMax: own?.clMax.cl ?? null,
  };
}

export function shapeFigures(seen: Seen, ghost: Seen | null, units: UnitSystem): TemplateResult {
  const { marks, line } = seen.view;
  const { own, chord, camber, zeroLift, slope, moment, clMax } = shapeOf(seen);
  const behind = ghost && shapeOf(ghost);
  const size = (share: number, decimals: number) =>
    formatWithUnit(share * chord, 'length', units, units === 'workshop' ? { decimals } : {});
  return html`${figure('Chord', chord, units, { quantity: 'length', ghost: behind?.chord })}
  ${figure('Thickness', marks.thickness, units, { quantity: 'share', decimals: 1, note: size(marks.thickness, 1), ghost: behind?.thickness })}
  ${figure('Camber', camber, units, { quantity: 'share', decimals: 1, ghost: behind?.camber })}
  ${figure('Nose radius', marks.noseRadius, units, {
    quantity: 'share',
    decimals: 2,
    note: size(marks.noseRadius, 2),
    ghost: behind?.noseRadius,
    working: () => ({
      formula: 'r = lim h²/2x, h half the thickness x behind the nose',
      numbers: [['of the chord', plain(marks.noseRadius, 5)]],
      source: 'circle that fits the nose; a four-digit section has 1.1019 t² (NACA Report 460)',
      trust: 'Within 2 % for a four-digit section; some percent for points far apart at the nose.',
    }),
  })}
  ${figure('Trailing edge', marks.edge, units, { quantity: 'share', decimals: 2, note: size(marks.edge, 2), ghost: behind?.edge })}
  ${figure('Zero-lift angle', zeroLift, units, {
    ghost: behind?.zeroLift,
    quantity: 'angle',
    note: own?.line ? '' : 'without friction',
    working: () => ({
      formula: 'angle of the chord line at cl = 0',
      numbers: [
        ['with friction', own?.line ? `${plain(own.line.zeroLift, 2)}°` : 'not known'],
        ['without friction', `${plain(line.zeroLift, 2)}°`],
        ['thin-airfoil theory', `${plain(line.thinZeroLift, 2)}°`],
      ],
      source: LAYER,
      trust: 'A tenth to a quarter of a degree; it moves with the transition at low Reynolds numbers.',
    }),
  })}
  ${figure('Lift slope', slope, units, {
    ghost: behind?.slope,
    decimals: 2,
    note: 'per radian',
    working: () => ({
      formula: 'cl / sin(α − α₀), from zero lift to cl 0.5',
      numbers: [
        ['with friction', own?.line ? plain(own.line.slope, 3) : 'not known'],
        ['without friction', plain(line.slope, 3)],
        ['thin-airfoil theory, 2π', '6.283'],
      ],
      source: LAYER,
      trust: 'Some percent; measured NACA 0012 at Re 6e6: 6.23 (NASA TM 4074).',
    }),
  })}
  ${figure('Moment at zero lift, cm', moment, units, {
    ghost: behind?.moment,
    decimals: 3,
    note: own?.line ? 'about the quarter chord, nose up' : 'thin-airfoil theory',
    working: () => ({
      formula: 'cm about the quarter chord where cl = 0',
      numbers: [
        ['with friction', own?.line ? plain(own.line.moment, 4) : 'not known'],
        ['thin-airfoil theory', plain(line.thinMoment, 4)],
      ],
      source: LAYER,
      trust: 'Some percent; thin-airfoil theory overstates it by a tenth or more (from memory).',
    }),
  })}
  ${figure('Greatest lift, cl', clMax, units, {
    ghost: behind?.clMax,
    decimals: 2,
    why: 'working …',
    working: () => ({
      formula: 'largest cl of the polar, before it falls or the flow no longer settles',
      numbers: own
        ? [
            ['at the angle', `${plain(own.clMax.alpha, 1)}°`],
            ['counted on', plain(own.usable, 2)],
          ]
        : [],
      source: LAYER,
      trust:
        'The least sure figure of a section: a tenth, more at some 1e5 (from memory). What is counted on is set lower.',
    }),
    note: own
      ? `${own.clMax.isStall ? `stalls at ${plain(own.clMax.alpha, 1)}°` : 'no stall within the angles tried'}; counted on: ${plain(own.usable, 2)}`
      : '',
  })}`;
}

export function flowFigures(view: SectionView, ghost: SectionView | null, units: UnitSystem): TemplateResult {
  const { flow, station, band } = view;
  const { sigma } = station;
  const behind = ghost?.flow;
  return html`${figure('Reynolds number, thousands', station.reynolds / 1000, units, {
    decimals: 0,
    ghost: ghost && ghost.station.reynolds / 1000,
    working: () => ({
      formula: 'Re = V c / ν',
      numbers: [['c, chord here', formatWithUnit(station.chord, 'length', units)]],
      source: 'definition; speed and water of the brief (theory: Water)',
      trust: 'Exact for the water given; ten degrees colder lowers it by about a quarter.',
    }),
  })}
  ${figure('Lift coefficient', flow?.cl ?? station.cl, units, {
    decimals: 3,
    ghost: behind?.cl ?? ghost?.station.cl,
    working: () => ({
      formula: 'cl = 2 Γ / (V c)',
      numbers: [['as flown here', plain(station.cl, 3)]],
      source:
        'circulation of the strip, solved for the whole foil (theory: Forces), unless another is asked for',
      trust: 'About 1 % for slender wings; several percent near the tip.',
    }),
  })}
  ${figure('Angle to the stream', flow?.alpha ?? null, units, {
    quantity: 'angle',
    decimals: 2,
    note: 'of the chord line, downwash taken off',
    ghost: behind?.alpha,
    working: () => ({
      formula: 'the angle at which this section has this cl',
      numbers: [['cl', plain(flow?.cl ?? station.cl, 3)]],
      source: LAYER,
      trust: 'A tenth to a quarter of a degree.',
    }),
  })}
  ${figure('Drag, 1000 cd', flow && 1000 * flow.cd, units, {
    ghost: behind && 1000 * behind.cd,
    decimals: 2,
    note: bandWords(band),
    working: () => ({
      ...sectionDrag({ section: view }),
      source: `${LAYER}; H. B. Squire and A. D. Young, ARC R&M 1838 (1937)`,
      trust: TRUST_DRAG,
    }),
  })}
  ${figure('Moment, cm', flow?.cm ?? null, units, {
    ghost: behind?.cm,
    decimals: 3,
    working: () => ({
      formula: 'cm = M / (½ρV² c²), about the quarter chord, nose up',
      numbers: [['cm', flow ? plain(flow.cm, 4) : 'none']],
      source: `${LAYER}; pressures of the settled flow added up`,
      trust: 'Some percent while the flow follows the section; no guide beyond stall.',
    }),
  })}
  ${figure('Lowest pressure, Cp', flow?.cpMin ?? null, units, {
    ghost: behind?.cpMin,
    decimals: 2,
    note: flow ? boilWords(flow.cpMin, sigma) : '',
    working: () => ({
      formula: 'boils where −Cp_min = σ = (p_atm + ρ g d − p_v) / ½ρV²',
      numbers: [
        ['σ here', plain(sigma, 2)],
        ['depth', formatWithUnit(station.depth, 'length', units)],
      ],
      source: LAYER,
      trust: 'An estimate for comparing: roughness and gas in the water start it sooner.',
    }),
  })}`;
}

function bandWords({ clean, nose }: SectionView['band']): string {
  const write = (value: number | null) => (value === null ? 'not settled' : plain(1000 * value, 2));
  return `${write(clean)} with all the laminar run of a clean tunnel, ${write(nose)} tripped at the nose`;
}

function boilWords(cpMin: number, sigma: number): string {
  return -cpMin < sigma
    ? `the water boils at −${plain(sigma, 2)} here`
    : `below −${plain(sigma, 2)}: the water boils here`;
}
