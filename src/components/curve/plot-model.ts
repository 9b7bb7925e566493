/** What small plots show: lines over one axis, marks across it, and the event of a place chosen on it. */

export interface Looks {
  name: string;
  colour: `--${string}`; // a custom property of tokens.css
  dash?: readonly number[]; // px
  width?: number; // px
}

export interface PlotLine extends Looks {
  y: readonly number[]; // in the shown unit; NaN where there is none
}

/** The line of the user's own price, the same for every design. */
export const YOURS = 'your price';

/** One plot: lines of one unit. */
export interface PlotCell {
  name: string;
  unit: string;
  decimals: number;
  lines: readonly PlotLine[];
  summary: string; // what is to be seen, for those who cannot
  /** A stretch of values that is shaded. */
  band?: { low: number; high: number };
  /** Values marked at the right edge, each with a few characters. */
  levels?: readonly { at: number; label: string }[];
}

/** A vertical line through every plot. */
export interface PlotMark extends Looks {
  at: number; // on the x axis, in the shown unit
}

/** A place on the shared axis was chosen by click or key. */
export class PlaceChosenEvent extends CustomEvent<number> {
  static readonly type = 'place-chosen';
  constructor(place: number) {
    super(PlaceChosenEvent.type, { detail: place, bubbles: true, composed: true });
  }
}

declare global {
  interface HTMLElementEventMap {
    'place-chosen': PlaceChosenEvent;
  }
}

/** Read between ascending places by straight lines; null beyond them or where there is no value. */
export function readBetween(x: readonly number[], y: readonly number[], at: number): number | null {
  const last = x.length - 1;
  if (last < 0 || at < x[0]! - 1e-9 || at > x[last]! + 1e-9) return null;
  const above = Math.max(
    1,
    x.findIndex((place) => place >= at - 1e-9),
  );
  if (last === 0) return finite(y[0]!);
  const share = (at - x[above - 1]!) / (x[above]! - x[above - 1]!);
  if (Math.abs(share) < 1e-9) return finite(y[above - 1]!);
  if (Math.abs(share - 1) < 1e-9) return finite(y[above]!);
  return finite(y[above - 1]! + share * (y[above]! - y[above - 1]!));
}

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
