/** What a proposal answers: start against proposal, what binds and what it costs, the next cheapest change, clashes. */
import { html, nothing, type TemplateResult } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Clash, Easing } from '../../solver/studies/propose/explain.ts';
import type { FigureRow, Proposal } from '../../solver/studies/propose/proposal.ts';
import type { QuantityName } from '../../solver/studies/propose/quantities.ts';
import type { Standing } from '../../solver/studies/propose/standing.ts';
import { figureTable, type TableRow } from '../figure-table.ts';
import { type Cell, quantityCell } from '../table-cells.ts';
import { FIGURE_WORDS, inSentence, QUANTITY_WORDS, type Words, writeFigure, writeQuantity } from './words.ts';

export type FoundProposal = Extract<Proposal, { outcome: 'found' }>;

const newtons = (value: number | null, units: UnitSystem) =>
  value === null ? '–' : formatWithUnit(value, 'force', units, { decimals: 1 });

export function summary({ table }: FoundProposal, units: UnitSystem): string {
  const { start, proposal } = table.weightedDrag;
  if (start === null || proposal === null)
    return `The proposal has ${newtons(proposal, units)} of drag over the weighted speeds.`;
  const saved = start - proposal;
  if (Math.abs(saved) < 0.001 * start)
    return `Nothing better within these ranges and limits: ${newtons(proposal, units)} of drag over the weighted speeds.`;
  const percent = Math.round((100 * Math.abs(saved)) / start);
  return saved > 0
    ? `${newtons(saved, units)} less drag over the weighted speeds, ${percent} %: ${newtons(proposal, units)} in place of ${newtons(start, units)}.`
    : `The drawn wing breaks a limit; holding all of them takes ${newtons(-saved, units)} more drag over the weighted speeds, ${percent} %: ${newtons(proposal, units)}.`;
}

/** Drags and figures, start against proposal, with what they were held to; the ghost in this brief below the proposal. */
export function comparison(
  { table, binding }: FoundProposal,
  ghost: Standing | null,
  units: UnitSystem,
): TemplateResult {
  const force = (value: number | null) => quantityCell(value, 'force', units, { decimals: 1 });
  const drags = [
    ['Drag, weighted', table.weightedDrag, ghost?.weightedDrag] as const,
    ['Drag at take-off', table.drag.takeOff, ghost?.drag.takeOff] as const,
    ['Drag at cruise', table.drag.cruise, ghost?.drag.cruise] as const,
    ['Drag at top speed', table.drag.top, ghost?.drag.top] as const,
  ];
  const figures = table.figures.filter(({ start, proposal }) => start !== null || proposal !== null);
  const rows: TableRow[] = [
    ...drags.map(([name, { start, proposal }]) => ({ cells: [name, force(start), force(proposal), ''] })),
    ...figures.map((row): TableRow => {
      const binds = binding.some(({ figure }) => figure === row.name);
      const { label, quantity } = FIGURE_WORDS[row.name];
      return {
        cells: [
          label,
          quantityCell(row.start, quantity, units),
          quantityCell(row.proposal, quantity, units),
          `${heldTo(row, units)}${binds ? ', binds' : ''}`,
        ],
        isHere: binds,
      };
    }),
  ];
  const behind = ghost && [
    ...drags.map(([name, , drag]) => underProposal(name, force(drag ?? null))),
    ...figures.map(({ name }) => {
      const { label, quantity } = FIGURE_WORDS[name];
      return underProposal(label, quantityCell(ghost.figures[name], quantity, units));
    }),
  ];
  return figureTable('Start against proposal', COMPARED, rows, behind && { head: COMPARED, rows: behind });
}

const COMPARED = ['', 'start', 'proposal', 'held to'];
const MOVED = ['', 'start', 'proposal', 'might move in'];

/** A ghost's row has a figure in the proposal's column alone. */
const underProposal = (name: string, cell: Cell): TableRow => ({ cells: [name, undefined, cell] });

function heldTo({ name, least, most }: FigureRow, units: UnitSystem): string {
  const parts = [
    ...(least === null ? [] : [`at least ${writeFigure(least, name, units)}`]),
    ...(most === null ? [] : [`at most ${writeFigure(most, name, units)}`]),
  ];
  return parts.join(', ');
}

export function movedTable(
  { table }: FoundProposal,
  ghost: Standing | null,
  units: UnitSystem,
): TemplateResult {
  const rows = table.quantities.map(({ name, start, proposal, range }): TableRow => {
    const { label, quantity } = QUANTITY_WORDS[name];
    const write = (value: number) => formatWithUnit(value, quantity, units);
    return {
      cells: [
        label,
        quantityOf(start, name, units),
        quantityOf(proposal, name, units),
        range ? `${write(range.least)} to ${write(range.most)}` : 'held',
      ],
    };
  });
  const behind = ghost?.quantities;
  const others = table.quantities.map(({ name }) =>
    underProposal(QUANTITY_WORDS[name].label, quantityOf(behind?.[name] ?? [], name, units)),
  );
  return figureTable('What moved', MOVED, rows, behind ? { head: MOVED, rows: others } : null);
}

/** Several values, of a law of points, are text: they have no difference. */
function quantityOf(values: readonly number[], name: QuantityName, units: UnitSystem): Cell {
  const [value] = values;
  return values.length === 1 && value !== undefined
    ? quantityCell(value, QUANTITY_WORDS[name].quantity, units)
    : writeQuantity(values, name, units);
}

/** Each limit that binds, by what a step of ease saves. */
export function costs({ binding, easings }: FoundProposal, units: UnitSystem): TemplateResult {
  if (binding.length === 0) return html`<p class="say">No limit binds: only the ranges hold it.</p>`;
  return html`<p class="say">What binds, and what it costs:</p>
    <ul class="list">
      ${binding.map(({ figure, side, value }) => {
        const words = FIGURE_WORDS[figure];
        const easing = easings.find(({ kind, name }) => kind === 'limit' && name === figure);
        return html`<li>
          ${inSentence(words)} at ${side} ${writeFigure(value, figure, units)}${
            easing ? `: ${savingOf(easing, words, units)}` : ''
          }
        </li>`;
      })}
    </ul>`;
}

function savingOf({ by, saves }: Easing, { quantity }: Words, units: UnitSystem): string {
  return `${formatWithUnit(by, quantity, units, { sign: true })} would save ${formatWithUnit(saves, 'force', units)}`;
}

const KINDS: Readonly<Record<Easing['kind'], string>> = {
  limit: 'a limit eased',
  range: 'a range widened',
  held: 'not ticked now',
};

/** What would save most next. */
export function nextChanges({ easings }: FoundProposal, units: UnitSystem): TemplateResult | typeof nothing {
  const [first] = easings;
  if (!first) return nothing;
  const rows = easings.slice(0, 8).map((easing): TableRow => {
    const words = wordsOf(easing.name);
    return {
      cells: [
        words.label,
        KINDS[easing.kind],
        formatWithUnit(easing.by, words.quantity, units, { sign: true }),
        formatWithUnit(easing.saves, 'force', units),
      ],
    };
  });
  const words = wordsOf(first.name);
  return html`<p class="say">
      The next cheapest change: ${inSentence(words)} by ${savingOf(first, words, units)} (${KINDS[first.kind]}).
    </p>
    ${figureTable('What one step more would save, to first order', ['', '', 'step', 'saves'], rows)}`;
}

function wordsOf(name: Easing['name']): Words {
  return name in FIGURE_WORDS
    ? FIGURE_WORDS[name as keyof typeof FIGURE_WORDS]
    : QUANTITY_WORDS[name as keyof typeof QUANTITY_WORDS];
}

export function clashText({ limits, isBalance, ranges }: Clash, units: UnitSystem): TemplateResult {
  return html`<div class="trouble" role="status">
    <p>No wing within the ranges holds all of these at once:</p>
    <ul class="list">
      ${limits.map(
        ({ figure, side, value }) =>
          html`<li>${inSentence(FIGURE_WORDS[figure])} at ${side} ${writeFigure(value, figure, units)}</li>`,
      )}
      ${isBalance ? html`<li>the drawn stance balanced at cruise</li>` : nothing}
      ${ranges.map(({ name, end }) => html`<li>${inSentence(QUANTITY_WORDS[name])} at its ${end} already</li>`)}
    </ul>
    <p>Ease one of them, or widen a range.</p>
  </div>`;
}
