/** Plays the page around a view: takes its edits into the design, or refuses them, and notes them all. */

import type { EditDetail } from '../../src/components/events.ts';
import { withValueAt } from '../../src/session/paths.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { Pointer } from './pointer.ts';

interface View extends HTMLElement {
  design: Design | null;
  updateComplete: Promise<boolean>;
}

export class ViewPage<V extends View> {
  readonly edits: EditDetail[] = [];
  #start: Design | null = null;

  constructor(
    readonly view: V,
    refuse: (design: Design) => string | null = () => null,
  ) {
    view.addEventListener('design-edit', (event) => {
      const { changes, phase } = event.detail;
      this.edits.push(event.detail);
      this.#start ??= view.design;
      const edited = changes.reduce(
        (design, { path, value }) => withValueAt(design, path, value),
        view.design!,
      );
      event.refusal = refuse(edited);
      if (phase === 'cancelled') view.design = this.#start;
      else if (event.refusal === null) view.design = edited;
      if (phase !== 'live') this.#start = null;
    });
  }

  get phases(): string[] {
    return this.edits.map(({ phase }) => phase);
  }

  slider(name: string): SVGGElement {
    const found = [...this.view.shadowRoot!.querySelectorAll<SVGGElement>('[role="slider"]')].find((slider) =>
      slider.getAttribute('aria-label')!.startsWith(name),
    );
    if (!found) throw new Error(`no slider "${name}"`);
    return found;
  }

  get sliderNames(): string[] {
    return [...this.view.shadowRoot!.querySelectorAll('[role="slider"]')].map(
      (slider) => slider.getAttribute('aria-label')!,
    );
  }

  /** The pointer on a grip; the starboard one unless said otherwise. */
  grip(id: string, side: 'starboard' | 'port' = 'starboard'): Pointer {
    const grips = this.view.shadowRoot!.querySelectorAll(`[data-handle="${id}"] .grip`);
    return new Pointer(side === 'starboard' ? grips[grips.length - 1]! : grips[0]!);
  }

  /** Centre of a grip on the screen, px. */
  placeOf(id: string): { x: number; y: number } {
    const grips = this.view.shadowRoot!.querySelectorAll(`[data-handle="${id}"] .grip`);
    const box = grips[grips.length - 1]!.getBoundingClientRect();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }

  async drag(id: string, dx: number, dy: number, side: 'starboard' | 'port' = 'starboard'): Promise<void> {
    const pointer = this.grip(id, side).press();
    for (let k = 0; k < 4; k++) {
      pointer.move(dx / 4, dy / 4);
      await this.view.updateComplete;
    }
    pointer.release();
    await this.view.updateComplete;
  }
}
