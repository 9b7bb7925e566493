/** Where the layer turns, its friction, and the heights it bears: sentences, charts and tables of one station. */
import { html, type TemplateResult } from 'lit';
import { formatValue, formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { SkinSide, SkinView } from '../../solver/studies/skin-study.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { tableWithGhost } from '../figure-table.ts';
import '../figure-value.ts';
import { withGhost } from '../ghost.ts';
import type { GhostFigure } from '../ghost-figures.ts';
import '../line-chart.ts';
import { type FigureCell, figureCell, quantityCell, signBefore } from '../table-cells.ts';

/** A height of roughness; from half a millimetre up as a length of the workshop. */
export function fine(height: number | null, units: UnitSystem): string {
  if (height === null || !Number.isFinite(height)) return '–';
  if (units === 'workshop' && height >= 5e-4) return formatWithUnit(height, 'length', units, { decimals: 1 });
  return formatWithUnit(height, 'fineLength', units, { decimals: units === 'imperial' ? 2 : 0 });
}

/** The same in a table, beside the ghost's. */
export const fineCell = (height: number | null, units: UnitSystem): FigureCell =>
  figureCell(height, (value, isDifference) => signBefore(value, fine(Math.abs(value), units), isDifference));

const percent = (share: number) => `${Math.round(100 * share)} %`;

export function turnReading({ upper, lower, station }: SkinView, units: UnitSystem): string {
  const run = ({ transition }: SkinSide) =>
    transition >= 1
      ? 'all the way'
      : `to ${percent(transition)} of the chord (${formatWithUnit(transition * station.chord, 'length', units)})`;
  const share = 0.5 * (upper.laminarShare + lower.laminarShare);
  const sides =
    station.part === 'strut'
      ? `Both sides are laminar ${run(upper)}`
      : `The upper side is laminar ${run(upper)}, the lower one ${run(lower)}`;
  const why =
    station.flow.tripUpper === undefined
      ? ''
      : ` So near the surface spray and waves keep the layer turbulent, down to the depth set in Shape (common practice).`;
  return `${sides}: ${percent(share)} of the skin here is laminar, ${percent(1 - share)} turbulent.${why}`;
}

export function heightReading({ least, grade }: SkinView, units: UnitSystem): string {
  const laminar =
    least.bump === null || least.step === null
      ? 'There is no laminar run to spoil'
      : `The laminar run bears a lone bump of ${fine(least.bump, units)} and a step across of ${fine(least.step, units)}`;
  const by = (found: string | null) => (found === null ? 'nothing listed here' : found);
  return `${laminar}; evenly spread roughness counts from ${fine(least.spread, units)} on. ${by(grade.byShare)} is fine enough if it leaves ${percent(grade.share)} of its grain as height, ${by(grade.byGrain)} if it leaves all of it.`;
}

export function frictionChart(view: SkinView, ghost: SkinView | null): TemplateResult {
  return html`<line-chart
    heading="Friction along the chord"
    x-name="chord"
    x-unit="%"
    y-name="1000 cf"
    .xDecimals=${1}
    .yDecimals=${2}
    summary="Friction coefficient along both sides by the local speed, between those of a laminar and a turbulent plate."
    .series=${withGhost(frictionLines(view), ghost && frictionLines(ghost).filter(({ width }) => width !== 1))}
  ></line-chart>`;
}

/** Both sides, and the plates as thin lines. */
function frictionLines({ upper, lower, station }: SkinView): ChartSeries[] {
  const shown = (side: SkinSide, values: Float64Array) => {
    const places = Array.from(side.x.keys()).filter(
      (k) => side.x[k]! > 0.004 && (k === 0 || side.x[k]! > side.x[k - 1]!),
    );
    return { x: places.map((k) => 100 * side.x[k]!), y: places.map((k) => Math.min(20, 1000 * values[k]!)) };
  };
  const isOne = station.part === 'strut';
  return [
    { name: isOne ? 'both sides' : 'upper side', ...shown(upper, upper.friction), colour: '--carry' },
    ...(isOne
      ? []
      : [{ name: 'lower side', ...shown(lower, lower.friction), colour: '--tail' as const, dash: [6, 3] }]),
    {
      name: 'plate, turbulent',
      ...shown(upper, upper.turbulentPlate),
      colour: '--thrown',
      dash: [2, 3],
      width: 1,
    },
    {
      name: 'plate, laminar',
      ...shown(upper, upper.laminarPlate),
      colour: '--surface',
      dash: [2, 3],
      width: 1,
    },
  ];
}

function heightLines({ x, isTurbulent, bump, step, spread }: SkinSide, units: UnitSystem): ChartSeries[] {
  const show = (height: number) => toDisplay(height, 'fineLength', units);
  const most = show(4e-4);
  const line = (values: Float64Array, onlyLaminar: boolean) => {
    const places = Array.from(x.keys()).filter(
      (k) => x[k]! > 0.004 && (k === 0 || x[k]! > x[k - 1]!) && !(onlyLaminar && isTurbulent[k]),
    );
    return { x: places.map((k) => 100 * x[k]!), y: places.map((k) => Math.min(most, show(values[k]!))) };
  };
  return [
    { name: 'evenly spread', ...line(spread, false), colour: '--carry' },
    { name: 'lone bump', ...line(bump, true), colour: '--thrown' },
    { name: 'step across', ...line(step, true), colour: '--lean', dash: [6, 3] },
  ];
}

export function heightChart(
  view: SkinView,
  ghost: SkinView | null,
  side: 'upper' | 'lower',
  finish: number | null,
  units: UnitSystem,
): TemplateResult {
  const show = (height: number) => toDisplay(height, 'fineLength', units);
  const series: ChartSeries[] = [
    ...withGhost(heightLines(view[side], units), ghost && heightLines(ghost[side], units)),
    ...(finish === null
      ? []
      : [
          {
            name: 'chosen finish',
            x: [0.5, 100],
            y: [show(finish), show(finish)],
            colour: '--ink' as const,
            dash: [3, 3],
            width: 1,
          },
        ]),
  ];
  return html`<line-chart
    heading=${view.station.part === 'strut' ? 'Heights the layer bears' : `Heights the layer bears, ${side} side`}
    x-name="chord"
    x-unit="%"
    y-name="height"
    .yUnit=${unitOf('fineLength', units)}
    .xDecimals=${1}
    .yDecimals=${units === 'imperial' ? 2 : 0}
    summary="Height of a lone bump, of a step across and of evenly spread roughness that the layer does not notice, along the chord."
    .series=${series}
  ></line-chart>`;
}

const PLACES = [0.01, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 0.9];

export function heightTable(
  own: SkinView,
  ghost: SkinView | null,
  side: 'upper' | 'lower',
  units: UnitSystem,
): TemplateResult {
  const caption = own.station.part === 'strut' ? 'What the strut bears' : `What the ${side} side bears`;
  const decimals = units === 'workshop' ? 1 : 4;
  return tableWithGhost(caption, own, ghost, (view) => {
    const { x, isTurbulent, bump, step, gap, spread, friction } = view[side];
    return {
      head: ['chord', 'layer', '1000 cf', 'lone bump', 'step', 'gap', 'spread', 'grade'],
      rows: PLACES.map((place) => {
        const found = x.findIndex((at) => at >= place);
        const k = found < 0 ? x.length - 1 : found;
        return {
          cells: [
            percent(place),
            isTurbulent[k] ? 'turbulent' : 'laminar',
            quantityCell(1000 * friction[k]!, 'ratio', 'si', { decimals: 1 }),
            fineCell(bump[k]!, units),
            fineCell(step[k]!, units),
            quantityCell(gap[k]!, 'length', units, { decimals }),
            fineCell(spread[k]!, units),
            view.grades.find(({ height }) => height <= spread[k]!)?.name ?? '–',
          ],
        };
      }),
    };
  });
}

export const TURN_FIGURES: readonly GhostFigure<SkinView>[] = (['upper', 'lower'] as const).map((side) => ({
  label: `Laminar run, ${side} side`,
  read: (view) => view[side].transition,
  quantity: 'share',
  decimals: 0,
  note: 'of the chord',
}));

/** Two figures beside what the trade says of them; nothing here was chosen to meet them. */
export function practiceFigures(
  { frictionRatio, strutRun }: SkinView,
  ghost: SkinView | null,
  units: UnitSystem,
): TemplateResult {
  const decimals = { workshop: 0, si: 2, imperial: 1 }[units];
  const figure = (
    label: string,
    value: number | null,
    behind: number | null | undefined,
    quantity: 'ratio' | 'length',
    decimals: number | null,
    note: string,
  ) =>
    html`<figure-value
      .label=${label}
      .value=${value}
      .ghost=${behind ?? null}
      .quantity=${quantity}
      .units=${units}
      .decimals=${decimals}
      .note=${note}
    ></figure-value>`;
  return html`${figure(
    'Turbulent over laminar friction, where it turns',
    frictionRatio,
    ghost?.frictionRatio,
    'ratio',
    1,
    'Plate laws of H. Blasius and F. M. White at this Reynolds number; common practice says about five.',
  )}
  ${figure(
    'Laminar run of the strut, cruise',
    strutRun.cruise,
    ghost?.strutRun.cruise,
    'length',
    null,
    'Half way up the part that spray and waves leave alone.',
  )}
  ${figure(
    'Laminar run of the strut, top speed',
    strutRun.top,
    ghost?.strutRun.top,
    'length',
    null,
    `Common practice says about ${formatValue(0.04, 'length', units, { decimals })} to ${formatWithUnit(0.05, 'length', units, { decimals })} at race speed. Neither figure was used to choose a constant.`,
  )}`;
}
