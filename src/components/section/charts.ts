/** The charts of a section: pressure or speed along it, the layer in a table, polars in three kinds of water. */
import { html, type TemplateResult } from 'lit';
import { toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type {
  SectionPolarSeries,
  SectionPolars,
  SectionSide,
  SectionView,
} from '../../solver/studies/section-view.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { tableWithGhost } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { quantityCell } from '../table-cells.ts';

export type AlongShown = 'pressure' | 'speed';
type Flow = NonNullable<SectionView['flow']>;

/** From the nose aft: a side begins at the stagnation point, which may lie behind the nose. */
function fromNose(side: SectionSide, read: (k: number) => number): { x: number[]; y: number[] } {
  const nose = side.x.indexOf(Math.min(...side.x));
  const places = Array.from(side.x.keys()).filter(
    (k) => k === nose || (k > nose && side.x[k]! > side.x[k - 1]!),
  );
  return { x: places.map((k) => 100 * side.x[k]!), y: places.map(read) };
}

function alongLines({ upper, lower }: Flow, isSpeed: boolean): ChartSeries[] {
  const read = (side: SectionSide) => (k: number) => (isSpeed ? side.speed[k]! : -side.cp[k]!);
  return [
    { name: 'upper side', ...fromNose(upper, read(upper)), colour: '--carry' },
    { name: 'lower side', ...fromNose(lower, read(lower)), colour: '--tail', dash: [6, 3] },
  ];
}

export function alongChart(flow: Flow, ghost: Flow | null, shown: AlongShown, sigma: number): TemplateResult {
  const isSpeed = shown === 'speed';
  const boils = !isSpeed && sigma < 3;
  const series: ChartSeries[] = [
    ...withGhost(alongLines(flow, isSpeed), ghost && alongLines(ghost, isSpeed)),
    ...(boils
      ? [
          {
            name: 'boils here',
            x: [0, 100],
            y: [sigma, sigma],
            colour: '--thrown' as const,
            dash: [2, 3],
            width: 1,
          },
        ]
      : []),
  ];
  return html`<line-chart
    heading=${isSpeed ? 'Speed along the surface' : 'Pressure along the surface, suction up'}
    x-name="chord"
    x-unit="%"
    y-name=${isSpeed ? 'speed over stream' : '−Cp'}
    .xDecimals=${1}
    .yDecimals=${2}
    .summary=${isSpeed ? 'Speed of the water along both sides over that of the stream.' : 'Pressure coefficient along both sides, suction upward.'}
    .series=${series}
  ></line-chart>`;
}

const PLACES = [0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];

/** One side of a section with its layer, and the chord it stands on, m. */
export interface LayerSide {
  side: SectionSide;
  chord: number;
}

export function layerTable(own: LayerSide, ghost: LayerSide | null, name: string): TemplateResult {
  const plain = (value: number, decimals: number) => quantityCell(value, 'ratio', 'si', { decimals });
  return tableWithGhost(`The layer along the ${name} side`, own, ghost, ({ side, chord }) => {
    const nose = side.x.indexOf(Math.min(...side.x));
    const fine = (share: number) => plain(1000 * share * chord, 3);
    return {
      head: ['chord', 'state', 'speed over stream', 'δ*, mm', 'θ, mm', 'H', '1000 cf'],
      rows: PLACES.map((place) => {
        const found = side.x.findIndex((x, k) => k > nose && x >= place - 1e-6);
        const k = found < 0 ? side.x.length - 1 : found;
        return {
          cells: [
            `${Math.round(100 * place)} %`,
            side.isTurbulent[k] ? 'turbulent' : 'laminar',
            plain(side.speed[k]!, 3),
            fine(side.displacement[k]!),
            fine(side.theta[k]!),
            plain(side.shape[k]!, 2),
            plain(1000 * side.friction[k]!, 2),
          ],
        };
      }),
    };
  });
}

const WATERS: Record<SectionPolarSeries['water'], { name: string; colour: `--${string}`; dash: number[] }> = {
  own: { name: 'this water', colour: '--carry', dash: [] },
  clean: { name: 'clean tunnel', colour: '--surface', dash: [6, 3] },
  nose: { name: 'tripped at the nose', colour: '--thrown', dash: [2, 3] },
};

/** The ghost's polars are those of its own water. */
export function polarCharts(
  { series }: SectionPolars,
  ghost: SectionPolars | null,
  view: SectionView,
  units: UnitSystem,
): TemplateResult {
  const behind = ghost?.series.filter(({ water }) => water === 'own') ?? [];
  const lines = (x: Axis, y: (point: Point) => number) =>
    withGhost(linesOf(series, x, y), linesOf(behind, x, y));
  const linesOf = (of: readonly SectionPolarSeries[], x: Axis, y: (point: Point) => number): ChartSeries[] =>
    of.map(({ water, points }) => {
      const rising = risingBy(points, x);
      return {
        name: WATERS[water].name,
        x: rising.map(x),
        y: rising.map(y),
        colour: WATERS[water].colour,
        dash: WATERS[water].dash,
      };
    });
  const cl: Axis = (point) => point.cl;
  const alpha: Axis = (point) => toDisplay(point.alpha, 'angle', units);
  const here: ChartSeries[] = view.flow
    ? [
        {
          name: 'here',
          x: [view.flow.cl - 0.004, view.flow.cl],
          y: [0, 1000 * view.flow.cd],
          colour: '--ink',
          dash: [3, 3],
          width: 1,
        },
      ]
    : [];
  const turns = (of: readonly SectionPolarSeries[]) =>
    of
      .filter(({ water }) => water === 'own')
      .flatMap(({ points }): ChartSeries[] => {
        const seen = risingBy(points, cl);
        const side = (read: (point: Point) => number) => ({
          x: seen.map(cl),
          y: seen.map((point) => 100 * read(point)),
        });
        return [
          { name: 'upper side', ...side(({ upper }) => upper), colour: '--carry' },
          { name: 'lower side', ...side(({ lower }) => lower), colour: '--tail', dash: [6, 3] },
        ];
      });
  const chart = (
    heading: string,
    xName: string,
    xUnit: string,
    yName: string,
    yUnit: string,
    decimals: number,
    shown: ChartSeries[],
  ) =>
    html`<line-chart
      .heading=${heading}
      .xName=${xName}
      .xUnit=${xUnit}
      .yName=${yName}
      .yUnit=${yUnit}
      .xDecimals=${2}
      .yDecimals=${decimals}
      .summary=${`${heading} against ${xName}.`}
      .series=${shown}
    ></line-chart>`;
  return html`<div class="charts">
    ${chart('Drag against lift', 'lift coefficient', '', '1000 cd', '', 2, [...lines(cl, ({ cd }) => 1000 * cd), ...here])}
    ${chart('Lift against angle', 'angle', unitOf('angle', units), 'lift coefficient', '', 2, lines(alpha, cl))}
    ${chart('Where it turns turbulent, this water', 'lift coefficient', '', 'chord', '%', 0, withGhost(turns(series), turns(behind)))}
    ${chart(
      'Moment about the quarter chord',
      'lift coefficient',
      '',
      'cm',
      '',
      3,
      lines(cl, ({ cm }) => cm),
    )}
  </div>`;
}

type Point = SectionPolarSeries['points'][number];
type Axis = (point: Point) => number;

/** Points in the order asked for, those left out where the axis turns back (behind stall). */
function risingBy(points: readonly Point[], axis: Axis): Point[] {
  const kept: Point[] = [];
  for (const point of points)
    if (kept.length === 0 || axis(point) > axis(kept.at(-1)!) + 1e-4) kept.push(point);
  return kept;
}
