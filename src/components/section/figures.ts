/** The figures of a section with their working. */
import { html, type TemplateResult } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { SectionPolars, SectionView } from '../../solver/studies/section-view.ts';
import '../figure-value.ts';
import * as workings from '../section-workings.ts';
import type { Working } from '../working-parts.ts';

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
  const { marks } = seen.view;
  const { own, chord, camber, zeroLift, slope, moment, clMax } = shapeOf(seen);
  const behind = ghost && shapeOf(ghost);
  const given = { section: seen.view, polar: own ?? null, units };
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
    working: () => workings.noseRadius(given),
  })}
  ${figure('Trailing edge', marks.edge, units, { quantity: 'share', decimals: 2, note: size(marks.edge, 2), ghost: behind?.edge })}
  ${figure('Zero-lift angle', zeroLift, units, {
    ghost: behind?.zeroLift,
    quantity: 'angle',
    note: own?.line ? '' : 'without friction',
    working: () => workings.zeroLift(given),
  })}
  ${figure('Lift slope', slope, units, {
    ghost: behind?.slope,
    decimals: 2,
    note: 'per radian',
    working: () => workings.liftSlope(given),
  })}
  ${figure('Moment at zero lift, cm', moment, units, {
    ghost: behind?.moment,
    decimals: 3,
    note: own?.line ? 'about the quarter chord, nose up' : 'thin-airfoil theory',
    working: () => workings.zeroLiftMoment(given),
  })}
  ${figure('Greatest lift, cl', clMax, units, {
    ghost: behind?.clMax,
    decimals: 2,
    why: 'working …',
    working: () => workings.greatestLift(given),
    note: own
      ? `${own.clMax.isStall ? `stalls at ${plain(own.clMax.alpha, 1)}°` : 'no stall within the angles tried'}; counted on: ${plain(own.usable, 2)}`
      : '',
  })}`;
}

export function flowFigures(view: SectionView, ghost: SectionView | null, units: UnitSystem): TemplateResult {
  const { flow, station, band } = view;
  const { sigma } = station;
  const behind = ghost?.flow;
  const given = { section: view, polar: null, units };
  return html`${figure('Reynolds number, thousands', station.reynolds / 1000, units, {
    decimals: 0,
    ghost: ghost && ghost.station.reynolds / 1000,
    working: () => workings.reynolds(given),
  })}
  ${figure('Lift coefficient', flow?.cl ?? station.cl, units, {
    decimals: 3,
    ghost: behind?.cl ?? ghost?.station.cl,
    working: () => workings.liftCoefficient(given),
  })}
  ${figure('Angle to the stream', flow?.alpha ?? null, units, {
    quantity: 'angle',
    decimals: 2,
    note: 'of the chord line, downwash taken off',
    ghost: behind?.alpha,
    working: () => workings.angleToStream(given),
  })}
  ${figure('Drag, 1000 cd', flow && 1000 * flow.cd, units, {
    ghost: behind && 1000 * behind.cd,
    decimals: 2,
    note: bandWords(band),
    working: () => workings.drag(given),
  })}
  ${figure('Moment, cm', flow?.cm ?? null, units, {
    ghost: behind?.cm,
    decimals: 3,
    working: () => workings.moment(given),
  })}
  ${figure('Lowest pressure, Cp', flow?.cpMin ?? null, units, {
    ghost: behind?.cpMin,
    decimals: 2,
    note: flow ? boilWords(flow.cpMin, sigma) : '',
    working: () => workings.lowestPressure(given),
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
