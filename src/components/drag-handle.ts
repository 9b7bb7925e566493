/**
 * Handles in a drawing: the only pointer loop and the only handle keyboard. A handle is a grip for the pointer and one
 * slider for each direction it moves in, so that everything a pointer drags has a name, a value with its unit, and keys.
 *
 * Pointer: capture from press to release; every move sends a live edit, worked out from where the gesture began; the
 * release settles it, Escape gives it up. Keys: an arrow towards which the handle goes (the other pair of arrows, plus
 * to the right), Shift ten times as far, Alt a tenth, Page Up and Down, Home and End; a held key is one step of the
 * history. What the page refuses is kept in `refusal` for the view to show.
 *
 * Each is one line that a marker gives its looks: a drag moves dozens of them, and what moves costs by the attribute.
 */
import {
  html,
  nothing,
  type ReactiveController,
  type ReactiveControllerHost,
  svg,
  type TemplateResult,
} from 'lit';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import { decimalMark } from '../session/number-format.ts';
import { clamp } from '../session/rounding.ts';
import {
  formatValue,
  formatWithUnit,
  fromDisplay,
  stepOf,
  toDisplay,
  type UnitSystem,
  unitNameOf,
} from '../session/units.ts';
import { px } from './corners.ts';
import { withoutPath } from './draft.ts';
import type { EditDetail } from './events.ts';
import { type Drag, type Handle, isVertical, type Move, type Slide, stepsOf } from './handle-model.ts';
import { handleLooks, RING } from './handle-styles.ts';
import { sendEdit } from './send-edit.ts';

interface Gesture {
  pointer: number;
  x: number;
  y: number;
  side: 1 | -1;
  follow: (move: Move) => Drag | null;
  at: Move; // where the pointer was last followed to
  time: number; // and when, ms
  last: Drag | null;
}

const RAW_PAUSE = 8; // ms

export class DragHandles implements ReactiveController {
  /** Why the page did not take the last edit; null when it did. */
  refusal: string | null = null;
  #gesture: Gesture | null = null;
  #nudge: { slide: Slide; value: number } | null = null;

  constructor(private readonly host: ReactiveControllerHost & HTMLElement) {
    host.addController(this);
  }

  hostConnected(): void {
    this.host.addEventListener('touchstart', keepFinger, { passive: false });
  }

  hostDisconnected(): void {
    this.host.removeEventListener('touchstart', keepFinger);
    this.#stopListening();
    this.#gesture = null;
    this.#nudge = null;
  }

  get isDragging(): boolean {
    return this.#gesture !== null;
  }

  /** The handles of a drawing, for the end of its <svg>; drawn again when something of what they follow `from` changes. */
  draw(from: readonly unknown[], make: () => readonly Handle[], units: UnitSystem): unknown {
    const drawn = guard([...from, units, decimalMark()], () =>
      repeat(
        make(),
        ({ id }) => id,
        (handle) => this.#drawOne(handle, units),
      ),
    );
    return [guard([], () => handleLooks), drawn];
  }

  #drawOne(handle: Handle, units: UnitSystem) {
    const { x, y, mirrorAt } = handle;
    const way = handle.slides.length > 1 ? 'freely' : wayOf(handle.slides[0]!);
    const tip = handle.slides.map(
      (slide) => `${slide.name} ${formatWithUnit(slide.value, slide.quantity, units)}`,
    );
    const grip = (at: number, side: 1 | -1) => svg`<polyline class="grip ${way}" aria-hidden="true"
        points=${spot(at, y)}
        @pointerdown=${(event: PointerEvent) => this.#press(event, handle, side)}>
        <title>${tip.join(', ')}</title>
      </polyline>`;
    return svg`<g class="handle" data-handle=${handle.id}>
      ${mirrorAt === undefined ? nothing : grip(mirrorAt, -1)}
      ${grip(x, 1)}
      ${handle.slides.map((slide) => this.#drawSlide(slide, x, y, units))}
    </g>`;
  }

  #drawSlide(slide: Slide, x: number, y: number, units: UnitSystem) {
    const shown = (value: number) => Number(toDisplay(value, slide.quantity, units).toPrecision(5));
    const value = formatValue(slide.value, slide.quantity, units);
    const text = [`${value} ${unitNameOf(slide.quantity, units)}`.trim(), slide.meaning]
      .filter(Boolean)
      .join(', ');
    return svg`<polyline class="slide ${wayOf(slide)}" role="slider" tabindex="0"
        aria-label=${slide.name}
        aria-orientation=${isVertical(slide.toward) ? 'vertical' : 'horizontal'}
        aria-valuenow=${shown(slide.value)} aria-valuemin=${shown(slide.min)} aria-valuemax=${shown(slide.max)}
        aria-valuetext=${text}
        points=${around(x, y)}
        @keydown=${(event: KeyboardEvent) => this.#key(event, slide, units)}
        @keyup=${this.#onKeyUp} @blur=${() => this.#settleNudge()}></polyline>`;
  }

  #press(event: PointerEvent, handle: Handle, side: 1 | -1): void {
    if (event.button !== 0 || this.#gesture) return;
    event.preventDefault(); // no text selection; the slider is focused by hand
    this.#settleNudge();
    const grip = event.currentTarget as SVGElement;
    grip.setPointerCapture(event.pointerId);
    grip.parentElement?.querySelector<SVGElement>('.slide')?.focus({ preventScroll: true });
    this.#gesture = {
      pointer: event.pointerId,
      x: event.clientX,
      y: event.clientY,
      side,
      follow: handle.grab(),
      at: { x: 0, y: 0 },
      time: event.timeStamp,
      last: null,
    };
    window.addEventListener('pointermove', this.#onMove);
    window.addEventListener('pointerrawupdate', this.#onRawMove);
    window.addEventListener('pointerup', this.#onRelease);
    window.addEventListener('pointercancel', this.#onLost);
    window.addEventListener('keydown', this.#onEscape, true);
    this.host.requestUpdate();
  }

  readonly #onMove = (event: PointerEvent): void => {
    const gesture = this.#gesture;
    if (!gesture || event.pointerId !== gesture.pointer) return;
    const move = { x: gesture.side * (event.clientX - gesture.x), y: event.clientY - gesture.y };
    if (move.x === gesture.at.x && move.y === gesture.at.y) return;
    gesture.at = move;
    gesture.time = event.timeStamp;
    const drag = gesture.follow(move);
    if (!drag) return;
    gesture.last = drag;
    this.#send(drag, 'live');
  };

  /** A move told as it happens, not at the next frame: the figures are asked for sooner. Fast mice tell too many. */
  readonly #onRawMove = (event: Event): void => {
    const { timeStamp } = event;
    if (this.#gesture && timeStamp - this.#gesture.time >= RAW_PAUSE) this.#onMove(event as PointerEvent);
  };

  readonly #onRelease = (event: PointerEvent): void => {
    if (event.pointerId === this.#gesture?.pointer) this.#end('settled');
  };

  readonly #onLost = (event: PointerEvent): void => {
    if (event.pointerId === this.#gesture?.pointer) this.#end('cancelled');
  };

  readonly #onEscape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    event.preventDefault();
    event.stopPropagation();
    this.#end('cancelled');
  };

  #end(phase: 'settled' | 'cancelled'): void {
    const last = this.#gesture?.last;
    this.#gesture = null;
    this.#stopListening();
    if (last) this.#send(phase === 'settled' ? last : { ...last, changes: [] }, phase);
    this.host.requestUpdate();
  }

  #stopListening(): void {
    window.removeEventListener('pointermove', this.#onMove);
    window.removeEventListener('pointerrawupdate', this.#onRawMove);
    window.removeEventListener('pointerup', this.#onRelease);
    window.removeEventListener('pointercancel', this.#onLost);
    window.removeEventListener('keydown', this.#onEscape, true);
  }

  #key(event: KeyboardEvent, slide: Slide, units: UnitSystem): void {
    if (this.#gesture || event.ctrlKey || event.metaKey) return;
    if (event.key === 'Escape' && this.#nudge) {
      this.#nudge = null;
      this.#send({ changes: [], label: slide.label }, 'cancelled');
    } else if (event.key === 'Home') this.#nudgeTo(slide, slide.min);
    else if (event.key === 'End') this.#nudgeTo(slide, slide.max);
    else {
      const steps = stepsOf(event.key, slide.toward);
      if (steps === 0) return;
      const scale = event.shiftKey ? 10 : event.altKey ? 0.1 : 1;
      this.#nudgeTo(slide, this.#stepped(slide, steps * scale, units));
    }
    event.preventDefault();
    event.stopPropagation();
  }

  /** A finger that leaves Shift or Alt only changes the step of a key that is still held. */
  readonly #onKeyUp = ({ key }: KeyboardEvent): void => {
    if (key !== 'Shift' && key !== 'Alt') this.#settleNudge();
  };

  #stepped(slide: Slide, steps: number, units: UnitSystem): number {
    const step = slide.step ?? fromDisplay(stepOf(slide.quantity, units), slide.quantity, units);
    const from = this.#nudge?.slide.name === slide.name ? this.#nudge.value : slide.value;
    const shown = toDisplay(from + steps * step, slide.quantity, units);
    return fromDisplay(Number(shown.toPrecision(9)), slide.quantity, units);
  }

  #nudgeTo(slide: Slide, wanted: number): void {
    const value = clamp(wanted, slide.min, slide.max);
    if (!Number.isFinite(value)) return;
    if (this.#send({ changes: slide.changes(value), label: slide.label }, 'live'))
      this.#nudge = { slide, value };
  }

  #settleNudge(): void {
    if (!this.#nudge) return;
    const { slide, value } = this.#nudge;
    this.#nudge = null;
    this.#send({ changes: slide.changes(value), label: slide.label }, 'settled');
  }

  /** True when the page took the edit. */
  #send({ changes, label }: Drag, phase: EditDetail['phase']): boolean {
    const refusal = withoutPath(sendEdit(this.host, { changes, label, phase }));
    if (refusal !== this.refusal) {
      this.refusal = refusal;
      this.host.requestUpdate();
    }
    return refusal === null;
  }
}

/** A finger on a grip does not scroll the page: Chromium lets `touch-action` reach no further than a line's own tenth of a pixel. */
function keepFinger(event: TouchEvent): void {
  const [touched] = event.composedPath();
  if (touched instanceof Element && touched.matches('.grip')) event.preventDefault();
}

const wayOf = ({ toward }: Slide) => (isVertical(toward) ? 'vertically' : 'sideways');

/** A grip's line: a tenth of a pixel long, as wide as a finger or a pointer needs. */
const spot = (x: number, y: number): string => `${px(x)} ${px(y)} ${px(x + 0.1)} ${px(y)}`;

/** A slide's line: as large as the ring that shows where the keyboard is, with its middle in the middle. */
const around = (x: number, y: number): string =>
  [-RING, 0, RING].map((off) => `${px(x + off)} ${px(y + off)}`).join(' ');

/** The line under a drawing that says why a handle would not move. */
export function refusalNote(refusal: string | null): TemplateResult {
  return html`<p class="refusal" role="status">${refusal ?? ''}</p>`;
}
