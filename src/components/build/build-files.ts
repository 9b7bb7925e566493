import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exporter } from '../../session/exporter.ts';
import { saveBytes } from '../../session/files.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Order } from '../../workshop/order.ts';
import { panelStyles } from '../panel-styles.ts';
import { type FileChoices, USUAL_CHOICES } from './choices.ts';

type Wanted = Pick<Order, 'kind' | 'part'> & { id: string; label: string };

const EXPORTS: readonly Wanted[] = [
  { id: 'csv', label: 'Stations, CSV', kind: 'csv', part: null },
  { id: 'svg', label: 'Drawings, SVG', kind: 'svg', part: null },
  { id: 'dxf', label: 'Drawings, DXF', kind: 'dxf', part: null },
  { id: 'pdf', label: 'Sheet and templates, PDF', kind: 'pdf', part: null },
  { id: 'stl', label: 'Wing and stabilizer, STL', kind: 'stl', part: null },
  { id: 'strut', label: 'Strut, STL', kind: 'stl', part: 'strut' },
  { id: 'fuselage', label: 'Fuselage, STL', kind: 'stl', part: 'fuselage' },
  { id: 'mould', label: 'Moulds, STL', kind: 'stl', part: 'mould' },
];

interface Running {
  label: string;
  share: number | null; // null before the first news
  cancel: () => void;
}

/** The files of a design at the touch of a button, one at a time, made off the page with progress and Cancel. */
@customElement('build-files')
export class BuildFiles extends LitElement {
  static override styles = [
    panelStyles,
    css`
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem 0.6rem;
        align-items: center;
        margin: 0.4rem 0;
      }
      progress {
        accent-color: var(--carry);
        width: 12rem;
      }
      button[aria-disabled='true'] {
        color: var(--soft);
        cursor: default;
      }
      [role='alert'] {
        border-left: 3px solid var(--bad);
        padding-left: 0.5rem;
        margin: 0.3rem 0;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) exporter: Exporter | null = null;
  @property({ attribute: false }) choices: FileChoices = USUAL_CHOICES;

  @state() private running: Running | null = null;
  @state() private trouble = '';
  @state() private news = '';

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop();
  }

  protected override render() {
    const { design, running } = this;
    if (!design) return nothing;
    const offered = EXPORTS.filter(
      ({ part }) => part === null || part === 'mould' || (part !== 'wing' && design[part] !== null),
    );
    return html`<div class="row" role="group" aria-label="Files to make">
        ${offered.map(
          (wanted) =>
            html`<button
              type="button"
              data-export=${wanted.id}
              aria-disabled=${running ? 'true' : 'false'}
              @click=${() => this.#start(wanted)}
            >
              ${wanted.label}
            </button>`,
        )}
        <button type="button" data-print @click=${() => window.print()}>Print the sheet</button>
      </div>
      ${running ? this.#progress(running) : nothing}
      <p class="note" role="status">${this.news}</p>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}`;
  }

  #progress({ label, share }: Running) {
    return html`<div class="row">
      <progress
        max="1"
        value=${share ?? nothing}
        aria-label="Making ${label}"
      ></progress>
      <span>${label} …</span>
      <button type="button" @click=${this.#cancel}>Cancel</button>
    </div>`;
  }

  #start({ label, kind, part }: Wanted): void {
    if (!this.exporter || !this.design || this.running) return;
    this.trouble = '';
    this.news = '';
    const order: Order = { ...this.choices, kind, part, date: new Date() };
    const cancel = this.exporter.start(this.design, order, (news) => {
      if (news.kind === 'progress') {
        this.running = { label, share: news.share, cancel };
        return;
      }
      this.running = null;
      if (news.kind === 'failed') this.trouble = news.message;
      else {
        saveBytes(news.file.bytes, news.file.name);
        this.news = `${news.file.name} is ready.`;
      }
    });
    this.running = { label, share: null, cancel };
  }

  readonly #cancel = (): void => {
    if (this.running) this.news = `${this.running.label}: cancelled.`;
    this.#stop();
  };

  #stop(): void {
    this.running?.cancel();
    this.running = null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'build-files': BuildFiles;
  }
}
