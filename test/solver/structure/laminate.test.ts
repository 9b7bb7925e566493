/** Laws that laminate moduli keep; the published ones are in the table of structures. */
import { describe, expect, it } from 'vitest';
import { laminateModuli, materialOf, type Ply } from '../../../src/solver/structure/laminate.ts';

const GPA = 1e9;
const ply = (along: number, across: number, shear: number, poisson: number): Ply => ({
  along: along * GPA,
  across: across * GPA,
  shear: shear * GPA,
  poisson,
});
const T300 = ply(181, 10.3, 7.17, 0.28); // S. W. Tsai, H. T. Hahn, Introduction to Composite Materials, 1980, table 1.7

const within = (found: number, expected: number, share: number) =>
  expect(Math.abs(found / expected - 1)).toBeLessThan(share);

describe('a laminate', () => {
  it('in equal shares of 0, +-45, 90 is isotropic in its plane: E = 2 (1 + nu) G', () => {
    const found = laminateModuli(T300, 0.25, 0.5);
    within(found.modulus, 2 * (1 + found.poisson) * found.shear, 1e-9);
  });

  it('of plies along it is the ply', () => {
    const found = laminateModuli(T300, 1, 0);
    within(found.modulus, T300.along, 1e-9);
    within(found.across, T300.across, 1e-9);
    within(found.shear, T300.shear, 1e-9);
  });
});

describe('the material of a part', () => {
  it('is aluminium where asked for, the same in all directions', () => {
    // 6061-T6: Aluminum Association typical values.
    const found = materialOf({ material: 'aluminium' });
    expect(found.modulus).toBe(68.9e9);
    expect(found.shear).toBe(26e9);
    expect(found.strain * found.modulus).toBeCloseTo(276e6, -6); // yield
  });

  it('takes own values in place of the material’s, and says so', () => {
    const found = materialOf({ material: 'high', modulus: 60e9 });
    expect(found.modulus).toBe(60e9);
    expect(found.shear).toBe(materialOf({ material: 'high' }).shear);
    expect(found.isOwn).toBe(true);
    expect(materialOf().isOwn).toBe(false);
  });

  it('is stiffer along with more fibre along, and in shear with more at 45 degrees', () => {
    const along = materialOf({ along: 0.8, diagonal: 0.2 });
    const turned = materialOf({ along: 0.4, diagonal: 0.6 });
    expect(along.modulus).toBeGreaterThan(turned.modulus);
    expect(along.shear).toBeLessThan(turned.shear);
  });
});
