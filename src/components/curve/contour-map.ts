import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  drawKey,
  drawMap,
  drawTags,
  drawTicks,
  type MapAxes,
  type MapAxis,
  type MapCross,
  type MapField,
  type MapFields,
  type MapPlace,
  NO_SHAPES,
  readingAt,
  shapesOf,
  titleOf,
} from './contour-drawing.ts';
import { contourStyles } from './contour-styles.ts';

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
  static override styles = contourStyles;

  @property() label = '';
  @property({ attribute: false }) across: MapAxis | null = null;
  @property({ attribute: false }) up: MapAxis | null = null;
  @property({ attribute: false }) shade: MapField | null = null;
  @property({ attribute: false }) lines: MapField | null = null;
  @property({ attribute: false }) limit: (MapField & { level: number }) | null = null;
  @property({ attribute: false }) present: MapPlace | null = null;
  /** Marked as a dashed ring. */
  @property({ attribute: false }) ghost: MapPlace | null = null;

  @state() private cross: MapCross | null = null;

  #shapes = NO_SHAPES;

  get #axes(): MapAxes | null {
    const { across, up } = this;
    return across && up && { across, up };
  }

  get #fields(): MapFields | null {
    const { shade, lines, limit } = this;
    return shade && lines && { shade, lines, limit };
  }

  /** Shapes follow the fields; the cross moves over them. */
  protected override willUpdate(changed: PropertyValues<ContourMap>): void {
    const axes = this.#axes;
    const fields = this.#fields;
    if (axes && fields && DRAWN.some((name) => changed.has(name))) this.#shapes = shapesOf(fields, axes);
  }

  protected override render() {
    const axes = this.#axes;
    const fields = this.#fields;
    if (!axes || !fields) return nothing;
    const { across, up } = axes;
    const { present, ghost } = this;
    const marks = { limit: fields.limit?.name ?? null, present, ghost };
    return html`<div class="frame">
        <div class="up" aria-hidden="true">${drawTicks(up, 'bottom')}</div>
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
          ${drawMap(this.#shapes, axes, this.cross)} ${drawTags(this.#shapes, axes, marks)}
        </div>
        <div class="across" aria-hidden="true">${drawTicks(across, 'left')}</div>
        <div class="name" aria-hidden="true">
          <span>across: ${titleOf(across)}; up: ${titleOf(up)}</span>
          ${drawKey(fields.shade, axes)}
        </div>
      </div>
      <output id="reading" role="status">${this.#reading()}</output>`;
  }

  #reading(): string {
    const { cross, lines, shade, limit } = this;
    const axes = this.#axes;
    const fields = [lines, shade, limit].filter((field) => field !== null);
    return axes && cross ? readingAt(cross, axes, fields) : '';
  }

  #home(): MapCross {
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

declare global {
  interface HTMLElementTagNameMap {
    'contour-map': ContourMap;
  }
  interface HTMLElementEventMap {
    'map-place': MapPlaceEvent;
  }
}
