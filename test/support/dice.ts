/** The minimal standard generator (Park and Miller 1988): numbers from 0 to below 1, the same ones for the same seed. */
export function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}
