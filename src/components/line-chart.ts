import { html, LitElement, nothing, type PropertyValues, svg, unsafeCSS } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import uPlot from 'uplot';
import uplotCss from 'uplot/dist/uPlot.min.css?inline';
import { decimalMark, writeFixed } from '../session/number-format.ts';
import { type ChartSeries, type Columns, joinColumns, stackColumns, toCsv } from './chart-columns.ts';
import { Palette, plotOptions } from './chart-options.ts';
import { chartStyles } from './chart-styles.ts';
import { copyText } from './copy-text.ts';
import { panelStyles } from './panel-styles.ts';

const AT_REST = 250; // ms without new values

/**
 * Lines over a common x: units on the axes, a cursor that reads out values, a table instead on demand, to be copied as
 * comma-separated values. Values are handed in as they are to be shown. New values are drawn in place; the chart is
 * made anew only when its lines are others. Follows light, dark and forced colours, and the width it is given.
 */
@customElement('line-chart')
export class LineChart extends LitElement {
  static override styles = [unsafeCSS(uplotCss), panelStyles, chartStyles];

  /** What the chart shows, above it. */
  @property() heading = '';
  /** What is to be seen in it, for those who cannot. */
  @property() summary = '';
  @property({ attribute: 'x-name' }) xName = '';
  @property({ attribute: 'x-unit' }) xUnit = '';
  @property({ attribute: 'y-name' }) yName = '';
  @property({ attribute: 'y-unit' }) yUnit = '';
  @property({ attribute: false }) series: readonly ChartSeries[] = [];
  @property({ type: Number }) xDecimals = 0;
  @property({ type: Number }) yDecimals = 0;
  /** Each series stands on the one before, as filled areas, those that stand alone last; read-outs and table keep the single values. */
  @property({ type: Boolean }) stacked = false;

  @state() private isTable = false;
  @state() private copied = '';
  @query('.plot') private readonly box!: HTMLElement;

  #plot: uPlot | null = null;
  #columns: Columns = { x: [], y: [] };
  #lines = ''; // what the plot was made for
  #width = 0;
  readonly #palette = new Palette(this, () => this.#plot?.redraw(false, true));
  // A frame later: drawing while sizes are being told would change them again at once.
  #isInSight = true; // until found otherwise
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #sight = new IntersectionObserver((entries) => this.#look(entries.at(-1)!.isIntersecting));
  readonly #observer = new ResizeObserver(([entry]) =>
    requestAnimationFrame(() => this.#resize(entry?.contentRect.width ?? 0)),
  );

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.requestUpdate(); // made anew after a move
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer.disconnect();
    this.#sight.disconnect();
    clearTimeout(this.#rest);
    this.#rest = undefined;
    this.#isInSight = true;
    this.#destroy();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('series')) this.#columns = joinColumns(this.series);
  }

  protected override render() {
    return html`<div class="head">
        <h3 id="heading">${this.heading}</h3>
        <span class="tools">
          ${this.isTable ? html`<button type="button" @click=${this.#copy}>Copy as CSV</button>` : nothing}
          <button type="button" aria-pressed=${this.isTable} @click=${this.#toggle}>As a table</button>
        </span>
      </div>
      <p class="copied" role="status">${this.copied}</p>
      <div class="chart" ?hidden=${this.isTable}>
        <div class="plot" role="img" aria-label=${this.summary || this.heading}></div>
        ${this.#legend()}
      </div>
      ${this.isTable ? this.#table() : nothing}`;
  }

  protected override updated(): void {
    this.#observer.observe(this.box);
    this.#sight.observe(this);
    if (this.#isInSight) this.#draw();
    else this.#drawAtRest();
  }

  /** Out of sight the canvas waits until the values rest: labels on it are the dearest part of a drag. */
  #drawAtRest(): void {
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.#draw(), AT_REST);
  }

  #look(isInSight: boolean): void {
    this.#isInSight = isInSight;
    if (isInSight && this.#rest !== undefined) this.#draw();
  }

  #draw(): void {
    clearTimeout(this.#rest);
    this.#rest = undefined;
    if (this.isTable || this.#width === 0 || !this.isConnected) return;
    const lines = JSON.stringify([
      this.series.map(({ name, colour, width, dash }) => [name, colour, width, dash]),
      [this.xName, this.xUnit, this.yName, this.yUnit, this.stacked, decimalMark()],
    ]);
    const { x, y } = this.#columns;
    const data = [
      x,
      ...(this.stacked ? stackColumns(y, this.series.filter(({ isAlone }) => isAlone).length) : y),
    ] as uPlot.AlignedData;
    if (this.#plot && lines === this.#lines) this.#plot.setData(data);
    else this.#make(lines, data);
    this.#readOut();
  }

  #make(lines: string, data: uPlot.AlignedData): void {
    this.#destroy();
    this.#lines = lines;
    this.#plot = new uPlot(
      plotOptions(this, this.#width, (colour) => this.#palette.colour(colour), this.#readOut),
      data,
      this.box,
    );
  }

  #destroy(): void {
    this.#plot?.destroy();
    this.#plot = null;
  }

  #resize(width: number): void {
    const whole = Math.floor(width);
    if (whole < 1 || whole === this.#width || !this.isConnected) return;
    this.#width = whole;
    if (this.#plot) this.#plot.setSize({ width: whole, height: this.#plot.height });
    else this.requestUpdate();
  }

  #legend() {
    return html`<ul aria-hidden="true">
      ${this.series.map(
        ({ name, colour, width = 2, dash = [] }) => html`<li>
          <svg viewBox="0 0 24 10" width="24" height="10">
            ${svg`<path d="M1 5H23" stroke="var(${colour})" stroke-width=${width} stroke-dasharray=${dash.join(' ')}></path>`}
          </svg>
          ${name} <output></output>
        </li>`,
      )}
      <li><output></output></li>
    </ul>`;
  }

  /** Writes the values under the cursor beside the names, without a render: the pointer moves often. */
  readonly #readOut = (): void => {
    const outputs = this.renderRoot.querySelectorAll('output');
    const at = this.#plot?.cursor.idx ?? null;
    const place = at === null ? undefined : this.#columns.x[at];
    outputs.forEach((output, k) => {
      const isPlace = k === this.series.length;
      const value = isPlace ? place : at === null ? undefined : this.#columns.y[k]?.[at];
      const text = value === undefined || value === null ? '' : this.#write(value, isPlace);
      output.textContent = isPlace && text ? `at ${text} ${this.xUnit}` : text;
    });
  };

  #write(value: number, isPlace: boolean): string {
    return writeFixed(value, isPlace ? this.xDecimals : this.yDecimals);
  }

  #table() {
    const { x, y } = this.#columns;
    return html`<div class="table" role="region" tabindex="0" aria-labelledby="heading">
      <table>
        <thead>
          <tr>
            ${this.#titles().map((title) => html`<th scope="col">${title}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${x.map(
            (place, k) =>
              html`<tr>
                <th scope="row">${this.#write(place, true)}</th>
                ${y.map((column) => {
                  const value = column[k];
                  return html`<td>${value === null || value === undefined ? '' : this.#write(value, false)}</td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #titles(): string[] {
    const unit = (symbol: string) => (symbol ? `, ${symbol}` : '');
    return [
      `${this.xName}${unit(this.xUnit)}`,
      ...this.series.map(({ name }) => `${name}${unit(this.yUnit)}`),
    ];
  }

  readonly #toggle = (): void => {
    this.isTable = !this.isTable;
    this.copied = '';
  };

  readonly #copy = async (): Promise<void> => {
    this.copied = await copyText(toCsv(this.#titles(), this.#columns));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'line-chart': LineChart;
  }
}
