import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { openAddress } from '../session/address.ts';
import type { Incoming } from '../session/incoming.ts';
import type { Session } from '../session/session.ts';

/** Designs that arrive from outside: dropped anywhere on the page, pasted outside text fields, or by a link. */
export class Arrivals implements ReactiveController {
  /** Something that may be a design is held over the page. */
  isHovering = false;
  #isOwnDrag = false; // begun on the page itself: a link of it, a marked text

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly session: () => Session | null,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    for (const [type, listener] of this.#listeners) window.addEventListener(type, listener);
  }

  hostDisconnected(): void {
    for (const [type, listener] of this.#listeners) window.removeEventListener(type, listener);
  }

  readonly #onDragOver = (event: Event): void => {
    const isWanted = this.#takes(event as DragEvent);
    if (isWanted) event.preventDefault();
    this.#hover(isWanted);
  };

  readonly #onDragLeave = (event: Event): void => {
    if ((event as DragEvent).relatedTarget === null) this.#hover(false); // out of the window
  };

  readonly #onDrop = (event: Event): void => {
    this.#hover(false);
    const { dataTransfer } = event as DragEvent;
    if (!dataTransfer || !this.#takes(event as DragEvent)) return;
    event.preventDefault();
    this.#open(dataTransfer, 'dropped');
  };

  readonly #onPaste = (event: Event): void => {
    const { clipboardData } = event as ClipboardEvent;
    if (!clipboardData || isInTextField(event)) return;
    event.preventDefault();
    this.#open(clipboardData, 'pasted');
  };

  readonly #onAddress = (): void => {
    const session = this.session();
    if (session) openAddress(session);
  };

  readonly #listeners: readonly [string, (event: Event) => void][] = [
    ['dragstart', () => this.#setOwnDrag(true)],
    ['dragend', () => this.#setOwnDrag(false)],
    ['dragover', this.#onDragOver],
    ['dragleave', this.#onDragLeave],
    ['drop', this.#onDrop],
    ['paste', this.#onPaste],
    ['hashchange', this.#onAddress],
  ];

  /** Files anywhere; text only where no field wants it, and not the page's own. */
  #takes(event: DragEvent): boolean {
    const types = event.dataTransfer?.types ?? [];
    if (this.#isOwnDrag) return false;
    return types.includes('Files') || (types.includes('text/plain') && !isInTextField(event));
  }

  #open(data: DataTransfer, how: Incoming): void {
    const session = this.session();
    const [file, ...more] = data.files;
    const text = data.getData('text/plain');
    if (more.length > 0)
      session?.say({ kind: 'trouble', message: `${more.length + 1} files were ${how}: open one at a time.` });
    else if (file) void session?.openFile(file);
    else if (text.trim()) session?.openText(text, how);
  }

  #setOwnDrag(isOwn: boolean): void {
    this.#isOwnDrag = isOwn;
  }

  #hover(isHovering: boolean): void {
    if (isHovering === this.isHovering) return;
    this.isHovering = isHovering;
    this.host.requestUpdate();
  }
}

const TEXT_FIELD =
  'textarea, [contenteditable], input:not([type=file], [type=checkbox], [type=radio], [type=range], [type=button])';

function isInTextField(event: Event): boolean {
  const target = event.composedPath()[0];
  return target instanceof Element && target.matches(TEXT_FIELD);
}
