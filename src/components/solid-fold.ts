import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Ghost } from '../session/ghost.ts';
import type { Studies } from '../session/studies.ts';
import type { UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';
import { InSight } from './in-sight.ts';
import { panelStyles } from './panel-styles.ts';
import { recall, remember } from './preferences.ts';

/** Where the view to turn stands, folded until it is wanted: it is large, and loaded only then. */
@customElement('solid-fold')
export class SolidFold extends InSight {
  static override styles = [
    panelStyles,
    css`
      .trouble {
        border-left: 3px solid var(--bad);
        padding-left: 0.5rem;
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) ghost: Ghost | null = null;
  @property({ attribute: false }) studies: Studies | null = null;

  @state() private isOpen = recall('solid', { isOpen: false, paint: 'plain' }).isOpen;
  @state() private loading: 'not yet' | 'under way' | 'done' | 'failed' = 'not yet';

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.isOpen && this.loading === 'not yet') void this.#load();
  }

  protected override render() {
    return html`<details ?open=${this.isOpen} @toggle=${this.#onToggle}>
      <summary><h2>Turn it round</h2></summary>
      ${this.isOpen ? this.#inside() : nothing}
    </details>`;
  }

  #inside() {
    if (this.loading === 'failed')
      return html`<p class="trouble" role="status">
        The view to turn could not be loaded; the flat views above show the same foil.
        <button type="button" @click=${this.#load}>Try again</button>
      </p>`;
    if (this.loading !== 'done') return html`<p class="note" role="status">Loading the view …</p>`;
    return html`<solid-view
      .design=${this.design}
      .report=${this.report}
      .units=${this.units}
      .ghost=${this.ghost}
      .studies=${this.studies}
    ></solid-view>`;
  }

  readonly #onToggle = (event: Event): void => {
    const { open } = event.target as HTMLDetailsElement;
    if (open === this.isOpen) return;
    this.isOpen = open;
    remember('solid', { ...recall('solid', { isOpen: open, paint: 'plain' }), isOpen: open });
    if (open && this.loading !== 'done') void this.#load();
  };

  readonly #load = async (): Promise<void> => {
    this.loading = 'under way';
    try {
      await import('./solid-view.ts');
      this.loading = 'done';
    } catch {
      this.loading = 'failed'; // offline before it was ever opened
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'solid-fold': SolidFold;
  }
}
