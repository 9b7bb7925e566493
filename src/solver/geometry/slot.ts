/** A slot for a spar through the ribs, its middle on the mean line. Lengths in m. */
import type { Rib, Skin } from './skin.ts';

export interface Slot {
  at: number; // middle of the slot, share of the chord
  width: number; // along the chord
  height: number;
}

/**
 * Whether the core, the rib less its laminate above and below, is thick enough all along the slot; outboard of the last
 * such rib the spar has ended.
 */
export function slotFits(skin: Skin, rib: Rib, { at, width, height }: Slot, laminate: number): boolean {
  const reach = (0.5 * width) / rib.chord;
  const middle = meanHeight(skin, rib, at);
  return [at - reach, at, at + reach].every((x) => {
    if (x <= 0 || x >= 1) return false;
    const share = Math.acos(2 * x - 1) / Math.PI;
    const over = skin.outline(rib, share)[1] - middle;
    const under = middle - skin.outline(rib, 2 - share)[1];
    return Math.min(over, under) * rib.chord > 0.5 * height + laminate;
  });
}

/** Height of the mean line at a place on the chord; shares of the chord. */
export function meanHeight(skin: Skin, rib: Rib, x: number): number {
  const share = Math.acos(2 * x - 1) / Math.PI;
  return 0.5 * (skin.outline(rib, share)[1] + skin.outline(rib, 2 - share)[1]);
}
