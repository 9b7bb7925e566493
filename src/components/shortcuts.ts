import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session } from '../session/session.ts';

/**
 * What the whole page listens for: undo and redo keys, and the page being hidden or left, when text still being typed
 * is committed and the design saved; the browser asks first where it could not be saved.
 */
export class Shortcuts implements ReactiveController {
  constructor(
    host: ReactiveControllerHost,
    private readonly session: () => Session | null,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('keydown', this.#onKeyDown);
    window.addEventListener('beforeunload', this.#onUnload);
    window.addEventListener('pagehide', this.#onLeave);
    document.addEventListener('visibilitychange', this.#onVisibility);
  }

  hostDisconnected(): void {
    window.removeEventListener('keydown', this.#onKeyDown);
    window.removeEventListener('beforeunload', this.#onUnload);
    window.removeEventListener('pagehide', this.#onLeave);
    document.removeEventListener('visibilitychange', this.#onVisibility);
  }

  readonly #onKeyDown = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const isRedo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey);
    if (!isRedo && key !== 'z') return;
    if (isTyping()) return; // there the keys take back what is being typed
    event.preventDefault();
    if (isRedo) this.session()?.store.redo();
    else this.session()?.store.undo();
  };

  /** The browser asks whether to leave when what is on screen would be lost, and only then. */
  readonly #onUnload = (event: Event): void => {
    const session = this.session();
    const isShelfAtRisk = session?.kept.list.some(({ isStored }) => !isStored);
    if (session?.keeping.state.kind === 'failed' || isShelfAtRisk) event.preventDefault();
  };

  readonly #onLeave = (): void => {
    innermostFocus()?.blur(); // commits what is being typed
    this.session()?.flush();
  };

  readonly #onVisibility = (): void => {
    if (document.visibilityState === 'hidden') this.session()?.flush();
  };
}

/** Fields say whether text in them is still open; other inputs count as open while they have the focus. */
interface Typable {
  isTyping?: boolean;
}

function isTyping(): boolean {
  const focused = innermostFocus();
  if (!(focused instanceof HTMLInputElement || focused instanceof HTMLTextAreaElement)) return false;
  const root = focused.getRootNode();
  const field = root instanceof ShadowRoot ? (root.host as Typable) : {};
  return field.isTyping ?? true;
}

function innermostFocus(): HTMLElement | null {
  let focused = document.activeElement;
  while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
  return focused instanceof HTMLElement ? focused : null;
}
