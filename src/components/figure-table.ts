import { css, html, nothing, type TemplateResult } from 'lit';
import { type Cell, cellStyles, drawCell, textOf } from './table-cells.ts';

const ownStyles = css`
  .table {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    font-variant-numeric: tabular-nums;
    font-size: var(--step--1);
    width: 100%;
  }
  caption {
    max-width: calc(100vw - 2rem); /* stays in sight while a wide table is slid on a phone */
    position: sticky;
    left: 0;
    text-align: left;
    font-weight: 600;
    color: var(--soft);
    padding: 0.35rem 0 0.2rem;
  }
  th,
  td {
    padding: 0.15rem 0.5rem 0.15rem 0;
    text-align: right;
    border-bottom: 1px dotted var(--line);
    white-space: nowrap;
  }
  th {
    font-weight: 500;
    color: var(--soft);
  }
  th[scope='row'],
  th:first-child {
    text-align: left;
  }
  thead th {
    vertical-align: bottom;
    white-space: normal;
  }
  tr.here :is(th, td) {
    font-weight: 700;
    color: var(--ink);
  }
`;

export const tableStyles = [ownStyles, cellStyles];

export interface TableRow {
  cells: readonly (Cell | undefined)[]; // the first names the row; of a ghost's row some may be missing
  isHere?: boolean; // the design as it is
  key?: string; // by which the ghost's row is found; else the name
}

/** Heads and rows; the ghost's have the same columns. */
export interface TableContent {
  head: readonly Cell[];
  rows: readonly TableRow[];
}

/** A table of figures, the ghost's below each. */
export function figureTable(
  caption: string,
  head: readonly Cell[],
  rows: readonly TableRow[],
  ghost: TableContent | null = null,
): TemplateResult {
  return tableFrame(
    caption,
    head,
    rows.map((row) => {
      const [name, ...cells] = row.cells;
      const behind = ghost?.rows.find((other) => keyOf(other) === keyOf(row))?.cells;
      return html`<tr class=${row.isHere ? 'here' : ''}>
          <th scope="row">${drawCell(name ?? '', row.key === undefined ? undefined : behind?.[0])}</th>
          ${cells.map((cell, k) => html`<td>${drawCell(cell ?? '', behind?.[k + 1])}</td>`)}
        </tr>`;
    }),
    { ghostHead: ghost?.head ?? null },
  );
}

/** The same table of the open design's answer and of the ghost's. */
export function tableWithGhost<Answer>(
  caption: string,
  own: Answer,
  ghost: Answer | null | undefined,
  content: (of: Answer) => TableContent,
): TemplateResult {
  const { head, rows } = content(own);
  return figureTable(caption, head, rows, ghost ? content(ghost) : null);
}

const keyOf = ({ key, cells: [name = ''] }: TableRow): string => key ?? textOf(name);

interface FrameLooks {
  kind?: string;
  label?: string;
  ghostHead?: readonly Cell[] | null; // there are figures of a ghost in the rows
}

/** Caption and heads round rows of one's own. A wide table scrolls by itself and can be reached by keyboard. */
export function tableFrame(
  caption: string,
  head: readonly Cell[],
  rows: readonly TemplateResult[],
  { kind = '', label = caption, ghostHead = null }: FrameLooks = {},
): TemplateResult {
  return html`<div class="table ${kind}" role="region" tabindex="0" aria-label=${label}>
    <table>
      <caption>
        ${caption}${ghostHead ? html`<span class="ghost-key">the ghost, and the difference to it</span>` : nothing}
      </caption>
      <thead>
        <tr>
          ${head.map((title, k) => (title ? html`<th scope="col">${drawCell(title, ghostHead?.[k])}</th>` : html`<td></td>`))}
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>
  </div>`;
}
