/**
 * Small dense linear systems, solved by LU factors with row pivoting, in place.
 * Storage is row after row: elimination then runs along contiguous memory in its inner loop.
 * Factor once, ask often; the caller owns every array.
 */

const BLOCK = 4; // columns eliminated together: an entry to their right is read and written once for all four

/**
 * Factors the n by n matrix `a` (row-major, overwritten by L below the diagonal and U on and above it).
 * `pivots` (n) records the row swaps. Rows below `lead` are not swapped into the first `lead` rows, so that the
 * leading block of the factors is the factored leading block of the matrix: one factorisation answers for the
 * block alone and for the whole. Throws when a pivot vanishes.
 */
export function factor(a: Float64Array, n: number, pivots: Int32Array, lead = n): void {
  for (let first = 0; first < n; first += BLOCK) {
    const end = Math.min(n, first + BLOCK);
    for (let k = first; k < end; k++) {
      pivots[k] = takePivot(a, n, k, k < lead ? lead : n);
      eliminateColumn(a, n, k, end);
    }
    if (end === n) return;
    for (let k = first; k < end; k++)
      for (let i = k + 1; i < end; i++) subtractRow(a, i * n, k * n, a[i * n + k]!, end, n);
    eliminateBlock(a, n, first, end);
  }
}

/** Swaps the largest entry of column k, in rows k to `bottom`, into the diagonal; the row it was in. */
function takePivot(a: Float64Array, n: number, k: number, bottom: number): number {
  let row = k;
  let largest = Math.abs(a[k * n + k]!);
  for (let i = k + 1; i < bottom; i++) {
    const size = Math.abs(a[i * n + k]!);
    if (size > largest) {
      largest = size;
      row = i;
    }
  }
  if (!(largest > 1e-300)) throw new Error(`singular matrix: no pivot in column ${k + 1} of ${n}`);
  if (row !== k) swapRows(a, n, k, row);
  return row;
}

/** Takes column k out of the rows below it, in the columns before `end`; the multipliers stay in its place. */
function eliminateColumn(a: Float64Array, n: number, k: number, end: number): void {
  const inverse = 1 / a[k * n + k]!;
  for (let i = k + 1; i < n; i++) {
    const share = a[i * n + k]! * inverse;
    a[i * n + k] = share;
    subtractRow(a, i * n, k * n, share, k + 1, end);
  }
}

function subtractRow(
  a: Float64Array,
  to: number,
  row: number,
  share: number,
  from: number,
  end: number,
): void {
  for (let j = from; j < end; j++) a[to + j]! -= share * a[row + j]!;
}

/** Takes the four columns from `first` out of what is left, right of and below them: four rows for each reading of them. */
function eliminateBlock(a: Float64Array, n: number, first: number, end: number): void {
  const p = first * n;
  const q = p + n;
  const r = q + n;
  const s = r + n;
  const last = (n - 1) * n; // stands for the rows that four go beyond it: they are written alike
  for (let i = end; i < n; i += 4) {
    const one = i * n;
    const two = Math.min(one + n, last);
    const three = Math.min(two + n, last);
    const four = Math.min(three + n, last);
    const oneP = a[one + first]!;
    const oneQ = a[one + first + 1]!;
    const oneR = a[one + first + 2]!;
    const oneS = a[one + first + 3]!;
    const twoP = a[two + first]!;
    const twoQ = a[two + first + 1]!;
    const twoR = a[two + first + 2]!;
    const twoS = a[two + first + 3]!;
    const threeP = a[three + first]!;
    const threeQ = a[three + first + 1]!;
    const threeR = a[three + first + 2]!;
    const threeS = a[three + first + 3]!;
    const fourP = a[four + first]!;
    const fourQ = a[four + first + 1]!;
    const fourR = a[four + first + 2]!;
    const fourS = a[four + first + 3]!;
    for (let j = end; j < n; j++) {
      const ofP = a[p + j]!;
      const ofQ = a[q + j]!;
      const ofR = a[r + j]!;
      const ofS = a[s + j]!;
      const x = a[one + j]! - oneP * ofP - oneQ * ofQ - oneR * ofR - oneS * ofS;
      const y = a[two + j]! - twoP * ofP - twoQ * ofQ - twoR * ofR - twoS * ofS;
      const z = a[three + j]! - threeP * ofP - threeQ * ofQ - threeR * ofR - threeS * ofS;
      const w = a[four + j]! - fourP * ofP - fourQ * ofQ - fourR * ofR - fourS * ofS;
      a[one + j] = x;
      a[two + j] = y;
      a[three + j] = z;
      a[four + j] = w;
    }
  }
}

function swapRows(a: Float64Array, n: number, one: number, other: number): void {
  const p = one * n;
  const q = other * n;
  for (let j = 0; j < n; j++) {
    const keep = a[p + j]!;
    a[p + j] = a[q + j]!;
    a[q + j] = keep;
  }
}

/**
 * Solves in place for one right-hand side: b (first `size` entries) becomes x. `stride` is the row length of the
 * factored matrix; a `size` below it (only the `lead` of `factor` is allowed) solves the leading block.
 */
export function solveFactored(
  a: Float64Array,
  stride: number,
  pivots: Int32Array,
  b: Float64Array,
  size = stride,
): void {
  for (let k = 0; k < size; k++) {
    const row = pivots[k]!;
    if (row !== k) {
      const keep = b[k]!;
      b[k] = b[row]!;
      b[row] = keep;
    }
  }
  for (let i = 1; i < size; i++) b[i]! -= dot(a, i * stride, b, 0, i);
  for (let i = size - 1; i >= 0; i--) {
    const start = i * stride;
    b[i] = (b[i]! - dot(a, start, b, i + 1, size)) / a[start + i]!;
  }
}

/**
 * Sum of a[start + j] b[j] for j from `from` to before `end`: part of a matrix's row times a vector. Four sums side by
 * side, since one alone waits for each addition to finish before the next.
 */
export function dot(a: Float64Array, start: number, b: Float64Array, from: number, end: number): number {
  let p = 0;
  let q = 0;
  let r = 0;
  let s = 0;
  let j = from;
  for (; j + 3 < end; j += 4) {
    p += a[start + j]! * b[j]!;
    q += a[start + j + 1]! * b[j + 1]!;
    r += a[start + j + 2]! * b[j + 2]!;
    s += a[start + j + 3]! * b[j + 3]!;
  }
  for (; j < end; j++) p += a[start + j]! * b[j]!;
  return p + q + (r + s);
}
