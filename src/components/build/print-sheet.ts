import { css, html, LitElement, nothing, svg } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Entry } from '../../workshop/entries.ts';
import type { Sheet, Table } from '../../workshop/sheet.ts';
import type { View } from '../../workshop/three-views.ts';

const GAP = 40; // mm between views

/** The build sheet as the browser prints it: the same words and figures as the PDF. Shown on paper alone. */
@customElement('print-sheet')
export class PrintSheet extends LitElement {
  static override styles = css`
    :host {
      display: none;
    }
    @media print {
      :host {
        display: block;
        font-size: 9pt;
        line-height: 1.35;
        font-variant-ligatures: none;
        color: #000;
      }
    }
    /* A table's foot stands on every page. */
    article {
      display: table;
      width: 100%;
    }
    .foot {
      display: table-footer-group;
      break-inside: avoid; /* else it stands on the last page alone */
      font-size: 7.5pt;
      color: #444;
    }
    .foot p {
      padding-top: 3mm;
    }
    h2 {
      font-size: 16pt;
      margin: 0;
    }
    h3 {
      font-size: 11pt;
      margin: 4mm 0 1mm;
      break-after: avoid;
    }
    p {
      margin: 0 0 1mm;
    }
    .notes {
      white-space: pre-wrap;
      overflow-wrap: anywhere;
    }
    svg {
      display: block;
      width: 100%;
      max-height: 70mm;
      margin: 3mm 0 0;
    }
    path {
      fill: none;
      stroke: #000;
      stroke-width: 0.5pt;
      vector-effect: non-scaling-stroke;
    }
    path.reference {
      stroke: #666;
      stroke-dasharray: 3 2;
    }
    .lists {
      display: grid;
      grid-template-columns: repeat(3, 1fr);
      gap: 0 5mm;
    }
    dl {
      margin: 0;
      display: grid;
      grid-template-columns: auto auto;
      gap: 0 2mm;
      font-size: 8pt;
    }
    dd {
      margin: 0;
      text-align: right;
      font-variant-numeric: tabular-nums;
    }
    table {
      width: 100%;
      border-collapse: collapse;
      font-size: 8pt;
      font-variant-numeric: tabular-nums;
    }
    th,
    td {
      text-align: right;
      padding: 0.4mm 1mm;
      border-bottom: 0.2mm solid #bbb;
    }
    th {
      font-weight: 600;
      vertical-align: bottom;
    }
    tr,
    .caution,
    .lists {
      break-inside: avoid;
    }
  `;

  @property({ attribute: false }) sheet: Sheet | null = null;

  protected override render() {
    const { sheet } = this;
    if (!sheet) return nothing;
    return html`<article aria-label="Build sheet">
      <div class="foot"><p>${sheet.name}, fingerprint ${sheet.fingerprint}, ${sheet.date}</p></div>
      <h2>${sheet.name}</h2>
      <p>Fingerprint <b>${sheet.fingerprint}</b>, ${sheet.date}. ${sheet.shape}</p>
      ${threeViews(sheet.views)}
      <div class="lists">
        ${list('Brief', sheet.brief)} ${list('Headline figures', sheet.figures)}
        ${list('Mass and material, estimated', sheet.masses)}
      </div>
      ${sheet.tables.map(table)}
      <h3>Laminate notes</h3>
      <p class="notes">${sheet.notes || 'None written.'}</p>
      <div class="caution">
        <h3>Caution</h3>
        <p>${sheet.caution}</p>
      </div>
    </article>`;
  }
}

/** Side by side at one scale. */
function threeViews(views: readonly View[]) {
  const widths = views.map(({ box }) => box.right - box.left);
  const height = Math.max(...views.map(({ box }) => box.top - box.bottom));
  const width = widths.reduce((sum, each) => sum + each + GAP, -GAP);
  const letters = 0.018 * width;
  const starts = widths.map((_, k) => widths.slice(0, k).reduce((sum, each) => sum + each + GAP, 0));
  return html`<svg
    viewBox="0 0 ${width} ${height + 2 * letters}"
    role="img"
    aria-label="The foil from ahead, from above and from the side"
  >
    ${views.map(({ title, paths, box }, k) => {
      const place = ([x, y]: readonly [number, number]) =>
        `${(starts[k]! + x - box.left).toFixed(2)} ${(height - y + box.bottom).toFixed(2)}`;
      return svg`${paths.map(
        ({ layer, points, isClosed }) =>
          svg`<path class=${layer} d="M${points.map(place).join('L')}${isClosed ? 'Z' : ''}"></path>`,
      )}<text x=${starts[k]!} y=${height + 1.7 * letters} font-size=${letters}>${title}</text>`;
    })}
  </svg>`;
}

function list(title: string, entries: readonly Entry[]) {
  return html`<section>
    <h3>${title}</h3>
    <dl>${entries.map(([label, value]) => html`<dt>${label}</dt><dd>${value}</dd>`)}</dl>
  </section>`;
}

function table({ title, head, rows }: Table) {
  return html`<h3>${title}</h3>
    <table>
      <thead>
        <tr>
          ${head.map((text) => html`<th scope="col">${text}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map((cells) => html`<tr>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`)}
      </tbody>
    </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'print-sheet': PrintSheet;
  }
}
