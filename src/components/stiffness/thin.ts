/** How thin strut and fuselage can be: deflection against the limit, drag and the boiling speed over the same axis. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Laminate } from '../../solver/design/document.ts';
import type { ThinColumn, ThinSeries } from '../../solver/studies/thin.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { uprightMark } from '../chart-marks.ts';
import { withGhost } from '../ghost.ts';
import { type GhostFigure, ghostFigures } from '../ghost-figures.ts';
import '../line-chart.ts';
import '../number-field.ts';

export type ThinPart = 'strut' | 'fuselage';

const WORDS = {
  strut: { size: 'thickness', give: 'the foot gives under 100 N to the side', what: 'Strut' },
  fuselage: { size: 'diameter', give: 'its tail end gives under 100 N', what: 'Fuselage' },
} as const;

const FIELDS = {
  strut: [
    ['strutDeflection', 'Allowed deflection, strut', 'limit'],
    ['strutThickness', 'Thickness mark', 'mark'],
  ],
  fuselage: [
    ['fuselageDeflection', 'Allowed deflection, fuselage', 'limit'],
    ['fuselageDiameter', 'Diameter mark', 'mark'],
  ],
} as const;

/** What one part's size does: sentences, the limit and the mark to set, charts. */
export function thinPart(
  part: ThinPart,
  series: ThinSeries,
  ghost: ThinSeries | null,
  limits: Laminate['limits'],
  units: UnitSystem,
) {
  return html`<p class="say">${thinReading(part, series, units)} ${cubeReading(series)}</p>
    ${ghostFigures(series, ghost, units, thinFigures(part))}
    <div class="controls">
      ${FIELDS[part].map(
        ([key, label, usual]) => html`<number-field
          .label=${label}
          .path=${`laminate.limits.${key}`}
          quantity="length"
          .units=${units}
          .value=${limits?.[key] ?? series[usual]}
          .step=${0.0005}
        ></number-field>`,
      )}
    </div>
    ${thinCharts(part, series, ghost, units)}`;
}

function thinFigures(part: ThinPart): readonly GhostFigure<ThinSeries>[] {
  const { size, what } = WORDS[part];
  return [
    { label: `${what}, ${size} drawn`, read: ({ present }) => present, quantity: 'length' },
    {
      label: `${what}, ${size} that gives what is allowed`,
      read: ({ thinnest }) => thinnest,
      quantity: 'length',
    },
  ];
}

function thinReading(part: ThinPart, series: ThinSeries, units: UnitSystem): string {
  const { thinnest, limit, mark, present } = series;
  const { size } = WORDS[part];
  const length = (value: number) => formatWithUnit(value, 'length', units);
  const limited =
    thinnest === null
      ? `No ${size} allowed keeps the deflection at ${length(limit)}`
      : `A ${part} of ${length(thinnest)} gives just the ${length(limit)} you allow`;
  const side = present < (thinnest ?? 0) ? 'thinner than that' : 'no thinner than that';
  const against =
    present < mark
      ? `thinner than your mark of ${length(mark)}`
      : `not thinner than your mark of ${length(mark)}`;
  return `${limited}; yours has ${length(present)}: ${thinnest === null ? against : `${side}, ${against}`}.`;
}

/** What half the thickness leaves of the stiffness. */
function cubeReading(series: ThinSeries): string {
  const { size, bending } = series.columns;
  const last = size.length - 1;
  const power = Math.log(bending[last]! / bending[0]!) / Math.log(size[last]! / size[0]!);
  return `Bending stiffness goes with the power ${writeFixed(power, 1)} of it: half as thick leaves 1/${Math.round(2 ** power)}.`;
}

function thinCharts(part: ThinPart, series: ThinSeries, ghost: ThinSeries | null, units: UnitSystem) {
  const { columns, limit, present, mark } = series;
  const { size, give, what } = WORDS[part];
  const sizes = (of: ThinSeries) => Array.from(of.columns.size, (value) => toDisplay(value, 'length', units));
  const x = sizes(series);
  const both = (
    name: ThinColumn,
    quantity: 'length' | 'force' | 'speed',
    line: Pick<ChartSeries, 'name' | 'colour'>,
    most = Infinity,
  ) => {
    const of = (which: ThinSeries): ChartSeries => ({
      ...line,
      x: sizes(which),
      y: Array.from(which.columns[name], (value) => Math.min(most, toDisplay(value, quantity, units))),
    });
    return withGhost([of(series)], ghost && [of(ghost)]);
  };
  const at = (value: number) => toDisplay(value, 'length', units);
  const marks = (lines: readonly ChartSeries[]) => [
    uprightMark('yours', at(present), lines, '--carry'),
    uprightMark('your mark', at(mark), lines, '--soft', [3, 3]),
    ...(ghost ? [uprightMark('ghost', at(ghost.present), lines, '--ghost', [6, 4])] : []),
  ];
  const chart = (
    heading: string,
    yName: string,
    quantity: 'length' | 'force' | 'speed',
    lines: readonly ChartSeries[],
    yDecimals: number,
  ) => html`<line-chart
    .heading=${heading}
    .xName=${size}
    .xUnit=${unitOf('length', units)}
    .xDecimals=${units === 'workshop' ? 1 : 3}
    .yName=${yName}
    .yUnit=${unitOf(quantity, units)}
    .yDecimals=${yDecimals}
    .summary=${`${heading} against ${size}.`}
    .series=${[...lines, ...marks(lines)]}
  ></line-chart>`;
  const top = toDisplay(limit, 'length', units);
  return html`<div class="charts">
    ${chart(
      `${what}: how far ${give}`,
      'deflection',
      'length',
      [
        ...both('deflection', 'length', { name: 'deflection', colour: '--surface' }, 4 * top),
        { name: 'allowed', x: [x[0]!, x.at(-1)!], y: [top, top], colour: '--thrown', dash: [6, 4] },
      ],
      units === 'workshop' ? 0 : 3,
    )}
    ${chart(
      `${what}: drag at cruise`,
      'drag',
      'force',
      both('drag', 'force', {
        name: part === 'strut' ? 'profile, junction and spray' : 'friction',
        colour: '--thrown',
      }),
      1,
    )}
    ${
      columns.inception.every(Number.isFinite)
        ? chart(
            `${what}: speed at which the water boils at the ${series.junction ?? 'junction'}`,
            'speed',
            'speed',
            both('inception', 'speed', { name: 'inception', colour: '--tail' }).filter(({ y }) =>
              y.every(Number.isFinite),
            ),
            1,
          )
        : nothing
    }
  </div>`;
}
