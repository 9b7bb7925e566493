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
 * A part of the page that a drag draws anew only while it can be seen. Out of sight it waits until it comes into sight or
 * the pointer is let go.
 */
export abstract class InSight extends LitElement {
  #isInSight = true; // until told otherwise
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
    if (isPressed && !this.#isInSight && this.hasUpdated) await this.#wait();
    await super.scheduleUpdate();
  }

  #wait(): Promise<void> {
    waiting.add(this);
    return new Promise((resolve) => {
      this.#goOn = () => {
        this.#goOn = null;
        waiting.delete(this);
        resolve();
      };
    });
  }
}
