/**
 * Seeded uniform numbers in [0, 1): the same seed gives the same row on every machine. Mulberry32, T. Ettinger's
 * public-domain generator (from memory): a Weyl sequence through a 32-bit mixing function; good enough to scatter
 * designs, not for secrets.
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}
