import { LitElement } from 'lit';

const AT_MOST = 250; // ms that an element out of sight waits

const observer = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) (target as InSight).isInSight = isIntersecting;
});

/**
 * A part of the page that is drawn anew at once while it can be seen, else when it comes into sight or a moment has
 * passed: a drag then pays only for what is looked at.
 */
export abstract class InSight extends LitElement {
  #isInSight = true; // until told otherwise
  #enter: (() => void) | null = null;

  /** Told by the observer. */
  set isInSight(isInSight: boolean) {
    this.#isInSight = isInSight;
    if (isInSight) this.#enter?.();
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
    if (!this.#isInSight && this.hasUpdated) await this.#comeIntoSight();
    await super.scheduleUpdate();
  }

  #comeIntoSight(): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(() => this.#enter?.(), AT_MOST);
      this.#enter = () => {
        clearTimeout(timer);
        this.#enter = null;
        resolve();
      };
    });
  }
}
