import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Design } from '../solver/design/document.ts';

const AT_REST = 200; // ms without a change

/** The host's design once it rests: what takes longer is not asked in the middle of a drag. The first counts at once. */
export class RestedDesign implements ReactiveController {
  current: Design | null = null;

  #seen: Design | null = null;
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly host: ReactiveControllerHost & { design: Design | null }) {
    host.addController(this);
  }

  hostUpdate(): void {
    const { design } = this.host;
    if (design === this.#seen) return;
    this.#seen = design;
    clearTimeout(this.#rest);
    if (this.current === null) this.current = design;
    else this.#rest = setTimeout(() => this.#settle(), AT_REST);
  }

  hostConnected(): void {
    if (this.current !== this.#seen) this.#settle();
  }

  hostDisconnected(): void {
    clearTimeout(this.#rest);
  }

  #settle(): void {
    this.current = this.#seen;
    this.host.requestUpdate();
  }
}
