/**
 * Spearman's rank correlation of two lists: the plain correlation of their ranks, equal values sharing their mean rank.
 * C. Spearman, American Journal of Psychology 15 (1904) 72. 1: the one rises wherever the other does; -1: it falls.
 */
import { randomFrom } from './random.ts';

/** NaN where one of the lists does not vary. */
export function rankCorrelation(one: ArrayLike<number>, other: ArrayLike<number>): number {
  return correlation(ranks(one), ranks(other));
}

/** Ranks from 1, the least first; equal values share their mean rank. */
export function ranks(values: ArrayLike<number>): Float64Array {
  const order = Array.from({ length: values.length }, (_, k) => k).sort((p, q) => values[p]! - values[q]!);
  const rank = new Float64Array(values.length);
  for (let start = 0; start < order.length; ) {
    let end = start;
    while (end + 1 < order.length && values[order[end + 1]!] === values[order[start]!]) end++;
    for (let k = start; k <= end; k++) rank[order[k]!] = (start + end) / 2 + 1;
    start = end + 1;
  }
  return rank;
}

const MOST_EXACT = 9; // 362 880 orders
const DRAWN = 20_000; // orders drawn beyond that: a probability of 0.05 then stands within 0.003
const EVEN = 1e-9; // correlations nearer than that are one

/**
 * Two-sided probability of a rank correlation at least as far from zero, were every order of `other` as likely as the
 * one found (E. J. G. Pitman, Supplement to the Journal of the Royal Statistical Society 4 (1937) 225): all orders
 * counted up to 9 values, ties and all; beyond that 20 000 seeded ones, the one found among them (B. Phipson and G. K.
 * Smyth, Statistical Applications in Genetics and Molecular Biology 9 (2010) 39). NaN where a list does not vary.
 */
export function rankProbability(
  one: ArrayLike<number>,
  other: ArrayLike<number>,
): { probability: number; isExact: boolean } {
  const [a, b] = [ranks(one), ranks(other)];
  const isExact = a.length <= MOST_EXACT;
  const found = Math.abs(correlation(a, b)) - EVEN;
  if (Number.isNaN(found)) return { probability: Number.NaN, isExact };
  let [as, all] = [isExact ? 0 : 1, isExact ? 0 : 1];
  for (const order of isExact ? everyOrder(b) : someOrders(b, DRAWN)) {
    all++;
    if (Math.abs(correlation(a, order)) >= found) as++;
  }
  return { probability: as / all, isExact };
}

function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (a.length + 1) / 2;
  let both = 0;
  let aa = 0;
  let bb = 0;
  for (let k = 0; k < a.length; k++) {
    const x = a[k]! - mean;
    const y = b[k]! - mean;
    both += x * y;
    aa += x * x;
    bb += y * y;
  }
  return both / Math.sqrt(aa * bb);
}

/** The values in every order, the same array rearranged (B. R. Heap, The Computer Journal 6 (1963) 293). */
function* everyOrder(values: Float64Array): Generator<Float64Array, void> {
  const order = values.slice();
  const count = new Uint8Array(order.length);
  yield order;
  for (let k = 1; k < order.length; ) {
    if (count[k]! >= k) {
      count[k] = 0;
      k++;
      continue;
    }
    const other = k % 2 === 0 ? 0 : count[k]!;
    [order[other], order[k]] = [order[k]!, order[other]!];
    yield order;
    count[k]!++;
    k = 1;
  }
}

/** The values in orders drawn by chance (R. Durstenfeld, Communications of the ACM 7 (1964) 420), always the same ones. */
function* someOrders(values: Float64Array, count: number): Generator<Float64Array, void> {
  const order = values.slice();
  const random = randomFrom(1);
  for (let drawn = 0; drawn < count; drawn++) {
    for (let k = order.length - 1; k > 0; k--) {
      const place = Math.floor(random() * (k + 1));
      [order[place], order[k]] = [order[k]!, order[place]!];
    }
    yield order;
  }
}
