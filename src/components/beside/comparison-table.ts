import { css, html, LitElement } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { saveTextFile } from '../../session/files.ts';
import { MARKS, type MarkName } from '../../session/kept-record.ts';
import type { UnitSystem } from '../../session/units.ts';
import { formatValue } from '../../session/units.ts';
import { csvText } from '../chart-columns.ts';
import { copyText } from '../copy-text.ts';
import { tableStyles } from '../figure-table.ts';
import { panelStyles } from '../panel-styles.ts';
import { COLUMNS, columnTitle, type FigureColumn, MARK_NAMES, shownNumber } from './columns.ts';
import { type Entry, OPEN } from './entries.ts';

interface Column {
  id: string;
  title: string;
  value: (entry: Entry) => string | number | null;
  write: (entry: Entry) => string;
  sheet: (entry: Entry) => string | number | null; // in a file, in the unit of the title
}

/** Designs by their figures and marks, a row each; any column sorts; to be copied or saved as comma-separated values. */
@customElement('comparison-table')
export class ComparisonTable extends LitElement {
  static override styles = [
    panelStyles,
    tableStyles,
    css`
      thead th {
        padding: 0 0.2rem 0 0;
      }
      thead button {
        width: 100%;
        border-color: transparent;
        text-align: right;
        font-weight: 500;
        padding: 0.15rem 0.3rem;
      }
      th:first-child button {
        text-align: left;
      }
      th[aria-sort='ascending'] button::after {
        content: ' ▲' / '';
      }
      th[aria-sort='descending'] button::after {
        content: ' ▼' / '';
      }
      th[aria-sort='ascending'] button,
      th[aria-sort='descending'] button {
        color: var(--ink);
        font-weight: 650;
      }
      th[scope='row'] {
        position: sticky;
        left: 0;
        background: var(--paper);
        white-space: normal;
      }
      .name {
        display: -webkit-box;
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 3; /* the whole of it is in the title and on its card */
        overflow: hidden;
        width: max-content;
        max-width: min(14rem, 34vw);
        overflow-wrap: anywhere;
      }
      .tag {
        display: inline-block;
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 0 0.25rem;
        font-weight: 400;
      }
      .tag.ghost {
        border-style: dashed;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.35rem 0.6rem;
        align-items: center;
        margin: 0.4rem 0;
      }
    `,
  ];

  @property({ attribute: false }) entries: readonly Entry[] = [];
  @property() units: UnitSystem = 'workshop';

  @state() private by: { id: string; isRising: boolean } | null = null;
  @state() private said = '';

  protected override render() {
    const columns = this.#columns();
    const rows = this.#sorted(columns);
    return html`<div class="table" role="region" tabindex="0" aria-label="Designs compared">
        <table>
          <caption>
            Designs compared, each at its own brief’s cruise
          </caption>
          <thead>
            <tr>
              ${columns.map((column) => this.#head(column))}
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              (entry) => html`<tr class=${entry.id === OPEN ? 'here' : ''}>
                ${columns.map((column, k) =>
                  k === 0
                    ? html`<th scope="row"><span class="name" title=${entry.name}>${entry.name}</span>${tag(entry)}</th>`
                    : html`<td>${column.write(entry)}</td>`,
                )}
              </tr>`,
            )}
          </tbody>
        </table>
      </div>
      <div class="row">
        <button type="button" @click=${this.#copy}>Copy as CSV</button>
        <button type="button" @click=${this.#save}>Save as CSV</button>
        <span class="note" role="status">${this.said}</span>
      </div>`;
  }

  #columns(): Column[] {
    const marked = MARKS.filter((mark) => this.entries.some(({ marks }) => marks[mark] !== undefined));
    const name: Column = {
      id: 'name',
      title: 'Design',
      value: (entry) => entry.name,
      write: (entry) => entry.name,
      sheet: (entry) => safeText(entry.id === OPEN ? `${entry.name} (open)` : entry.name),
    };
    return [name, ...COLUMNS.map((column) => this.#figure(column)), ...marked.map(markColumn)];
  }

  #figure(column: FigureColumn): Column {
    const { units } = this;
    const { name, quantity, decimals, read } = column;
    const value = ({ report }: Entry) => report && read(report);
    return {
      id: name,
      title: columnTitle(column, units),
      value,
      write: (entry) => {
        const found = value(entry);
        if (!entry.report) return entry.failure ? 'none' : '…';
        if (found === null) return 'none';
        return formatValue(found, quantity, units, decimals === undefined ? {} : { decimals });
      },
      sheet: (entry) => shownNumber(column, value(entry), units),
    };
  }

  #head({ id, title }: Column) {
    const sort = this.by?.id === id ? (this.by.isRising ? 'ascending' : 'descending') : 'none';
    return html`<th scope="col" aria-sort=${sort}>
      <button type="button" @click=${() => this.#sortBy(id)}>${title}</button>
    </th>`;
  }

  /** The first press sorts rising, the next falling, a third puts the open design first again. */
  #sortBy(id: string): void {
    if (this.by?.id !== id) this.by = { id, isRising: true };
    else this.by = this.by.isRising ? { id, isRising: false } : null;
  }

  #sorted(columns: readonly Column[]): readonly Entry[] {
    const { by } = this;
    const column = columns.find(({ id }) => id === by?.id);
    if (!by || !column) return this.entries;
    const way = by.isRising ? 1 : -1;
    return [...this.entries].sort((one, other) => {
      const [a, b] = [column.value(one), column.value(other)];
      if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1; // what is not known stands last
      return way * (typeof a === 'string' ? a.localeCompare(String(b)) : a - Number(b));
    });
  }

  #text(): string {
    const columns = this.#columns();
    const rows = this.#sorted(columns).map((entry) => columns.map(({ sheet }) => sheet(entry)));
    return csvText([columns.map(({ title }) => title), ...rows]);
  }

  readonly #copy = async (): Promise<void> => {
    this.said = await copyText(this.#text(), 'save it as a file');
  };

  readonly #save = (): void => {
    saveTextFile(this.#text(), 'designs-compared.csv', 'text/csv');
    this.said = 'Saved.';
  };
}

function markColumn(mark: MarkName): Column {
  const value = ({ marks }: Entry) => marks[mark] ?? null;
  return {
    id: mark,
    title: `Mark: ${MARK_NAMES[mark].toLowerCase()}`,
    value,
    write: (entry) => String(value(entry) ?? '–'),
    sheet: value,
  };
}

function tag({ id, isGhost }: Entry) {
  if (id === OPEN) return html` <span class="tag">open</span>`;
  return isGhost ? html` <span class="tag ghost">ghost</span>` : '';
}

/** A name that a sheet would take for a formula is marked as text. */
const safeText = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

declare global {
  interface HTMLElementTagNameMap {
    'comparison-table': ComparisonTable;
  }
}
