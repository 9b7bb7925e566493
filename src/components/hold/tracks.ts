/** How every mode and every derivative of the craft moves as the wing droops further. */
import { html, nothing, type TemplateResult } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import type { HoldStudy } from '../../solver/studies/hold-study.ts';
import type { ModeTracks } from '../../solver/studies/mode-tracks.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { uprightMark } from '../chart-marks.ts';
import { tableWithGhost } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import {
  coefficient,
  coefficientCell,
  LATERAL_KEYS,
  LATERAL_NAMES,
  MODE_NAMES,
  type ModeKind,
} from './words.ts';

const COLOURS: Partial<Record<ModeKind, `--${string}`>> = {
  fall: '--thrown',
  heading: '--carry',
  righting: '--tail',
  swing: '--surface',
  secondSwing: '--focus',
  rollDamping: '--carry',
  pitchFall: '--thrown',
  speed: '--carry',
  porpoise: '--tail',
  secondPorpoise: '--focus',
  pitchRighting: '--surface',
  depthRighting: '--lean',
  sinkDamping: '--carry',
};

const LATERAL: readonly ModeKind[] = ['fall', 'heading', 'righting', 'swing', 'secondSwing'];
const VERTICAL: readonly ModeKind[] = [
  'pitchFall',
  'speed',
  'porpoise',
  'secondPorpoise',
  'pitchRighting',
  'depthRighting',
];

/** Quick modes have a chart of their own: beside them the others would lie flat. */
export function trackCharts(tracks: ModeTracks, ghost: ModeTracks | null): TemplateResult {
  const along = (heading: string, read: (of: ModeTracks) => ChartSeries[]) =>
    chart(heading, tracks, ghost, withGhost(read(tracks), ghost && read(ghost)));
  const straight = (of: ModeTracks) =>
    line('falls over, kept from turning', of, of.fallHeldStraight, '--soft', [4, 4]);
  return html`<div class="charts">
    ${along('Sideways modes along the droop', (of) => [...lines(of, LATERAL), ...straight(of)])}
    ${along('Roll dying out along the droop', (of) => lines(of, ['rollDamping']))}
    ${along('Up-and-down modes along the droop', (of) => lines(of, VERTICAL))}
    ${along('Sinking dying out along the droop', (of) => lines(of, ['sinkDamping']))}
  </div>`;
}

function lines(tracks: ModeTracks, kinds: readonly ModeKind[]): ChartSeries[] {
  return kinds.flatMap((kind) => {
    const track = tracks.modes[kind];
    return track ? line(MODE_NAMES[kind], tracks, track.real, COLOURS[kind]!) : [];
  });
}

function line(
  name: string,
  { amplitude }: ModeTracks,
  values: Float64Array,
  colour: `--${string}`,
  dash?: readonly number[],
): ChartSeries[] {
  const known = [...amplitude.keys()].filter((k) => Number.isFinite(values[k]));
  if (known.length < 2) return [];
  const x = known.map((k) => amplitude[k]!);
  const y = known.map((k) => values[k]!);
  return [dash ? { name, x, y, colour, dash } : { name, x, y, colour }];
}

function chart(heading: string, own: ModeTracks, ghost: ModeTracks | null, series: ChartSeries[]) {
  const { present, amplitude } = own;
  if (series.length === 0) return nothing;
  const mark = (name: string, at: number, colour: `--${string}`) =>
    at >= 0 && at <= last(amplitude) ? [uprightMark(name, at, series, colour, [3, 3])] : [];
  const marks = [...mark('now', present, '--ink'), ...(ghost ? mark('ghost', ghost.present, '--ghost') : [])];
  return html`<line-chart
    .heading=${heading}
    x-name="wing droop"
    x-unit="°"
    .xDecimals=${1}
    y-name="growth"
    y-unit="1/s"
    .yDecimals=${2}
    .summary=${`Growth rate of ${series.map(({ name }) => name).join(', ')} against wing droop, now ${writeFixed(present, 1)} degrees; below zero it dies out.`}
    .series=${[...series, ...marks]}
  ></line-chart>`;
}

const first = (values: Float64Array) => values.find((value) => Number.isFinite(value)) ?? Number.NaN;
const last = (values: Float64Array) => values.findLast((value) => Number.isFinite(value)) ?? Number.NaN;

/** Tracks with the bands of the method, where they are known. */
export interface Tracked {
  tracks: ModeTracks;
  band: HoldStudy['band'] | null;
}

/** The droop a table ends at; the ghost's own stands with it where it is another. */
const headOf = (tracks: ModeTracks, ...others: string[]) => [
  '',
  'flat',
  `at ${writeFixed(last(tracks.amplitude), 0)}°`,
  'moves by',
  ...others,
];

export function modeMoves(own: Tracked, ghost: Tracked | null): TemplateResult {
  return tableWithGhost('Growth, 1/s, flat and drooped', own, ghost, ({ tracks, band }) => ({
    head: headOf(tracks, 'method'),
    rows: (Object.keys(tracks.modes) as ModeKind[]).map((kind) => {
      const { real } = tracks.modes[kind]!;
      const moved = last(real) - first(real);
      const width = band?.modes[kind];
      const isLess = width !== undefined && Math.abs(moved) < width;
      return {
        cells: [
          MODE_NAMES[kind],
          coefficientCell(first(real)),
          coefficientCell(last(real)),
          isLess ? 'less than its band' : coefficientCell(moved),
          width === undefined ? '–' : `± ${coefficient(width)}`,
        ],
      };
    }),
  }));
}

export function derivativeMoves(own: ModeTracks, ghost: ModeTracks | null): TemplateResult {
  return tableWithGhost('Derivatives of the craft, flat and drooped', own, ghost, (tracks) => ({
    head: headOf(tracks, 'of it strut'),
    rows: LATERAL_KEYS.map((key) => {
      const { total, strut } = tracks.derivatives[key];
      return {
        cells: [
          LATERAL_NAMES[key],
          coefficientCell(first(total)),
          coefficientCell(last(total)),
          coefficientCell(last(total) - first(total)),
          coefficientCell(last(strut) - first(strut)),
        ],
      };
    }),
  }));
}

export function tracksReading(tracks: ModeTracks, { band }: HoldStudy): string {
  const still = (Object.keys(tracks.modes) as ModeKind[]).filter((kind) => {
    const { real } = tracks.modes[kind]!;
    const own = band.modes[kind];
    return own !== undefined && Math.abs(last(real) - first(real)) < own;
  });
  const straight = 100 * Math.abs(last(tracks.fallHeldStraight) / first(tracks.fallHeldStraight) - 1);
  const held = `Kept from turning, the fall changes by ${straight < 1 ? 'less than 1' : writeFixed(straight, 0)} % over the whole sweep: the strut carries most of the side force.`;
  if (still.length === 0) return held;
  const names = still.map((kind) => `“${MODE_NAMES[kind]}”`).join(', ');
  return `${held} ${names} ${still.length === 1 ? 'moves' : 'move'} less than the method’s own band: there the foil’s own coupling is the figure that explains the feel.`;
}
