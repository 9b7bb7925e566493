import { css, html, LitElement } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { differencesOf } from '../../session/differences.ts';
import type { UnitSystem } from '../../session/units.ts';
import { answerStyles } from '../answer-styles.ts';
import { take, toPart } from '../asked.ts';
import '../choice-field.ts';
import { figureTable, tableStyles } from '../figure-table.ts';
import { studyStyles } from '../study-styles.ts';
import { sayDifference } from './difference-words.ts';
import { type Entry, OPEN } from './entries.ts';

/** What differs in the documents, from any one of the designs to each of the others. */
@customElement('design-differences')
export class DesignDifferences extends LitElement {
  static override styles = [
    answerStyles,
    studyStyles,
    tableStyles,
    css`
      .differences {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 19rem), 1fr));
        gap: 0.6rem 1.6rem;
        align-items: start;
        overflow-wrap: anywhere;
      }
      .differences :is(td, th[scope='row']) {
        white-space: normal;
      }
      .differences .note {
        margin: 0;
      }
      .controls {
        --control-width: 16rem;
      }
    `,
  ];

  @property({ attribute: false }) entries: readonly Entry[] = [];
  @property() units: UnitSystem = 'workshop';

  /** The entry that the documents are set against. */
  @state() private base = OPEN;

  protected override render() {
    const { entries } = this;
    const base = entries.find(({ id }) => id === this.base) ?? entries[0];
    const others = entries.filter((entry) => entry !== base);
    if (!base || others.length === 0)
      return html`<p class="note">Two designs or more are needed. Keep one, then change it.</p>`;
    return html`<div class="controls">
        <choice-field
          label="From"
          .value=${base.id}
          .choices=${entries.map((entry) => ({ value: entry.id, label: nameOf(entry) }))}
          .toChanges=${toPart}
          @design-edit=${take((id) => {
            this.base = id as string;
          })}
        ></choice-field>
      </div>
      <div class="differences">
        ${others.map((other) => this.#differencesTo(base, other, nameOf(other)))}
      </div>`;
  }

  #differencesTo(base: Entry, other: Entry, name: string) {
    const lines = differencesOf(base.design, other.design).map((each) => sayDifference(each, this.units));
    return lines.length === 0
      ? html`<p class="note"><b>To ${name}</b><br />nothing but the name</p>`
      : figureTable(
          `To ${name}`,
          ['', 'from → to'],
          lines.map(({ what, from, to }) => ({ cells: [what, `${from} → ${to}`] })),
        );
  }
}

const nameOf = (entry: Entry) => (entry.id === OPEN ? `${entry.name} (open)` : entry.name);

declare global {
  interface HTMLElementTagNameMap {
    'design-differences': DesignDifferences;
  }
}
