/**
 * Group 3: nonplanar wings. k = drag of the flat elliptic wing of equal projected span and lift over the least drag of
 * the curve. Lift slopes on the projected area, span efficiency e on the projected span.
 */
import type { DroopLaw } from '../../src/solver/design/document.ts';
import { kinkedDroop, plainDesign } from '../support/designs.ts';
import { type Corner, leastFactor, SLIT, stripsAlong } from './curves.ts';
import type { PublishedRow } from './row.ts';
import { chordOf, nameOf, OWN_LATTICE, type Shape, solveSmall } from './wing.ts';

const RADIANS = Math.PI / 180;
const MINIMISATION =
  'own Trefftz-plane minimisation, independent of this program, 240 to 960 panels extrapolated';
const CONE =
  'k = 1 + 2 (d/b)^2, circle mapped by z + 1/z; 1.5 for the semicircle in C. D. Cone, NASA TR R-139, 1962';
const VEE =
  'k = ((1-e)/(1+e))^e / cos^2(g), e = 2 g/pi, by a Schwarz-Christoffel map; independent panels agree to 1e-6';

const curve = (droop: DroopLaw) => plainDesign({ droop });

// dihedral, k
const VEES: Array<[number, number]> = [
  [7.5, 1.003268],
  [10, 1.005841],
  [12, 1.008456],
  [15, 1.013346],
  [20, 1.024253],
  [25, 1.03901],
  [30, 1.058267],
  [40, 1.114447],
];

const veeRows = VEES.map(
  ([angle, k]): PublishedRow => ({
    quantities: ['k'],
    conditions: `vee of ${angle} degrees`,
    published: [k],
    tolerance: [{ within: 5e-4 }],
    source: VEE,
    status: 'derived',
    method: 'least drag of the curve, 80 strips',
    compute: () => [
      solveSmall(curve({ kind: 'vee', tipAngle: angle }), { strips: 80 }).inducedDrag.leastFactor,
    ],
  }),
);

/** Twice the strips take three quarters of the error away: the answer for endless strips. */
function extrapolated(droop: DroopLaw): number {
  const [coarse, fine] = [80, 160].map(
    (strips) => solveSmall(curve(droop), { strips }).inducedDrag.leastFactor,
  ) as [number, number];
  return fine + (fine - coarse) / 3;
}

const veeConverged = [10, 30].map(
  (angle): PublishedRow => ({
    quantities: ['k'],
    conditions: `vee of ${angle} degrees, strips without end`,
    published: [VEES.find(([known]) => known === angle)![1]],
    tolerance: [{ within: 2e-5 }],
    source: VEE,
    status: 'derived',
    method: 'least drag of the curve, 80 and 160 strips extrapolated',
    compute: () => [extrapolated({ kind: 'vee', tipAngle: angle })],
  }),
);

// dihedral, k cos^2: fixed arm length, so the span shrinks
const FIXED_ARM: Array<[number, number]> = [
  [10, 0.975511],
  [20, 0.904438],
];

const fixedArmRows = FIXED_ARM.map(
  ([angle, value]): PublishedRow => ({
    quantities: ['k times the squared share of the span that is left'],
    conditions: `vee of ${angle} degrees with a fixed unrolled length`,
    published: [value],
    tolerance: [{ within: 5e-4 }],
    source: VEE,
    status: 'derived',
    method: 'least drag of the curve',
    compute: () => {
      const { inducedDrag, geometry } = solveSmall(curve({ kind: 'vee', tipAngle: angle }));
      return [inducedDrag.leastFactor * (geometry.wing.span / geometry.wing.unrolledLength) ** 2];
    },
  }),
);

const ARCS = [0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5];

const arcRows = ARCS.flatMap((depth): PublishedRow[] => {
  const tipAngle = (2 * Math.atan(2 * depth)) / RADIANS;
  const shared = {
    quantities: ['k'],
    published: [1 + 2 * depth * depth],
    source: CONE,
    status: 'derived' as const,
  };
  return [
    {
      ...shared,
      conditions: `circular arc, depth over span ${depth}, default resolution`,
      tolerance: [{ share: 0.002 }],
      method: 'least drag of the curve',
      compute: () => [solveSmall(curve({ kind: 'arc', tipAngle })).inducedDrag.leastFactor],
    },
    {
      ...shared,
      conditions: `circular arc, depth over span ${depth}, strips without end`,
      tolerance: [{ within: 1e-4 }],
      method: 'least drag of the curve, 80 and 160 strips extrapolated',
      compute: () => [extrapolated({ kind: 'arc', tipAngle })],
    },
  ];
});

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
    return [solveSmall(curve(kinkedDroop(kink, 30))).inducedDrag.leastFactor];
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

// droop, taper, unrolled aspect ratio, b^2/S; slope and efficiency with one row; with four
const LATTICE: Array<[DroopLaw, string, number, number, number, [number, number], [number, number]]> = [
  [{ kind: 'vee', tipAngle: 5 }, 'vee of 5 degrees', 1, 8, 7.9696, [4.5456, 0.9758], [4.57, 0.9736]],
  [{ kind: 'vee', tipAngle: 15 }, 'vee of 15 degrees', 0.4, 10, 9.6593, [4.8567, 1.0067], [4.864, 1.0062]],
  [{ kind: 'vee', tipAngle: 20 }, 'vee of 20 degrees', 1, 8, 7.5175, [4.3428, 0.9983], [4.358, 0.9956]],
  [{ kind: 'vee', tipAngle: 20 }, 'vee of 20 degrees', 0.4, 10, 9.3969, [4.7547, 1.0169], [4.758, 1.0164]],
  [{ kind: 'vee', tipAngle: 30 }, 'vee of 30 degrees', 1, 8, 6.9282, [4.0791, 1.0318], [4.082, 1.0282]],
  [{ kind: 'vee', tipAngle: 30 }, 'vee of 30 degrees', 0.4, 10, 8.6603, [4.4686, 1.0481], [4.459, 1.048]],
  [{ kind: 'arc', tipAngle: 20 }, 'arc to 20 degrees', 0.4, 10, 9.7552, [4.9258, 1.0095], [4.938, 1.0088]],
  [{ kind: 'arc', tipAngle: 30 }, 'arc to 30 degrees', 1, 8, 7.6394, [4.4507, 1.0161], [4.472, 1.0143]],
  [{ kind: 'arc', tipAngle: 30 }, 'arc to 30 degrees', 0.4, 10, 9.4541, [4.8495, 1.0291], [4.861, 1.0285]],
  [{ kind: 'arc', tipAngle: 45 }, 'arc to 45 degrees', 1, 8, 7.2025, [4.3296, 1.0732], [4.348, 1.0717]],
  [kinkedDroop(0.6, 15), 'tips 15 degrees down from 0.6', 1, 8, 7.891, [4.5337, 0.9873], [4.556, 0.9853]],
  [kinkedDroop(0.6, 15), 'tips 15 degrees down from 0.6', 0.4, 10, 9.8288, [4.9532, 1.0047], [4.965, 1.004]],
  [kinkedDroop(0.6, 30), 'tips 30 degrees down from 0.6', 1, 8, 7.5713, [4.4661, 1.0277], [4.482, 1.0261]],
  [kinkedDroop(0.6, 30), 'tips 30 degrees down from 0.6', 0.4, 10, 9.3283, [4.8545, 1.0369], [4.861, 1.036]],
];

const latticeRows = LATTICE.flatMap(
  ([droop, name, taper, aspectRatio, projected, one, four]): PublishedRow[] => {
    const design = plainDesign({ chord: chordOf(aspectRatio, taper), droop });
    return [1, 4].map((rows): PublishedRow => {
      const published = rows === 1 ? one : four;
      return {
        quantities: ['lift slope', 'span efficiency', 'b^2/S'],
        conditions: `${name}, unrolled AR ${aspectRatio}, taper ${taper}, ${rows === 1 ? 'one row' : 'four rows'}`,
        published: [...published, projected],
        tolerance: [{ share: 0.003 }, { within: 0.002 }, { within: 1e-4 }],
        source: `${OWN_LATTICE}, 80 panels a half, agrees with a second one to 2e-4`,
        status: 'derived',
        method: rows === 1 ? 'extended line' : 'four rows',
        compute: () => {
          const { lift, inducedDrag, geometry } = solveSmall(design, { rows });
          return [lift.CLalpha, inducedDrag.spanEfficiency!, geometry.wing.aspectRatio];
        },
      };
    });
  },
);

// droop, chord, unrolled aspect ratio; slope on projected and on unrolled area; efficiency
const ONE_ROW: Array<[DroopLaw & { kind: 'vee' | 'arc' }, Shape, number, number, number, number]> = [
  [{ kind: 'vee', tipAngle: 5 }, 'elliptic', 8, 4.7655, 4.7473, 1.0005],
  [{ kind: 'vee', tipAngle: 20 }, 'elliptic', 8, 4.5643, 4.289, 1.0229],
  [{ kind: 'vee', tipAngle: 30 }, 'elliptic', 8, 4.303, 3.7265, 1.0559],
  [{ kind: 'vee', tipAngle: 40 }, 'elliptic', 8, 3.9506, 3.0264, 1.109],
  [{ kind: 'arc', tipAngle: 10 }, 'elliptic', 8, 4.7636, 4.7455, 1.0027],
  [{ kind: 'arc', tipAngle: 30 }, 'elliptic', 8, 4.6446, 4.4873, 1.0336],
  [{ kind: 'vee', tipAngle: 40 }, 0.4, 10, 4.0813, 3.1264, 1.0975],
  [{ kind: 'arc', tipAngle: 40 }, 0.4, 10, 4.7488, 4.4524, 1.0577],
];

const oneRowRows = ONE_ROW.map(
  ([droop, shape, aspectRatio, projected, unrolled, efficiency]): PublishedRow => ({
    quantities: ['lift slope on projected area', 'lift slope on unrolled area', 'span efficiency'],
    conditions: `${droop.kind} to ${droop.tipAngle} degrees, unrolled AR ${aspectRatio}, ${nameOf(shape)}`,
    published: [projected, unrolled, efficiency],
    tolerance: [{ share: 0.005 }, { share: 0.005 }, { within: 0.003 }],
    source: `${OWN_LATTICE}, one row on the curved line, 120 and 240 strips`,
    status: 'derived',
    method: 'extended line',
    compute: () => {
      const design = plainDesign({ chord: chordOf(aspectRatio, shape), droop });
      const { lift, inducedDrag, geometry } = solveSmall(design);
      const { projectedArea, unrolledArea } = geometry.wing;
      return [lift.CLalpha, (lift.CLalpha * projectedArea) / unrolledArea, inducedDrag.spanEfficiency!];
    },
  }),
);

const LATE: Array<[number, number, number, number]> = [
  [20, 0.5, 1, 1.0104],
  [40, 0.6, 1.5, 1.0283],
];

const lateRows = LATE.map(
  ([tipAngle, from, power, k]): PublishedRow => ({
    quantities: ['k'],
    conditions: `late droop to ${tipAngle} degrees from ${from}, power ${power}`,
    published: [k],
    tolerance: [{ within: 5e-4 }],
    source: 'own Trefftz-plane minimisation, independent of this program, 100 and 200 strips a piece',
    status: 'derived',
    method: 'least drag of the curve',
    compute: () => [solveSmall(curve({ kind: 'late', tipAngle, from, power })).inducedDrag.leastFactor],
  }),
);

export const nonplanar: PublishedRow[] = [
  ...veeRows,
  ...veeConverged,
  ...fixedArmRows,
  ...arcRows,
  ...kinkRows,
  kinkedDocument,
  ...plateRows,
  ...endPlateRows,
  ...boxRows,
  ...latticeRows,
  ...oneRowRows,
  ...lateRows,
];
