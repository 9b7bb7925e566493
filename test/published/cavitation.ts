/** Group 11: cavitation numbers, lowest pressures and the speeds at which water boils. */
import type { Design } from '../../src/solver/design/document.ts';
import { fixedProfile } from '../../src/solver/forces/profile.ts';
import { outlinePoints } from '../../src/solver/geometry/outline.ts';
import { lowestPressure, PressureWatch } from '../../src/solver/studies/cavitation.ts';
import { LevelRunner } from '../../src/solver/studies/speed.ts';
import { plainDesign } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';
import { RADIANS } from './sections.ts';

const SEA = { kind: 'sea', temperature: 15, clarity: 'clean' } as const;

/** A foil in sea water of 15 degrees whose only question is the water round it. */
function watch(depth: number): PressureWatch {
  const design: Design = plainDesign({}, { brief: { water: SEA, depth } });
  return new PressureWatch(
    new LevelRunner(design, { strips: 8, stabilizerStrips: 4, rows: 1 }, fixedProfile),
  );
}

const sigma: PublishedRow = {
  quantities: ['cavitation number'],
  conditions: 'sea water of 15 degrees C, depth 0.3 m, 12 m/s',
  published: [1.3898],
  tolerance: [{ within: 1e-3 }],
  source: 'definition (p - p vapour)/(rho V^2/2), ITTC procedure 7.5-02-03-03.1',
  status: 'derived',
  method: 'pressures at a strip',
  compute: () => [watch(0.3).at('wing', 0, 0.3, 0, 12).sigma],
};

// lowest pressure coefficient, speed
const INCEPTION: Array<[number, number]> = [
  [0.413, 22.228],
  [0.6, 18.442],
  [1, 14.285],
  [1.5, 11.664],
];

/** Speed at which a lowest pressure coefficient meets the cavitation number, by the margin's own law in 1/V^2. */
function inception(depth: number, lowest: number): number {
  const one = watch(depth).at('wing', 0, depth, -lowest, 1);
  return Math.sqrt(one.sigma / lowest);
}

const inceptionRows = INCEPTION.map(
  ([lowest, speed]): PublishedRow => ({
    quantities: ['inception speed, m/s'],
    series: { name: 'sea water at 0.5 m', axis: 'lowest pressure coefficient, downward', x: lowest },
    conditions: `lowest pressure coefficient -${lowest}, depth 0.5 m, sea water of 15 degrees C`,
    published: [speed],
    tolerance: [{ within: 0.01 }],
    source: 'definition of the cavitation number',
    status: 'derived',
    method: 'pressures at a strip',
    compute: () => [inception(0.5, lowest)],
  }),
);

function ellipse(ratio: number) {
  const count = 401;
  const at = Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / (count - 1));
  return {
    x: Float64Array.from(at, (angle) => 0.5 * (1 + Math.cos(angle))),
    y: Float64Array.from(at, (angle) => 0.5 * ratio * Math.sin(angle)),
  };
}

const ellipseRows = [0.06, 0.09, 0.12, 0.15].map(
  (ratio): PublishedRow => ({
    quantities: ['lowest pressure coefficient'],
    series: { name: 'ellipse at zero lift', axis: 'thickness over chord', x: ratio },
    conditions: `ellipse, t/c ${ratio}, zero lift`,
    published: [1 - (1 + ratio) ** 2],
    tolerance: [{ within: 0.004 }],
    source: 'exact: 1 - (1 + t/c)^2',
    status: 'derived',
    method: 'panels',
    compute: () => [lowestPressure(ellipse(ratio))(0)],
  }),
);

const symmetric = outlinePoints({ kind: 'naca4', code: '0012' }, 161);

const sectionRow: PublishedRow = {
  quantities: ['lowest pressure coefficient'],
  conditions: 'NACA 0012, zero lift',
  published: [-0.412],
  tolerance: [{ within: 0.004 }],
  source: 'own panel solution, independent of this program; NACA Report 824 has -0.411',
  status: 'from memory + derived',
  method: 'panels',
  compute: () => [lowestPressure(symmetric)(0)],
};

// angle of attack, inception speed
const AT_ANGLE: Array<[number, number]> = [
  [1, 19],
  [6, 8.75],
];

const angleRows = AT_ANGLE.map(
  ([angle, speed]): PublishedRow => ({
    quantities: ['inception speed, m/s'],
    conditions: `NACA 0012 at ${angle} degrees, depth 0.5 m, sea water of 15 degrees C`,
    published: [speed],
    tolerance: [{ share: 0.02 }],
    source: 'own panel solution, independent of this program, and the definition of the cavitation number',
    status: 'derived',
    method: 'panels at the lift of the angle',
    // Lift of a 12 % section in inviscid flow: 2 pi (1 + 0.77 t/c) sin(angle) (thick-section rule, from memory).
    compute: () => [
      inception(0.5, -lowestPressure(symmetric)(2 * Math.PI * (1 + 0.77 * 0.12) * Math.sin(angle * RADIANS))),
    ],
  }),
);

export const cavitation: PublishedRow[] = [sigma, ...inceptionRows, ...ellipseRows, sectionRow, ...angleRows];
