/** Built droop against flying droop: sentence, table and chart; what to build so that it flies as drawn. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem, unitOf } from '../../session/units.ts';
import type { BuiltShape } from '../../solver/studies/built-shape.ts';
import type { BuiltAndFlying, FlyingShape } from '../../solver/studies/flying-shape.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { tableWithGhost } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import type { GhostFigure } from '../ghost-figures.ts';
import '../line-chart.ts';
import { quantityCell } from '../table-cells.ts';

const angle = (value: number, units: UnitSystem) => formatWithUnit(value, 'angle', units, { decimals: 2 });

export function flyingReading(shape: FlyingShape, units: UnitSystem): string {
  const { built, flying } = shape.tipDroop;
  const lost = built - flying;
  const way = lost >= 0 ? 'less' : 'more';
  return `Carrying ${formatWithUnit(shape.lift, 'force', units)} the tip flies at ${angle(flying, units)} of droop, ${angle(
    Math.abs(lost),
    units,
  )} ${way} than it was built with.`;
}

export function buildReading({ tipDroop, tipTwist }: BuiltShape, units: UnitSystem): string {
  return `To fly as drawn it has to be built with ${angle(tipDroop.build, units)} of droop and ${angle(
    tipTwist.build,
    units,
  )} of twist at the tip, in place of ${angle(tipDroop.wanted, units)} and ${angle(tipTwist.wanted, units)}.`;
}

export function flyingTable(own: FlyingShape, ghost: FlyingShape | null, units: UnitSystem) {
  const row = (
    name: string,
    { built, flying }: { built: number | null; flying: number | null },
    quantity: Quantity,
    decimals?: number,
  ) => {
    const looks = decimals === undefined ? {} : { decimals };
    const cell = (value: number | null) => quantityCell(value, quantity, units, { ...looks, why: 'none' });
    const change = built === null || flying === null ? null : flying - built;
    const moved = quantityCell(change, quantity, units, { ...looks, sign: true, bare: true, why: '' });
    return { cells: [name, cell(built), cell(flying), moved] };
  };
  const pair = (name: string, values: BuiltAndFlying | null, quantity: Quantity, decimals?: number) =>
    values ? [row(name, values, quantity, decimals)] : [];
  return tableWithGhost('As built and as it flies at cruise', own, ghost, (shape) => ({
    head: ['', 'built', 'flying', 'change'],
    rows: [
      row('droop at the tip', shape.tipDroop, 'angle', 2),
      row('drop of the tip', shape.tipDrop, 'length'),
      row('effective droop', shape.effectiveDroop, 'angle', 2),
      row('twist of the tip', shape.washout, 'angle', 2),
      row('angle that carries the weight', shape.alpha, 'angle', 2),
      row('lift at the built foil’s angle', shape.liftAtSameAngle, 'force'),
      row('induced drag', shape.inducedDrag, 'force', 2),
      row('hold index', shape.holdIndex, 'ratio', 2),
      row('roll from yaw, solved', shape.rollFromYaw, 'ratio', 3),
      ...pair('stabilizer, droop at the tip', shape.stabilizerTipDroop, 'angle', 2),
    ],
  }));
}

export const BUILT_FIGURES: readonly GhostFigure<BuiltShape>[] = [
  {
    label: 'Droop to build at the tip',
    read: ({ tipDroop }) => tipDroop.build,
    quantity: 'angle',
    decimals: 2,
  },
  {
    label: 'Twist to build at the tip',
    read: ({ tipTwist }) => tipTwist.build,
    quantity: 'angle',
    decimals: 2,
  },
];

function droopLines({ wing }: FlyingShape): ChartSeries[] {
  const x = Array.from(wing.eta, (eta) => 100 * eta);
  return [
    { name: 'built', x, y: [...wing.droop.built], colour: '--soft', dash: [6, 4] },
    { name: 'flying', x, y: [...wing.droop.flying], colour: '--carry' },
  ];
}

export function droopChart(shape: FlyingShape, ghost: FlyingShape | null, units: UnitSystem) {
  return html`<line-chart
    heading="Droop along the half span"
    x-name="share of the half length"
    x-unit="%"
    y-name="droop, down"
    .yUnit=${unitOf('angle', units)}
    .yDecimals=${1}
    .summary=${'Built and flying droop along the half span, from root to tip.'}
    .series=${withGhost(droopLines(shape), ghost && droopLines(ghost))}
  ></line-chart>`;
}

export function flyingNote(shape: FlyingShape, units: UnitSystem) {
  return html`<p class="note">
    Flow and structure settled in ${shape.steps} steps; the wing stores ${writeFixed(shape.energy.strain, 2)} J, its load did
    ${writeFixed(shape.energy.work, 2)} J of work.
    ${
      shape.stabilizer
        ? html`The stabilizer’s incidence against the wing changes by
          ${formatWithUnit(shape.stabilizerTurn, 'angle', units, { decimals: 2, sign: true })} as fuselage and joints give.`
        : nothing
    }
    The document’s shape is what is built, and what every other figure takes as rigid; Build can write the shape that flies
    as drawn.
  </p>`;
}
