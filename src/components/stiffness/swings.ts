/** Frequencies, divergence, the spacing of bending and torsion, and edges that may whistle. */
import { html, nothing } from 'lit';
import { withMark, writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { FrequencyStudy, WaterAndAir } from '../../solver/studies/frequencies.ts';
import type { Divergence, Spacing } from '../../solver/studies/running-swings.ts';
import type { WhistlePlace } from '../../solver/studies/whistle.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { tableWithGhost } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import type { GhostFigure } from '../ghost-figures.ts';
import '../line-chart.ts';
import { figureCell, quantityCell, signBefore, textOf } from '../table-cells.ts';
import { PART_NAMES, swingName } from './words.ts';

const hertz = (value: number) =>
  `${withMark(Number(value.toPrecision(3)).toLocaleString('en', { useGrouping: false }))} Hz`;

const hertzCell = (frequency: number | null) =>
  figureCell(
    frequency,
    (value, isDifference) => signBefore(value, hertz(Math.abs(value)), isDifference),
    'none found',
  );

export function swingTable(own: FrequencyStudy, ghost: FrequencyStudy | null) {
  const row = (name: string, { water, air }: WaterAndAir) => ({
    cells: [name, hertzCell(water), hertzCell(air)],
  });
  return tableWithGhost('First swings', own, ghost, ({ strut, wing }) => ({
    head: ['', 'in water', 'in air'],
    rows: [
      ...(strut ? [row('strut, bending sideways', strut.bending), row('strut, torsion', strut.twist)] : []),
      row('wing, bending', wing.bending),
      row('wing, torsion', wing.twist),
    ],
  }));
}

/** The ghost's swings are those of the same place in the row. */
export function wholeTable(own: FrequencyStudy, ghost: FrequencyStudy | null) {
  return tableWithGhost('The whole foil on its box, in water', own, ghost, ({ whole }) => ({
    head: ['moves', 'frequency', 'gives in'],
    rows: whole.map(({ symmetry, frequency, shares }, k) => ({
      key: `${symmetry} ${whole.slice(0, k).filter((other) => other.symmetry === symmetry).length}`,
      cells: [
        symmetry === 'symmetric' ? 'fore and aft, up' : 'to the side, rolling',
        hertzCell(frequency),
        shares
          .slice(0, 2)
          .map(({ group, share }) => `${swingName(group)} ${Math.round(100 * share)} %`)
          .join(', '),
      ],
    })),
  }));
}

const WHAT: Record<Divergence['what'], string> = {
  wing: 'The wing by itself',
  pitching: 'The foil on its strut, lengthwise',
  sideways: 'The foil on its strut, sideways',
};

export function swingFigures({ divergence: own }: FrequencyStudy): readonly GhostFigure<FrequencyStudy>[] {
  const gives = own.map(
    ({ what }): GhostFigure<FrequencyStudy> => ({
      label: `${WHAT[what]} gives way at`,
      read: ({ divergence }) => divergence.find((each) => each.what === what)?.speed,
      quantity: 'speed',
      why: 'none found',
    }),
  );
  return [
    ...gives,
    { label: 'Water moved with the foil', read: ({ masses }) => masses.water, quantity: 'mass' },
    { label: 'Its own mass', read: ({ masses }) => masses.own, quantity: 'mass' },
  ];
}

export function divergenceReadings(
  { divergence, fastest }: FrequencyStudy,
  top: number,
  units: UnitSystem,
): string[] {
  return divergence.map(({ what, speed }) =>
    speed === null
      ? `${WHAT[what]} finds no static divergence below ${formatWithUnit(fastest, 'speed', units)}.`
      : `${WHAT[what]} gives way at ${formatWithUnit(speed, 'speed', units)}, ${writeFixed(speed / top, 1)} times top speed.`,
  );
}

export function spacingChart(
  study: FrequencyStudy,
  ghost: FrequencyStudy | null,
  part: 'wing' | 'strut',
  units: UnitSystem,
) {
  const own = spacingLines(study, part, units);
  if (own.length === 0) return nothing;
  return html`<line-chart
    .heading=${`${part === 'wing' ? 'Wing' : 'Strut'}: bending and torsion as speed grows`}
    x-name="speed"
    .xUnit=${unitOf('speed', units)}
    .xDecimals=${1}
    y-name="frequency"
    y-unit="Hz"
    .yDecimals=${1}
    .summary=${`First bending and torsion frequency of the ${part} against speed.`}
    .series=${withGhost(own, ghost && spacingLines(ghost, part, units))}
  ></line-chart>`;
}

function spacingLines(
  { speeds, spacing }: FrequencyStudy,
  part: 'wing' | 'strut',
  units: UnitSystem,
): ChartSeries[] {
  const found = spacing[part];
  if (!found) return [];
  const lines = (['bending', 'twist'] as const).map((kind): ChartSeries => {
    const seen = speeds.flatMap((speed, k) => {
      const value = found[kind][k];
      return value === null || value === undefined
        ? []
        : [[toDisplay(speed, 'speed', units), value] as const];
    });
    return {
      name: kind === 'bending' ? 'bending' : 'torsion',
      x: seen.map(([x]) => x),
      y: seen.map(([, y]) => y),
      colour: kind === 'bending' ? '--carry' : '--thrown',
    };
  });
  return lines.some(({ x }) => x.length < 2) ? [] : lines;
}

function meeting(part: string, { meet }: Spacing, units: UnitSystem): string {
  return meet === null
    ? `${part}: bending and torsion stay apart up to one and a half times top speed.`
    : `${part}: bending and torsion run together at about ${formatWithUnit(meet, 'speed', units)} in this estimate without damping.`;
}

export function flutterCaution({ spacing, wingMassRatio }: FrequencyStudy, units: UnitSystem) {
  return html`<p class="note">
    ${meeting('Wing', spacing.wing, units)} ${spacing.strut ? meeting('Strut', spacing.strut, units) : nothing} A wing here
    weighs ${writeFixed(wingMassRatio, 2)} of the water it moves: formulas for aircraft flutter (T. Theodorsen, NACA Report 496,
    1935) do not reach so low, and tests of struts are few. There is no mark to pass: bending and torsion that draw together
    ask for caution, not for a number.
  </p>`;
}

export function whistleTable(
  own: readonly WhistlePlace[],
  ghost: readonly WhistlePlace[] | null,
  units: UnitSystem,
) {
  const edge = (value: number) =>
    quantityCell(value, 'length', units, units === 'workshop' ? { decimals: 2 } : {});
  return html`${tableWithGhost('Trailing edges', own, ghost, (places) => ({
    head: ['', 'edge', 'tone from', 'to', 'tail swings at', 'an edge that would not sing'],
    rows: places.map(({ part, where, edge: thickness, tone, tail, quietEdge, mayWhistle }) => ({
      cells: [
        `${PART_NAMES[part]}, ${where}`,
        edge(thickness),
        hertzCell(tone.takeOff),
        hertzCell(tone.top),
        hertzCell(tail),
        thickness <= quietEdge ? 'this one' : `${textOf(edge(quietEdge))} or less`,
      ],
      isHere: mayWhistle,
    })),
  }))}
    <p class="note">
      Vortices leave the edge at ${withMark('0.2')} of the speed over edge and boundary layer (W. K. Blake 1986, from memory); where that
      tone meets a swing of the part, or of its tail, it sings: bold rows. An edge below three tenths of the layer’s
      displacement thickness, or one bevelled on one side at about 30 degrees (common practice), is not expected to.
    </p>`;
}

export function swingsMet(places: readonly WhistlePlace[]): string | null {
  const wing = places.find(({ part, mayWhistle }) => part === 'wing' && mayWhistle);
  const first = wing?.swings[0];
  return first
    ? `Between take-off and top speed the wing’s tone at the ${wing.where} passes its ${first.name} at ${hertz(first.frequency)}.`
    : null;
}
