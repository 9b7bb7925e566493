import { css, html, type TemplateResult } from 'lit';

export const tableStyles = css`
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
    text-align: left;
    font-weight: 600;
    color: var(--soft);
    padding-bottom: 0.2rem;
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

export interface TableRow {
  cells: readonly string[]; // the first names the row
  isHere?: boolean; // the design as it is
}

/** A table of figures already written out. */
export function figureTable(
  caption: string,
  head: readonly string[],
  rows: readonly TableRow[],
): TemplateResult {
  return tableFrame(
    caption,
    head,
    rows.map(
      ({ cells: [name, ...cells], isHere }) =>
        html`<tr class=${isHere ? 'here' : ''}>
          <th scope="row">${name}</th>
          ${cells.map((cell) => html`<td>${cell}</td>`)}
        </tr>`,
    ),
  );
}

/** Caption and heads round rows of one's own. A wide table scrolls by itself and can be reached by keyboard. */
export function tableFrame(
  caption: string,
  head: readonly string[],
  rows: readonly TemplateResult[],
  { kind = '', label = caption } = {},
): TemplateResult {
  return html`<div class="table ${kind}" role="region" tabindex="0" aria-label=${label}>
    <table>
      <caption>
        ${caption}
      </caption>
      <thead>
        <tr>
          ${head.map((title) => (title ? html`<th scope="col">${title}</th>` : html`<td></td>`))}
        </tr>
      </thead>
      <tbody>
        ${rows}
      </tbody>
    </table>
  </div>`;
}
