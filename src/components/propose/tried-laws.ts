import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { isTried, type LawPlace, lawChanges } from '../../session/wanted-edits.ts';
import type { Design } from '../../solver/design/document.ts';
import { TRIED_LAWS } from '../../solver/design/wanted.ts';
import { panelStyles } from '../panel-styles.ts';
import { sendEdit } from '../send-edit.ts';
import { tickStyles } from './tick-styles.ts';

const PLACES = [
  ['droop', 'Droop of the wing'],
  ['chord', 'Chords of the wing'],
] as const;

/** Which kinds of law of the wing a proposal tries beside one another. */
@customElement('tried-laws')
export class TriedLaws extends LitElement {
  static override styles = [
    panelStyles,
    tickStyles,
    css`
      .places {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 2.5rem;
      }
      fieldset {
        display: flex;
        flex-wrap: wrap;
        gap: 0 1.1rem;
        margin: 0.2rem 0 0.4rem;
        padding: 0;
        border: none;
      }
      legend {
        padding: 0;
        color: var(--soft);
        font-size: var(--step--1);
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) starts = 0;

  protected override render() {
    const { design, starts } = this;
    if (!design) return nothing;
    return html`<h3>Laws tried side by side</h3>
      <p class="note">
        Every pair of a droop law and a chord law that are ticked is searched by itself, and the best is proposed:
        ${starts} searches as it stands. With nothing ticked in a row the drawn law is kept.
      </p>
      <div class="places">
        ${PLACES.map(
          ([place, words]) => html`<fieldset>
            <legend>${words}, drawn: ${design.wing[place].kind}</legend>
            ${TRIED_LAWS[place].map((kind) => this.#law(design, place, words, kind))}
          </fieldset>`,
        )}
      </div>`;
  }

  #law({ wanted }: Design, place: LawPlace, words: string, kind: string) {
    const tick = (event: Event) => {
      const tries = (event.target as HTMLInputElement).checked;
      const changes = lawChanges(wanted?.laws, place, kind, tries);
      sendEdit(this, { changes, label: `${words.toLowerCase()} to try`, phase: 'settled' });
      this.requestUpdate();
    };
    return html`<label>
      <input type="checkbox" .checked=${live(isTried(wanted?.laws, place, kind))} @change=${tick} />
      ${kind}
    </label>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'tried-laws': TriedLaws;
  }
}
