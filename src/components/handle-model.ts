/** What a handle in a drawing is: where it stands, which values it moves, what a drag or a key asks for. */
import { clamp } from '../session/rounding.ts';
import type { Quantity } from '../session/units.ts';
import type { Change } from './events.ts';

export type Direction = 'right' | 'left' | 'down' | 'up';

/** One direction in which a handle moves. Values in SI (degrees). */
export interface Slide {
  name: string; // for screen readers: "Tip droop"
  quantity: Quantity;
  value: number;
  min: number;
  max: number;
  toward: Direction; // where the handle goes as the value grows
  step?: number; // one nudge, instead of the unit's own
  label: string; // names the step for undo
  meaning?: string; // said after the value: "an even arc"
  changes: (value: number) => Change[];
}

/** Pixels the pointer has moved since it was pressed. */
export interface Move {
  x: number;
  y: number;
}

/** What a gesture asks for so far; null: nothing yet. */
export interface Drag {
  changes: Change[];
  label: string; // the same for the whole gesture
}

export interface Handle {
  id: string;
  x: number; // px in the drawing
  y: number;
  slides: readonly Slide[];
  /** Begins a gesture on the design as it is now and answers what each move asks for. */
  grab: () => (move: Move) => Drag | null;
  mirrorAt?: number; // px; a second grip for the pointer, on the port side, moves the same things
}

export const isVertical = (toward: Direction): boolean => toward === 'down' || toward === 'up';

const OPPOSITE: Record<Direction, Direction> = { right: 'left', left: 'right', up: 'down', down: 'up' };

/** How many steps a key asks for: the arrows of the handle's own axis move it their way, across it plus is right and up. */
export function stepsOf(key: string, toward: Direction): number {
  if (key === 'PageUp') return 10;
  if (key === 'PageDown') return -10;
  if (!key.startsWith('Arrow')) return 0;
  const arrow = key.slice(5).toLowerCase() as Direction;
  if (isVertical(arrow) !== isVertical(toward)) return arrow === 'right' || arrow === 'up' ? 1 : -1;
  return arrow === toward ? 1 : arrow === OPPOSITE[toward] ? -1 : 0;
}

/** A handle that moves along one line and changes its value in proportion: `perPixel` in SI along `toward`. */
export function linearGrab(slide: Slide, perPixel: number, resolution: number): Handle['grab'] {
  return () => {
    const start = slide.value;
    return ({ x, y }) => {
      const along = { right: x, left: -x, down: y, up: -y }[slide.toward];
      const wanted = start + along * perPixel;
      const value = clamp(Math.round(wanted / resolution) * resolution, slide.min, slide.max);
      return { changes: slide.changes(Number(value.toPrecision(9))), label: slide.label };
    };
  };
}
