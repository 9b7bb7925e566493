/**
 * Water at atmospheric pressure, 0 to 40 deg C, as the ITTC tables have it (Recommended Procedure 7.5-02-01-03 Rev 02,
 * Fresh Water and Seawater Properties, 2011): from the equations behind them rather than by interpolation. They agree
 * with the tables to 0.02 kg/m3 (fresh) and 0.05 kg/m3 (sea) in density and 0.5 % in viscosity. All coefficients
 * are from memory, checked against the published values in test/published/water.ts.
 */

export type WaterKind = 'sea' | 'fresh';

export interface Water {
  density: number; // kg/m3
  viscosity: number; // m2/s, kinematic
  vapourPressure: number; // Pa
}

/** Absolute salinity of standard seawater, g/kg: ITTC 7.5-02-01-03. */
export const STANDARD_SALINITY = 35.16504;

const KELVIN = 273.15;
const SALINITY_PER_PRACTICAL = STANDARD_SALINITY / 35; // g/kg; TEOS-10 reference-composition scale

/** Properties at a temperature in deg C (0 to 40). */
export function waterProperties(kind: WaterKind, temperatureC: number): Water {
  const salinity = kind === 'sea' ? STANDARD_SALINITY : 0;
  const density = kind === 'sea' ? seawaterDensity(temperatureC, salinity) : freshDensity(temperatureC);
  return {
    density,
    viscosity: (freshViscosity(temperatureC) * viscosityRatio(temperatureC, salinity)) / density,
    vapourPressure: freshVapourPressure(temperatureC) * vapourRatio(salinity),
  };
}

/** kg/m3, air-free water. M. Tanaka et al., Metrologia 38 (2001) 301, eq. 1; 0 to 40 deg C. */
function freshDensity(t: number): number {
  return 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)));
}

/**
 * kg/m3 at zero gauge pressure. EOS-80: F. J. Millero and A. Poisson, Deep-Sea Research 28A (1981) 625.
 * `salinity` is absolute, in g/kg; the fit takes the practical one and temperatures of the scale of 1968.
 */
export function seawaterDensity(temperatureC: number, salinity: number): number {
  const t = 1.00024 * temperatureC;
  const s = salinity / SALINITY_PER_PRACTICAL;
  const pure = polynomial(t, [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9]);
  const linear = polynomial(t, [0.824493, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9]);
  const rooted = polynomial(t, [-5.72466e-3, 1.0227e-4, -1.6546e-6]);
  return pure + linear * s + rooted * s ** 1.5 + 4.8314e-4 * s * s;
}

/** Pa s, liquid at 0.1 MPa. IAPWS SR6-08, Supplementary Release on Liquid Water at 0.1 MPa, eq. 7. */
function freshViscosity(t: number): number {
  const r = (t + KELVIN) / 300;
  return 1e-6 * (280.68 * r ** -1.9 + 511.45 * r ** -7.7 + 61.131 * r ** -19.6 + 0.45903 * r ** -40);
}

/** Seawater over fresh. M. H. Sharqawy et al., Desalination and Water Treatment 16 (2010) 354, eq. 22. */
function viscosityRatio(t: number, salinity: number): number {
  const s = salinity / 1000; // kg/kg
  const linear = polynomial(t, [1.541, 1.998e-2, -9.52e-5]);
  const squared = polynomial(t, [7.974, -7.561e-2, 4.724e-4]);
  return 1 + linear * s + squared * s * s;
}

/** Pa. W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, eq. 1. */
function freshVapourPressure(t: number): number {
  const kelvin = t + KELVIN;
  const v = 1 - kelvin / 647.096;
  const sum =
    -7.85951783 * v +
    1.84408259 * v ** 1.5 -
    11.7866497 * v ** 3 +
    22.6807411 * v ** 3.5 -
    15.9618719 * v ** 4 +
    1.80122502 * v ** 7.5;
  return 22.064e6 * Math.exp((sum * 647.096) / kelvin);
}

/** Seawater over fresh by Raoult's law. Sharqawy et al. (2010), eq. 31. */
function vapourRatio(salinity: number): number {
  return 1 / (1 + (0.57357 * salinity) / (1000 - salinity));
}

function polynomial(t: number, coefficients: readonly number[]): number {
  return coefficients.reduceRight((sum, coefficient) => sum * t + coefficient, 0);
}
