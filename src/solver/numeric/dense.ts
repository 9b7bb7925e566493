/**
 * Small dense linear systems, solved by LU factors with row pivoting, in place.
 * Storage is row after row: elimination then runs along contiguous memory in its inner loop.
 * Factor once, ask often; the caller owns every array.
 */

/**
 * Factors the n by n matrix `a` (row-major, overwritten by L below the diagonal and U on and above it).
 * `pivots` (n) records the row swaps. Rows below `lead` are not swapped into the first `lead` rows, so that the
 * leading block of the factors is the factored leading block of the matrix: one factorisation answers for the
 * block alone and for the whole. Throws when a pivot vanishes.
 */
export function factor(a: Float64Array, n: number, pivots: Int32Array, lead = n): void {
  for (let k = 0; k < n; k++) {
    const bottom = k < lead ? lead : n;
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
    pivots[k] = row;
    if (row !== k) swapRows(a, n, k, row);
    const top = k * n;
    const inverse = 1 / a[top + k]!;
    for (let i = k + 1; i < n; i++) {
      const start = i * n;
      const share = a[start + k]! * inverse;
      a[start + k] = share;
      if (share === 0) continue;
      for (let j = k + 1; j < n; j++) a[start + j]! -= share * a[top + j]!;
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
  for (let i = 1; i < size; i++) {
    const start = i * stride;
    let sum = b[i]!;
    for (let j = 0; j < i; j++) sum -= a[start + j]! * b[j]!;
    b[i] = sum;
  }
  for (let i = size - 1; i >= 0; i--) {
    const start = i * stride;
    let sum = b[i]!;
    for (let j = i + 1; j < size; j++) sum -= a[start + j]! * b[j]!;
    b[i] = sum / a[start + i]!;
  }
}
