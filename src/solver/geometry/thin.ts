import type { Outline } from '../design/document.ts';

/** Zero-lift angle (rad, negative for positive camber) by thin-airfoil theory. */
export function zeroLiftAngle(outline: Outline): number {
  if (outline.kind !== 'naca4') return 0;
  const m = Number(outline.code[0]) / 100;
  const p = Number(outline.code[1]) / 10;
  if (m === 0 || p === 0) return 0;
  const knee = Math.acos(1 - 2 * p);
  const part = (from: number, to: number, k: number) => {
    const n = 200;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const t = from + ((to - from) * (i + 0.5)) / n;
      sum += k * (p - 0.5 * (1 - Math.cos(t))) * (Math.cos(t) - 1) * ((to - from) / n);
    }
    return sum;
  };
  return -(part(0, knee, (2 * m) / p ** 2) + part(knee, Math.PI, (2 * m) / (1 - p) ** 2)) / Math.PI;
}
