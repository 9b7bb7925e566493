/** Group 1, continued: Prandtl's lifting line, a theory apart; unswept, untwisted, section slope 2 pi. */
import { monotoneCubic } from '../../src/solver/numeric/spline.ts';
import { plainDesign } from '../support/designs.ts';
import { prandtlLine } from './prandtl-line.ts';
import type { PublishedRow } from './row.ts';
import { chordOf, type Shape } from './wing.ts';

const GLAUERT =
  'Prandtl lifting line by the Fourier series of H. Glauert, The Elements of Aerofoil and Airscrew Theory, Cambridge 1926, ch. XI';
const PRANDTL_LINE = "Prandtl's line built from the program's strips and wake velocities";

const wing = (aspectRatio: number, shape: Shape) => plainDesign({ chord: chordOf(aspectRatio, shape) });

// aspect ratio, taper, lift slope, span efficiency
const LINES: Array<[number, number, number, number]> = [
  [4, 1, 4.0284, 0.9723],
  [6, 1, 4.5304, 0.9539],
  [8, 1, 4.8377, 0.9367],
  [10, 1, 5.0468, 0.9209],
  [16, 1, 5.4074, 0.8817],
  [20, 1, 5.5443, 0.8608],
  [6, 0.6, 4.6327, 0.9834],
  [8, 0.6, 4.9426, 0.9761],
  [12, 0.6, 5.3009, 0.9621],
  [16, 0.6, 5.5032, 0.9496],
  [20, 0.6, 5.6338, 0.9383],
  [6, 0.4, 4.6677, 0.9913],
  [10, 0.4, 5.1879, 0.9831],
  [4, 0.2, 4.1389, 0.9888],
  [6, 0.2, 4.6577, 0.9818],
  [8, 0.2, 4.9714, 0.9756],
  [10, 0.2, 5.1822, 0.97],
  [16, 0.2, 5.5374, 0.9569],
  [4, 0, 3.9544, 0.9134],
  [6, 0, 4.4758, 0.8855],
  [8, 0, 4.8012, 0.8653],
  [10, 0, 5.025, 0.8499],
  [12, 0, 5.1889, 0.8377],
  [16, 0, 5.4136, 0.8196],
];

/** The series itself, which test/solver/published checks the numbers above with. */
export const LIFTING_LINES = LINES;

const lineRows = LINES.map(
  ([aspectRatio, taper, slope, efficiency]): PublishedRow => ({
    quantities: ['lift slope of the lifting line', 'span efficiency of the lifting line'],
    conditions: `AR ${aspectRatio}, taper ${taper}`,
    published: [slope, efficiency],
    tolerance: [{ share: 0.003 }, { within: 0.002 }],
    source: GLAUERT,
    status: 'derived',
    method: PRANDTL_LINE,
    compute: () => {
      const line = prandtlLine(wing(aspectRatio, taper));
      return [line.liftCoefficient, line.spanEfficiency];
    },
  }),
);

const ellipticLineRows = [10, 12, 16].map(
  (aspectRatio): PublishedRow => ({
    quantities: ['lift slope of the lifting line', 'span efficiency of the lifting line'],
    conditions: `AR ${aspectRatio}, elliptic chord`,
    published: [(2 * Math.PI * aspectRatio) / (aspectRatio + 2), 1],
    tolerance: [{ share: 1e-4 }, { within: 1e-4 }],
    source: 'closed form 2 pi AR/(AR + 2), e = 1 (Glauert 1926, ch. XI)',
    status: 'derived',
    method: PRANDTL_LINE,
    compute: () => {
      const line = prandtlLine(wing(aspectRatio, 'elliptic'));
      return [line.liftCoefficient, line.spanEfficiency];
    },
  }),
);

/** Glauert's tau and delta of a rectangular wing from its lifting line. */
function tauAndDelta(ratio: number): [number, number] {
  const aspectRatio = 2 * Math.PI * ratio;
  const { liftCoefficient, spanEfficiency } = prandtlLine(wing(aspectRatio, 1), { strips: 200 });
  const tau = ((2 * Math.PI) / liftCoefficient - 1) * Math.PI * ratio - 1;
  return [tau, 1 / spanEfficiency - 1];
}

// AR/a0; tau and delta converged; tau and delta as printed from a few terms
const GLAUERT_TABLE: Array<[number, [number, number], [number, number]]> = [
  [0.5, [0.099, 0.0202], [0.1, 0.019]],
  [0.75, [0.135, 0.0355], [0.14, 0.034]],
  [1, [0.166, 0.0511], [0.17, 0.049]],
  [1.5, [0.217, 0.0808], [0.22, 0.076]],
  [1.75, [0.238, 0.0946], [0.24, 0.088]],
];

const glauertRows = GLAUERT_TABLE.flatMap(([ratio, converged, printed]): PublishedRow[] => {
  const shared = {
    quantities: ["Glauert's tau", "Glauert's delta"],
    conditions: `rectangular wing, AR/a0 ${ratio}`,
    method: PRANDTL_LINE,
    compute: () => tauAndDelta(ratio),
  };
  return [
    {
      ...shared,
      published: converged,
      tolerance: [{ within: 0.002 }, { within: 0.0005 }],
      source: `${GLAUERT}, converged`,
      status: 'derived',
    },
    {
      ...shared,
      published: printed,
      tolerance: [{ within: 0.012 }, { within: 0.008 }],
      source:
        'Glauert, 2nd ed. 1947, ch. XI, table for rectangular aerofoils (few terms, delta a few per cent low)',
      status: 'from memory',
    },
  ];
});

/** Taper of least induced drag by golden section between 0.2 and 0.6, and delta there. */
function bestTaper(aspectRatio: number): [number, number] {
  const delta = (taper: number) =>
    1 / prandtlLine(wing(aspectRatio, taper), { strips: 80 }).spanEfficiency - 1;
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [0.2, 0.6];
  while (high - low > 0.002) {
    const one = high - golden * (high - low);
    const other = low + golden * (high - low);
    if (delta(one) < delta(other)) high = other;
    else low = one;
  }
  const taper = (low + high) / 2;
  return [taper, delta(taper)];
}

const BEST_TAPERS: Array<[number, number, number]> = [
  [4, 0.376, 0.0047],
  [8, 0.364, 0.0126],
  [10, 0.359, 0.0166],
  [16, 0.346, 0.0276],
];

const bestTaperRows = BEST_TAPERS.map(
  ([aspectRatio, taper, delta]): PublishedRow => ({
    quantities: ['taper of least induced drag', 'delta there'],
    conditions: `AR ${aspectRatio}`,
    published: [taper, delta],
    tolerance: [{ within: 0.02 }, { within: 0.0005 }],
    source: GLAUERT,
    status: 'derived',
    method: PRANDTL_LINE,
    compute: () => bestTaper(aspectRatio),
  }),
);

const bestTaperBand: PublishedRow = {
  quantities: ['best taper at AR 4, middle of the band', 'best taper at AR 12, middle of the band'],
  conditions: 'straight wings without twist; band 0.35 to 0.45',
  published: [0.4, 0.4],
  tolerance: [{ within: 0.05 }, { within: 0.05 }],
  source: 'R. F. Anderson, NACA Report 572, 1936; Glauert ch. XI',
  status: 'from memory',
  method: PRANDTL_LINE,
  compute: () => [bestTaper(4)[0], bestTaper(12)[0]],
};

const LOADING_AT = [0.25, 0.5, 0.75, 0.9, 0.95];

const loadingRow: PublishedRow = {
  quantities: LOADING_AT.map((fraction) => `circulation over that of the root at 2y/b ${fraction}`),
  conditions: 'AR 10, taper 1',
  published: [0.9923, 0.9629, 0.8752, 0.7064, 0.5646],
  tolerance: LOADING_AT.map(() => ({ within: 0.003 })),
  source: `${GLAUERT}, 400 terms`,
  status: 'derived',
  method: PRANDTL_LINE,
  compute: () => {
    const { y, circulation } = prandtlLine(wing(10, 1));
    const port = [...y].reverse().map((value) => -value);
    const curve = monotoneCubic([...port, ...y], [...[...circulation].reverse(), ...circulation]);
    return LOADING_AT.map((fraction) => curve(fraction / 2) / curve(0));
  },
};

export const liftingLines: PublishedRow[] = [
  ...lineRows,
  ...ellipticLineRows,
  loadingRow,
  ...glauertRows,
  ...bestTaperRows,
  bestTaperBand,
];
