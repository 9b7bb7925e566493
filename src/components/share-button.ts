import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Session } from '../session/session.ts';
import { makeLink } from '../session/share-link.ts';
import { headerStyles } from './header-styles.ts';

const SHOWN = 4000; // ms that the button says what it has done

/** Copies a link that holds the open design; where the browser forbids copying, shows it marked for copying by hand. */
@customElement('share-button')
export class ShareButton extends LitElement {
  static override styles = [
    headerStyles,
    css`
      :host {
        display: inline-flex;
      }
      button {
        min-width: 7rem;
      }
      dialog {
        width: min(34rem, calc(100vw - 2rem));
        color: var(--ink);
        background: var(--raised);
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 1rem;
      }
      dialog::backdrop {
        background: color-mix(in srgb, var(--paper) 70%, transparent);
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
      .visually-hidden {
        position: absolute;
        width: 1px;
        height: 1px;
        overflow: hidden;
        clip-path: inset(50%);
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) session: Session | null = null;

  @state() private isCopied = false;
  @state() private shownLink: string | null = null;
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

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
      ${this.shownLink === null ? nothing : this.#byHand(this.shownLink)}`;
  }

  #byHand(link: string) {
    return html`<dialog aria-label="Copy a link" @close=${this.#onClose}>
      <label for="link">This browser does not let the page copy. The link is marked here: copy it yourself.</label>
      <input id="link" readonly .value=${link} @focus=${markAll} />
      <button type="button" @click=${() => this.dialog?.close()}>Close</button>
    </dialog>`;
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
      await this.#show(made.link); // no clipboard on this page, or no leave to use it
    }
  };

  #sayCopied(): void {
    this.isCopied = true;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      this.isCopied = false;
    }, SHOWN);
  }

  async #show(link: string): Promise<void> {
    this.shownLink = link;
    await this.updateComplete;
    this.dialog?.showModal();
  }

  readonly #onClose = (): void => {
    this.shownLink = null;
  };
}

function markAll(event: FocusEvent): void {
  (event.target as HTMLInputElement).select();
}

declare global {
  interface HTMLElementTagNameMap {
    'share-button': ShareButton;
  }
}
