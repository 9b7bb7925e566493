/**
 * Mouse, touch, wheel and keys on the picture, told as turns, steps nearer and shifts.
 *
 * A finger that starts sideways turns the foil; one that starts up or down scrolls the page (`touch-action: pan-y`), so that
 * a picture as wide as a phone is no trap. Two fingers shift the picture and bring it nearer. The wheel scrolls the page too,
 * unless Ctrl is held, which is also what a pinch on a trackpad sends. Buttons beside the picture do all of it without dragging.
 */
import { NAMED_VIEWS, type NamedView } from './camera.ts';

export interface Gestures {
  /** Radians; `isDirect`: by a pointer that holds the foil, which has to stay under it. */
  turn(yaw: number, pitch: number, isDirect: boolean): void;
  approach(factor: number, isDirect: boolean): void;
  /** Shares of the picture's height, right and up. */
  shift(right: number, up: number, isDirect: boolean): void;
  look(view: NamedView): void;
  showAll(): void;
}

export const TURN_STEP = Math.PI / 18; // a key or button
export const NEAR_STEP = 1.25;
const SHIFT_STEP = 0.08;
const BY_PIXEL = 0.007; // rad
const BY_WHEEL = 0.0025;

const ARROWS: Record<string, readonly [right: number, up: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Listens on an element for as long as it is there. */
export function listen(element: HTMLElement, gestures: Gestures): void {
  const fingers = new Fingers(element, gestures);
  element.addEventListener('pointerdown', fingers.onPress);
  element.addEventListener('pointermove', fingers.onMove);
  for (const end of ['pointerup', 'pointercancel', 'lostpointercapture'] as const)
    element.addEventListener(end, fingers.onEnd);
  // Two fingers are for the picture, whichever way they go: the browser must not scroll by them.
  const keepTwo = (event: TouchEvent) => {
    if (event.touches.length > 1 && event.cancelable) event.preventDefault();
  };
  element.addEventListener('touchstart', keepTwo, { passive: false });
  element.addEventListener('touchmove', keepTwo, { passive: false });
  const onWheel = (event: WheelEvent) => {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    const size = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    gestures.approach(Math.exp(-BY_WHEEL * size * Math.max(-200, Math.min(200, event.deltaY))), true);
  };
  element.addEventListener('wheel', onWheel, { passive: false });
  element.addEventListener('keydown', (event) => onKey(event, gestures));
}

interface Place {
  x: number;
  y: number;
}

interface Finger extends Place {
  from: Place; // where it came down
  /** A finger on a screen shows by its first way whether it turns the foil or scrolls the page. */
  meant: 'unknown' | 'turn' | 'scroll';
}

const SHORTEST_WAY = 8; // px that show what a finger means

/** The pointers that are down, one or two. */
class Fingers {
  readonly #down = new Map<number, Finger>();

  constructor(
    private readonly element: HTMLElement,
    private readonly gestures: Gestures,
  ) {}

  readonly onPress = (event: PointerEvent): void => {
    if (event.button !== 0 || this.#down.size >= 2) return;
    const from = { x: event.clientX, y: event.clientY };
    this.#down.set(event.pointerId, {
      ...from,
      from,
      meant: event.pointerType === 'touch' ? 'unknown' : 'turn',
    });
    this.element.setPointerCapture(event.pointerId);
  };

  readonly onMove = (event: PointerEvent): void => {
    const finger = this.#down.get(event.pointerId);
    if (!finger) return;
    const before = { x: finger.x, y: finger.y };
    finger.x = event.clientX;
    finger.y = event.clientY;
    const [dx, dy] = [finger.x - before.x, finger.y - before.y];
    const size = this.element.clientHeight || 1;
    const other = [...this.#down.values()].find((each) => each !== finger);
    if (other) {
      // The middle between two fingers moves by half of what one of them does.
      this.gestures.shift(dx / 2 / size, -dy / 2 / size, true);
      const apart = (place: Place) => Math.max(20, Math.hypot(place.x - other.x, place.y - other.y));
      this.gestures.approach(apart(finger) / apart(before), true);
      finger.meant = 'turn';
      other.meant = 'turn';
    } else if (finger.meant !== 'turn') finger.meant = meaningOf(finger);
    else if (event.shiftKey) this.gestures.shift(dx / size, -dy / size, true);
    else this.gestures.turn(BY_PIXEL * dx, BY_PIXEL * dy, true);
  };

  readonly onEnd = (event: PointerEvent): void => {
    this.#down.delete(event.pointerId);
  };
}

function meaningOf({ x, y, from, meant }: Finger): Finger['meant'] {
  const [across, along] = [Math.abs(x - from.x), Math.abs(y - from.y)];
  if (meant !== 'unknown' || Math.max(across, along) < SHORTEST_WAY) return meant;
  return across >= along ? 'turn' : 'scroll';
}

function onKey(event: KeyboardEvent, gestures: Gestures): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const arrow = ARROWS[event.key];
  const view = NAMED_VIEWS[Number(event.key) - 1];
  if (arrow && event.shiftKey) gestures.shift(SHIFT_STEP * arrow[0], SHIFT_STEP * arrow[1], false);
  else if (arrow) gestures.turn(TURN_STEP * arrow[0], TURN_STEP * arrow[1], false);
  else if (event.key === '+' || event.key === '=') gestures.approach(NEAR_STEP, false);
  else if (event.key === '-' || event.key === '_') gestures.approach(1 / NEAR_STEP, false);
  else if (event.key === '0' || event.key === 'Home') gestures.showAll();
  else if (view && event.key.trim()) gestures.look(view);
  else return;
  event.preventDefault();
  event.stopPropagation();
}
