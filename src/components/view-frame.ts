/**
 * The scale that the drawings share. The width in metres depends on the design alone, in steps, so that every view of
 * it agrees and a small edit does not rescale the picture; while an edit is moving, nothing rescales at all, or the
 * thing dragged would run away from the pointer.
 */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { nextPreferred } from '../session/rounding.ts';
import type { Design } from '../solver/design/document.ts';
import { DesignEditEvent } from './events.ts';

const BESIDE = 31; // px beside each tip for handles

/** Metres that fit between the margins of the drawings of these designs: the lengths they keep, so that bending a wing rescales nothing. */
export function extentOf(designs: readonly Design[]): number {
  const lengths = designs.flatMap(({ wing, stabilizer }) => [
    wing.length.value,
    stabilizer?.length.value ?? 0,
  ]);
  return nextPreferred(Math.max(...lengths));
}

/** Ties a view to the width it is given and holds still whatever may not jump while an edit is moving. */
export class ViewFrame implements ReactiveController {
  /** CSS px across, as last seen. */
  width = 720;
  #isMoving = false;
  #held = new Map<string, number>();
  #observer: ResizeObserver | null = null;

  constructor(private readonly host: ReactiveControllerHost & HTMLElement) {
    host.addController(this);
  }

  hostConnected(): void {
    this.width = Math.round(this.host.getBoundingClientRect().width) || this.width;
    // A frame later: a drawing that changes its height while sizes are being told would be told again at once.
    this.#observer = new ResizeObserver(([entry]) =>
      requestAnimationFrame(() => this.#resize(entry?.contentRect.width ?? 0)),
    );
    this.#observer.observe(this.host);
    window.addEventListener(DesignEditEvent.type, this.#onEdit, true);
  }

  hostDisconnected(): void {
    this.#observer?.disconnect();
    window.removeEventListener(DesignEditEvent.type, this.#onEdit, true);
  }

  /** px per metre, the same in every view of these designs. */
  scaleOf(designs: readonly Design[]): number {
    return (this.width - 2 * BESIDE) / this.held('extent', extentOf(designs));
  }

  /** A value that stays as it was while an edit is moving. */
  held(name: string, value: number): number {
    return this.#hold(name, value, (before) => before);
  }

  /** A value that only grows while an edit is moving. */
  growing(name: string, value: number): number {
    return this.#hold(name, value, (before) => Math.max(before, value));
  }

  #hold(name: string, value: number, keep: (before: number) => number): number {
    const before = this.#held.get(name);
    const now = this.#isMoving && before !== undefined ? keep(before) : value;
    this.#held.set(name, now);
    return now;
  }

  readonly #onEdit = (event: Event): void => {
    const isMoving = (event as DesignEditEvent).detail.phase === 'live';
    if (isMoving === this.#isMoving) return;
    this.#isMoving = isMoving;
    if (!isMoving) this.host.requestUpdate();
  };

  #resize(width: number): void {
    const whole = Math.round(width);
    if (whole < 1 || whole === this.width) return;
    this.width = whole;
    this.host.requestUpdate();
  }
}
