/** How this browser likes the page: kept beside the design, never in it. */
import type { NamedBrief } from '../session/briefs.ts';
import type { DecimalMark } from '../session/number-format.ts';
import type { PaintName } from './solid/paint.ts';

interface Preferences {
  units: 'workshop' | 'si' | 'imperial';
  decimalMark: DecimalMark;
  briefs: NamedBrief[]; // the user's own, to start from
  holdPrices: { point: number; degree: number }; // most that one may cost, shares of all drag
  /** What is wanted of a stabilizer, and the steps in which changes to it are tried: SI, degrees. */
  sizing: { staticMargin?: number; holdIndex?: number; arm?: number; area?: number };
  shims: { shim?: number; length?: number; share?: number };
  cardLook: 'sun' | 'night'; // of the beach card
  solid: { isOpen: boolean; paint: PaintName }; // the view to turn round
  hint: boolean; // whether the hint of a first visit is still shown
}

const nameOf = (key: keyof Preferences) => `downcurve.${key}`;

/** The preference kept last, or the usual one. */
export function recall<K extends keyof Preferences>(key: K, usual: Preferences[K]): Preferences[K] {
  try {
    const kept = localStorage.getItem(nameOf(key));
    return kept === null ? usual : (JSON.parse(kept) as Preferences[K]);
  } catch {
    return usual; // blocked, or not ours
  }
}

export function remember<K extends keyof Preferences>(key: K, value: Preferences[K]): void {
  try {
    localStorage.setItem(nameOf(key), JSON.stringify(value));
  } catch {
    // full or blocked: the choice holds until the page is left
  }
}
