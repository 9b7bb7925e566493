/** The choices of stabilizer and the changes to it, each a row with a button that takes it. */
import { css, html, nothing, type TemplateResult } from 'lit';
import { formatValue, type UnitSystem } from '../../session/units.ts';
import type { StabilizerChanges } from '../../solver/studies/stabilizer-changes.ts';
import type { Sizing } from '../../solver/studies/stabilizer-sizing.ts';
import type { TriedStabilizer } from '../../solver/studies/stabilizer-trials.ts';
import { tableFrame } from '../figure-table.ts';
import { type Cell, drawCell, figureCell, quantityCell } from '../table-cells.ts';
import { changeName, foundOf, goalName, shiftOf } from './sizing-readings.ts';

/** Takes a stabilizer; `label` names the step for undo. */
export type Take = (label: string, found: TriedStabilizer) => void;

export const sizingStyles = css`
  .long {
    max-width: 76rem;
  }
  /* On a phone the buttons stay in sight while the figures scroll under them. */
  .long :is(thead, tr:has(button)) td:last-child {
    position: sticky;
    right: 0;
    padding-left: 0.4rem;
    padding-right: 2px;
    background: var(--paper);
  }
  td.problem {
    text-align: left;
    color: var(--soft);
    white-space: normal;
  }
`;

/** The ghost's stabilizer chosen to the same end stands beside each. */
export function choicesTable(
  sizing: Sizing,
  ghost: Sizing | null,
  units: UnitSystem,
  take: Take,
): TemplateResult {
  const head = ['area', 'arm', 'incidence', 'neutral point', 'margin', 'hold index', 'its lift', 'drag', ''];
  const rows = sizing.choices.map((choice) => {
    const name = goalName(choice);
    if (choice.problem !== null) return problemRow(name, choice.problem, head.length);
    const { found, goal } = choice;
    const other = ghost && foundOf(ghost, goal);
    const cells = (of: TriedStabilizer, all: Sizing) => [
      quantityCell(of.area, 'area', units),
      quantityCell(of.arm, 'length', units),
      quantityCell(of.incidence, 'angle', units, { decimals: 2 }),
      ...common(of, foundOf(all, 'present')?.totalDrag ?? null, units),
    ];
    const text = goal === 'present' ? 'Balance it' : 'Take it';
    return row(name, goal === 'present', cells(found, sizing), other && cells(other, ghost), () =>
      button(text, `stabilizer for ${name}`, found, take),
    );
  });
  return table('Choices of stabilizer', 'Choices, balanced at cruise', head, rows, ghost !== null);
}

export function changesTable(
  changes: StabilizerChanges,
  ghost: StabilizerChanges | null,
  units: UnitSystem,
  take: Take,
): TemplateResult {
  const head = ['rider moves', 'neutral point', 'margin', 'hold index', 'its lift', 'drag', ''];
  const rows = changes.trials.map(({ change, found, problem }) => {
    const name = changeName(change, changes, units);
    if (!found) return problemRow(name, problem ?? '', head.length);
    const isPresent = change === 'present';
    const cells = (of: TriedStabilizer, { trials }: StabilizerChanges) => {
      const present = trials[0]!.found;
      const moved = present && !isPresent ? of.stance - present.stance : null;
      return [
        figureCell(moved, (value) => shiftOf(value, units)),
        ...common(of, present?.totalDrag ?? null, units),
      ];
    };
    const other = ghost?.trials.find((trial) => trial.change === change)?.found;
    return row(name, isPresent, cells(found, changes), other && ghost ? cells(other, ghost) : null, () =>
      isPresent ? nothing : button('Take it', name, found, take),
    );
  });
  return table('Changes to the stabilizer', 'At cruise, the wedge left as it is', head, rows, ghost !== null);
}

function table(
  label: string,
  caption: string,
  head: readonly string[],
  rows: readonly TemplateResult[],
  hasGhost: boolean,
) {
  const heads = ['', ...head];
  return tableFrame(caption, heads, rows, { kind: 'long', label, ghostHead: hasGhost ? heads : null });
}

function row(
  name: string,
  isHere: boolean,
  cells: readonly Cell[],
  ghost: readonly Cell[] | null,
  last: () => unknown,
) {
  return html`<tr class=${isHere ? 'here' : ''}>
    <th scope="row">${name}</th>
    ${cells.map((cell, k) => html`<td>${drawCell(cell, ghost?.[k])}</td>`)}
    <td>${last()}</td>
  </tr>`;
}

function problemRow(name: string, problem: string, columns: number) {
  return html`<tr>
    <th scope="row">${name}</th>
    <td class="problem" colspan=${columns}>${problem}</td>
  </tr>`;
}

function common(found: TriedStabilizer, drag: number | null, units: UnitSystem): Cell[] {
  return [
    quantityCell(found.neutralPoint, 'length', units),
    quantityCell(found.staticMargin, 'share', 'si', { decimals: 0 }),
    quantityCell(found.holdIndex, 'ratio', 'si', { decimals: 2, why: 'none' }),
    quantityCell(found.lift, 'force', units),
    dragCell(found.totalDrag, drag, units),
  ];
}

/** "84.7 N", or with what it adds to the present one. */
function dragCell(total: number, present: number | null, units: UnitSystem) {
  const more = present === null ? 0 : total - present;
  const added = formatValue(more, 'force', units, { sign: true, decimals: 2 });
  const plain = quantityCell(total, 'force', units);
  return figureCell(total, (value, isDifference) => {
    const text = plain.write(value, isDifference);
    return isDifference || Math.abs(more) < 1e-9 ? text : `${text} (${added})`;
  });
}

function button(text: string, label: string, found: TriedStabilizer, take: Take) {
  return html`<button type="button" aria-label="${text}: ${label}" @click=${() => take(label, found)}>
    ${text}
  </button>`;
}
