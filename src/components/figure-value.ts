import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { withMark } from '../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../session/units.ts';
import type { Bands } from '../solver/bands.ts';
import { sayBand, WorkingToggledEvent } from './bands.ts';
import { InSight } from './in-sight.ts';
import type { Working } from './working-parts.ts';

/**
 * One figure: name, value and unit; the difference to the ghost; a remark; its working on demand. A figure there is none
 * of says why. Values are in SI (degrees, fractions) and shown in the chosen units.
 */
@customElement('figure-value')
export class FigureValue extends InSight {
  static override styles = css`
    :host {
      display: block;
      padding: 0.22rem 0;
      border-bottom: 1px dotted var(--line);
      font-variant-numeric: tabular-nums;
    }
    .row {
      display: flex;
      flex-wrap: wrap;
      gap: 0 0.6rem;
      align-items: baseline;
    }
    .label {
      flex: 1 1 0;
      min-width: 0;
      color: var(--soft);
    }
    .value {
      text-align: right;
      font-size: var(--step-1);
      font-weight: 600;
    }
    .none {
      font-size: var(--step-0);
      font-weight: 400;
    }
    :host([stale]) .value {
      font-weight: 400;
      color: var(--soft);
    }
    .ghost {
      flex-basis: 100%;
      text-align: right;
      font-size: var(--step--1);
      color: var(--soft);
      border-right: 2px dashed var(--ghost);
      padding-right: 0.4rem;
    }
    .note {
      margin: 0;
      font-size: var(--step--1);
      color: var(--soft);
    }
    summary {
      cursor: pointer;
      list-style: none;
      border-radius: var(--radius);
    }
    summary::-webkit-details-marker {
      display: none;
    }
    summary .label::after {
      content: '\u00a0▸' / '';
      color: var(--edge);
      font-size: 0.75em;
    }
    details[open] summary .label::after {
      content: '\u00a0▾' / '';
    }
    summary:hover .label {
      color: var(--ink);
    }
    summary:focus-visible {
      outline: 2px solid var(--focus);
      outline-offset: 1px;
    }
    .working {
      margin: 0.25rem 0 0.4rem;
      padding: 0.3rem 0.6rem;
      border-left: 3px solid var(--edge);
      font-size: var(--step--1);
      background: var(--raised);
    }
    .working p {
      margin: 0.15rem 0;
    }
    .formula {
      font-weight: 600;
      overflow-wrap: anywhere;
    }
    dl {
      display: grid;
      grid-template-columns: minmax(0, auto) auto;
      justify-content: start;
      gap: 0 0.8rem;
      margin: 0.2rem 0;
    }
    dt {
      color: var(--soft);
    }
    dd {
      margin: 0;
    }
    @media (pointer: coarse) {
      summary {
        min-height: 2.2rem;
      }
    }
  `;

  @property() label = '';
  @property({ attribute: false }) value: number | null = null;
  @property() quantity: Quantity = 'ratio';
  @property() units: UnitSystem = 'workshop';
  @property({ type: Number }) decimals: number | null = null;
  /** Writes the plus sign too, for differences. */
  @property({ type: Boolean }) signed = false;
  /** Why there is no value. */
  @property() why = 'none';
  @property() note = '';
  /** The ghost's value, where there is a ghost. */
  @property({ attribute: false }) ghost: number | null = null;
  /** How the figure is worked out; asked for only when opened. */
  @property({ attribute: false }) working: (() => Working) | null = null;
  /** How wide the figures of the panel stand, once known. */
  @property({ attribute: false }) bands: Bands | null = null;
  /** Belongs to the design as it was a moment ago. */
  @property({ type: Boolean, reflect: true }) stale = false;

  @state() private isOpen = false;

  protected override render() {
    if (!this.working) return html`${this.#row()}${this.#note()}`;
    return html`<details @toggle=${this.#onToggle}>
        <summary>${this.#row()}</summary>
        ${this.isOpen ? this.#working(this.working()) : nothing}
      </details>
      ${this.#note()}`;
  }

  #row() {
    return html`<div class="row">
      <span class="label">${this.label}</span>
      ${
        this.value === null
          ? html`<span class="value none">${this.why}</span>`
          : html`<span class="value">${this.#write(this.value, this.signed)}</span>`
      }
      ${this.#ghostLine()}
    </div>`;
  }

  #ghostLine() {
    if (this.ghost === null) return nothing;
    const difference = this.value === null ? '' : ` (${this.#write(this.value - this.ghost, true)})`;
    return html`<span class="ghost">ghost ${this.#write(this.ghost, this.signed)}${difference}</span>`;
  }

  #note() {
    return this.note ? html`<p class="note">${this.note}</p>` : nothing;
  }

  #write(value: number, sign: boolean): string {
    const decimals = this.decimals === null ? {} : { decimals: this.decimals };
    return formatWithUnit(value, this.quantity, this.units, { sign, ...decimals });
  }

  #working({ formula, numbers, source, trust, band }: Working) {
    return html`<div class="working">
      <p class="formula">${withMark(formula)}</p>
      <dl>
        ${numbers.map(
          ([name, value]) => html`<dt>${withMark(name)}</dt>
            <dd>${withMark(value)}</dd>`,
        )}
      </dl>
      <p>Source: ${withMark(source)}</p>
      <p>How far to trust it: ${withMark(trust)}</p>
      ${band ? html`<p>Band: ${this.bands ? `${sayBand(this.bands, band, this.quantity, this.units)}.` : 'working …'}</p>` : nothing}
    </div>`;
  }

  readonly #onToggle = (event: Event): void => {
    this.isOpen = (event.target as HTMLDetailsElement).open;
    this.dispatchEvent(new WorkingToggledEvent(this.isOpen));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'figure-value': FigureValue;
  }
}
