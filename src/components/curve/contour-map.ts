import { css, html, LitElement, nothing, type PropertyValues, svg } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { writeFixed, writePlain } from '../../session/number-format.ts';
import {
  areaAbove,
  areaWithout,
  type ContourLine,
  contourLine,
  type Field,
  rangeOf,
  roundLevels,
} from './contour-shapes.ts';

const SHADES = 9; // at most
const LINES = 9;

/** An axis of the map: evenly spaced places in the shown unit. */
export interface MapAxis {
  name: string;
  unit: string;
  decimals: number;
  places: readonly number[];
}

/** What is drawn over the two axes; values in the shown unit, row after row. */
export interface MapField {
  name: string;
  unit: string;
  decimals: number;
  values: readonly number[];
}

export interface MapPlace {
  x: number;
  y: number;
}

/** Paths as they are drawn. */
interface Shapes {
  bands: string[]; // from the lowest shade up
  missing: string;
  lines: ContourLine[];
  limit: ContourLine | null;
}

/** A place on a map was chosen by click or key, in the shown units. */
export class MapPlaceEvent extends CustomEvent<MapPlace> {
  static readonly type = 'map-place';
  constructor(place: MapPlace) {
    super(MapPlaceEvent.type, { detail: place, bubbles: true, composed: true });
  }
}

/**
 * Two fields over two axes: one as shades, one as lines with their values; a limit drawn in; the present place marked.
 * A click chooses a place; with the keyboard the arrows move a cross from case to case and Enter chooses.
 */
@customElement('contour-map')
export class ContourMap extends LitElement {
  static override styles = css`
    :host {
      display: block;
      font-size: var(--step--1);
      font-variant-numeric: tabular-nums;
    }
    .frame {
      display: grid;
      grid-template-columns: auto minmax(0, 1fr);
      grid-template-rows: auto auto auto;
      gap: 0.15rem 0.4rem;
    }
    .map {
      position: relative;
      height: clamp(15rem, 34vw, 24rem);
      border: 1px solid var(--edge);
      cursor: crosshair;
      overflow: hidden;
      touch-action: manipulation;
    }
    .map:focus-visible {
      outline: 2px solid var(--focus);
      outline-offset: 2px;
    }
    svg {
      position: absolute;
      inset: 0;
      width: 100%;
      height: 100%;
      display: block;
    }
    path,
    line {
      vector-effect: non-scaling-stroke;
    }
    .line {
      fill: none;
      stroke: var(--ink);
      stroke-width: 1.3;
    }
    .limit {
      fill: none;
      stroke: var(--thrown);
      stroke-width: 2.5;
      stroke-dasharray: 8 4;
    }
    .cross {
      stroke: var(--focus);
      stroke-width: 1;
    }
    .tag {
      position: absolute;
      transform: translate(-50%, 50%);
      padding: 0 0.2rem;
      border-radius: var(--radius);
      background: var(--paper);
      color: var(--ink);
      line-height: 1.25;
      white-space: nowrap;
      pointer-events: none;
    }
    .tag.edge {
      color: var(--thrown);
      font-weight: 600;
    }
    .present {
      position: absolute;
      width: 0.9rem;
      height: 0.9rem;
      transform: translate(-50%, 50%);
      border: 3px solid var(--paper);
      outline: 2px solid var(--ink);
      border-radius: 50%;
      background: var(--ink);
      pointer-events: none;
    }
    .ghost {
      position: absolute;
      width: 1rem;
      height: 1rem;
      transform: translate(-50%, 50%);
      border: 3px dashed var(--ghost);
      outline: 2px solid var(--paper);
      border-radius: 50%;
      background: color-mix(in srgb, var(--paper) 55%, transparent);
      pointer-events: none;
    }
    .up,
    .across {
      position: relative;
      color: var(--soft);
    }
    .up {
      width: 3.2rem;
    }
    .up span {
      position: absolute;
      right: 0;
      transform: translateY(50%);
    }
    .across {
      grid-column: 2;
      height: 1.2em;
    }
    .across span {
      position: absolute;
      transform: translateX(-50%);
    }
    .across span:last-child {
      transform: translateX(-90%);
    }
    .name {
      grid-column: 2;
      display: flex;
      justify-content: space-between;
      gap: 1rem;
      flex-wrap: wrap;
      color: var(--soft);
    }
    .key {
      display: inline-flex;
      align-items: center;
      gap: 0.35rem;
    }
    .ramp {
      display: inline-flex;
      border: 1px solid var(--edge);
    }
    .ramp i {
      width: 0.8rem;
      height: 0.7rem;
    }
    output {
      display: block;
      min-height: 1.5em;
      margin-top: 0.2rem;
    }
  `;

  @property() label = '';
  @property({ attribute: false }) across: MapAxis | null = null;
  @property({ attribute: false }) up: MapAxis | null = null;
  @property({ attribute: false }) shade: MapField | null = null;
  @property({ attribute: false }) lines: MapField | null = null;
  @property({ attribute: false }) limit: (MapField & { level: number }) | null = null;
  @property({ attribute: false }) present: MapPlace | null = null;
  /** Marked as a dashed ring. */
  @property({ attribute: false }) ghost: MapPlace | null = null;

  @state() private cross: { i: number; j: number } | null = null;

  #shapes: Shapes = { bands: [], missing: '', lines: [], limit: null };

  /** Shapes follow the fields; the cross moves over them. */
  protected override willUpdate(changed: PropertyValues<ContourMap>): void {
    const { across, up, shade, lines, limit } = this;
    if (!across || !up || !shade || !lines) return;
    if (!DRAWN.some((name) => changed.has(name))) return;
    const shaded = this.#field(shade);
    const lined = this.#field(lines);
    this.#shapes = {
      bands: shadeLevels(shaded).map((level) => areaAbove(shaded, level)),
      missing: areaWithout(shaded),
      lines: lineLevels(lined).map((level) => contourLine(lined, level)),
      limit: limit && contourLine(this.#field(limit), limit.level),
    };
  }

  protected override render() {
    const { across, up, shade, lines } = this;
    if (!across || !up || !shade || !lines) return nothing;
    return html`<div class="frame">
        <div class="up" aria-hidden="true">${this.#ticks(up, 'bottom')}</div>
        <div
          class="map"
          role="application"
          aria-roledescription="map"
          aria-label=${`${this.label} Arrow keys move a cross, Enter takes the design there.`}
          aria-describedby="reading"
          tabindex="0"
          @click=${this.#onClick}
          @keydown=${this.#onKeyDown}
          @blur=${this.#onBlur}
        >
          ${this.#drawing(across, up)} ${this.#tags(across, up)}
        </div>
        <div class="across" aria-hidden="true">${this.#ticks(across, 'left')}</div>
        <div class="name" aria-hidden="true">
          <span>across: ${titleOf(across)}; up: ${titleOf(up)}</span>
          ${this.#key(shade)}
        </div>
      </div>
      <output id="reading" role="status">${this.#reading()}</output>`;
  }

  #field({ values }: MapField): Field {
    return { columns: this.across!.places.length, rows: this.up!.places.length, values };
  }

  #drawing(across: MapAxis, up: MapAxis) {
    const [width, height] = [across.places.length - 1, up.places.length - 1];
    const { bands, missing, lines, limit } = this.#shapes;
    const { cross } = this;
    return html`<svg viewBox="0 0 ${width} ${height}" preserveAspectRatio="none" aria-hidden="true">
      <defs>
        <pattern id="none" width="0.8" height="0.8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          ${svg`<rect width="0.8" height="0.8" fill="var(--paper)"></rect><rect width="0.2" height="0.8" fill="var(--line)"></rect>`}
        </pattern>
      </defs>
      <g transform="translate(0 ${height}) scale(1 -1)">
        ${svg`<rect width=${width} height=${height} fill=${shadeOf(0, bands.length)}></rect>`}
        ${bands.map((path, k) => svg`<path d=${path} fill=${shadeOf(k + 1, bands.length)}></path>`)}
        ${missing ? svg`<path d=${missing} fill="url(#none)"></path>` : nothing}
        ${lines.map(({ path }) => svg`<path class="line" d=${path}></path>`)}
        ${limit ? svg`<path class="limit" d=${limit.path}></path>` : nothing}
        ${
          cross
            ? svg`<line class="cross" x1=${cross.i} x2=${cross.i} y1="0" y2=${height}></line><line class="cross" x1="0" x2=${width} y1=${cross.j} y2=${cross.j}></line>`
            : nothing
        }
      </g>
    </svg>`;
  }

  /** Values on the lines, the limit's name, the present design: text must not be stretched with the drawing. */
  #tags(across: MapAxis, up: MapAxis) {
    const [width, height] = [across.places.length - 1, up.places.length - 1];
    const place = ({ x, y }: MapPlace, rim = 0) =>
      `left: ${within((100 * x) / width, rim)}%; bottom: ${within((100 * y) / height, rim / 2)}%`;
    const tags = this.#shapes.lines.flatMap(({ level, label }) =>
      label ? [html`<span class="tag" .style=${place(label, 5)}>${writePlain(level)}</span>`] : [],
    );
    const { limit, present, ghost } = this;
    const mark = ({ x, y }: MapPlace) => place({ x: stepOf(across, x), y: stepOf(up, y) });
    const edge = this.#shapes.limit?.label;
    return html`${tags}
      ${edge && limit ? html`<span class="tag edge" .style=${place(edge, 14)}>${limit.name}</span>` : nothing}
      ${ghost ? html`<span class="ghost" .style=${mark(ghost)}></span>` : nothing}
      ${present ? html`<span class="present" .style=${mark(present)}></span>` : nothing}`;
  }

  #ticks(axis: MapAxis, side: 'left' | 'bottom') {
    const [low, high] = [axis.places[0]!, axis.places.at(-1)!];
    return [low, ...roundLevels(low, high, 5), high]
      .filter((place, k, all) => k === 0 || k === all.length - 1 || isApart(place, low, high))
      .map(
        (place) =>
          html`<span .style="${side}: ${(100 * (place - low)) / (high - low)}%">${writeFixed(place, axis.decimals)}${axis.unit === '°' ? '°' : ''}</span>`,
      );
  }

  #key(shade: MapField) {
    const range = rangeOf(this.#field(shade));
    if (!range) return nothing;
    const levels = shadeLevels(this.#field(shade));
    return html`<span class="key"
      >${titleOf(shade)} ${writeFixed(range.low, shade.decimals)}
      <span class="ramp">
        ${[0, ...levels.map((_, k) => k + 1)].map((k) => html`<i .style="background: ${shadeOf(k, levels.length)}"></i>`)}
      </span>
      ${writeFixed(range.high, shade.decimals)}</span
    >`;
  }

  #reading(): string {
    const { across, up, cross } = this;
    if (!across || !up || !cross) return '';
    const fields = [this.lines, this.shade, this.limit].flatMap((field) => (field ? [field] : []));
    const k = cross.j * across.places.length + cross.i;
    const figures = fields.map(({ name, unit, decimals, values }) => {
      const value = values[k]!;
      return `${name} ${Number.isFinite(value) ? withUnit(value, unit, decimals) : 'none'}`;
    });
    const places = [
      `${across.name} ${withUnit(across.places[cross.i]!, across.unit, across.decimals)}`,
      `${up.name} ${withUnit(up.places[cross.j]!, up.unit, up.decimals)}`,
    ];
    return `${places.join(', ')}: ${figures.join(', ')}.`;
  }

  #home(): { i: number; j: number } {
    const nearest = ({ places }: MapAxis, at: number) =>
      places.reduce((best, place, k) => (Math.abs(place - at) < Math.abs(places[best]! - at) ? k : best), 0);
    const { x, y } = this.present ?? { x: 0, y: 0 };
    return { i: nearest(this.across!, x), j: nearest(this.up!, y) };
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    const { across, up } = this;
    if (!across || !up) return;
    const far = event.shiftKey ? 5 : 1;
    const move = MOVES[event.key];
    if (move) {
      const { i, j } = this.cross ?? this.#home();
      const within = (k: number, { places }: MapAxis) => Math.min(places.length - 1, Math.max(0, k));
      this.cross = { i: within(i + far * move[0], across), j: within(j + far * move[1], up) };
    } else if (event.key === 'Home') this.cross = this.#home();
    else if (event.key === 'Escape') this.cross = null;
    else if (event.key === 'Enter' && this.cross)
      this.#choose({ x: across.places[this.cross.i]!, y: up.places[this.cross.j]! });
    else return;
    event.preventDefault();
  };

  readonly #onBlur = (): void => {
    this.cross = null;
  };

  readonly #onClick = (event: MouseEvent): void => {
    const { across, up } = this;
    if (!across || !up) return;
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const read = ({ places }: MapAxis, share: number) =>
      places[0]! + Math.min(1, Math.max(0, share)) * (places.at(-1)! - places[0]!);
    this.#choose({
      x: read(across, (event.clientX - box.left) / box.width),
      y: read(up, (box.bottom - event.clientY) / box.height),
    });
  };

  #choose(place: MapPlace): void {
    this.dispatchEvent(new MapPlaceEvent(place));
  }
}

const DRAWN = ['across', 'up', 'shade', 'lines', 'limit'] as const;

const MOVES: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function shadeLevels(field: Field): number[] {
  const range = rangeOf(field);
  return range ? roundLevels(range.low, range.high, SHADES) : [];
}

function lineLevels(field: Field): number[] {
  const range = rangeOf(field);
  return range ? roundLevels(range.low, range.high, LINES) : [];
}

const shadeOf = (k: number, most: number) =>
  `color-mix(in srgb, var(--surface) ${Math.round(6 + (64 * k) / Math.max(1, most))}%, var(--paper))`;

/** Percent, kept off the rim so that nothing is cut. */
const within = (percent: number, rim: number) => Math.min(100 - rim, Math.max(rim, percent));

const titleOf = ({ name, unit }: { name: string; unit: string }) => (unit ? `${name}, ${unit}` : name);

const withUnit = (value: number, unit: string, decimals: number) =>
  `${writeFixed(value, decimals)}${unit === '°' ? '°' : unit ? `\u00a0${unit}` : ''}`;

/** Where a value stands among evenly spaced places, in steps. */
const stepOf = ({ places }: MapAxis, value: number) =>
  ((value - places[0]!) / (places.at(-1)! - places[0]!)) * (places.length - 1);

const isApart = (place: number, low: number, high: number) =>
  place - low > 0.12 * (high - low) && high - place > 0.12 * (high - low);

declare global {
  interface HTMLElementTagNameMap {
    'contour-map': ContourMap;
  }
  interface HTMLElementEventMap {
    'map-place': MapPlaceEvent;
  }
}
