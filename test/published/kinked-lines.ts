/**
 * Group 3, continued: least induced drag of lines with corners - kinked tips, plates, boxes, rings - through the
 * program's wake, on strips bunched at the corners.
 */
import { kinkedDroop, plainDesign } from '../support/designs.ts';
import { type Corner, leastFactor, SLIT, stripsAlong } from './curves.ts';
import type { PublishedRow } from './row.ts';
import { solveSmall } from './wing.ts';

const RADIANS = Math.PI / 180;
const MINIMISATION =
  'own Trefftz-plane minimisation, independent of this program, 240 to 960 panels extrapolated';

// kink as a share of the semispan, tip angle, k
const KINKS: Array<[number, number, number]> = [
  [0.5, 10, 1.00522],
  [0.5, 30, 1.05165],
  [0.5, 45, 1.1355],
  [0.6, 20, 1.01948],
  [0.6, 30, 1.04658],
  [0.7, 10, 1.00397],
  [0.7, 30, 1.03931],
  [0.8, 10, 1.00296],
  [0.8, 20, 1.01228],
  [0.8, 30, 1.02942],
  [0.8, 45, 1.0775],
  [0.9, 20, 1.00686],
  [0.9, 30, 1.01646],
];

const kinkRows = KINKS.map(
  ([kink, angle, k]): PublishedRow => ({
    quantities: ['k'],
    conditions: `flat centre, straight tips ${angle} degrees down from ${kink} of the semispan`,
    published: [k],
    tolerance: [{ within: 3e-4 }],
    source: MINIMISATION,
    status: 'derived',
    method: "least drag in the program's wake, strips bunched at the kink",
    compute: () => {
      const tip: Corner = [1, -(1 - kink) * Math.tan(angle * RADIANS)];
      return [leastFactor(2, stripsAlong([[0, 0], [kink, 0], tip], 80))];
    },
  }),
);

/** The same curve as a document draws it, whose strips do not know of the kink: 1e-3 at the default resolution. */
const kinkedDocument: PublishedRow = {
  quantities: ['k'],
  conditions: 'flat centre, straight tips 30 degrees down from 0.6 of the semispan, as a document',
  published: [1.04658],
  tolerance: [{ share: 0.002 }],
  source: MINIMISATION,
  status: 'derived',
  method: 'least drag of the curve',
  compute: () => {
    const kink = 0.6 / (0.6 + 0.4 / Math.cos(30 * RADIANS)); // of the unrolled length
    return [solveSmall(plainDesign({ droop: kinkedDroop(kink, 30) })).inducedDrag.leastFactor];
  },
};

// plate height over span, k
const PLATES: Array<[number, number]> = [
  [0.05, 1.1123],
  [0.1, 1.2189],
  [0.15, 1.3208],
  [0.3, 1.6046],
];

const plateRows = PLATES.map(
  ([height, k]): PublishedRow => ({
    quantities: ['k'],
    conditions: `vertical one-sided tip plates, height over span ${height}`,
    published: [k],
    tolerance: [{ within: 1e-3 }],
    source: MINIMISATION,
    status: 'derived',
    method: "least drag in the program's wake",
    compute: () => [
      leastFactor(
        2,
        stripsAlong(
          [
            [0, 0],
            [1, 0],
            [1, -2 * height],
          ],
          80,
        ),
      ),
    ],
  }),
);

// plate height over span, k
const END_PLATES: Array<[number, number]> = [
  [0.1, 1.1952],
  [0.3, 1.5614],
  [0.5, 1.9031],
];

const endPlateRows = END_PLATES.map(
  ([height, k]): PublishedRow => ({
    quantities: ['k'],
    conditions: `wing at mid-height of end plates, height over span ${height}`,
    published: [k],
    tolerance: [{ within: 0.002 }],
    source: 'own panels, independent of this program',
    status: 'derived',
    method: "least drag in the program's wake, wing and plate as two lines",
    compute: () => {
      const plate = stripsAlong(
        [
          [1, -height],
          [1, 0],
          [1, height],
        ],
        60,
      );
      return [
        leastFactor(
          2,
          stripsAlong(
            [
              [0, 0],
              [1, 0],
            ],
            80,
          ),
          plate,
        ),
      ];
    },
  }),
);

const boxOf = (gap: number) =>
  leastFactor(
    2,
    stripsAlong(
      [
        [0, 0],
        [1, 0],
        [1, 2 * gap],
        [SLIT, 2 * gap],
      ],
      80,
    ),
  );

const boxRows: PublishedRow[] = [
  {
    quantities: ['k'],
    conditions: 'closed box of two equal wings and end walls, gap over span 0.1',
    published: [1.268],
    tolerance: [{ within: 0.002 }],
    source: 'own panels, independent of this program',
    status: 'derived',
    method: "least drag in the program's wake",
    compute: () => [boxOf(0.1)],
  },
  {
    quantities: ['k'],
    conditions: 'closed box, gap over span 0.2: 68 % of the drag of one wing',
    published: [1 / 0.68],
    tolerance: [{ share: 0.01 }],
    source:
      'L. Prandtl 1924 as given in M. Yahyaoui, Int. J. Aviation Aeronaut. Aerosp. 6(4), 2019, introduction',
    status: 'read',
    method: "least drag in the program's wake",
    compute: () => [boxOf(0.2)],
  },
  {
    quantities: ['k'],
    conditions: 'ring wing',
    published: [2],
    tolerance: [{ within: 0.002 }],
    source: 'H. S. Ribner, The ring airfoil in nonaxial flow, J. Aeron. Sci. 14, 1947',
    status: 'from memory + derived',
    method: "least drag in the program's wake, 240 straight pieces",
    compute: () => {
      const ring = Array.from({ length: 241 }, (_, k): Corner => {
        const angle = ((Math.PI - SLIT) * k) / 240;
        return [Math.sin(angle), -Math.cos(angle)];
      });
      return [leastFactor(2, stripsAlong(ring, 1))];
    },
  },
];

export const kinkedLines: PublishedRow[] = [
  ...kinkRows,
  kinkedDocument,
  ...plateRows,
  ...endPlateRows,
  ...boxRows,
];
