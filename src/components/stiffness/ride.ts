/** What softness does to the ride: ratios against speed, shares by part, modes with the strut's swings. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { FlexibleMode } from '../../solver/studies/flexible-modes.ts';
import type { RideFigure, RidePoint, RideStudy } from '../../solver/studies/ride.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { figureTable } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { PART_NAMES, RIDE_NAMES } from './words.ts';

const FIGURES = Object.keys(RIDE_NAMES) as RideFigure[];
const COLOURS: Record<RideFigure, `--${string}`> = {
  Clbeta: '--carry',
  Cnbeta: '--thrown',
  Clr: '--tail',
  Cnr: '--lean',
  Cmalpha: '--surface',
  rollFromYaw: '--ink',
};

/** A ratio says nothing where the stiff figure nearly vanishes or the two have other signs. */
const LEAST = 0.15;

/** Flexible over rigid, or null where the ratio is not resolved. */
export function ratioOf(point: RidePoint, figure: RideFigure, largest: number): number | null {
  const [rigid, flexible] = [point.rigid[figure], point.flexible[figure]];
  if (Math.abs(rigid) < LEAST * largest || rigid * flexible < 0) return null;
  return flexible / rigid;
}

function largestOf({ points, cruise }: RideStudy, figure: RideFigure): number {
  return Math.max(...[...points, cruise].map(({ rigid }) => Math.abs(rigid[figure])));
}

export function rideChart(study: RideStudy, ghost: RideStudy | null, units: UnitSystem) {
  const series = withGhost(rideLines(study, units), ghost && rideLines(ghost, units));
  if (series.length === 0) return nothing;
  return html`<line-chart
    heading="The foil that gives over the stiff one"
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="flexible / rigid"
    .yDecimals=${2}
    .summary=${'Ratio of flexible to rigid stability figures against speed; one is stiff.'}
    .series=${series}
  ></line-chart>`;
}

function rideLines(study: RideStudy, units: UnitSystem): ChartSeries[] {
  return FIGURES.flatMap((figure): ChartSeries[] => {
    const largest = largestOf(study, figure);
    const seen = study.points.flatMap((point) => {
      const ratio = ratioOf(point, figure, largest);
      return ratio === null || Math.abs(ratio) > 3
        ? []
        : [[toDisplay(point.speed, 'speed', units), ratio] as const];
    });
    if (seen.length < 2) return [];
    return [
      {
        name: RIDE_NAMES[figure],
        x: seen.map(([x]) => x),
        y: seen.map(([, y]) => y),
        colour: COLOURS[figure],
      },
    ];
  });
}

export function rideTable(study: RideStudy) {
  const { rigid, flexible } = study.cruise;
  const write = (value: number) => writeFixed(value, Math.abs(value) < 1 ? 3 : 2);
  const rows = FIGURES.map((figure) => {
    const ratio = ratioOf(study.cruise, figure, largestOf(study, figure));
    return {
      cells: [
        RIDE_NAMES[figure],
        write(rigid[figure]),
        write(flexible[figure]),
        ratio === null ? 'not resolved' : writeFixed(ratio, 2),
      ],
    };
  });
  return figureTable('At cruise', ['', 'rigid', 'flexible', 'ratio'], rows);
}

export function rideShares({ shares, cruise }: RideStudy) {
  const names = { ...PART_NAMES, flyingShape: 'shape the wing flies in', together: 'parts together' };
  const share = (change: number, figure: RideFigure) => {
    const scale = Math.abs(cruise.rigid[figure]);
    if (!(scale > 0)) return '';
    const value = Math.round((1000 * change) / scale) / 10;
    return value === 0 ? '–' : `${value > 0 ? '+' : '−'}${writeFixed(Math.abs(value), 1)} %`;
  };
  return figureTable(
    'Change at cruise by part, of the rigid figure',
    ['part', ...FIGURES.map((figure) => RIDE_NAMES[figure].split(',').at(-1)!.trim())],
    shares.map(({ part, change }) => ({
      cells: [names[part], ...FIGURES.map((figure) => share(change[figure], figure))],
    })),
  );
}

export function modeTable({ modes }: RideStudy) {
  if (!modes) return nothing;
  const time = (mode: FlexibleMode['flexible'] | null) => {
    if (!mode) return '–';
    if (mode.timeToDouble !== null) return `doubles in ${writeFixed(mode.timeToDouble, 2)} s`;
    return mode.timeToHalf === null ? 'stays' : `halves in ${writeFixed(mode.timeToHalf, 2)} s`;
  };
  return figureTable(
    'Modes at cruise, strut stiff and giving',
    ['', 'stiff strut', 'strut as it is', 'period', 'damping'],
    modes.modes.map(({ flexible, rigid }, k) => ({
      cells: [
        rigid ? `mode ${k + 1}` : 'swing of the strut',
        time(rigid),
        time(flexible),
        flexible.period === null ? '–' : `${writeFixed(flexible.period, 2)} s`,
        flexible.imaginary === 0 ? '–' : writeFixed(flexible.damping, 2),
      ],
    })),
  );
}
