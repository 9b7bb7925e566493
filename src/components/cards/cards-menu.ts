import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { openDesignFile } from '../../session/files.ts';
import type { Session } from '../../session/session.ts';
import { type Making, makeLink, makePairLink } from '../../session/share-link.ts';
import type { Design } from '../../solver/design/document.ts';
import { type Reading, readDesign } from '../../solver/design/read.ts';
import { headerStyles } from '../header-styles.ts';
import { PopUp, popUpStyles } from '../pop-up.ts';

interface Choice {
  label: string;
  design: Design;
}

/** From the workbench to the pages outside it: the beach card of the open design, and it against another for the rider. */
@customElement('cards-menu')
export class CardsMenu extends LitElement {
  static override styles = [
    headerStyles,
    popUpStyles,
    css`
      :host {
        display: inline-flex;
        flex-wrap: wrap;
        gap: 0.35rem;
      }
      .card {
        box-sizing: border-box;
        display: inline-flex;
        align-items: center;
        text-decoration: none;
      }
      h2 {
        font-size: var(--step-1);
        margin: 0 0 0.4rem;
      }
      h3 {
        font-size: var(--step--1);
        font-weight: 600;
        color: var(--soft);
        margin: 0.7rem 0 0.1rem;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li a {
        display: flex;
        align-items: center;
        min-height: 2.5rem;
        color: var(--focus);
        text-underline-offset: 0.15em;
        overflow-wrap: anywhere;
      }
      a:focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: 1px;
      }
      .file {
        position: relative;
        display: inline-flex;
        align-items: center;
      }
      .file input {
        position: absolute;
        inset: 0;
        opacity: 0;
        cursor: pointer;
      }
      .foot {
        display: flex;
        justify-content: space-between;
        gap: 0.6rem;
        margin: 0.9rem 0 0;
      }
      .trouble {
        color: var(--bad);
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) session: Session | null = null;
  @property({ attribute: false }) demos: readonly Choice[] = [];

  @state() private trouble = '';

  readonly #popUp = new PopUp(this);

  protected override render() {
    return html`<a
        class="file card"
        href="beach.html"
        @pointerdown=${this.#aim}
        @focus=${this.#aim}
        @click=${this.#onBeach}
        >Beach card</a
      >
      <button type="button" @click=${this.#onOpen}>Rider page</button>
      ${this.session ? this.#popUp.draw('Page for the rider', this.#choices) : nothing}`;
  }

  readonly #choices = () => {
    const session = this.session!;
    const { design } = session;
    const kept = session.kept.list.flatMap(({ name, reading }) =>
      reading.ok ? [{ label: name, design: reading.design }] : [],
    );
    const ghost = session.ghosts.current;
    const others = ghost ? [{ label: `The ghost: ${ghost.name}`, design: ghost.design }, ...kept] : kept;
    return html`<h2>Page for the rider: “${design.name}” against …</h2>
      ${this.#list('Kept designs', design, others)} ${this.#list('Demos', design, this.demos)}
      ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing}
      <p class="foot">
        <label class="file">A file … <input type="file" accept=".json,application/json" @change=${this.#onFile} /></label>
        <button type="button" @click=${this.#popUp.close}>Close</button>
      </p>`;
  };

  #list(title: string, design: Design, choices: readonly Choice[]) {
    if (choices.length === 0) return nothing;
    return html`<h3>${title}</h3>
      <ul>
        ${choices.map((choice) => {
          const made = pairLink(design, choice.design);
          return html`<li>
            ${made.ok ? html`<a href=${made.link}>${choice.label}</a>` : html`<span>${choice.label}: ${made.message}</span>`}
          </li>`;
        })}
      </ul>`;
  }

  /** The link is made when it is about to be used, not at each bit of a drag. */
  readonly #aim = (event: Event): void => {
    const made = this.#beachLink();
    if (made?.ok) (event.currentTarget as HTMLAnchorElement).href = made.link;
  };

  readonly #onBeach = (event: Event): void => {
    const made = this.#beachLink();
    if (made?.ok) {
      (event.currentTarget as HTMLAnchorElement).href = made.link;
      return;
    }
    event.preventDefault();
    if (made) this.session?.say({ kind: 'trouble', message: made.message });
  };

  #beachLink(): Making | null {
    return this.session && makeLink(this.session.design, pageAt('beach.html'));
  }

  readonly #onOpen = async (): Promise<void> => {
    this.trouble = '';
    await this.#popUp.open();
  };

  readonly #onFile = async (event: Event): Promise<void> => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = ''; // the same file may be chosen again
    const { session } = this;
    if (!file || !session) return;
    const reading: Reading = await openDesignFile(file, readDesign);
    const made = reading.ok ? pairLink(session.design, reading.design) : reading;
    if ('link' in made) window.location.assign(made.link);
    else this.trouble = made.ok ? '' : made.message;
  };
}

const pageAt = (name: string): string => new URL(name, document.baseURI).href;
const pairLink = (one: Design, other: Design): Making => makePairLink([one, other], pageAt('rider.html'));

declare global {
  interface HTMLElementTagNameMap {
    'cards-menu': CardsMenu;
  }
}
