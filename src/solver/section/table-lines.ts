/**
 * Where a polar table reads: its lines of constant Reynolds number stand four to the decade from 1e5 to 1e7; between
 * them figures vary linearly with the logarithm of the Reynolds number, drag by its own logarithm.
 */
const PER_DECADE = 4;
const LEAST_INDEX = 5 * PER_DECADE;
export const MOST_INDEX = 7 * PER_DECADE;

/** Reynolds number of a line. */
export const reynoldsOf = (index: number): number => 10 ** (index / PER_DECADE);

const LEAST_REYNOLDS = reynoldsOf(LEAST_INDEX);

export interface Place {
  index: number; // of the line below a Reynolds number
  share: number; // how far it stands towards the next one
  thickening: number; // drag over that of the lowest line
}

/** Where a Reynolds number stands among the lines, into `out`: strips ask thousands of times a solve. */
export function place(reynolds: number, out: Place): Place {
  const at = Math.min(MOST_INDEX, Math.max(LEAST_INDEX, PER_DECADE * Math.log10(reynolds)));
  out.index = Math.min(MOST_INDEX - 1, Math.floor(at));
  out.share = at - out.index;
  out.thickening = Math.sqrt(Math.max(1, LEAST_REYNOLDS / reynolds));
  return out;
}

/** A drag coefficient between two, by its logarithm. */
export function between(low: number, high: number, share: number): number {
  return low * (high / low) ** share;
}

/**
 * Where to read a line whose limit differs from the blended one: at the same lift coefficient far from stall, at the
 * same share of the limit close to it.
 */
export function towardsLimit(cl: number, limit: number, own: number): number {
  const closeness = Math.min(1, Math.max(0, (cl / limit - 0.6) / 0.4));
  return cl * (1 + closeness * closeness * (own / limit - 1));
}
