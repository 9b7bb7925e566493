import { css, html, LitElement } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Studies } from '../session/studies.ts';
import type { UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import { sayBand, sayStated } from './bands.ts';
import { type Banded, type BandedQuestion, QUESTION_BANDS } from './question-bands.ts';
import { quietFold } from './quiet-fold.ts';
import { StudyController } from './study-controller.ts';

/** How wide the figures of a question stand: method, strips, inputs. Worked out only while it is open. */
@customElement('band-list')
export class BandList extends LitElement {
  static override styles = [
    quietFold,
    css`
    :host {
      display: block;
      margin-top: 0.5rem;
      font-size: var(--step--1);
    }
    dl {
      margin: 0.25rem 0;
      padding: 0.3rem 0.6rem;
      border-left: 3px solid var(--edge);
      background: var(--raised);
    }
    dt {
      font-weight: 600;
    }
    dd {
      margin: 0 0 0.35rem;
      max-width: 70ch;
    }
    p {
      margin: 0.2rem 0;
      color: var(--soft);
    }
    @media (pointer: coarse) {
      summary {
        min-height: 2.2rem;
      }
    }
  `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) studies: Studies | null = null;
  @property() units: UnitSystem = 'workshop';
  @property() question: BandedQuestion = 'headline';

  @state() private isOpen = false;

  readonly #study = new StudyController(this, 'bands', () =>
    this.isOpen && this.#banded.some((one) => 'name' in one)
      ? { studies: this.studies, design: this.design, options: {} }
      : null,
  );

  get #banded(): readonly Banded[] {
    return QUESTION_BANDS[this.question];
  }

  protected override render() {
    return html`<details @toggle=${this.#onToggle}>
      <summary>How wide these figures stand</summary>
      ${this.isOpen ? this.#list() : ''}
    </details>`;
  }

  #list() {
    return html`<dl>
        ${this.#banded.map(
          (one) =>
            html`<dt>${one.label}</dt>
              <dd>${this.#say(one)}</dd>`,
        )}
      </dl>
      ${this.#study.failure ? html`<p role="status">${this.#study.failure}</p>` : ''}
      <p>Half widths. Sources: the accuracy page of the help and, for inputs, what a builder commonly knows.</p>`;
  }

  #say(one: Banded): string {
    if ('stated' in one) return one.stated ? `${sayStated(one.stated)}; ${one.also}.` : `${one.also}.`;
    const found = this.#study.resultDesign === this.design ? this.#study.result : null;
    return found ? `${sayBand(found, one.name, one.quantity, this.units)}.` : 'working …';
  }

  readonly #onToggle = (event: Event): void => {
    this.isOpen = (event.target as HTMLDetailsElement).open;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'band-list': BandList;
  }
}
