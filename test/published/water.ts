/** Group 5: density, viscosity and vapour pressure of fresh water and standard seawater at atmospheric pressure. */
import { seawaterDensity, waterProperties } from '../../src/solver/design/water.ts';
import type { PublishedRow } from './row.ts';

const ITTC = 'ITTC Recommended Procedure 7.5-02-01-03 Rev 02, Fresh Water and Seawater Properties, 2011';
const METHOD = 'equations behind the tables';
/** The ITTC's seawater lies 0.047 above EOS-80 at zero gauge pressure. */
const SEA_DENSITY = { within: 0.06 };

const fresh = (temperature: number) => waterProperties('fresh', temperature);
const sea = (temperature: number) => waterProperties('sea', temperature);

const FRESH: Array<[number, number]> = [
  [15, 999.1026],
  [20, 998.2072],
  [30, 995.6495],
];

const freshRows = FRESH.map(
  ([temperature, density]): PublishedRow => ({
    quantities: ['density, kg/m3'],
    conditions: `fresh water, ${temperature} C`,
    published: [density],
    tolerance: [{ within: 0.02 }],
    source: `${ITTC}, table 1`,
    status: 'read (second-hand copy)',
    method: METHOD,
    compute: () => [fresh(temperature).density],
  }),
);

// temperature, density, dynamic viscosity in mPa s
const SEA: Array<[number, number, number]> = [
  [1, 1028.0941, 1.843],
  [5, 1027.7225, 1.62],
  [15, 1026.021, 1.22],
  [25, 1023.3873, 0.959],
  [30, 1021.7694, 0.861],
];

const seaRows = SEA.map(
  ([temperature, density, viscosity]): PublishedRow => ({
    quantities: ['density, kg/m3', 'kinematic viscosity, 1e-6 m2/s'],
    conditions: `seawater, ${temperature} C, 35.165 g/kg`,
    published: [density, (1000 * viscosity) / density],
    tolerance: [SEA_DENSITY, { share: 0.005 }],
    source: `${ITTC}, table 3; viscosity is dynamic over density`,
    status: 'read (second-hand copy)',
    method: METHOD,
    compute: () => [sea(temperature).density, 1e6 * sea(temperature).viscosity],
  }),
);

const SALINITIES: Array<[number, number]> = [
  [10, 1006.795],
  [30, 1022.0628],
  [35, 1025.8944],
  [40, 1029.7328],
];

const salinityRows = SALINITIES.map(
  ([salinity, density]): PublishedRow => ({
    quantities: ['density, kg/m3'],
    conditions: `15 C, ${salinity} g/kg`,
    published: [density],
    tolerance: [SEA_DENSITY],
    source: `${ITTC}, table 4`,
    status: 'read (second-hand copy)',
    method: METHOD,
    compute: () => [seawaterDensity(15, salinity)],
  }),
);

const AIR_FREE: Array<[number, number]> = [
  [5, 999.9668],
  [20, 998.2067],
  [30, 995.6488],
];

const airFreeRows = AIR_FREE.map(
  ([temperature, density]): PublishedRow => ({
    quantities: ['density, kg/m3'],
    conditions: `air-free fresh water, ${temperature} C`,
    published: [density],
    tolerance: [{ within: 0.01 }],
    source: 'M. Tanaka et al., Metrologia 38 (2001) 301-309',
    status: 'read (second-hand copy)',
    method: METHOD,
    compute: () => [fresh(temperature).density],
  }),
);

const bothAt15: PublishedRow = {
  quantities: ['kinematic viscosity of fresh water, 1e-6 m2/s', 'kinematic viscosity of seawater, 1e-6 m2/s'],
  conditions: '15 C',
  published: [1.1386, 1.1892],
  tolerance: [{ share: 0.002 }, { share: 0.002 }],
  source: `${ITTC}, tables 1 and 3`,
  status: 'from memory',
  method: METHOD,
  compute: () => [1e6 * fresh(15).viscosity, 1e6 * sea(15).viscosity],
};

// temperature, kinematic viscosity 1e-6 m2/s, vapour pressure Pa
const IAPWS: Array<[number, number, number]> = [
  [5, 1.5183, 872.5],
  [15, 1.1386, 1705.7],
  [20, 1.0034, 2339.2],
  [30, 0.8007, 4246.9],
];

const iapwsRows = IAPWS.map(
  ([temperature, viscosity, pressure]): PublishedRow => ({
    quantities: ['kinematic viscosity, 1e-6 m2/s', 'vapour pressure, Pa'],
    conditions: `fresh water, ${temperature} C, 0.1 MPa`,
    published: [viscosity, pressure],
    tolerance: [{ share: 0.001 }, { share: 0.001 }],
    source:
      'IAPWS SR6-08 (viscosity); W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783; G. S. Kell 1975',
    status: 'derived',
    method: METHOD,
    compute: () => [1e6 * fresh(temperature).viscosity, fresh(temperature).vapourPressure],
  }),
);

// temperature, density, kinematic viscosity 1e-6 m2/s, vapour pressure Pa
const EOS: Array<[number, number, number, number]> = [
  [5, 1027.676, 1.5762, 854.7],
  [15, 1025.973, 1.1894, 1670.8],
  [25, 1023.343, 0.9373, 3104.9],
  [30, 1021.729, 0.8427, 4160],
];

const eosRows = EOS.map(
  ([temperature, density, viscosity, pressure]): PublishedRow => ({
    quantities: ['density, kg/m3', 'kinematic viscosity, 1e-6 m2/s', 'vapour pressure, Pa'],
    conditions: `seawater, ${temperature} C, practical salinity 35`,
    published: [density, viscosity, pressure],
    tolerance: [{ within: 0.01 }, { share: 0.005 }, { share: 0.002 }],
    source:
      'EOS-80: F. J. Millero and A. Poisson, Deep-Sea Res. 28A (1981) 625; M. H. Sharqawy et al., Desalination Water Treat. 16 (2010) 354; Raoult',
    status: 'derived',
    method: METHOD,
    compute: () => {
      const water = sea(temperature);
      return [water.density, 1e6 * water.viscosity, water.vapourPressure];
    },
  }),
);

export const water: PublishedRow[] = [
  ...freshRows,
  ...seaRows,
  ...salinityRows,
  ...airFreeRows,
  bothAt15,
  ...iapwsRows,
  ...eosRows,
];
