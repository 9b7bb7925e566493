/** Eigenvalues: the defining equation A V = V D, invariants, and published stability matrices with published roots. */
import { describe, expect, it } from 'vitest';
import { type Complex, eigenvalues, eigenvector } from '../../../src/solver/numeric/eigen.ts';
import { randomFrom } from '../../../src/solver/numeric/random.ts';

function residual(a: Float64Array, n: number, value: Complex): number {
  const v = eigenvector(a, n, value);
  let worst = 0;
  for (let i = 0; i < n; i++) {
    let real = 0;
    let imaginary = 0;
    for (let j = 0; j < n; j++) {
      real += a[i * n + j]! * v[j]!.real;
      imaginary += a[i * n + j]! * v[j]!.imaginary;
    }
    real -= value.real * v[i]!.real - value.imaginary * v[i]!.imaginary;
    imaginary -= value.real * v[i]!.imaginary + value.imaginary * v[i]!.real;
    worst = Math.max(worst, Math.hypot(real, imaginary));
  }
  return worst;
}

function sorted(values: Complex[]): Complex[] {
  return [...values].sort((p, q) => p.real - q.real || p.imaginary - q.imaginary);
}

function expectRoots(rows: number[][], roots: Array<[number, number]>, within: number): void {
  const found = sorted(eigenvalues(Float64Array.from(rows.flat()), rows.length));
  const wanted = sorted(roots.map(([real, imaginary]) => ({ real, imaginary })));
  found.forEach(({ real, imaginary }, k) => {
    expect(Math.hypot(real - wanted[k]!.real, imaginary - wanted[k]!.imaginary)).toBeLessThan(within);
  });
}

describe('eigenvalues of a small real matrix', () => {
  it('satisfy A V = V D, and sum to the trace, for random matrices of 1 to 12 rows', () => {
    const random = randomFrom(20260101);
    for (let run = 0; run < 200; run++) {
      const n = 1 + (run % 12);
      const a = Float64Array.from({ length: n * n }, () => 2 * random() - 1);
      const values = eigenvalues(a, n);
      let trace = 0;
      for (let i = 0; i < n; i++) trace += a[i * n + i]!;
      expect(Math.abs(values.reduce((sum, { real }) => sum + real, -trace))).toBeLessThan(1e-12 * n);
      expect(Math.abs(values.reduce((sum, { imaginary }) => sum + imaginary, 0))).toBeLessThan(1e-12);
      for (const value of values) expect(residual(a, n, value)).toBeLessThan(1e-9);
    }
  });

  it('satisfy A V = V D where entries differ by ten orders', () => {
    const random = randomFrom(7);
    for (let run = 0; run < 50; run++) {
      const n = 5;
      const scale = Array.from({ length: n }, () => 10 ** (10 * random() - 5));
      const core = Float64Array.from({ length: n * n }, () => 2 * random() - 1);
      const a = core.map((value, k) => (value * scale[Math.floor(k / n)]!) / scale[k % n]!);
      const plain = sorted(eigenvalues(core, n));
      sorted(eigenvalues(a, n)).forEach(({ real, imaginary }, k) => {
        expect(Math.hypot(real - plain[k]!.real, imaginary - plain[k]!.imaginary)).toBeLessThan(1e-10);
      });
    }
  });

  it('are the roots of a companion matrix: (x-1)(x-2)(x-3)(x^2+2x+5)', () => {
    // x^5 - 4x^4 + 4x^3 - 14x^2 + 43x - 30
    expectRoots(
      [
        [4, -4, 14, -43, 30],
        [1, 0, 0, 0, 0],
        [0, 1, 0, 0, 0],
        [0, 0, 1, 0, 0],
        [0, 0, 0, 1, 0],
      ],
      [
        [1, 0],
        [2, 0],
        [3, 0],
        [-1, 2],
        [-1, -2],
      ],
      1e-9,
    );
  });

  it('of a cyclic permutation are the roots of one, which plain shifts never find', () => {
    const n = 5;
    const rows = Array.from({ length: n }, (_, i) =>
      Array.from({ length: n }, (_, j) => (j === (i + 1) % n ? 1 : 0)),
    );
    const roots = Array.from({ length: n }, (_, k): [number, number] => [
      Math.cos((2 * Math.PI * k) / n),
      Math.sin((2 * Math.PI * k) / n),
    ]);
    expectRoots(rows, roots, 1e-12);
  });

  it('of a triangular matrix stand on its diagonal, repeated ones included', () => {
    expectRoots(
      [
        [2, 7, -1],
        [0, 2, 3],
        [0, 0, -4],
      ],
      [
        [2, 0],
        [2, 0],
        [-4, 0],
      ],
      1e-7,
    );
    expectRoots([[0, 0], [0, 0]], [[0, 0], [0, 0]], 1e-15); // biome-ignore format: one line
  });

  it('of the jet transport match the published longitudinal roots', () => {
    // B. Etkin, L. D. Reid, Dynamics of Flight, 3rd ed. 1996, ch. 6: matrix read (second-hand copy), roots from memory
    expectRoots(
      [
        [-0.006868, 0.01395, 0, -32.2],
        [-0.09055, -0.3151, 773.98, 0],
        [0.0001187, -0.001026, -0.4285, 0],
        [0, 0, 1, 0],
      ],
      [
        [-0.3719, 0.8875],
        [-0.3719, -0.8875],
        [-0.003289, 0.06723],
        [-0.003289, -0.06723],
      ],
      1e-4,
    );
  });

  it('of the general-aviation airplane match the published lateral and longitudinal roots', () => {
    // R. C. Nelson, Flight Stability and Automatic Control, Navion example: dimensional derivatives read (second-hand
    // copy) or recomputed from the printed coefficients; roots recomputed, published ones beside them from memory.
    const speed = 176; // ft/s
    const gravity = 32.174;
    expectRoots(
      [
        [-0.2543, 0, -1, gravity / speed], // beta, p, r, phi; Y_p and Y_r not given
        [-15.98, -8.402, 2.193, 0],
        [4.553, -0.35, -0.7605, 0],
        [0, 1, 0, 0],
      ],
      [
        [-8.4349, 0],
        [-0.0082, 0],
        [-0.487, 2.3472], // published: -0.487 +- 2.335 i
        [-0.487, -2.3472],
      ],
      2e-3,
    );
    const [xu, xw, zu, zw, mw, mwdot, mq] = [-0.0451, 0.0361, -0.3697, -2.0244, -0.05, -0.005165, -2.0767];
    expectRoots(
      [
        [xu, xw, 0, -gravity],
        [zu, zw, speed, 0],
        [mwdot * zu, mw + mwdot * zw, mq + mwdot * speed, 0],
        [0, 0, 1, 0],
      ],
      [
        [-2.5105, 2.5918], // published: -2.5 +- 2.59 i
        [-2.5105, -2.5918],
        [-0.0171, 0.2131], // published: -0.0171 +- 0.213 i
        [-0.0171, -0.2131],
      ],
      2e-3,
    );
  });
});
