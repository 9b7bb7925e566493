import { LitElement } from 'lit';

const observer = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) (target as InSight).isInSight = isIntersecting;
});

let isPressed = false; // a pointer is down: what changes now may change again at once
const waiting = new Set<InSight>();

function press(isDown: boolean): void {
  isPressed = isDown;
  if (!isDown) for (const element of waiting) element.goOn();
}
window.addEventListener('pointerdown', () => press(true), true);
for (const type of ['pointerup', 'pointercancel']) window.addEventListener(type, () => press(false), true);
// A release that was never told, as after a menu of the browser's, shows at the next move.
window.addEventListener('pointermove', ({ buttons }) => isPressed && buttons === 0 && press(false), true);

/**
 * A part of the page that a drag draws anew only while it can be seen, and then as often as it can be read. Out of sight
 * it waits until it comes into sight or the pointer is let go.
 */
export abstract class InSight extends LitElement {
  /** ms at least between two drawings while a pointer is down; the last there was is always drawn. */
  protected readonly rest: number = 0;
  #isInSight = true; // until told otherwise
  #drawn = Number.NEGATIVE_INFINITY;
  #goOn: (() => void) | null = null;

  /** Told by the observer. */
  set isInSight(isInSight: boolean) {
    this.#isInSight = isInSight;
    if (isInSight) this.goOn();
  }

  /** Ends the wait, if there is one. */
  goOn(): void {
    this.#goOn?.();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    observer.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    observer.unobserve(this);
    this.isInSight = true;
  }

  protected override async scheduleUpdate(): Promise<void> {
    if (isPressed && this.hasUpdated) {
      if (!this.#isInSight) await this.#wait();
      else {
        const left = this.#drawn + this.rest - performance.now();
        if (left > 0) await this.#wait(left);
      }
    }
    if (this.rest > 0) this.#drawn = performance.now();
    await super.scheduleUpdate();
  }

  #wait(most?: number): Promise<void> {
    waiting.add(this);
    return new Promise((resolve) => {
      const timer = most === undefined ? undefined : setTimeout(() => this.goOn(), most);
      this.#goOn = () => {
        clearTimeout(timer);
        this.#goOn = null;
        waiting.delete(this);
        resolve();
      };
    });
  }
}
