/** Group 1: span loading and induced drag of planar, unswept, untwisted wings; section slope 2 pi. */
import { monotoneCubic } from '../../src/solver/numeric/spline.ts';
import { plainDesign } from '../support/designs.ts';
import { prandtlLine } from './prandtl-line.ts';
import type { PublishedRow } from './row.ts';
import {
  chordOf,
  nameOf,
  OWN_LATTICE,
  POINTED_SURFACE,
  type Shape,
  SURFACE,
  slopeAndEfficiency,
  solveSmall,
} from './wing.ts';

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

// aspect ratio, chord; lift slope and span efficiency with one row; with twelve
const LATTICE: Array<[number, Shape, [number, number], [number, number] | null]> = [
  [4, 0.4, [3.6804, 0.9988], [3.7115, 0.9983]],
  [4, 0.2, [3.6661, 0.9917], [3.6829, 0.9899]],
  [4, 'elliptic', [3.7099, 0.9986], [3.7365, 0.9974]],
  [6, 'elliptic', [4.3749, 0.9988], [4.3957, 0.9981]],
  [8, 1, [4.5594, 0.9743], null],
  [8, 0.6, [4.6822, 0.9939], [4.7042, 0.9931]],
  [8, 0.2, [4.7196, 0.9818], [4.73, 0.98]],
  [8, 'elliptic', [4.7789, 0.999], [4.7956, 0.9986]],
  [10, 1, [4.8165, 0.9624], null],
  [10, 0.6, [4.9431, 0.9899], [4.9604, 0.9888]],
  [10, 0.4, [4.9896, 0.9942], [5.0032, 0.9934]],
  [10, 0.2, [4.9863, 0.9772], [4.9945, 0.9755]],
  [10, 'elliptic', [5.0469, 0.9992], [5.061, 0.999]],
  [12, 1, [5.003, 0.9506], null],
  [12, 0.4, [5.1769, 0.9918], [5.1878, 0.991]],
  [12, 0.2, [5.1764, 0.9729], [5.1829, 0.9714]],
  [12, 'elliptic', [5.2365, 0.9994], [5.2489, 0.9992]],
  [16, 1, [5.2567, 0.9283], null],
  [16, 0.4, [5.4249, 0.9867], [5.4321, 0.9857]],
  [16, 0.2, [5.4283, 0.9653], [5.4325, 0.964]],
  [20, 1, [5.422, 0.9083], null],
  [20, 0.6, [5.5364, 0.9666], [5.5435, 0.965]],
  [20, 0.2, [5.5873, 0.9589], [5.59, 0.9579]],
];

const latticeRows = LATTICE.flatMap(([aspectRatio, shape, one, twelve]): PublishedRow[] => {
  const design = wing(aspectRatio, shape);
  const shared = {
    quantities: ['lift slope', 'span efficiency'],
    tolerance: [{ share: 0.003 }, { within: 0.002 }],
    source: `${OWN_LATTICE}; vortex at a quarter, tangency at three quarters of each row; 100 to 400 strips agree`,
    status: 'derived' as const,
  };
  const rows: PublishedRow[] = [
    {
      ...shared,
      conditions: `one row, AR ${aspectRatio}, ${nameOf(shape)}`,
      published: one,
      method: 'extended line',
      compute: () => slopeAndEfficiency(design),
    },
  ];
  if (twelve)
    rows.push({
      ...shared,
      conditions: `twelve rows, AR ${aspectRatio}, ${nameOf(shape)}`,
      published: twelve,
      method: 'twelve rows',
      compute: () => slopeAndEfficiency(design, shape === 'elliptic' ? POINTED_SURFACE : SURFACE),
    });
  return rows;
});

// aspect ratio, lift slope, span efficiency, aerodynamic centre in chords behind the leading edge
const PLATES: Array<[number, number, number, number]> = [
  [2, 2.474, 0.999, 0.21],
  [6, 4.214, 0.984, 0.239],
  [8, 4.586, 0.972, 0.242],
  [16, 5.271, 0.925, 0.246],
];

const plateRows = PLATES.map(
  ([aspectRatio, slope, efficiency, centre]): PublishedRow => ({
    quantities: ['lift slope', 'span efficiency', 'aerodynamic centre, chords'],
    conditions: `flat rectangular plate, AR ${aspectRatio}, linear theory`,
    published: [slope, efficiency, centre],
    tolerance: [{ share: 0.003 }, { within: 0.003 }, { within: 0.003 }],
    source: `${OWN_LATTICE}, up to 36 by 8 panels a half`,
    status: 'derived',
    method: 'twelve rows',
    compute: () => {
      const { lift, inducedDrag, stability } = solveSmall(wing(aspectRatio, 1), SURFACE);
      return [lift.CLalpha, inducedDrag.spanEfficiency!, 0.25 + stability.neutralPoint * aspectRatio];
    },
  }),
);

/** The next term beyond Prandtl's line: the difference between the two theories in closed form. */
const thirdOrder = (aspectRatio: number) =>
  (2 * Math.PI) /
  (1 +
    2 / aspectRatio +
    ((16 / Math.PI ** 2) * Math.log(1 + Math.PI * Math.exp(-9 / 8) * aspectRatio)) / aspectRatio ** 2);

const VAN_DYKE = [4, 6, 10, 16];

const vanDykeRow: PublishedRow = {
  quantities: VAN_DYKE.map((aspectRatio) => `lift slope at AR ${aspectRatio}`),
  conditions: 'elliptic chord, third-order lifting line',
  published: VAN_DYKE.map(thirdOrder),
  tolerance: VAN_DYKE.map((aspectRatio) => ({ share: aspectRatio < 6 ? 0.02 : 0.01 })), // its own error falls with AR
  source: 'M. Van Dyke, Perturbation Methods in Fluid Mechanics, 1964, ch. 9, elliptic wing',
  status: 'from memory',
  method: 'twelve rows',
  compute: () =>
    VAN_DYKE.map((aspectRatio) => solveSmall(wing(aspectRatio, 'elliptic'), POINTED_SURFACE).lift.CLalpha),
};

const belowTheLine: PublishedRow = {
  quantities: ['lift slope over that of the lifting line'],
  conditions: 'elliptic chord, AR 6: what separates the two theories',
  published: [0.93],
  tolerance: [{ within: 0.005 }],
  source: 'extended line 4.3749 (own lattice) over 2 pi AR/(AR + 2): 7 % lower',
  status: 'derived',
  method: 'extended line over closed form',
  compute: () => [solveSmall(wing(6, 'elliptic')).lift.CLalpha / ((2 * Math.PI * 6) / 8)],
};

export const planar: PublishedRow[] = [
  ...latticeRows,
  vanDykeRow,
  belowTheLine,
  ...plateRows,
  ...lineRows,
  ...ellipticLineRows,
  loadingRow,
  ...glauertRows,
  ...bestTaperRows,
  bestTaperBand,
];
