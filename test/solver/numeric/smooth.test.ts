import { describe, expect, it } from 'vitest';
import { smoothCubic } from '../../../src/solver/numeric/smooth.ts';

describe('the smooth cubic', () => {
  const places = [0, 0.3, 0.5, 1.1, 2];

  it('is any cubic that its points lie on, beyond them too', () => {
    // de Boor (1978), ch. 4: with not-a-knot ends cubics are reproduced.
    const cubic = (x: number) => 1 + x - 2 * x ** 2 + 0.7 * x ** 3;
    const curve = smoothCubic(places, places.map(cubic));
    for (const x of [-0.2, 0, 0.1, 0.4, 0.5, 1, 1.7, 2, 2.2]) expect(curve(x)).toBeCloseTo(cubic(x), 12);
  });

  it('converges with the fourth power of the spacing', () => {
    const error = (count: number) => {
      const x = Array.from({ length: count }, (_, k) => (3 * k) / (count - 1));
      const curve = smoothCubic(x, x.map(Math.sin));
      let worst = 0;
      for (let at = 0; at <= 3; at += 0.013) worst = Math.max(worst, Math.abs(curve(at) - Math.sin(at)));
      return worst;
    };
    expect(error(11) / error(21)).toBeGreaterThan(12);
  });

  it('refuses points that do not rise, and fewer than four', () => {
    expect(() => smoothCubic([0, 1, 1, 2], [0, 0, 0, 0])).toThrow('rise');
    expect(() => smoothCubic([0, 1, 2], [0, 0, 0])).toThrow('four');
  });
});
