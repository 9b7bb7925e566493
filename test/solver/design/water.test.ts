/** Water against the published tables. ITTC rows: Recommended Procedure 7.5-02-01-03 Rev 02 (2011), seen second hand. */
import { describe, expect, it } from 'vitest';
import { seawaterDensity, waterProperties } from '../../../src/solver/design/water.ts';

const within = (found: number, expected: number, tolerance: number) =>
  expect(Math.abs(found - expected), `found ${found}, published ${expected}`).toBeLessThanOrEqual(tolerance);

describe('fresh water', () => {
  it.each([
    [15, 999.1026, 0.02], // ITTC table 1
    [20, 998.2072, 0.02],
    [30, 995.6495, 0.02],
    [5, 999.9668, 0.01], // Tanaka et al., Metrologia 38 (2001) 301
    [20, 998.2067, 0.01],
    [30, 995.6488, 0.01],
  ])('weighs at %d deg C what the tables say', (t, density, tolerance) => {
    within(waterProperties('fresh', t).density, density, tolerance);
  });

  // IAPWS SR6-08 viscosity at 0.1 MPa, Wagner and Pruss (1993) vapour pressure, Kell (1975) density.
  it.each([
    [5, 1.5182e-3, 1.5183e-6, 872.5],
    [15, 1.1375e-3, 1.1386e-6, 1705.7],
    [20, 1.0016e-3, 1.0034e-6, 2339.2],
    [30, 0.7972e-3, 0.8007e-6, 4246.9],
  ])(
    'has at %d deg C the viscosity and vapour pressure of the IAPWS releases',
    (t, dynamic, kinematic, pressure) => {
      const { density, viscosity, vapourPressure } = waterProperties('fresh', t);
      within(viscosity * density, dynamic, 0.001 * dynamic);
      within(viscosity, kinematic, 0.001 * kinematic);
      within(vapourPressure, pressure, 0.001 * pressure);
    },
  );

  it('has at 15 deg C the viscosity of ITTC table 1 (from memory)', () => {
    within(waterProperties('fresh', 15).viscosity, 1.1386e-6, 0.002 * 1.1386e-6);
  });
});

describe('sea water', () => {
  // ITTC table 3; it stands 0.047 above EOS-80 at zero gauge pressure, as if 10 dbar were included.
  it.each([
    [1, 1028.0941, 1.843e-3, 1.7926e-6],
    [5, 1027.7225, 1.62e-3, 1.5763e-6],
    [15, 1026.021, 1.22e-3, 1.1891e-6],
    [25, 1023.3873, 0.959e-3, 0.9371e-6],
    [30, 1021.7694, 0.861e-3, 0.8427e-6],
  ])('agrees at %d deg C with ITTC table 3', (t, published, dynamic, kinematic) => {
    const { density, viscosity } = waterProperties('sea', t);
    within(density, published, 0.06);
    within(viscosity * density, dynamic, 0.005 * dynamic);
    within(viscosity, kinematic, 0.005 * kinematic);
  });

  it('has at 15 deg C the viscosity of ITTC table 3 (from memory)', () => {
    within(waterProperties('sea', 15).viscosity, 1.1892e-6, 0.002 * 1.1892e-6);
  });

  // ITTC table 4.
  it.each([
    [10, 1006.795],
    [30, 1022.0628],
    [35, 1025.8944],
    [40, 1029.7328],
  ])('at 15 deg C and %d g/kg weighs what ITTC table 4 says', (salinity, published) => {
    within(seawaterDensity(15, salinity), published, 0.06);
  });

  // EOS-80 (Millero and Poisson 1981), Sharqawy et al. (2010) viscosity, vapour pressure by Raoult's law.
  it.each([
    [5, 1027.676, 1.5762e-6, 854.7],
    [15, 1025.973, 1.1894e-6, 1670.8],
    [25, 1023.343, 0.9373e-6, 3104.9],
    [30, 1021.729, 0.8427e-6, 4160.0],
  ])('agrees at %d deg C with the equations behind the tables', (t, published, kinematic, pressure) => {
    const { density, viscosity, vapourPressure } = waterProperties('sea', t);
    within(density, published, 0.01);
    within(viscosity, kinematic, 0.005 * kinematic);
    within(vapourPressure, pressure, 0.002 * pressure);
  });

  it('lowers the vapour pressure at 15 deg C by the share Raoult gives', () => {
    const ratio = waterProperties('sea', 15).vapourPressure / waterProperties('fresh', 15).vapourPressure;
    within(ratio, 0.9795, 0.001); // group 11 of the published checks: S_A 35.165 g/kg
  });
});
