import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { InSight } from './in-sight.ts';
import './band-list.ts';
import { hasBands } from './question-bands.ts';
import type { QuestionContext } from './questions.ts';
import { QUESTIONS } from './questions.ts';

/** The questions as tabs. Arrow keys, Home and End move along the strip; a panel's code loads when it is first asked. */
@customElement('question-tabs')
export class QuestionTabs extends InSight {
  static override styles = css`
    :host {
      display: block;
    }
    [role='tablist'] {
      display: flex;
      gap: 0.2rem;
      padding: 0.35rem 1rem 0;
      border-bottom: 1px solid var(--line);
      overflow-x: auto;
    }
    [role='tab'] {
      font: inherit;
      color: var(--soft);
      background: none;
      border: 0;
      border-bottom: 3px solid transparent;
      padding: 0.4rem 0.8rem;
      white-space: nowrap;
      cursor: pointer;
      min-height: 2.2rem;
    }
    [role='tab'][aria-selected='true'] {
      color: var(--ink);
      font-weight: 600;
      border-color: var(--carry);
    }
    [role='tab']:focus-visible,
    [role='tabpanel']:focus-visible {
      outline: 2px solid var(--focus);
      outline-offset: -3px;
    }
    [role='tabpanel'] {
      padding: 0.6rem 1rem 1rem;
    }
    /* Where there is room every question is in sight; on a phone the strip slides. */
    @media (min-width: 48rem) {
      [role='tablist'] {
        flex-wrap: wrap;
        overflow: visible;
      }
    }
    @media (forced-colors: active) {
      [role='tab']:not([aria-selected='true']) {
        border-color: Canvas;
      }
    }
    @media print {
      [role='tablist'] {
        display: none;
      }
      [role='tabpanel'] {
        padding: 0;
      }
    }
  `;

  @property({ attribute: false }) context: QuestionContext | null = null;

  /** Which question is open; seen by the style sheet for paper. */
  @property({ reflect: true }) open = QUESTIONS[0]!.id;
  @state() private trouble = '';
  private hasAsked = false; // for the code of the open panel

  /** The first panel makes way for the first figures: its charts' code costs more than they do. */
  protected override willUpdate(): void {
    const { session, report } = this.context ?? {};
    if (!this.hasAsked && (report || session?.failure != null)) this.#load();
  }

  protected override render() {
    if (!this.context) return nothing;
    const question = QUESTIONS.find(({ id }) => id === this.open)!;
    return html`<div role="tablist" aria-label="Questions" @keydown=${this.#onKeyDown}>
        ${QUESTIONS.map(
          ({ id, label }) => html`<button
            role="tab"
            id="tab-${id}"
            aria-selected=${id === this.open ? 'true' : 'false'}
            aria-controls="panel"
            tabindex=${id === this.open ? 0 : -1}
            @click=${() => this.#show(id)}
          >
            ${label}
          </button>`,
        )}
      </div>
      <div role="tabpanel" id="panel" aria-labelledby="tab-${this.open}">
        ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : question.render(this.context)}
        ${this.#bands(question.id, this.context)}
      </div>`;
  }

  #bands(id: string, { design, units, studies }: QuestionContext) {
    if (!hasBands(id)) return nothing;
    return html`<band-list .design=${design} .units=${units} .studies=${studies} .question=${id}></band-list>`;
  }

  #show(id: string): void {
    this.open = id;
    this.#load();
  }

  #load(): void {
    this.hasAsked = true;
    this.trouble = '';
    const { id, load } = QUESTIONS.find((question) => question.id === this.open)!;
    load().catch(() => {
      if (id === this.open)
        this.trouble = 'This part could not be loaded. Check the connection and choose it again.';
    });
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    const last = QUESTIONS.length - 1;
    const here = QUESTIONS.findIndex(({ id }) => id === this.open);
    const places: Record<string, number> = {
      ArrowRight: here === last ? 0 : here + 1,
      ArrowLeft: here === 0 ? last : here - 1,
      Home: 0,
      End: last,
    };
    const next = places[event.key];
    if (next === undefined) return;
    event.preventDefault();
    this.#show(QUESTIONS[next]!.id);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`#tab-${this.open}`)?.focus(),
    );
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'question-tabs': QuestionTabs;
  }
}
