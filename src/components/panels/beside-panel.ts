import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { KeptDesign } from '../../session/kept.ts';
import type { Session } from '../../session/session.ts';
import type { UnitSystem } from '../../session/units.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import { answerStyles } from '../answer-styles.ts';
import '../beside/comparison-table.ts';
import '../beside/design-differences.ts';
import { type Entry, entriesOf, OPEN } from '../beside/entries.ts';
import { type KeptRemovedEvent, writeTime } from '../beside/kept-card.ts';
import '../beside/kept-card.ts';
import '../beside/ridden-section.ts';
import { firstButton } from '../first-button.ts';
import { studyStyles } from '../study-styles.ts';
import { extentOf } from '../view-frame.ts';

/**
 * This design next to the ones kept before: the shelf, a ghost chosen from it, a table over all of them, what differs in
 * the documents, and what the rider's marks have to do with the figures.
 */
@customElement('beside-panel')
export class BesidePanel extends LitElement {
  static override styles = [
    answerStyles,
    studyStyles,
    firstButton,
    css`
      .caution + section {
        border-top: 0;
        margin-top: 0;
      }
      h2:focus {
        outline: none;
      }
      .shelf {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 17rem), 1fr));
        gap: 0.8rem;
        margin: 0.5rem 0;
        padding: 0;
        list-style: none;
        align-items: start;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.35rem 0.6rem;
        align-items: center;
        margin: 0.4rem 0;
      }
      .chosen {
        display: flex;
        flex-wrap: wrap;
        gap: 0.2rem 1rem;
        border: 0;
        padding: 0;
        margin: 0.3rem 0;
        font-size: var(--step--1);
      }
      .chosen legend {
        float: left;
        padding: 0;
        margin-right: 1rem;
        color: var(--soft);
      }
      .chosen label {
        display: inline-flex;
        gap: 0.3rem;
        align-items: center;
        min-height: 1.6rem;
      }
      .off {
        padding-left: 1rem;
        font-size: var(--step--1);
      }
      .off li {
        margin: 0.3rem 0;
      }
      :is(.chosen, .off) {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) session: Session | null = null;
  @property() units: UnitSystem = 'workshop';
  /** The session's counter, so that this renders when the session changes. */
  @property({ type: Number }) tick = 0;

  /** Entries that are left out of the table. */
  @state() private leftOut: ReadonlySet<string> = new Set();
  /** The design taken off the shelf last, as long as it can be brought back right here. */
  @state() private gone: KeptDesign | null = null;

  @query('#bring-back') private readonly bringBack!: HTMLElement | null;
  @query('#shelf') private readonly heading!: HTMLElement;

  protected override render() {
    const { session } = this;
    if (!session) return nothing;
    const entries = entriesOf(session);
    const shown = entries.filter(({ id }) => !this.leftOut.has(id));
    return html`<p class="caution">${CAUTION}</p>
      <section aria-labelledby="shelf">${this.#shelf(session)}</section>
      <section aria-labelledby="compared">
        <h2 id="compared">Side by side</h2>
        ${this.#choice(entries)}
        <comparison-table .entries=${shown} .units=${this.units}></comparison-table>
      </section>
      <section aria-labelledby="differs">
        <h2 id="differs">What differs in the drawings</h2>
        <design-differences .entries=${shown} .units=${this.units}></design-differences>
      </section>
      <section aria-labelledby="ridden">
        <h2 id="ridden">Ridden: the rider’s marks against the figures</h2>
        <ridden-section
          .entries=${entries.slice(1)}
          .hold=${session.ridden}
          .now=${session.report?.stability.holdIndex ?? null}
          .ghost=${session.ghosts.current?.report?.stability.holdIndex ?? null}
          .studies=${session.studies}
        ></ridden-section>
      </section>`;
  }

  #shelf(session: Session) {
    const { kept, ghosts } = session;
    const designs = kept.list.flatMap(({ reading }) => (reading.ok ? [reading.design] : []));
    const extent = extentOf([session.design, ...designs]);
    return html`<h2 id="shelf" tabindex="-1">The shelf <small>kept in this browser</small></h2>
      ${kept.trouble ? html`<p class="trouble" role="status">${kept.trouble} Save what matters as a file.</p>` : nothing}
      <div class="row">
        <button type="button" class="first" @click=${() => void session.keep()}>Keep the open design</button>
        ${this.gone ? this.#gone(session, this.gone) : nothing}
      </div>
      ${
        kept.list.length === 0
          ? html`<p class="note">
              Nothing is kept yet. Keep the open design, go on drawing, keep it again: here they stand beside each other, and any
              of them can be the ghost behind the one you draw.
            </p>`
          : html`<ul class="shelf">
              ${repeat(
                kept.list,
                ({ id }) => id,
                (each) => html`<li>
                  <kept-card
                    .session=${session}
                    .kept=${each}
                    .units=${this.units}
                    .extent=${extent}
                    .tick=${this.tick}
                    ?ghost=${ghosts.chosen === each.id}
                    @kept-removed=${this.#onRemoved}
                  ></kept-card>
                </li>`,
              )}
            </ul>`
      }
      ${this.#takenOff(session)}`;
  }

  #gone({ kept }: Session, { id, name }: KeptDesign) {
    return html`<span role="status">“${name}” is off the shelf.</span>
      <button
        type="button"
        id="bring-back"
        @click=${() => {
          kept.bringBack(id);
          this.gone = null;
          this.heading.focus();
        }}
      >
        Bring it back
      </button>`;
  }

  readonly #onRemoved = async ({ detail }: KeptRemovedEvent): Promise<void> => {
    this.gone = this.session?.kept.removed.find(({ id }) => id === detail) ?? null;
    await this.updateComplete;
    this.bringBack?.focus();
  };

  #takenOff({ kept }: Session) {
    const { removed } = kept;
    if (removed.length === 0) return nothing;
    return html`<details>
      <summary>Taken off the shelf: ${removed.length}</summary>
      <ul class="off">
        ${removed.map(
          ({ id, name, removed: time, reading }) => html`<li>
            ${name}, ${writeTime(time ?? 0)}
            <button type="button" aria-label="Bring back: ${name}" @click=${() => kept.bringBack(id)}>Bring back</button>
            ${
              reading.ok
                ? html`<button type="button" aria-label="Throw away for good: ${name}" @click=${() => void kept.forget(id)}>
                    Throw away for good
                  </button>`
                : nothing
            }
          </li>`,
        )}
      </ul>
    </details>`;
  }

  #choice(entries: readonly Entry[]) {
    if (entries.length < 3) return nothing;
    return html`<fieldset class="chosen">
      <legend>In the table</legend>
      ${entries.map(
        ({ id, name }) => html`<label>
          <input type="checkbox" .checked=${!this.leftOut.has(id)} @change=${() => this.#toggle(id)} />
          ${id === OPEN ? `${name} (open)` : name}
        </label>`,
      )}
    </fieldset>`;
  }

  #toggle(id: string): void {
    const leftOut = new Set(this.leftOut);
    if (!leftOut.delete(id)) leftOut.add(id);
    this.leftOut = leftOut;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'beside-panel': BesidePanel;
  }
}
