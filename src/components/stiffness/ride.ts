/** What softness does to the ride: ratios against speed, shares by part, modes with the strut's swings. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { FlexibleMode } from '../../solver/studies/flexible-modes.ts';
import type { RideFigure, RidePoint, RideStudy } from '../../solver/studies/ride.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { tableWithGhost } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { figureCell, quantityCell } from '../table-cells.ts';
import { changeCell, PART_NAMES, RIDE_NAMES } from './words.ts';

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

export function rideTable(own: RideStudy, ghost: RideStudy | null) {
  const cell = (value: number) => {
    const decimals = Math.abs(value) < 1 ? 3 : 2;
    return quantityCell(value, 'ratio', 'si', { decimals });
  };
  return tableWithGhost('At cruise', own, ghost, (study) => ({
    head: ['', 'rigid', 'flexible', 'ratio'],
    rows: FIGURES.map((figure) => {
      const { rigid, flexible } = study.cruise;
      const ratio = ratioOf(study.cruise, figure, largestOf(study, figure));
      return {
        cells: [
          RIDE_NAMES[figure],
          cell(rigid[figure]),
          cell(flexible[figure]),
          quantityCell(ratio, 'ratio', 'si', { decimals: 2, why: 'not resolved' }),
        ],
      };
    }),
  }));
}

export function rideShares(own: RideStudy, ghost: RideStudy | null) {
  const names = { ...PART_NAMES, flyingShape: 'shape the wing flies in', together: 'parts together' };
  return tableWithGhost(
    'Change at cruise by part, of the rigid figure',
    own,
    ghost,
    ({ shares, cruise }) => ({
      head: ['part', ...FIGURES.map((figure) => RIDE_NAMES[figure].split(',').at(-1)!.trim())],
      rows: shares.map(({ part, change }) => ({
        cells: [
          names[part],
          ...FIGURES.map((figure) => {
            const scale = Math.abs(cruise.rigid[figure]);
            return changeCell(scale > 0 ? change[figure] / scale : null);
          }),
        ],
      })),
    }),
  );
}

/** The ghost's modes are those of the same place in the row, where both designs have the same kinds of them. */
export function modeTable(own: RideStudy, ghost: RideStudy | null) {
  if (!own.modes) return nothing;
  const kinds = ({ modes }: RideStudy) =>
    (modes?.modes ?? []).map(({ flexible, rigid }) => [rigid === null, flexible.imaginary === 0]);
  const isAlike = ghost !== null && JSON.stringify(kinds(own)) === JSON.stringify(kinds(ghost));
  return tableWithGhost(
    'Modes at cruise, strut stiff and giving',
    own,
    isAlike ? ghost : null,
    ({ modes }) => ({
      head: ['', 'stiff strut', 'strut as it is', 'period', 'damping'],
      rows: (modes?.modes ?? []).map(({ flexible, rigid }, k) => ({
        key: String(k),
        cells: [
          rigid ? `mode ${k + 1}` : 'swing of the strut',
          time(rigid),
          time(flexible),
          figureCell(
            flexible.period,
            (value, sign) => `${formatValue(value, 'ratio', 'si', { decimals: 2, sign })} s`,
          ),
          quantityCell(flexible.imaginary === 0 ? null : flexible.damping, 'ratio', 'si', { decimals: 2 }),
        ],
      })),
    }),
  );
}

function time(mode: FlexibleMode['flexible'] | null): string {
  if (!mode) return '–';
  if (mode.timeToDouble !== null) return `doubles in ${writeFixed(mode.timeToDouble, 2)} s`;
  return mode.timeToHalf === null ? 'stays' : `halves in ${writeFixed(mode.timeToHalf, 2)} s`;
}
