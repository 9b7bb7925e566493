import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { withMark } from '../session/number-format.ts';

export interface DraftOptions {
  /** What the field shows while nothing is being typed. */
  shown: () => string;
  /** Takes the text into the design; null when it counts, else why it does not, at once or a moment later. */
  accept: (text: string) => string | null | Promise<string | null>;
}

/**
 * What is being typed into a field, apart from the design. Enter or leaving the field commits it; text that is
 * refused stays as typed, with the reason, and the design keeps its last good value; Escape restores that value.
 */
export class Draft implements ReactiveController {
  #typed: string | null = null;
  #message: string | null = null;
  #awaited: string | null = null; // text whose answer is still to come

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly options: DraftOptions,
  ) {
    host.addController(this);
  }

  hostConnected(): void {}

  /** The text for the input box. */
  get text(): string {
    return this.#typed ?? this.options.shown();
  }

  /** Why the text does not count, or null. */
  get message(): string | null {
    return this.#message;
  }

  /** Something is typed that has not been taken over. */
  get isOpen(): boolean {
    return this.#typed !== null;
  }

  readonly onInput = (event: Event): void => {
    this.#typed = (event.target as HTMLInputElement).value;
    this.host.requestUpdate();
  };

  readonly commit = (): void => {
    const text = this.#typed;
    if (text === null || text === this.#awaited) return;
    const answer = text.trim() === this.options.shown() ? null : this.options.accept(text);
    if (!(answer instanceof Promise)) {
      this.#conclude(answer);
      return;
    }
    this.#awaited = text;
    void answer.then((message) => {
      this.#awaited = null;
      if (this.#typed === text) this.#conclude(message);
    });
  };

  #conclude(message: string | null): void {
    this.#message = message;
    if (message === null) this.#typed = null;
    this.host.requestUpdate();
  }

  /** Back to the design's value; false when there was nothing to restore. */
  restore(): boolean {
    if (this.#typed === null && this.#message === null) return false;
    this.#typed = null;
    this.#message = null;
    this.host.requestUpdate();
    return true;
  }

  /** Says why a change made without typing does not count. */
  refuse(message: string | null): void {
    this.#message = message;
    this.host.requestUpdate();
  }
}

/** Text is never cut off: too much of it is refused as it stands. */
export const tooLong = (text: string, most: number): string | null =>
  text.length > most ? `Found ${text.length} characters, allowed up to ${most}.` : null;

/** Refusals from the document name their key path; beside the field itself that is noise. */
export function withoutPath(message: string | null): string | null {
  if (message === null) return null;
  const plain = message.replace(/^[\w.[\]]+: /, '');
  return withMark(plain.charAt(0).toUpperCase() + plain.slice(1));
}
