/**
 * What the figures of ridden designs have to do with the marks their rider gave: the rank correlation of each figure
 * with each mark. The marks are one person's; with few designs nothing is said of how sure it is.
 */
import type { Design } from '../design/document.ts';
import { LEAST_JUDGED, LEAST_RANKED } from '../design/marks.ts';
import { rankCorrelation, rankProbability } from '../numeric/rank.ts';

/** One entry a design, in the same order everywhere; null: not known, or no mark given. */
export interface RiddenOptions {
  figures: readonly (readonly (number | null)[])[];
  marks: readonly (readonly (number | null)[])[];
}

export interface RankPair {
  count: number; // designs that have both
  correlation: number | null; // null with fewer than three, or where one of the two does not vary
  probability: number | null; // two-sided, of chance alone doing as much; null with fewer than eight
  isExact: boolean; // every order counted, not 20 000 drawn
}

/** [figure][mark] */
export function* riddenStudy(
  _design: Design,
  { figures, marks }: RiddenOptions,
): Generator<number, RankPair[][]> {
  const pairs: RankPair[][] = [];
  for (const figure of figures) {
    const row: RankPair[] = [];
    for (const mark of marks) {
      row.push(rankPair(figure, mark));
      yield (pairs.length + row.length / marks.length) / figures.length;
    }
    pairs.push(row);
  }
  return pairs;
}

export function rankPair(figure: readonly (number | null)[], mark: readonly (number | null)[]): RankPair {
  const both = figure.flatMap((value, k) => {
    const given = mark[k] ?? null;
    return value === null || given === null ? [] : [[value, given] as const];
  });
  const [values, given] = [both.map(([value]) => value), both.map(([, mark]) => mark)];
  const found = both.length >= LEAST_RANKED ? rankCorrelation(values, given) : Number.NaN;
  if (!Number.isFinite(found))
    return { count: both.length, correlation: null, probability: null, isExact: true };
  if (both.length < LEAST_JUDGED)
    return { count: both.length, correlation: found, probability: null, isExact: true };
  return { count: both.length, correlation: found, ...rankProbability(values, given) };
}
