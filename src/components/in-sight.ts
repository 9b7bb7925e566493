import { LitElement } from 'lit';

const AT_MOST = 250; // ms that an element out of sight waits

const observer = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) (target as InSight).isInSight = isIntersecting;
});

let isPressed = false; // a pointer is down: what changes now may change again at once
const waiting = new Set<InSight>();

function press(event: Event): void {
  isPressed = event.type === 'pointerdown';
  if (!isPressed) for (const element of waiting) element.goOn();
}
for (const type of ['pointerdown', 'pointerup', 'pointercancel']) window.addEventListener(type, press, true);

/**
 * A part of the page that a drag draws anew only while it can be seen. Out of sight it waits until it comes into sight,
 * the pointer is let go or a moment has passed.
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
      const timer = setTimeout(() => this.goOn(), AT_MOST);
      this.#goOn = () => {
        clearTimeout(timer);
        this.#goOn = null;
        waiting.delete(this);
        resolve();
      };
    });
  }
}
