/**
 * Group 3: nonplanar wings. k = drag of the flat elliptic wing of equal projected span and lift over the least drag of
 * the curve; here of vees, arcs and late droops, as documents draw them.
 */
import type { DroopLaw } from '../../src/solver/design/document.ts';
import { plainDesign } from '../support/designs.ts';
import { curvedWings } from './curved-wings.ts';
import { kinkedLines } from './kinked-lines.ts';
import type { PublishedRow } from './row.ts';
import { solveSmall } from './wing.ts';

const RADIANS = Math.PI / 180;
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

/**
 * The sheet of an arc moved straight up has a jump of potential Im sqrt(Z^2 - (b/2)^2), Z from the middle of its chord:
 * the circle's map Z = zeta + (b/4)^2/zeta takes its two sides to zeta and (b/4)^2/zeta. Munk's loading is that jump.
 */
function jump(depth: number, share: number): number {
  const radius = (0.25 + depth * depth) / (2 * depth); // span 1
  const y = 0.5 * share;
  const height = Math.sqrt(radius * radius - y * y) - (radius - depth); // over the chord
  const [real, imaginary] = [y * y - height * height - 0.25, 2 * y * height];
  return Math.sqrt(0.5 * (Math.hypot(real, imaginary) - real));
}

const ARC_STATIONS = [0.3, 0.6, 0.9];

const arcLoadings = [0.15, 0.3, 0.5].map(
  (depth): PublishedRow => ({
    quantities: ARC_STATIONS.map((share) => `loading at ${share} of the half span over that at the middle`),
    conditions: `circular arc, depth over span ${depth}, the loading of least drag`,
    published: ARC_STATIONS.map((share) => jump(depth, share) / jump(depth, 0)),
    tolerance: ARC_STATIONS.map(() => ({ within: 0.001 })),
    source: 'jump of potential on an arc that moves across its chord: circle mapped by z + 1/z',
    status: 'derived',
    method: 'least drag of the curve, 80 strips',
    compute: () => {
      const tipAngle = (2 * Math.atan(2 * depth)) / RADIANS;
      const { strips, geometry } = solveSmall(curve({ kind: 'arc', tipAngle }), { strips: 80 });
      const half = geometry.wing.span / 2;
      const along = strips.wing.map(({ y, leastCirculation }): [number, number] => [
        y / half,
        leastCirculation,
      ]);
      const middle = along[0]![1] / (jump(depth, along[0]![0]) / jump(depth, 0)); // the first strip is not quite there
      return ARC_STATIONS.map((share) => {
        const next = along.findIndex(([at]) => at > share);
        const [[a, below], [b, above]] = [along[next - 1]!, along[next]!];
        return (below + ((above - below) * (share - a)) / (b - a)) / middle;
      });
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
  ...arcLoadings,
  ...lateRows,
  ...kinkedLines,
  ...curvedWings,
];
