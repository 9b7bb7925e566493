/** Laws that water obeys; the tables it must agree with are in test/published/water.ts. */
import { describe, expect, it } from 'vitest';
import { STANDARD_SALINITY, seawaterDensity, waterProperties } from '../../../src/solver/design/water.ts';

const temperatures = Array.from({ length: 36 }, (_, t) => t); // deg C, what a document allows

describe('water', () => {
  it('is heaviest at 3.98 deg C when fresh (Tanaka et al. 2001), and at once when salt', () => {
    const density = (t: number) => waterProperties('fresh', t).density;
    expect(density(3.983)).toBeCloseTo(999.97495, 5);
    expect(density(3.983)).toBeGreaterThan(density(3.5));
    expect(density(3.983)).toBeGreaterThan(density(4.5));
    for (const t of temperatures.slice(1))
      expect(waterProperties('sea', t).density).toBeLessThan(waterProperties('sea', t - 1).density);
  });

  it('flows more easily and boils more easily as it warms', () => {
    for (const kind of ['fresh', 'sea'] as const)
      for (const t of temperatures.slice(1)) {
        const [colder, warmer] = [waterProperties(kind, t - 1), waterProperties(kind, t)];
        expect(warmer.viscosity).toBeLessThan(colder.viscosity);
        expect(warmer.vapourPressure).toBeGreaterThan(colder.vapourPressure);
      }
  });

  it('is heavier, more viscous and slower to boil with salt in it', () => {
    for (const t of temperatures) {
      const [fresh, sea] = [waterProperties('fresh', t), waterProperties('sea', t)];
      expect(sea.density).toBeGreaterThan(fresh.density);
      expect(sea.viscosity * sea.density).toBeGreaterThan(fresh.viscosity * fresh.density);
      expect(sea.vapourPressure).toBeLessThan(fresh.vapourPressure);
    }
  });

  it('without salt is fresh water by either equation of state, to 0.01 kg/m3', () => {
    for (const t of temperatures)
      expect(Math.abs(seawaterDensity(t, 0) - waterProperties('fresh', t).density)).toBeLessThan(0.01);
  });

  it('of a document’s sea has the standard salinity', () => {
    expect(waterProperties('sea', 12).density).toBe(seawaterDensity(12, STANDARD_SALINITY));
  });

  it('boils at 100 deg C under one atmosphere, within 0.15 %', () => {
    expect(Math.abs(waterProperties('fresh', 100).vapourPressure / 101_325 - 1)).toBeLessThan(0.0015);
  });
});
