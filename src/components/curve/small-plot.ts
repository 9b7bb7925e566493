import { css, html, LitElement, nothing, svg, unsafeCSS } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import uPlot from 'uplot';
import uplotCss from 'uplot/dist/uPlot.min.css?inline';
import { decimalMark, writeFixed, writePlain } from '../../session/number-format.ts';
import { Palette, plotOptions, steadyRange } from '../chart-options.ts';
import { drawSoon, forgetDrawing } from './draw-queue.ts';
import { type Looks, PlaceChosenEvent, type PlotCell, type PlotMark, readBetween } from './plot-model.ts';

const HEIGHT = 138;
const SNAP = 6; // px within which a click means a mark

/**
 * One curve, or a few of one unit, small enough to stand in rows: its name, unit and the value under the cursor above
 * it, marks across it. A click chooses a place. All plots of one `group` share the cursor.
 */
@customElement('small-plot')
export class SmallPlot extends LitElement {
  static override styles = [
    unsafeCSS(uplotCss),
    css`
      :host {
        display: block;
        min-width: 0;
      }
      h3 {
        margin: 0;
        font-size: var(--step--1);
        font-weight: 600;
        line-height: 1.3;
        display: flex;
        justify-content: space-between;
        gap: 0.5rem;
      }
      h3 small {
        font-size: 1em;
        font-weight: 400;
        color: var(--soft);
      }
      output {
        font-weight: 600;
        white-space: nowrap;
        font-variant-numeric: tabular-nums;
      }
      .plot {
        min-height: ${HEIGHT}px;
      }
      ul {
        list-style: none;
        display: flex;
        flex-wrap: wrap;
        gap: 0 0.8rem;
        margin: 0;
        padding: 0;
        font-size: var(--step--1);
        color: var(--soft);
      }
      .u-over {
        cursor: pointer;
      }
      .u-cursor-x {
        border-color: var(--edge) !important;
      }
    `,
  ];

  @property({ attribute: false }) cell: PlotCell | null = null;
  /** Ascending places, in the shown unit; shared by every line. */
  @property({ attribute: false }) x: readonly number[] = [];
  @property({ attribute: 'x-name' }) xName = '';
  @property({ attribute: 'x-unit' }) xUnit = '';
  @property({ attribute: false }) marks: readonly PlotMark[] = [];
  /** Where values are read while no cursor stands anywhere. */
  @property({ attribute: false }) home: number | null = null;
  @property() group = '';

  @query('.plot') private readonly box!: HTMLElement;

  #plot: uPlot | null = null;
  #looks = '';
  #width = 0;
  readonly #palette = new Palette(this, () => this.#plot?.redraw(false, true));
  readonly #observer = new ResizeObserver(([entry]) =>
    requestAnimationFrame(() => this.#resize(entry?.contentRect.width ?? 0)),
  );

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer.disconnect();
    forgetDrawing(this);
    this.#plot?.destroy();
    this.#plot = null;
  }

  protected override render() {
    const { cell } = this;
    if (!cell) return nothing;
    return html`<h3>
        <span>${cell.name}${cell.unit ? html`<small>, ${cell.unit}</small>` : nothing}</span>
        ${cell.lines.length === 1 ? html`<output aria-hidden="true"></output>` : nothing}
      </h3>
      <div class="plot" role="img" aria-label=${`${cell.name}: ${cell.summary}`} @click=${this.#onClick}></div>
      ${cell.lines.length > 1 ? this.#legend(cell.lines) : nothing}`;
  }

  #legend(lines: readonly Looks[]) {
    return html`<ul aria-hidden="true">
      ${lines.map(
        ({ name, colour, dash = [] }) => html`<li>
          <svg viewBox="0 0 24 10" width="24" height="10">
            ${svg`<path d="M1 5H23" stroke="var(${colour})" stroke-width="2" stroke-dasharray=${dash.join(' ')}></path>`}
          </svg>
          ${name} <output></output>
        </li>`,
      )}
    </ul>`;
  }

  protected override updated(): void {
    if (this.box) this.#observer.observe(this.box);
    this.#readOut();
    drawSoon(this, () => this.#draw());
  }

  #draw(): void {
    const { cell } = this;
    if (!cell || this.#width === 0 || !this.isConnected) return;
    const looks = JSON.stringify([
      cell.lines.map(({ name, colour, dash }) => [name, colour, dash]),
      [cell.band, cell.levels],
      [this.xUnit, decimalMark()],
    ]);
    const data = [
      [...this.x],
      ...cell.lines.map(({ y }) => y.map((value) => (Number.isFinite(value) ? value : null))),
    ] as uPlot.AlignedData;
    if (this.#plot && looks === this.#looks) {
      this.#plot.setData(data);
      return;
    }
    this.#plot?.destroy();
    this.#looks = looks;
    this.#plot = new uPlot(this.#options(cell), data, this.box);
  }

  #options(cell: PlotCell): uPlot.Options {
    const labels = { xName: '', xUnit: '', yName: '', yUnit: '', stacked: false };
    const colour = (name: string) => this.#palette.colour(name);
    const usual = plotOptions(
      { ...labels, series: cell.lines.map((line) => ({ ...line, x: [], y: [] })) },
      this.#width,
      colour,
      this.#readOut,
    );
    const [across, up] = usual.axes as [uPlot.Axis, uPlot.Axis];
    const { label: _across, labelSize: _size, ...plainAcross } = across;
    const { label: _up, labelSize: _room, ...plainUp } = up;
    return {
      ...usual,
      height: HEIGHT,
      scales: {
        ...usual.scales,
        y: { range: (_plot, least, most) => readableRange(least, most, this.cell ?? cell) },
      },
      // A click with a trembling hand is a click all the same.
      cursor: {
        ...usual.cursor,
        drag: { x: false, y: false, click: () => {} },
        sync: { key: this.group, scales: ['x', null] },
      },
      axes: [
        {
          ...plainAcross,
          size: 24,
          space: 40,
          values: (_plot, ticks) => ticks.map((tick) => `${writePlain(tick)}${this.xUnit}`),
        },
        { ...plainUp, space: 26 },
      ],
      hooks: {
        ...usual.hooks,
        drawClear: [(plot) => drawBand(plot, this.cell?.band, colour)],
        draw: [
          (plot) => {
            this.#drawMarks(plot, colour);
            drawLevels(plot, this.cell?.levels ?? [], colour);
          },
        ],
      },
    };
  }

  #drawMarks(plot: uPlot, colour: (name: string) => string): void {
    const { ctx, bbox } = plot;
    const ratio = devicePixelRatio;
    ctx.save();
    for (const { at, colour: name, dash = [], width = 1.5 } of this.marks) {
      const x = plot.valToPos(at, 'x', true);
      if (x < bbox.left - 1 || x > bbox.left + bbox.width + 1) continue;
      ctx.beginPath();
      ctx.strokeStyle = colour(name);
      ctx.lineWidth = width * ratio;
      ctx.setLineDash(dash.map((length) => length * ratio));
      ctx.moveTo(x, bbox.top);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
    }
    ctx.restore();
  }

  #resize(width: number): void {
    const whole = Math.floor(width);
    if (whole < 1 || whole === this.#width || !this.isConnected) return;
    this.#width = whole;
    if (this.#plot) this.#plot.setSize({ width: whole, height: HEIGHT });
    else drawSoon(this, () => this.#draw());
  }

  /** Values under the cursor, else at home, written without a render: the pointer moves often. */
  readonly #readOut = (): void => {
    const { cell } = this;
    if (!cell) return;
    const under = this.#plot?.cursor.idx;
    const place = under == null ? this.home : this.x[under];
    this.renderRoot.querySelectorAll('output').forEach((output, k) => {
      const line = cell.lines[k];
      const value = place == null || !line ? null : readBetween(this.x, line.y, place);
      output.textContent = value === null ? '' : writeFixed(value, cell.decimals);
    });
  };

  readonly #onClick = (event: MouseEvent): void => {
    const plot = this.#plot;
    if (!plot) return;
    const left = event.clientX - plot.over.getBoundingClientRect().left;
    const near = this.marks.find(({ at }) => Math.abs(plot.valToPos(at, 'x') - left) <= SNAP);
    const most = this.x.at(-1) ?? 0;
    const place = near ? near.at : Math.min(most, Math.max(this.x[0] ?? 0, plot.posToVal(left, 'x')));
    this.dispatchEvent(new PlaceChosenEvent(place));
  };
}

type Colour = (name: string) => string;

function drawBand(plot: uPlot, band: PlotCell['band'], colour: Colour): void {
  if (!band) return;
  const { ctx, bbox } = plot;
  const [top, foot] = [plot.valToPos(band.high, 'y', true), plot.valToPos(band.low, 'y', true)];
  ctx.save();
  ctx.globalAlpha = 0.22;
  ctx.fillStyle = colour('--carry');
  ctx.fillRect(bbox.left, top, bbox.width, Math.max(2, foot - top));
  ctx.restore();
}

function drawLevels(plot: uPlot, levels: NonNullable<PlotCell['levels']>, colour: Colour): void {
  const { ctx, bbox } = plot;
  const ratio = devicePixelRatio;
  const right = bbox.left + bbox.width;
  ctx.save();
  ctx.strokeStyle = colour('--carry');
  ctx.fillStyle = colour('--ink');
  ctx.lineWidth = 2 * ratio;
  ctx.font = `${11 * ratio}px system-ui, sans-serif`;
  ctx.textAlign = 'right';
  ctx.textBaseline = 'middle';
  for (const { at, label } of levels) {
    const y = plot.valToPos(at, 'y', true);
    ctx.beginPath();
    ctx.moveTo(right - 8 * ratio, y);
    ctx.lineTo(right, y);
    ctx.stroke();
    ctx.fillText(label, right - 10 * ratio, y);
  }
  ctx.restore();
}

/** As on every chart, but never so fine that the written values could not tell the ends apart. */
function readableRange(
  least: number | null,
  most: number | null,
  { decimals, band, levels = [] }: PlotCell,
): [number, number] {
  const finest = 5 * 10 ** -decimals;
  const shown = [...(band ? [band.low, band.high] : []), ...levels.map(({ at }) => at)];
  const range = steadyRange(Math.min(least ?? 0, ...shown), Math.max(most ?? 0, ...shown));
  return range[1] - range[0] < finest ? [Math.min(0, range[0]), finest] : range;
}

declare global {
  interface HTMLElementTagNameMap {
    'small-plot': SmallPlot;
  }
}
