import { css, html, nothing, type ReactiveController, type ReactiveControllerHost } from 'lit';

export const popUpStyles = css`
  dialog {
    box-sizing: border-box;
    width: min(var(--pop-up-width, 30rem), calc(100vw - 2rem));
    color: var(--ink);
    background: var(--raised);
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    padding: 1rem;
  }
  dialog::backdrop {
    background: color-mix(in srgb, var(--paper) 70%, transparent);
  }
`;

/** A dialog over the page that was asked for; in the host's tree only while it is open. */
export class PopUp implements ReactiveController {
  isOpen = false;

  constructor(private readonly host: ReactiveControllerHost & { renderRoot: ParentNode }) {
    host.addController(this);
  }

  hostConnected(): void {}

  hostDisconnected(): void {
    this.isOpen = false;
  }

  readonly open = async (): Promise<void> => {
    this.isOpen = true;
    this.host.requestUpdate();
    await this.host.updateComplete;
    this.host.renderRoot.querySelector('dialog')?.showModal();
  };

  readonly close = (): void => this.host.renderRoot.querySelector('dialog')?.close();

  /** `label`: what it is called. */
  draw(label: string, content: () => unknown) {
    if (!this.isOpen) return nothing;
    return html`<dialog aria-label=${label} @close=${this.#onClose}>${content()}</dialog>`;
  }

  readonly #onClose = (): void => {
    this.isOpen = false;
    this.host.requestUpdate();
  };
}
