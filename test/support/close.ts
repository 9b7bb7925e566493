/** Comparing numbers: every tolerance is written where it is used, as a share of the expected value or outright. */

export type Tolerance = { share: number } | { within: number };

/** One sentence when `found` lies outside the tolerance of `expected`, null when it holds. */
export function miss(what: string, found: number, expected: number, tolerance: Tolerance): string | null {
  const allowed = 'share' in tolerance ? tolerance.share * Math.abs(expected) : tolerance.within;
  if (Math.abs(found - expected) <= allowed) return null;
  const band =
    'share' in tolerance ? `${+(100 * tolerance.share).toPrecision(4)} %` : String(tolerance.within);
  return `${what}: found ${+found.toPrecision(8)}, expected ${+expected.toPrecision(8)} within ${band}`;
}

/** Throws the sentence of `miss`. */
export function expectClose(what: string, found: number, expected: number, tolerance: Tolerance): void {
  const sentence = miss(what, found, expected, tolerance);
  if (sentence) throw new Error(sentence);
}
