import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { cardStyles } from './card-styles.ts';

/** Asks for the next value up or down; the detail is the value, SI. */
export class SteppedEvent extends CustomEvent<number> {
  static readonly type = 'stepped';
  constructor(value: number) {
    super(SteppedEvent.type, { detail: value, bubbles: true, composed: true });
  }
}

const HELD = 450; // ms until a held button goes on by itself
const EVERY = 160; // ms between its steps

/**
 * One setting between two large buttons; a button held goes on. No slide: a wet finger that scrolls the page must not
 * change anything. Sends `stepped`.
 */
@customElement('setting-stepper')
export class SettingStepper extends LitElement {
  static override styles = [
    cardStyles,
    css`
      :host {
        display: block;
        max-width: none;
        margin: 0;
        padding: 0.25rem 0;
      }
      .row {
        display: grid;
        grid-template-columns: 4rem minmax(0, 1fr) 4rem;
        gap: 0.5rem;
        align-items: center;
      }
      button {
        min-height: 3.5rem;
        padding: 0;
        font-size: 1.9rem;
        line-height: 1;
        user-select: none;
        -webkit-user-select: none;
      }
      .middle {
        text-align: center;
      }
      .name {
        color: var(--soft);
        font-size: 1rem;
      }
      .value {
        display: block;
        font-size: 1.15rem;
        font-weight: 700;
      }
      .scale {
        position: relative;
        height: 6px;
        margin: 0.25rem 0.4rem 0;
        background: linear-gradient(var(--edge), var(--edge)) center / 100% 2px no-repeat;
      }
      .scale span {
        position: absolute;
        top: -3px;
        width: 12px;
        height: 12px;
        margin-left: -6px;
        border-radius: 50%;
        background: var(--ink);
        forced-color-adjust: none;
      }
      .scale i {
        position: absolute;
        top: -2px;
        width: 2px;
        height: 10px;
        margin-left: -1px;
        background: var(--edge);
      }
      @media print {
        :host {
          padding: 0;
        }
        .row {
          display: flex;
          gap: 0.6rem;
        }
        .middle {
          text-align: left;
        }
        .scale {
          display: none;
        }
        .name,
        .value {
          display: inline;
          font-size: 10.5pt;
        }
      }
    `,
  ];

  @property() label = '';
  /** The value in words. */
  @property() words = '';
  /** One step in words, for the names of the buttons. */
  @property() stepWords = '';
  @property({ type: Number }) value = 0;
  @property({ type: Number }) drawn = 0;
  @property({ type: Number }) min = 0;
  @property({ type: Number }) max = 1;
  @property({ type: Number }) step = 1;

  #timer: ReturnType<typeof setTimeout> | undefined;
  #hasRepeated = false; // the click that ends a hold is not one more step

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override render() {
    const share = (value: number) => `${(100 * (value - this.min)) / (this.max - this.min || 1)}%`;
    return html`<div class="row" role="group" aria-label=${this.label}>
      ${this.#button(-1, '\u2212', 'less')}
      <div class="middle">
        <span class="name">${this.label}</span> <output class="value">${this.words}</output>
        <div class="scale" aria-hidden="true"><i .style=${`left: ${share(this.drawn)}`}></i><span .style=${`left: ${share(this.value)}`}></span></div>
      </div>
      ${this.#button(1, '+', 'more')}
    </div>`;
  }

  #button(way: 1 | -1, sign: string, word: string) {
    return html`<button
      type="button"
      aria-label="${this.label}: ${this.stepWords} ${word}"
      aria-disabled=${!this.#canGo(way)}
      @click=${(event: MouseEvent) => this.#onClick(way, event)}
      @pointerdown=${() => this.#hold(way)}
      @pointerup=${this.#letGo}
      @pointerleave=${this.#letGo}
      @pointercancel=${this.#letGo}
      @contextmenu=${(event: Event) => event.preventDefault()}
    >
      ${sign}
    </button>`;
  }

  #canGo(way: 1 | -1): boolean {
    return way > 0 ? this.value < this.max - 1e-9 : this.value > this.min + 1e-9;
  }

  /** To the next whole step from where it stands as drawn, so that a crooked value comes onto the steps. */
  #go(way: 1 | -1): void {
    const steps = (this.value - this.drawn) / this.step;
    const next = way > 0 ? Math.floor(steps + 1e-6) + 1 : Math.ceil(steps - 1e-6) - 1;
    const value = Number((this.drawn + next * this.step).toFixed(6));
    this.dispatchEvent(new SteppedEvent(Math.min(this.max, Math.max(this.min, value))));
  }

  #onClick(way: 1 | -1, { detail }: MouseEvent): void {
    const isKey = detail === 0;
    if (this.#canGo(way) && (isKey || !this.#hasRepeated)) this.#go(way);
  }

  #hold(way: 1 | -1): void {
    this.#hasRepeated = false;
    clearTimeout(this.#timer);
    const repeat = () => {
      if (!this.#canGo(way)) return;
      this.#hasRepeated = true;
      this.#go(way);
      this.#timer = setTimeout(repeat, EVERY);
    };
    this.#timer = setTimeout(repeat, HELD);
  }

  readonly #letGo = (): void => clearTimeout(this.#timer);
}

declare global {
  interface HTMLElementEventMap {
    stepped: SteppedEvent;
  }
  interface HTMLElementTagNameMap {
    'setting-stepper': SettingStepper;
  }
}
