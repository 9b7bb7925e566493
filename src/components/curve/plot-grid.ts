import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { writeFixed } from '../../session/number-format.ts';
import { toCsv } from '../chart-columns.ts';
import { copyText } from '../copy-text.ts';
import { figureTable, tableStyles } from '../figure-table.ts';
import { panelStyles } from '../panel-styles.ts';
import { PlaceChosenEvent, type PlotCell, type PlotMark, readBetween } from './plot-model.ts';
import './small-plot.ts';

let grids = 0;

/**
 * Small multiples over one axis: many curves, each with its own scale and unit, read together under one cursor. A click
 * on any of them, or the slider below with Enter, chooses a place; marks may be chosen by name. One table holds all.
 */
@customElement('plot-grid')
export class PlotGrid extends LitElement {
  static override styles = [
    panelStyles,
    tableStyles,
    css`
      :host {
        container-type: inline-size;
      }
      .plots {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 13.5rem), 1fr));
        gap: 0.6rem 1.1rem;
      }
      @container (max-width: 30rem) {
        .plots {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
      }
      :host([wide]) .plots {
        grid-template-columns: minmax(0, 1fr);
      }
      button:disabled {
        border-color: transparent;
        cursor: default;
        background: none;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 0.6rem;
        align-items: center;
        margin: 0.4rem 0;
      }
      .tools label {
        display: flex;
        flex: 1 1 16rem;
        gap: 0.5rem;
        align-items: center;
        max-width: 30rem;
        font-size: var(--step--1);
        color: var(--soft);
      }
      input {
        flex: 1;
        min-width: 6rem;
        accent-color: var(--carry);
      }
      input:focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: 1px;
      }
      .key {
        display: inline-block;
        width: 1.4rem;
        border-top: 2px solid;
        vertical-align: 0.2em;
        margin-right: 0.35rem;
      }
      .table {
        max-height: 24rem;
        overflow: auto;
      }
    `,
  ];

  /** What the plots show together. */
  @property() heading = '';
  @property({ attribute: false }) x: readonly number[] = [];
  @property({ attribute: 'x-name' }) xName = '';
  @property({ attribute: 'x-unit' }) xUnit = '';
  @property({ type: Number }) xDecimals = 1;
  @property({ attribute: false }) cells: readonly PlotCell[] = [];
  @property({ attribute: false }) marks: readonly PlotMark[] = [];
  /** The present design's place; null: not on this axis. */
  @property({ attribute: false }) home: number | null = null;
  /** What choosing a place does: "Bend to". */
  @property() verb = '';

  /** Without the slider and the marks: they stand under another grid of the same axis. */
  @property({ type: Boolean }) plain = false;
  /** One plot a row. */
  @property({ type: Boolean, reflect: true }) wide = false;

  @state() private isTable = false;
  @state() private copied = '';
  @state() private looked: number | null = null;

  readonly #group = `grid-${++grids}`;

  protected override render() {
    return html`<div class="plots" ?hidden=${this.isTable}>
        ${this.cells.map(
          (cell) => html`<small-plot
            .cell=${cell}
            .x=${this.x}
            .xName=${this.xName}
            .xUnit=${this.xUnit}
            .marks=${this.#shownMarks()}
            .home=${this.looked ?? this.home}
            .group=${this.#group}
          ></small-plot>`,
        )}
      </div>
      ${this.isTable ? this.#table() : nothing}
      <div class="tools">
        ${this.plain ? nothing : html`${this.#slider()} ${this.#markButtons()}`}
        <button type="button" aria-pressed=${this.isTable} @click=${this.#toggle}>As a table</button>
        ${this.isTable ? html`<button type="button" @click=${this.#copy}>Copy as CSV</button>` : nothing}
        <span class="note" role="status">${this.copied}</span>
      </div>`;
  }

  #shownMarks(): readonly PlotMark[] {
    if (this.looked === null) return this.marks;
    return [...this.marks, { at: this.looked, name: 'looked at', colour: '--focus', dash: [2, 2] }];
  }

  #slider() {
    const [from, to] = [this.x[0] ?? 0, this.x.at(-1) ?? 0];
    const at = Math.min(to, Math.max(from, this.looked ?? this.home ?? from));
    return html`<label>
        <span>${this.xName} looked at</span>
        <input
          type="range"
          min=${from}
          max=${to}
          step=${10 ** -this.xDecimals}
          .value=${String(at)}
          aria-valuetext=${this.#spoken(at)}
          @input=${this.#look}
          @keydown=${this.#onKeyDown}
        />
      </label>
      <button type="button" ?disabled=${this.looked === null} @click=${() => this.#choose(this.looked)}>
        ${this.verb} ${this.#write(at)}
      </button>`;
  }

  /** The place and what every curve says there. */
  #spoken(at: number): string {
    const values = this.cells.flatMap(({ name, unit, decimals, lines }) =>
      lines.map((line) => {
        const value = readBetween(this.x, line.y, at);
        const which = lines.length > 1 ? `${name}, ${line.name}` : name;
        return `${which} ${value === null ? 'none' : writeFixed(value, decimals)} ${unit}`.trim();
      }),
    );
    return [this.#write(at), ...values].join('; ');
  }

  #markButtons() {
    return this.marks.map(
      ({ name, at, colour, dash }) => html`<button
        type="button"
        ?disabled=${at === this.home}
        @click=${() => this.#choose(at)}
      >
        <span
          class="key"
          .style="border-color: var(${colour}); border-top-style: ${dash ? 'dashed' : 'solid'}"
          aria-hidden="true"
        ></span
        >${name} ${this.#write(at)}
      </button>`,
    );
  }

  #write(place: number): string {
    return `${writeFixed(place, this.xDecimals)}${this.xUnit === '°' ? '°' : `\u00a0${this.xUnit}`}`;
  }

  #titles(): string[] {
    const unit = (symbol: string) => (symbol ? `, ${symbol}` : '');
    return [
      `${this.xName}${unit(this.xUnit)}`,
      ...this.cells.flatMap(({ name, unit: symbol, lines }) =>
        lines.map((line) => `${lines.length > 1 ? `${name}, ${line.name}` : name}${unit(symbol)}`),
      ),
    ];
  }

  #table() {
    const columns = this.cells.flatMap(({ decimals, lines }) => lines.map(({ y }) => ({ y, decimals })));
    const rows = this.x.map((place, k) => ({
      cells: [
        writeFixed(place, this.xDecimals),
        ...columns.map(({ y, decimals }) => (Number.isFinite(y[k]!) ? writeFixed(y[k]!, decimals) : '')),
      ],
    }));
    return figureTable(`${this.heading}, in figures`, this.#titles(), rows);
  }

  #choose(place: number | null): void {
    if (place === null) return;
    this.dispatchEvent(new PlaceChosenEvent(place));
    this.looked = null;
  }

  readonly #look = (event: Event): void => {
    this.looked = Number((event.target as HTMLInputElement).value);
  };

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') this.#choose(this.looked);
    if (event.key === 'Escape') this.looked = null;
  };

  readonly #toggle = (): void => {
    this.isTable = !this.isTable;
    this.copied = '';
  };

  readonly #copy = async (): Promise<void> => {
    const y = this.cells.flatMap(({ lines }) =>
      lines.map((line) => line.y.map((value) => (Number.isFinite(value) ? value : null))),
    );
    this.copied = await copyText(toCsv(this.#titles(), { x: [...this.x], y }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'plot-grid': PlotGrid;
  }
}
