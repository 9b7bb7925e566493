/** The rider's marks: from how many ridden designs something is said of them, and where on a figure the good ones begin. */

export const LEAST_RANKED = 3; // designs from which a rank correlation is given
export const LEAST_JUDGED = 8; // designs from which a probability and a band are given
export const GOOD_MARK = 4; // of 5

export interface GoodBand {
  low: number; // the last design below the divide
  high: number; // the first one above it: between the two the good marks begin
  least: number; // of the designs with a good mark
  most: number;
  against: number; // designs on the wrong side of the divide
  count: number;
}

/**
 * Where on a figure the good marks begin: the divide between two neighbouring designs that has the fewest good marks
 * below it and the fewest others above it, each kind by its share (W. J. Youden, Cancer 3 (1950) 32); of equal ones the
 * lowest. Null with fewer than eight designs, with marks of one kind only, or where good marks do not go with a higher
 * figure.
 */
export function goodBand(points: readonly { figure: number; mark: number }[]): GoodBand | null {
  const rising = [...points].sort((one, other) => one.figure - other.figure);
  const isGood = rising.map(({ mark }) => mark >= GOOD_MARK);
  const good = isGood.filter(Boolean).length;
  const others = rising.length - good;
  if (rising.length < LEAST_JUDGED || good === 0 || others === 0) return null;
  let best = { gain: 0, at: 0 };
  let [goodBelow, othersBelow] = [0, 0];
  for (let k = 1; k < rising.length; k++) {
    if (isGood[k - 1]) goodBelow++;
    else othersBelow++;
    const gain = othersBelow / others - goodBelow / good;
    if (rising[k]!.figure > rising[k - 1]!.figure && gain > best.gain + 1e-12) best = { gain, at: k };
  }
  if (best.gain === 0) return null;
  const marked = rising.filter((_, k) => isGood[k]).map(({ figure }) => figure);
  return {
    low: rising[best.at - 1]!.figure,
    high: rising[best.at]!.figure,
    least: marked[0]!,
    most: marked.at(-1)!,
    against: isGood.filter((is, k) => is !== k >= best.at).length,
    count: rising.length,
  };
}
