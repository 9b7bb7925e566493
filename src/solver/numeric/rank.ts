/**
 * Spearman's rank correlation of two lists: the plain correlation of their ranks, equal values sharing their mean rank.
 * C. Spearman, American Journal of Psychology 15 (1904) 72. 1: the one rises wherever the other does; -1: it falls.
 */
export function rankCorrelation(one: ArrayLike<number>, other: ArrayLike<number>): number {
  const a = ranks(one);
  const b = ranks(other);
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

function ranks(values: ArrayLike<number>): Float64Array {
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
