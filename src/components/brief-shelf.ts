import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { BRIEFS, type NamedBrief } from '../session/briefs.ts';
import type { Brief } from '../solver/design/document.ts';
import './choice-field.ts';
import type { Change } from './events.ts';
import { panelStyles } from './panel-styles.ts';
import { recall, remember } from './preferences.ts';
import './text-field.ts';

const USUAL_NAME = 'my brief';

/**
 * Briefs to start from: a few that come with the program, and the user's own, kept in this browser. Taking one over is an
 * edit of the design; keeping and forgetting are not.
 */
@customElement('brief-shelf')
export class BriefShelf extends LitElement {
  static override styles = [
    panelStyles,
    css`
      ul {
        list-style: none;
        margin: 0.2rem 0;
        padding: 0;
      }
      li,
      .keep {
        display: flex;
        gap: 0.5rem;
        align-items: center;
        justify-content: space-between;
        font-size: var(--step--1);
      }
      text-field {
        flex: 1;
        min-width: 0;
      }
      .said:empty {
        display: none;
      }
    `,
  ];

  /** The brief of the design on screen. */
  @property({ attribute: false }) brief: Brief | null = null;

  @state() private own: NamedBrief[] = recall('briefs', []);
  @state() private name = USUAL_NAME;
  @state() private said = '';
  @state() private forgotten: NamedBrief | null = null;

  protected override render() {
    const briefs = [...BRIEFS, ...this.own];
    return html`<choice-field
        label="Start from"
        value=""
        edit-label="brief"
        .choices=${[{ value: '', label: 'choose …' }, ...briefs.map(({ name }) => ({ value: name, label: name }))]}
        .toChanges=${(name: string): Change[] => {
          const found = briefs.find((each) => each.name === name);
          return found ? [{ path: 'brief', value: structuredClone(found.brief) }] : [];
        }}
      ></choice-field>
      <details class="group more">
        <summary>Keep this brief for other designs</summary>
        <div class="keep">
          <text-field
            label="Name"
            .value=${this.name}
            max-length="60"
            .toChanges=${this.#rename}
            @design-edit=${(event: Event) => event.stopPropagation()}
          ></text-field>
          <button type="button" @click=${this.#keep}>Keep</button>
        </div>
        ${this.own.length > 0 ? html`<ul aria-label="Briefs of your own">${this.own.map((each) => this.#row(each))}</ul>` : nothing}
        <p class="note said" role="status">${this.said}</p>
        ${this.forgotten ? html`<button type="button" @click=${this.#putBack}>Put it back</button>` : nothing}
      </details>`;
  }

  #row(kept: NamedBrief) {
    return html`<li>
      <span>${kept.name}</span>
      <button type="button" aria-label="Forget ${kept.name}" @click=${() => this.#forget(kept)}>Forget</button>
    </li>`;
  }

  readonly #rename = (text: string): Change[] | string => {
    if (text === '') return 'a name is needed, to find it again';
    if (BRIEFS.some(({ name }) => name === text))
      return `“${text}” comes with the program: choose another name`;
    this.name = text;
    return [{ path: '', value: text }];
  };

  readonly #keep = (): void => {
    if (!this.brief) return;
    const { name } = this;
    const isKnown = this.own.some((each) => each.name === name);
    this.#set([
      ...this.own.filter((each) => each.name !== name),
      { name, brief: structuredClone(this.brief) },
    ]);
    this.forgotten = null;
    this.said = isKnown ? `“${name}” now holds this brief.` : `Kept as “${name}”.`;
  };

  #forget(kept: NamedBrief): void {
    this.#set(this.own.filter((each) => each !== kept));
    this.forgotten = kept;
    this.said = `“${kept.name}” is forgotten.`;
  }

  readonly #putBack = (): void => {
    const { forgotten } = this;
    if (!forgotten) return;
    this.#set([...this.own.filter(({ name }) => name !== forgotten.name), forgotten]);
    this.forgotten = null;
    this.said = `“${forgotten.name}” is back.`;
  };

  #set(own: NamedBrief[]): void {
    this.own = own;
    remember('briefs', own);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'brief-shelf': BriefShelf;
  }
}
