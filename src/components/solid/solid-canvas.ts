import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { Design } from '../../solver/design/document.ts';
import { panelStyles } from '../panel-styles.ts';
import type { NamedView, Pose } from './camera.ts';
import { canvasStyles } from './canvas-styles.ts';
import { Eye } from './eye.ts';
import { frameOf } from './framing.ts';
import { listen, NEAR_STEP, TURN_STEP } from './gestures.ts';
import type { Colour } from './skin-canvas.ts';
import { type SkinPainter, Stage } from './stage.ts';

/** Sent when the eye is bound for another place; the pose is `goal`. */
export const EYE_MOVED = 'eye-moved';
/** Sent once where the browser gives no graphics. */
export const NO_GRAPHICS = 'no-graphics';

const HELP = `Drag to turn, or arrow keys; Shift to shift it instead. Nearer and further: + and −, Ctrl and wheel, two fingers.
  Keys 1 to 6 choose the views above in their order, 0 shows all of it. On a touch screen start sideways to turn; up and down
  scrolls the page.`;

/** The picture itself: a canvas that can be turned by mouse, touch, keys and buttons, and what to do without its graphics. */
@customElement('solid-canvas')
export class SolidCanvas extends LitElement {
  static override styles = [panelStyles, canvasStyles];

  @property({ attribute: false }) design: Design | null = null;
  /** Translucent behind the design. */
  @property({ attribute: false }) ghost: Design | null = null;
  /** What is painted on the skin, in these colours; null: nothing. Painted anew when it is another. */
  @property({ attribute: false }) painter: ((colour: Colour) => SkinPainter) | null = null;
  /** The picture in words. */
  @property() label = '';

  @state() private isLost = false;
  @query('canvas') private readonly canvas!: HTMLCanvasElement;

  #stage: Stage | null = null;
  #eye: Eye | null = null;
  #times = 0; // put into a page: each time takes a canvas of its own
  readonly #scheme = matchMedia('(prefers-color-scheme: dark)');
  readonly #observer = new ResizeObserver(([entry]) =>
    requestAnimationFrame(() => this.#eye?.resize(entry!.contentRect.width, entry!.contentRect.height)),
  );
  readonly #sight = new IntersectionObserver((entries) => this.#eye?.see(entries.at(-1)!.isIntersecting));

  /** Where the eye is bound for; null without graphics. */
  get goal(): Pose | null {
    return this.#eye?.goal ?? null;
  }

  /** Of the picture, CSS px. */
  get size(): Readonly<{ width: number; height: number }> {
    return this.#eye?.size ?? { width: 0, height: 0 };
  }

  /** Frames drawn so far. */
  get frames(): number {
    return this.#eye?.frames ?? 0;
  }

  look(view: NamedView): void {
    this.#eye?.look(view);
  }

  /** Draws the view at a size of its own; good until the next frame. Null without graphics. */
  drawAt(width: number, height: number): HTMLCanvasElement | null {
    return this.#eye && !this.isLost ? this.#eye.drawAt(width, height) : null;
  }

  /** A colour as written in tokens.css: a picture keeps its own where the system forces those of text. */
  readonly colour = (name: string): string => getComputedStyle(this).getPropertyValue(name).trim();

  override connectedCallback(): void {
    super.connectedCallback();
    this.#times++;
    this.#scheme.addEventListener('change', this.#recolour);
    this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer.disconnect();
    this.#sight.disconnect();
    this.#scheme.removeEventListener('change', this.#recolour);
    this.canvas?.removeEventListener('webglcontextlost', this.#onLost);
    this.canvas?.removeEventListener('webglcontextrestored', this.#onRestored);
    this.#eye?.stop();
    this.#stage?.dispose();
    this.#stage = null;
    this.#eye = null;
  }

  protected override render() {
    return html`<div class="view">
        <div class="frame">
        ${keyed(
          this.#times,
          html`<canvas tabindex="0" role="img" aria-label=${this.label} aria-describedby="help"></canvas>`,
        )}
        ${
          this.isLost
            ? html`<p class="lost" role="status">
                The browser has taken the graphics away, perhaps for another page. The picture comes back with them; the flat views
                still follow.
              </p>`
            : nothing
        }
        </div>
        ${this.#pad()}
      </div>
      <p class="note" id="help">${HELP}</p>`;
  }

  protected override updated(changed: PropertyValues): void {
    const { design } = this;
    if (!design || !this.isConnected) return;
    if (!this.#stage && !this.#start(design)) return;
    const [stage, eye] = [this.#stage!, this.#eye!];
    const isOther = changed.has('design');
    if (isOther) stage.show(design);
    if (isOther || changed.has('ghost')) {
      stage.showGhost(this.ghost, design);
      eye.hold(frameOf(design, this.ghost));
    }
    if (changed.has('painter')) stage.paint(this.painter?.(this.colour) ?? null);
    if (isOther || changed.has('ghost') || changed.has('painter')) eye.request();
  }

  /** The same without dragging: for one finger, a switch, a head pointer. */
  #pad() {
    const button = (place: string, label: string, sign: string, press: () => void) =>
      html`<button type="button" class=${place} aria-label=${label} title=${label} @click=${press}>${sign}</button>`;
    const turn = (yaw: number, pitch: number) => () =>
      this.#eye?.turn(yaw * TURN_STEP, pitch * TURN_STEP, false);
    const approach = (factor: number) => () => this.#eye?.approach(factor, false);
    return html`<div class="pad" role="group" aria-label="Turn the foil">
      ${button('left', 'Turn to the left', '←', turn(-1, 0))} ${button('up', 'Look from higher', '↑', turn(0, 1))}
      ${button('down', 'Look from lower', '↓', turn(0, -1))} ${button('right', 'Turn to the right', '→', turn(1, 0))}
      ${button('nearer', 'Nearer', '+', approach(NEAR_STEP))}
      ${button('further', 'Further', '−', approach(1 / NEAR_STEP))}
    </div>`;
  }

  /** False where the browser gives no graphics. */
  #start(design: Design): boolean {
    const { canvas } = this;
    try {
      this.#stage = new Stage(canvas);
    } catch {
      this.dispatchEvent(new CustomEvent(NO_GRAPHICS));
      return false;
    }
    const moved = () => this.dispatchEvent(new CustomEvent(EYE_MOVED));
    this.#eye = new Eye(this.#stage, frameOf(design, this.ghost), moved);
    this.#stage.colour(this.colour);
    this.#stage.show(design);
    this.#stage.showGhost(this.ghost, design);
    this.#stage.paint(this.painter?.(this.colour) ?? null);
    this.#eye.resize(canvas.clientWidth, canvas.clientHeight);
    listen(canvas, this.#eye);
    canvas.addEventListener('webglcontextlost', this.#onLost);
    canvas.addEventListener('webglcontextrestored', this.#onRestored);
    this.#observer.observe(canvas);
    this.#sight.observe(canvas);
    moved();
    return true;
  }

  readonly #recolour = (): void => {
    this.#stage?.colour(this.colour);
    this.#stage?.paint(this.painter?.(this.colour) ?? null);
    this.#eye?.request();
  };

  readonly #onLost = (): void => {
    this.isLost = true;
  };

  readonly #onRestored = (): void => {
    this.isLost = false;
    this.#eye?.request();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'solid-canvas': SolidCanvas;
  }
}
