import { css, html, LitElement } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Session } from '../session/session.ts';
import { makeLink } from '../session/share-link.ts';
import { headerStyles } from './header-styles.ts';
import { PopUp, popUpStyles } from './pop-up.ts';
import { visuallyHidden } from './visually-hidden.ts';

const SHOWN = 4000; // ms that the button says what it has done

/** Copies a link that holds the open design; where the browser forbids copying, shows it marked for copying by hand. */
@customElement('share-button')
export class ShareButton extends LitElement {
  static override styles = [
    headerStyles,
    popUpStyles,
    visuallyHidden,
    css`
      :host {
        display: inline-flex;
        --pop-up-width: 34rem;
      }
      button {
        min-width: 7rem;
      }
      label {
        display: block;
        margin-bottom: 0.4rem;
      }
      input {
        box-sizing: border-box;
        width: 100%;
        min-height: 1.9rem;
        margin-bottom: 0.8rem;
        font: inherit;
        color: inherit;
        background: var(--paper);
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 0.25rem 0.5rem;
      }
    `,
  ];

  @property({ attribute: false }) session: Session | null = null;

  @state() private isCopied = false;

  readonly #popUp = new PopUp(this);
  #link = ''; // to be copied by hand
  #timer: ReturnType<typeof setTimeout> | undefined;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override render() {
    return html`<button type="button" @click=${this.#onClick}>${this.isCopied ? 'Link copied' : 'Copy a link'}</button>
      <span class="visually-hidden" role="status"
        >${this.isCopied ? 'Link copied. It holds the design as it is now.' : ''}</span
      >
      ${this.#popUp.draw('Copy a link', () => this.#byHand())}`;
  }

  #byHand() {
    return html`<label for="link"
        >This browser does not let the page copy. The link is marked here: copy it yourself.</label
      >
      <input id="link" readonly .value=${this.#link} @focus=${markAll} />
      <button type="button" @click=${this.#popUp.close}>Close</button>`;
  }

  readonly #onClick = async (): Promise<void> => {
    const { session } = this;
    if (!session) return;
    const made = makeLink(session.design, window.location.href);
    if (!made.ok) return session.say({ kind: 'trouble', message: made.message });
    try {
      await navigator.clipboard.writeText(made.link);
      this.#sayCopied();
    } catch {
      this.#link = made.link; // no clipboard on this page, or no leave to use it
      await this.#popUp.open();
    }
  };

  #sayCopied(): void {
    this.isCopied = true;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.isCopied = false;
    }, SHOWN);
  }
}

function markAll(event: FocusEvent): void {
  (event.target as HTMLInputElement).select();
}

declare global {
  interface HTMLElementTagNameMap {
    'share-button': ShareButton;
  }
}
