/** Laminate moduli against the tables of Tsai and Hahn and laminate theory worked elsewhere. */
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
const AS = ply(138, 8.96, 7.1, 0.3); // the same, from memory
const AS4 = ply(147, 10.3, 7.0, 0.27); // I. M. Daniel, O. Ishai, Engineering Mechanics of Composite Materials, table A.4
const GY70 = ply(294, 6.4, 4.9, 0.23); // the same, from memory

const within = (found: number, expected: number, share: number) =>
  expect(Math.abs(found / expected - 1)).toBeLessThan(share);

describe('a laminate', () => {
  it.each([
    ['T300/5208', T300, 69.68, 26.88, 0.296], // quasi-isotropic table of Tsai and Hahn
    ['AS/3501', AS, 54.84, 21.35, 0.284],
    ['AS4/3501-6', AS4, 58.18, 22.57, 0.289],
  ])('of %s in equal shares of 0, +-45, 90 is quasi-isotropic', (_name, of, modulus, shear, poisson) => {
    const found = laminateModuli(of, 0.25, 0.5);
    within(found.modulus, modulus * GPA, 0.005);
    within(found.shear, shear * GPA, 0.005);
    within(found.poisson, poisson, 0.005);
    // Isotropic in its plane: E = 2 (1 + nu) G.
    within(found.modulus, 2 * (1 + found.poisson) * found.shear, 1e-9);
  });

  it.each([
    ['AS/3501', AS, 23.96, 35.6],
    ['AS4/3501-6', AS4, 23.91, 38.13],
    ['GY-70/934', GY70, 18.41, 74.45],
  ])('of %s at +-45 has E %s and G %s GPa by laminate theory', (_name, of, modulus, shear) => {
    const found = laminateModuli(of, 0, 1);
    within(found.modulus, modulus * GPA, 0.005);
    within(found.shear, shear * GPA, 0.005);
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
