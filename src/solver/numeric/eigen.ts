/**
 * Eigenvalues and eigenvectors of a small real matrix that need not be symmetric.
 *
 * Balanced by powers of two, brought to Hessenberg form by elimination, then double-shift QR with deflation: steps of
 * J. G. F. Francis, Computer Journal 4 (1961) 265 and 332, in the order of J. H. Wilkinson and C. Reinsch, Handbook for
 * Automatic Computation II (1971), contributions II/11 (balance), II/13 (elmhes) and II/14 (hqr). Eigenvectors follow
 * by inverse iteration on the original matrix. Matrices are row after row; made for sizes up to a few dozen.
 */
import { factor, solveFactored } from './dense.ts';

export interface Complex {
  real: number;
  imaginary: number;
}

const MOST_STEPS = 60; // QR steps on one eigenvalue before giving up; ten are usual

/** All n eigenvalues, conjugate pairs adjacent with the positive imaginary part first. `matrix` is left as it was. */
export function eigenvalues(matrix: Float64Array, n: number): Complex[] {
  const h = matrix.slice();
  balance(h, n);
  reduceToHessenberg(h, n);
  return deflate(h, n);
}

/** Scales rows against columns by powers of two (so without rounding) until their sizes agree within a factor. */
function balance(a: Float64Array, n: number): void {
  let settled = false;
  while (!settled) {
    settled = true;
    for (let i = 0; i < n; i++) {
      let column = 0;
      let row = 0;
      for (let j = 0; j < n; j++) {
        if (j === i) continue;
        column += Math.abs(a[j * n + i]!);
        row += Math.abs(a[i * n + j]!);
      }
      if (column === 0 || row === 0) continue;
      const scale = 2 ** Math.round(0.5 * Math.log2(row / column));
      if ((column * scale + row / scale) / (column + row) > 0.95) continue;
      settled = false;
      for (let j = 0; j < n; j++) {
        a[j * n + i]! *= scale;
        a[i * n + j]! /= scale;
      }
    }
  }
}

/** Gaussian similarity with pivoting; clears everything below the first subdiagonal. */
function reduceToHessenberg(a: Float64Array, n: number): void {
  for (let m = 1; m < n - 1; m++) {
    let pivot = m;
    for (let i = m + 1; i < n; i++)
      if (Math.abs(a[i * n + m - 1]!) > Math.abs(a[pivot * n + m - 1]!)) pivot = i;
    const head = a[pivot * n + m - 1]!;
    if (head === 0) continue;
    if (pivot !== m) {
      for (let j = 0; j < n; j++) swap(a, pivot * n + j, m * n + j);
      for (let j = 0; j < n; j++) swap(a, j * n + pivot, j * n + m);
    }
    for (let i = m + 1; i < n; i++) {
      const share = a[i * n + m - 1]! / head;
      if (share === 0) continue;
      for (let j = m - 1; j < n; j++) a[i * n + j]! -= share * a[m * n + j]!;
      for (let j = 0; j < n; j++) a[j * n + m]! += share * a[j * n + i]!;
      a[i * n + m - 1] = 0;
    }
  }
}

function swap(a: Float64Array, one: number, other: number): void {
  const keep = a[one]!;
  a[one] = a[other]!;
  a[other] = keep;
}

/** QR steps on the active block [first, last] until it falls apart into single values and pairs. */
function deflate(h: Float64Array, n: number): Complex[] {
  const values = new Array<Complex>(n);
  let size = 0;
  for (const entry of h) size += Math.abs(entry);
  let shifted = 0; // what exceptional shifts have taken off the diagonal
  let last = n - 1;
  let steps = 0;
  while (last >= 0) {
    const first = splitPoint(h, n, last, size);
    if (first === last) {
      values[last] = { real: h[last * n + last]! + shifted, imaginary: 0 };
      last -= 1;
      steps = 0;
    } else if (first === last - 1) {
      const [one, other] = pairOf(h, n, last, shifted);
      values[last - 1] = one;
      values[last] = other;
      last -= 2;
      steps = 0;
    } else {
      if (++steps > MOST_STEPS) throw new Error(`eigenvalues did not settle in ${MOST_STEPS} steps`);
      if (steps % 10 === 0) shifted += shiftAway(h, n, last);
      doubleStep(h, n, first, last, steps % 10 === 0);
    }
  }
  return values;
}

/** Row at which the active block begins: above it the subdiagonal entry is nothing beside its neighbours. */
function splitPoint(h: Float64Array, n: number, last: number, size: number): number {
  for (let k = last; k > 0; k--) {
    const beside = Math.abs(h[(k - 1) * n + k - 1]!) + Math.abs(h[k * n + k]!) || size;
    if (Math.abs(h[k * n + k - 1]!) <= Number.EPSILON * beside) {
      h[k * n + k - 1] = 0;
      return k;
    }
  }
  return 0;
}

/** Eigenvalues of the last two by two block, by its quadratic without cancellation. */
function pairOf(h: Float64Array, n: number, last: number, shifted: number): [Complex, Complex] {
  const x = h[last * n + last]!;
  const y = h[(last - 1) * n + last - 1]!;
  const w = h[last * n + last - 1]! * h[(last - 1) * n + last]!;
  const half = 0.5 * (y - x);
  const under = half * half + w;
  const root = Math.sqrt(Math.abs(under));
  if (under < 0) {
    const real = x + half + shifted;
    return [
      { real, imaginary: root },
      { real, imaginary: -root },
    ];
  }
  const far = half + (half < 0 ? -root : root);
  return [
    { real: x + far + shifted, imaginary: 0 },
    { real: far === 0 ? x + shifted : x - w / far + shifted, imaginary: 0 },
  ];
}

/** Moves the whole diagonal so that a cycle of QR steps is broken (Wilkinson); answers by how much. */
function shiftAway(h: Float64Array, n: number, last: number): number {
  const shift = h[last * n + last]!;
  for (let i = 0; i <= last; i++) h[i * n + i]! -= shift;
  return shift;
}

/** One implicit double-shift QR step on rows and columns first to last. */
function doubleStep(h: Float64Array, n: number, first: number, last: number, isExceptional: boolean): void {
  const around = Math.abs(h[last * n + last - 1]!) + Math.abs(h[(last - 1) * n + last - 2]!);
  const x = isExceptional ? 0.75 * around : h[last * n + last]!;
  const y = isExceptional ? x : h[(last - 1) * n + last - 1]!;
  const w = isExceptional ? -0.4375 * around * around : h[last * n + last - 1]! * h[(last - 1) * n + last]!;
  const top = first * n + first;
  const a = h[top]!;
  const below = h[top + n]!;
  // First column of (H - s1)(H - s2), over the subdiagonal entry; s1 and s2 the eigenvalues of the last block.
  let p = ((x - a) * (y - a) - w) / below + h[top + 1]!;
  let q = h[top + n + 1]! - a - (x - a) - (y - a);
  let r = h[top + 2 * n + 1]!;
  for (let k = first; k < last; k++) {
    const isLast = k === last - 1;
    if (k > first) {
      p = h[k * n + k - 1]!;
      q = h[(k + 1) * n + k - 1]!;
      r = isLast ? 0 : h[(k + 2) * n + k - 1]!;
    }
    const scale = Math.abs(p) + Math.abs(q) + Math.abs(r);
    if (scale === 0) continue;
    p /= scale;
    q /= scale;
    r /= scale;
    const length = Math.sqrt(p * p + q * q + r * r) * (p < 0 ? -1 : 1);
    if (k > first) {
      h[k * n + k - 1] = -length * scale;
      h[(k + 1) * n + k - 1] = 0;
      if (!isLast) h[(k + 2) * n + k - 1] = 0;
    }
    reflect(h, n, k, first, last, p / length + 1, q / length, r / length, isLast);
  }
}

/** Householder reflection in rows and columns k, k+1, k+2 with the vector (u, v, w), scaled so that u is in (1, 2]. */
function reflect(
  h: Float64Array,
  n: number,
  k: number,
  first: number,
  last: number,
  u: number,
  v: number,
  w: number,
  isLast: boolean,
): void {
  const vu = v / u;
  const wu = w / u;
  for (let j = k; j <= last; j++) {
    const at = k * n + j;
    const sum = h[at]! + vu * h[at + n]! + (isLast ? 0 : wu * h[at + 2 * n]!);
    h[at]! -= sum * u;
    h[at + n]! -= sum * v;
    if (!isLast) h[at + 2 * n]! -= sum * w;
  }
  const bottom = Math.min(last, k + 3);
  for (let i = first; i <= bottom; i++) {
    const at = i * n + k;
    const sum = u * h[at]! + v * h[at + 1]! + (isLast ? 0 : w * h[at + 2]!);
    h[at]! -= sum;
    h[at + 1]! -= sum * vu;
    if (!isLast) h[at + 2]! -= sum * wu;
  }
}

/**
 * An eigenvector (n entries, its largest entry 1) for an eigenvalue of `matrix`, by inverse iteration: the complex
 * system (A - lambda) z = b is solved as a real one of twice the size. Of a repeated eigenvalue it gives one vector.
 */
export function eigenvector(matrix: Float64Array, n: number, { real, imaginary }: Complex): Complex[] {
  const m = 2 * n;
  let size = 0;
  for (const entry of matrix) size = Math.max(size, Math.abs(entry));
  const nudge = (size || 1) * 1e-12; // keeps the matrix just off singular
  const system = new Float64Array(m * m);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      system[i * m + j] = matrix[i * n + j]!;
      system[(i + n) * m + j + n] = matrix[i * n + j]!;
    }
    system[i * m + i]! -= real + nudge;
    system[(i + n) * m + i + n]! -= real + nudge;
    system[i * m + i + n] = imaginary;
    system[(i + n) * m + i] = -imaginary;
  }
  const pivots = new Int32Array(m);
  factor(system, m, pivots);
  const z = Float64Array.from({ length: m }, (_, k) => (k < n ? 1 + 0.1 * k : 0));
  for (let round = 0; round < 4; round++) {
    solveFactored(system, m, pivots, z);
    normalise(z, n);
  }
  return Array.from({ length: n }, (_, k) => ({ real: z[k]!, imaginary: z[k + n]! }));
}

/** Divides a complex vector by its largest entry. */
function normalise(z: Float64Array, n: number): void {
  let k = 0;
  for (let i = 1; i < n; i++) if (Math.hypot(z[i]!, z[i + n]!) > Math.hypot(z[k]!, z[k + n]!)) k = i;
  const a = z[k]!;
  const b = z[k + n]!;
  const square = a * a + b * b;
  for (let i = 0; i < n; i++) {
    const c = z[i]!;
    const d = z[i + n]!;
    z[i] = (c * a + d * b) / square;
    z[i + n] = (d * a - c * b) / square;
  }
}
