/** The choices of stabilizer and the changes to it, each a row with a button that takes it. */
import { css, html, nothing, type TemplateResult } from 'lit';
import { formatValue, formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { StabilizerChanges } from '../../solver/studies/stabilizer-changes.ts';
import type { Sizing } from '../../solver/studies/stabilizer-sizing.ts';
import type { TriedStabilizer } from '../../solver/studies/stabilizer-trials.ts';
import { tableFrame } from '../figure-table.ts';
import { changeName, foundOf, goalName, percent, shiftOf } from './sizing-readings.ts';

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

export function choicesTable(sizing: Sizing, units: UnitSystem, take: Take): TemplateResult {
  const drag = foundOf(sizing, 'present')?.totalDrag ?? null;
  const head = ['area', 'arm', 'incidence', 'neutral point', 'margin', 'hold index', 'its lift', 'drag', ''];
  const rows = sizing.choices.map((choice) => {
    const name = goalName(choice);
    if (choice.problem !== null) return problemRow(name, choice.problem, head.length);
    const { found, goal } = choice;
    const own = [
      formatWithUnit(found.area, 'area', units),
      formatWithUnit(found.arm, 'length', units),
      formatWithUnit(found.incidence, 'angle', units, { decimals: 2 }),
    ];
    const text = goal === 'present' ? 'Balance it' : 'Take it';
    return row(name, goal === 'present', [...own, ...common(found, drag, units)], () =>
      button(text, `stabilizer for ${name}`, found, take),
    );
  });
  return table('Choices of stabilizer', 'Choices, balanced at cruise', head, rows);
}

export function changesTable(changes: StabilizerChanges, units: UnitSystem, take: Take): TemplateResult {
  const present = changes.trials[0]!.found;
  const head = ['rider moves', 'neutral point', 'margin', 'hold index', 'its lift', 'drag', ''];
  const rows = changes.trials.map(({ change, found, problem }) => {
    const name = changeName(change, changes, units);
    if (!found) return problemRow(name, problem ?? '', head.length);
    const isPresent = change === 'present';
    const moved = present && !isPresent ? shiftOf(found.stance - present.stance, units) : '–';
    return row(name, isPresent, [moved, ...common(found, present?.totalDrag ?? null, units)], () =>
      isPresent ? nothing : button('Take it', name, found, take),
    );
  });
  return table('Changes to the stabilizer', 'At cruise, the wedge left as it is', head, rows);
}

const table = (label: string, caption: string, head: readonly string[], rows: readonly TemplateResult[]) =>
  tableFrame(caption, ['', ...head], rows, { kind: 'long', label });

function row(name: string, isHere: boolean, cells: readonly string[], last: () => unknown) {
  return html`<tr class=${isHere ? 'here' : ''}>
    <th scope="row">${name}</th>
    ${cells.map((cell) => html`<td>${cell}</td>`)}
    <td>${last()}</td>
  </tr>`;
}

function problemRow(name: string, problem: string, columns: number) {
  return html`<tr>
    <th scope="row">${name}</th>
    <td class="problem" colspan=${columns}>${problem}</td>
  </tr>`;
}

function common(found: TriedStabilizer, drag: number | null, units: UnitSystem): string[] {
  return [
    formatWithUnit(found.neutralPoint, 'length', units),
    percent(found.staticMargin),
    found.holdIndex === null ? 'none' : formatValue(found.holdIndex, 'ratio', 'si', { decimals: 2 }),
    formatWithUnit(found.lift, 'force', units),
    dragOf(found.totalDrag, drag, units),
  ];
}

/** "84.7 N", or with what it adds to the present one. */
function dragOf(total: number, present: number | null, units: UnitSystem): string {
  const more = present === null ? 0 : total - present;
  const text = formatWithUnit(total, 'force', units);
  return Math.abs(more) < 1e-9
    ? text
    : `${text} (${formatValue(more, 'force', units, { sign: true, decimals: 2 })})`;
}

function button(text: string, label: string, found: TriedStabilizer, take: Take) {
  return html`<button type="button" aria-label="${text}: ${label}" @click=${() => take(label, found)}>
    ${text}
  </button>`;
}
