/** Group 1: span loading and induced drag of planar, unswept, untwisted wings; section slope 2 pi. */
import { plainDesign } from '../support/designs.ts';
import { liftingLines } from './lifting-lines.ts';
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

const wing = (aspectRatio: number, shape: Shape) => plainDesign({ chord: chordOf(aspectRatio, shape) });

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
  ...liftingLines,
];
