import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Brings the parts of a large element up one after another, each in a frame of its own, so that the first is seen
 * while the later ones are still being made. `go` starts it; `has` says whether a part is up yet.
 */
export class ComingUp<Part extends string> implements ReactiveController {
  /** Settles once every part is up. */
  readonly done: Promise<void>;
  #count = 0;
  #isWaiting = false;
  #settle: () => void = () => {};

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly parts: readonly Part[],
  ) {
    this.done = new Promise((resolve) => {
      this.#settle = resolve;
    });
    host.addController(this);
  }

  has(part: Part): boolean {
    return this.parts.indexOf(part) < this.#count;
  }

  /** The next update of the host shows the first part. */
  go(): void {
    this.#count ||= 1;
  }

  hostUpdated(): void {
    if (this.#count === 0 || this.#isWaiting) return;
    if (this.#count >= this.parts.length) {
      this.#settle();
      return;
    }
    this.#isWaiting = true;
    void afterPaint().then(() => {
      this.#isWaiting = false;
      this.#count++;
      this.host.requestUpdate();
    });
  }
}

const HIDDEN = 200; // ms; a page that is not seen paints nothing

function afterPaint(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, HIDDEN);
  });
}
