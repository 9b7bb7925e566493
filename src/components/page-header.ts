import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { type DecimalMark, decimalMark } from '../session/number-format.ts';
import type { Session } from '../session/session.ts';
import { UNIT_SYSTEMS, type UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import './cards/cards-menu.ts';
import { headerStyles } from './header-styles.ts';
import { InSight } from './in-sight.ts';
import './share-button.ts';
import './text-field.ts';

export interface Demo {
  id: string;
  label: string;
  readonly design: Design;
}

/** Asks the page to show another system of units. */
export class UnitsChosenEvent extends CustomEvent<UnitSystem> {
  static readonly type = 'units-chosen';
  constructor(system: UnitSystem) {
    super(UnitsChosenEvent.type, { detail: system, bubbles: true, composed: true });
  }
}

/** Asks the page to write its figures with another decimal mark. */
export class DecimalMarkChosenEvent extends CustomEvent<DecimalMark> {
  static readonly type = 'decimal-mark-chosen';
  constructor(mark: DecimalMark) {
    super(DecimalMarkChosenEvent.type, { detail: mark, bubbles: true, composed: true });
  }
}

/** The head of the page: the design's name, whether it is kept, undo and redo, files, demos, how figures are written. */
@customElement('page-header')
export class PageHeader extends InSight {
  static override styles = [
    headerStyles,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: 0.35rem 0.6rem;
        align-items: center;
        padding: 0.45rem 1rem;
        border-bottom: 1px solid var(--line);
        background: var(--paper);
      }
      h1 {
        font-size: var(--step-1);
        margin: 0;
        letter-spacing: 0.02em;
      }
      text-field {
        flex: 1 1 12rem;
        max-width: 24rem;
        font-weight: 600;
        margin: 0;
      }
      .state {
        color: var(--soft);
        font-size: var(--step--1);
        min-width: 4.5rem;
      }
      .state.failed {
        color: var(--bad);
        font-weight: 600;
      }
      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: 0.35rem;
        margin-left: auto;
      }
      .demos {
        width: 6.5rem;
      }
      .file {
        display: inline-flex;
        align-items: center;
        box-sizing: border-box;
        position: relative;
      }
      .file input {
        position: absolute;
        inset: 0;
        opacity: 0;
        cursor: pointer;
      }
      @media (max-width: 48rem) {
        text-field {
          order: 1;
          flex-basis: 100%;
          max-width: none;
        }
        .state {
          margin-left: auto;
          text-align: right;
        }
        .actions {
          order: 2;
          margin-left: 0;
        }
      }
      @media print {
        .state,
        .actions {
          display: none;
        }
      }
    `,
  ];

  protected override readonly rest = 1000; // a drag saves over and over

  @property({ attribute: false }) session: Session | null = null;
  @property({ attribute: false }) demos: readonly Demo[] = [];
  @property() units: UnitSystem = 'workshop';
  /** The session's counter, so that this renders when the session changes. */
  @property({ type: Number }) tick = 0;

  /** The demo just chosen, while its list has the focus: the arrow keys go on from there. */
  @state() private demo = '';

  protected override render() {
    if (!this.session) return nothing;
    const { design, keeping } = this.session;
    return html`<h1>Downcurve</h1>
      <text-field bare label="Name of the design" edit-label="name" path="name" .value=${design.name}></text-field>
      <span class="state ${keeping.state.kind}" >${STATES[keeping.state.kind]}</span>
      <div class="actions">${this.#history(this.session)} ${this.#files(this.session)} ${this.#demos()} ${this.#units()}</div>`;
  }

  #history({ store }: Session) {
    const { undoLabel, redoLabel } = store;
    return html`<button
        type="button"
        ?disabled=${undoLabel === null}
        title="Ctrl+Z"
        aria-keyshortcuts="Control+Z"
        @click=${() => store.undo()}
      >
        Undo${undoLabel === null ? '' : `: ${undoLabel}`}
      </button>
      <button
        type="button"
        ?disabled=${redoLabel === null}
        title="Ctrl+Shift+Z"
        aria-keyshortcuts="Control+Shift+Z"
        @click=${() => store.redo()}
      >
        Redo${redoLabel === null ? '' : `: ${redoLabel}`}
      </button>`;
  }

  #files(session: Session) {
    return html`<button type="button" @click=${() => void session.keep()}>Keep beside</button>
      <label class="file"
        >Open a file
        <input type="file" accept=".json,application/json" @change=${this.#onFile} />
      </label>
      <button type="button" @click=${() => session.saveFile()}>Save as a file</button>
      <share-button .session=${session}></share-button>
      <cards-menu .session=${session} .demos=${this.demos}></cards-menu>`;
  }

  #demos() {
    return html`<select
      class="demos"
      aria-label="Open a demo design"
      .value=${live(this.demo)}
      @change=${this.#onDemo}
      @blur=${this.#onDemoLeft}
    >
      <option value="" disabled selected>Demos</option>
      ${this.demos.map(({ id, label }) => html`<option value=${id}>${label}</option>`)}
    </select>`;
  }

  #units() {
    return html`<select aria-label="Units" .value=${live(this.units)} @change=${this.#onUnits}>
      ${UNIT_SYSTEMS.map(
        ({ system, label }) =>
          html`<option value=${system} ?selected=${system === this.units}>${label}</option>`,
      )}
    </select>
    <select aria-label="Decimal mark" title="Decimal mark" .value=${live(decimalMark())} @change=${this.#onMark}>
      ${MARKS.map(
        ({ mark, label }) =>
          html`<option value=${mark} ?selected=${mark === decimalMark()}>${label}</option>`,
      )}
    </select>`;
  }

  readonly #onFile = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = ''; // the same file may be chosen again
    if (file) void this.session?.openFile(file);
  };

  readonly #onDemo = (event: Event): void => {
    this.demo = (event.target as HTMLSelectElement).value;
    const demo = this.demos.find(({ id }) => id === this.demo);
    if (demo) this.session?.openDesign(demo.design, `open ${demo.label.toLowerCase()}`);
  };

  readonly #onDemoLeft = (): void => {
    this.demo = '';
  };

  readonly #onUnits = (event: Event): void => {
    this.dispatchEvent(new UnitsChosenEvent((event.target as HTMLSelectElement).value as UnitSystem));
  };

  readonly #onMark = (event: Event): void => {
    this.dispatchEvent(new DecimalMarkChosenEvent((event.target as HTMLSelectElement).value as DecimalMark));
  };
}

const MARKS: ReadonlyArray<{ mark: DecimalMark; label: string }> = [
  { mark: '.', label: '1.5 point' },
  { mark: ',', label: '1,5 comma' },
];

const STATES = { saved: 'saved here', saving: 'saving …', failed: 'not saved' };

declare global {
  interface HTMLElementEventMap {
    'units-chosen': UnitsChosenEvent;
    'decimal-mark-chosen': DecimalMarkChosenEvent;
  }
  interface HTMLElementTagNameMap {
    'page-header': PageHeader;
  }
}
