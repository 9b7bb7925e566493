/** Group 10: beams, section constants, torsion and laminates. */
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import { laminateModuli, materialOf, type Ply } from '../../src/solver/structure/laminate.ts';
import { sectionOf, solidConstants } from '../../src/solver/structure/section-constants.ts';
import { solidTorsion, type ThinSection } from '../../src/solver/structure/torsion.ts';
import { cantilever, deflect, endLoad, spreadLoad, tipUnder } from '../support/cantilever.ts';
import type { PublishedRow } from './row.ts';

const [W, L, EI] = [100, 0.4, 70];
const BEAM = 'Euler-Bernoulli beam, closed form';
const SEGMENTS = 200;

type Load = [name: string, load: (y: number) => number, tip: number];
const ellipse = (y: number) => ((4 * W) / (Math.PI * L)) * Math.sqrt(1 - (y / L) ** 2);
const LOADS: Load[] = [
  ['uniform', () => W / L, 11.429],
  ['triangular, peak at the root', (y) => (2 * W * (1 - y / L)) / L, 6.095],
  ['elliptic', ellipse, (1000 * 0.0967058 * W * L ** 3) / EI],
];

const CANTILEVER = 'cantilever of 0.4 m and 70 N m2 under 100 N';

const beams: PublishedRow[] = [
  {
    quantities: ['tip deflection, mm'],
    conditions: `${CANTILEVER} at its end`,
    published: [30.476],
    tolerance: [{ within: 0.001 }],
    source: BEAM,
    status: 'derived',
    method: 'elastic hinges, one segment',
    compute: () => {
      const beam = cantilever(L, 1, () => EI);
      return [1000 * tipUnder(beam, endLoad(beam, W))];
    },
  },
  ...LOADS.map(
    ([name, load, published]): PublishedRow => ({
      quantities: ['tip deflection, mm'],
      conditions: `${CANTILEVER}, spread ${name}`,
      published: [published],
      tolerance: [{ share: 0.001 }],
      source: BEAM,
      status: 'derived',
      method: `elastic hinges, ${SEGMENTS} segments`,
      compute: () => {
        const beam = cantilever(L, SEGMENTS, () => EI);
        return [1000 * tipUnder(beam, spreadLoad(beam, load))];
      },
    }),
  ),
  {
    quantities: ['root moment/(W L)'],
    conditions: `${CANTILEVER}, spread elliptic`,
    published: [0.424413],
    tolerance: [{ within: 0.0005 }],
    source: 'centroid of a quarter ellipse, 4/(3 pi)',
    status: 'derived',
    method: `elastic hinges, ${SEGMENTS} segments`,
    compute: () => {
      const beam = cantilever(L, SEGMENTS, () => EI);
      return [deflect(beam, spreadLoad(beam, ellipse)).moments[0]! / (W * L)];
    },
  },
];

const thicknessOf = (code: string) => Number(code.slice(2)) / 100;
const openSection = (code: string) => sectionOf(outlinePoints({ kind: 'naca4', code }, 1601));

/** A four-digit section with its trailing edge closed (last coefficient 0.1036), at stations along the chord. */
function closedSection(thickness: number, count = 160): ThinSection {
  const edge = (k: number) => 0.5 * (1 - Math.cos((Math.PI * k) / count));
  const along = Float64Array.from({ length: count }, (_, k) => edge(k + 0.5));
  const half = (x: number) =>
    5 * thickness * (0.2969 * Math.sqrt(x) - x * (0.126 + x * (0.3516 - x * (0.2843 - x * 0.1036))));
  return { along, width: along.map((_, k) => edge(k + 1) - edge(k)), half: along.map(half) };
}

const RITZ = 'Ritz solution of the stress function, checked on the ellipse to 1e-10';
const CLOSED_TORSION: Array<[code: string, torsion: number]> = [
  ['0006', 0.15599],
  ['0009', 0.1549],
  ['0012', 0.15342],
  ['0015', 0.15157],
  ['0018', 0.1494],
];
const OPEN_TORSION: Array<[code: string, torsion: number]> = [
  ['0009', 0.1557],
  ['0012', 0.1542],
];

const torsion: PublishedRow[] = [
  ...CLOSED_TORSION.map(
    ([code, published]): PublishedRow => ({
      quantities: ['torsion constant J/(c t^3)'],
      conditions: `solid NACA ${code}, closed trailing edge`,
      published: [published],
      tolerance: [{ within: 2e-4 }],
      source: RITZ,
      status: 'derived',
      method: 'torsion of a thin section, second order in thickness',
      compute: () => [solidTorsion(closedSection(thicknessOf(code))) / thicknessOf(code) ** 3],
    }),
  ),
  ...OPEN_TORSION.map(
    ([code, published]): PublishedRow => ({
      quantities: ['torsion constant J/(c t^3)'],
      conditions: `solid NACA ${code}, open trailing edge`,
      published: [published],
      tolerance: [{ share: 0.005 }],
      source: 'finite-difference stress function on two grids',
      status: 'derived',
      method: 'torsion of a thin section, from its outline',
      compute: () => [solidConstants(openSection(code)).torsion / thicknessOf(code) ** 3],
    }),
  ),
];

const moments = ['0006', '0009', '0012', '0018'].map(
  (code): PublishedRow => ({
    quantities: ['centroid x/c', 'I about the chord/(c t^3)', 'I about the centroid’s normal/(t c^3)'],
    conditions: `solid NACA ${code}, open trailing edge`,
    published: [0.4204, 0.039407, 0.03782],
    tolerance: [{ within: 1e-4 }, { within: 4e-6 }, { within: 2e-6 }],
    source: 'quadrature of the four-digit form',
    status: 'derived',
    method: 'section constants from the outline, 1601 points',
    compute: () => {
      const { x, flap, lag } = solidConstants(openSection(code));
      return [x, flap / thicknessOf(code) ** 3, lag / thicknessOf(code)];
    },
  }),
);

const GPA = 1e9;
const ply = (along: number, across: number, shear: number, poisson: number): Ply => ({
  along: along * GPA,
  across: across * GPA,
  shear: shear * GPA,
  poisson,
});

const TSAI = 'S. W. Tsai, H. T. Hahn, Introduction to Composite Materials, 1980, quasi-isotropic table';
type Laminate = [
  name: string,
  of: Ply,
  even: [number, number, number],
  diagonal: [number, number] | null,
  source: string,
  status: PublishedRow['status'],
];
const LAMINATES: Laminate[] = [
  ['T300/5208', ply(181, 10.3, 7.17, 0.28), [69.68, 26.88, 0.296], null, TSAI, 'read (second-hand copy)'],
  [
    'AS/3501',
    ply(138, 8.96, 7.1, 0.3),
    [54.84, 21.35, 0.284],
    [23.96, 35.6],
    'laminate invariants U1, U4, U5',
    'derived',
  ],
  [
    'AS4/3501-6',
    ply(147, 10.3, 7, 0.27),
    [58.18, 22.57, 0.289],
    [23.91, 38.13],
    'laminate theory, worked elsewhere',
    'derived',
  ],
];

const laminates = LAMINATES.flatMap(([name, of, even, diagonal, source, status]): PublishedRow[] => {
  const shared = { source, status, method: 'laminate moduli' };
  const share = { share: 0.005 };
  const quasi: PublishedRow = {
    ...shared,
    quantities: ['E, GPa', 'G, GPa', 'Poisson ratio'],
    conditions: `${name} in equal shares of 0, +-45 and 90 degrees`,
    published: even,
    tolerance: [share, share, share],
    compute: () => {
      const { modulus, shear, poisson } = laminateModuli(of, 0.25, 0.5);
      return [modulus / GPA, shear / GPA, poisson];
    },
  };
  if (!diagonal) return [quasi];
  const turned: PublishedRow = {
    ...shared,
    quantities: ['E, GPa', 'G, GPa'],
    conditions: `${name} at +-45 degrees`,
    published: diagonal,
    tolerance: [share, share],
    compute: () => {
      const { modulus, shear } = laminateModuli(of, 0, 1);
      return [modulus / GPA, shear / GPA];
    },
  };
  return [quasi, turned];
});

const aluminium: PublishedRow = {
  quantities: ['E, GPa', 'G, GPa', 'yield, MPa'],
  conditions: 'aluminium 6061-T6, room temperature',
  published: [68.9, 26, 276],
  tolerance: [{ share: 0.01 }, { share: 0.01 }, { share: 0.01 }],
  source: 'Aluminum Association typical values',
  status: 'read',
  method: 'material table; the yield is its strain times E',
  compute: () => {
    const { modulus, shear, strain } = materialOf({ material: 'aluminium' });
    return [modulus / GPA, shear / GPA, (strain * modulus) / 1e6];
  },
};

export const structures: PublishedRow[] = [...beams, ...moments, ...torsion, ...laminates, aluminium];
