/** The strut under load, and root strains against what the laminate bears. */
import { html, nothing } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SideRule, SideTrim } from '../../solver/studies/side-trim.ts';
import type { LoadState, StrutState } from '../../solver/studies/strut-state.ts';
import { take } from '../asked.ts';
import '../choice-field.ts';
import { tableWithGhost } from '../figure-table.ts';
import { figureCell, quantityCell } from '../table-cells.ts';
import { PART_NAMES } from './words.ts';

const STATES = ['test', 'running'] as const;
const STATE_NAMES = { running: 'running at cruise', test: 'standard test load' };

/** The ways to hold the rig's pull that Speed knows. */
const HOLDS: ReadonlyArray<{ value: SideRule['by']; label: string }> = [
  { value: 'heel', label: 'upright' },
  { value: 'roll', label: 'by a rider who stays in line' },
  { value: 'strut', label: 'with the strut unloaded' },
];

/** The choice of how the rig's pull is held; `choose` hears it. Nothing without a pull. */
export function pullField(
  design: Design,
  { pulled, problem }: StrutState,
  side: SideRule,
  units: UnitSystem,
  choose: (side: SideRule) => void,
) {
  if (!design.brief.sidePull?.share) return nothing;
  const set = (value: unknown) => {
    const by = value as SideRule['by'];
    choose(by === 'heel' ? { by, heel: 0 } : { by });
  };
  return html`<div class="controls">
      <choice-field
        label="Rig’s pull held"
        .style=${'--control-width: 13rem'}
        .value=${side.by}
        .choices=${HOLDS}
        .toChanges=${(value: string) => [{ path: '', value }]}
        @design-edit=${take(set)}
      ></choice-field>
    </div>
    ${
      pulled
        ? html`<p class="say">${pullReading(pulled, units)}</p>`
        : html`<p class="trouble" role="status">Against the rig’s pull: ${problem}. The loads here leave it out.</p>`
    }`;
}

function pullReading({ leeway, heel, strutForce }: SideTrim, units: UnitSystem): string {
  const angle = (value: number) => formatWithUnit(Math.abs(value), 'angle', units);
  const leans = Math.abs(heel) < 0.05 ? 'stays upright' : `heels ${angle(heel)} ${sideOf(heel)}`;
  return `Against the rig’s pull the foil ${leans} and slips ${angle(leeway)} ${sideOf(leeway)}; the strut bears ${formatWithUnit(Math.abs(strutForce), 'force', units)}.`;
}

const sideOf = (value: number) => (value > 0 ? 'to starboard' : 'to port');

export function strutTable(own: StrutState, ghost: StrutState | null, units: UnitSystem) {
  const foot = ({ foot: motion }: LoadState) => [
    quantityCell(motion?.side, 'length', units, { sign: true }),
    quantityCell(motion?.aft, 'length', units, { sign: true }),
    quantityCell(motion?.twist, 'angle', units, { decimals: 2, sign: true }),
  ];
  return tableWithGhost('Where the strut’s foot goes', own, ghost, (strut) => ({
    head: ['', 'to starboard', 'aft', 'twist'],
    rows: STATES.map((state) => ({ cells: [STATE_NAMES[state], ...foot(strut[state])] })),
  }));
}

/** Permille of strain, and what is left of the allowable after the safety factor. */
export function strainTable(own: StrutState, ghost: StrutState | null, units: UnitSystem) {
  const permille = (strain: number) =>
    figureCell(
      strain,
      (value, sign) => `${formatValue(1000 * value, 'ratio', 'si', { decimals: 2, sign })} ‰`,
    );
  const left = (reserve: number | null) =>
    figureCell(reserve, (value, isDifference) =>
      !isDifference && value < 1
        ? `${writeFixed(value, 2)}: short`
        : formatValue(value, 'ratio', 'si', { decimals: 1, sign: isDifference }),
    );
  const rowsOf = (strut: StrutState) =>
    STATES.flatMap((state) =>
      strut[state].strains
        .filter(({ strain }) => strain > 1e-6)
        .map(({ part, strain, from, allowable, reserve }) => ({
          cells: [
            `${PART_NAMES[part]}, ${STATE_NAMES[state]}`,
            permille(strain),
            quantityCell(from, 'length', units),
            permille(allowable),
            left(reserve),
          ],
          isHere: reserve !== null && reserve < 1,
        })),
    );
  return html`${tableWithGhost('Strain at the most strained place', own, ghost, (strut) => ({
    head: ['', 'strain', 'from its held end', 'allowable', `reserve at ${strut.safety} times`],
    rows: rowsOf(strut),
  }))}
    <p class="note">
      Reserve is the allowable over the strain times your safety factor; below 1 it is short. Landing, pumping and running
      aground load a foil far beyond cruise. Bonds, bolts and the box itself are not looked at.
    </p>`;
}
