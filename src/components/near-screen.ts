import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Whether the host has come near the screen: what takes long is asked for only then. */
export class NearScreen implements ReactiveController {
  isSeen = false;
  readonly #observer = new IntersectionObserver(
    (entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      this.isSeen = true;
      this.#observer.disconnect();
      this.host.requestUpdate();
    },
    { rootMargin: '200px' },
  );

  constructor(private readonly host: ReactiveControllerHost & HTMLElement) {
    host.addController(this);
  }

  hostConnected(): void {
    if (!this.isSeen) this.#observer.observe(this.host);
  }

  hostDisconnected(): void {
    this.#observer.disconnect();
  }
}
