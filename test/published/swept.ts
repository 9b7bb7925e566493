/**
 * Group 2: swept wings, section slope 2 pi. Not computed here, because a vortex system has no friction: measured
 * pressure drag of the 45 degree wings, and their lift at 10.5 degrees, where the tips begin to stall.
 */
import { mixAlpha } from '../../src/solver/forces/loads.ts';
import { craftOf } from '../../src/solver/geometry/craft.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';
import { plainDesign } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';
import { chordOf, OWN_LATTICE, SURFACE, slopeAndEfficiency, solveSmall } from './wing.ts';

const RADIANS = Math.PI / 180;

const wing = (aspectRatio: number, taper: number, angle: number) =>
  plainDesign({ chord: chordOf(aspectRatio, taper), sweep: { kind: 'straight', angle } });

/** Quarter-chord sweep (degrees) of a tapered wing given by the sweep of its leading edge. */
export function quarterSweep(leadingEdge: number, aspectRatio: number, taper: number): number {
  return Math.atan(Math.tan(leadingEdge * RADIANS) - (1 - taper) / (aspectRatio * (1 + taper))) / RADIANS;
}

// aspect ratio, taper, quarter-chord sweep; lift slope and span efficiency with one row; lift slope with twelve
const LATTICE: Array<[number, number, number, number, number, number]> = [
  [4, 1, 15, 3.5157, 0.9869, 3.5564],
  [4, 0.5, 30, 3.5013, 0.9933, 3.5334],
  [4, 0.5, 45, 3.1531, 0.98, 3.1757],
  [6, 1, 30, 3.8239, 0.9436, 3.8463],
  [6, 0.5, 15, 4.2639, 0.9951, 4.2897],
  [6, 0.5, 30, 4.0149, 0.9847, 4.035],
  [6, 0.5, 45, 3.5051, 0.9633, 3.5149],
  [8, 1, 30, 4.1163, 0.918, 4.1327],
  [8, 0.5, 15, 4.631, 0.9909, 4.6501],
  [8, 0.5, 30, 4.3109, 0.9763, 4.3238],
  [8, 0.5, 45, 3.7007, 0.9502, 3.7047],
  [10, 1, 15, 4.693, 0.9359, 4.7127],
  [10, 1, 30, 4.3131, 0.8961, 4.326],
  [10, 0.5, 15, 4.8733, 0.9864, 4.8879],
  [10, 0.5, 30, 4.5029, 0.9688, 4.5117],
  [10, 0.5, 45, 3.8261, 0.9398, 3.8275],
];

const latticeRows = LATTICE.flatMap(
  ([aspectRatio, taper, sweep, slope, efficiency, surfaceSlope]): PublishedRow[] => {
    const design = wing(aspectRatio, taper, sweep);
    const name = `AR ${aspectRatio}, taper ${taper}, quarter-chord sweep ${sweep} degrees`;
    const source = `${OWN_LATTICE}; the limit of the seven-point method of J. DeYoung and C. W. Harper, NACA Report 921, 1948`;
    return [
      {
        quantities: ['lift slope', 'span efficiency'],
        conditions: `one row, ${name}`,
        published: [slope, efficiency],
        tolerance: [{ share: 0.005 }, { within: 0.004 }],
        source,
        status: 'derived',
        method: 'extended line',
        compute: () => slopeAndEfficiency(design),
      },
      {
        quantities: ['lift slope'],
        conditions: `twelve rows, ${name}`,
        published: [surfaceSlope],
        tolerance: [{ share: 0.005 }],
        source,
        status: 'derived',
        method: 'twelve rows',
        compute: () => [solveSmall(design, SURFACE).lift.CLalpha],
      },
    ];
  },
);

/** Lift slope and circulations over 4 pi b V alpha of the 45 degree, AR 5 plate with equal strips. */
export function equalStrips(strips: number): { slope: number; circulations: number[] } {
  const craft = craftOf(wing(5, 1, 45), null, { strips, stabilizerStrips: 1, rows: 1, spacing: 'equal' });
  const flow = new FlowPool().solve('equal', craft, 'angle');
  const alpha = 1e-4;
  mixAlpha(flow.symmetric, alpha, flow.base);
  const circulations = [...flow.base.circulation.subarray(0, strips)].map(
    (value) => value / (4 * Math.PI * alpha),
  );
  const lift = circulations.reduce((sum, value, k) => sum + value * craft.parts.wing.width[k]!, 0);
  // with b = V = 1: lift coefficient over alpha = 2 * 2 sum (4 pi circulation) dy / S
  return { slope: (16 * Math.PI * lift) / craft.wing.projectedArea, circulations };
}

const workedExample: PublishedRow = {
  quantities: ['lift slope', ...[1, 2, 3, 4].map((k) => `circulation of strip ${k} over 4 pi b V alpha`)],
  conditions: '45 degrees swept, untapered, AR 5, four equal strips a side, one row',
  published: [3.443, 0.0273, 0.0287, 0.0286, 0.025],
  tolerance: [0, 1, 2, 3, 4].map(() => ({ share: 0.002 })),
  source: 'J. J. Bertin and M. L. Smith, Aerodynamics for Engineers, worked example of the swept wing',
  status: 'from memory',
  method: 'extended line, equal strips',
  compute: () => {
    const { slope, circulations } = equalStrips(4);
    return [slope, ...circulations];
  },
};

const manyEqualStrips: PublishedRow = {
  quantities: ['lift slope'],
  conditions: '45 degrees swept, untapered, AR 5, 32 equal strips a side, one row',
  published: [3.2027],
  tolerance: [{ within: 0.002 }],
  source: `${OWN_LATTICE}; slow to converge, since the last strip reaches the tip`,
  status: 'derived',
  method: 'extended line, equal strips',
  compute: () => [equalStrips(32).slope],
};

const fineLattice: PublishedRow = {
  quantities: ['span efficiency', 'aerodynamic centre behind the apex, chords'],
  conditions: '45 degrees swept, untapered, AR 5 plate',
  published: [0.906, 1.424],
  tolerance: [{ within: 0.006 }, { within: 0.004 }],
  source: `${OWN_LATTICE}, fine`,
  status: 'derived',
  method: 'eight rows',
  compute: () => {
    const { inducedDrag, stability } = solveSmall(wing(5, 1, 45), { rows: 8, strips: 40 });
    return [inducedDrag.spanEfficiency!, 0.25 + stability.neutralPoint * 5];
  },
};

/** The Warren 12 planform: lift slope, pitching-moment slope about the apex on the mean chord, span efficiency. */
function warren(): [number, number, number] {
  const aspectRatio = 2 * Math.SQRT2;
  const taper = 1 / 3;
  const design = wing(aspectRatio, taper, quarterSweep(53.54, aspectRatio, taper));
  const { lift, inducedDrag, stability, geometry } = solveSmall(design, SURFACE);
  const { projectedArea, span } = geometry.wing;
  const root = (2 * projectedArea) / (span * (1 + taper));
  const centre = stability.neutralPoint + root / 4; // behind the apex
  return [lift.CLalpha, (-lift.CLalpha * centre) / (projectedArea / span), inducedDrag.spanEfficiency!];
}

const warrenRows: PublishedRow[] = [
  {
    quantities: ['lift slope', 'pitching-moment slope about the apex', 'span efficiency'],
    conditions: 'Warren 12: AR 2 sqrt 2, taper 1/3, leading edge swept 53.54 degrees',
    published: [2.746, -3.095, 0.992],
    tolerance: [{ within: 0.005 }, { within: 0.006 }, { within: 0.002 }],
    source: `${OWN_LATTICE}, converged`,
    status: 'derived',
    method: 'twelve rows',
    compute: warren,
  },
  {
    quantities: ['lift slope', 'pitching-moment slope about the apex'],
    conditions: 'Warren 12',
    published: [2.743, -3.1],
    tolerance: [{ within: 0.02 }, { within: 0.03 }],
    source: 'W. H. Mason, Applied Computational Aerodynamics, Virginia Tech 1998, ch. 6, test case',
    status: 'from memory',
    method: 'twelve rows',
    compute: () => warren().slice(0, 2),
  },
];

const MEASURED: Array<[number, number]> = [
  [2.1, 0.121],
  [6.3, 0.35],
];

const measuredRows = MEASURED.map(
  ([alpha, liftCoefficient]): PublishedRow => ({
    quantities: ['lift coefficient'],
    conditions: `45 degrees swept, untapered, AR 5, measured at ${alpha} degrees`,
    published: [liftCoefficient],
    tolerance: [{ within: 0.008 }],
    source:
      'J. Weber and G. G. Brebner, Low-speed tests on 45-deg swept-back wings, ARC R&M 2882, 1958, part I',
    status: 'from memory',
    method: 'twelve rows',
    compute: () => [solveSmall(wing(5, 1, 45), { ...SURFACE, alpha }).lift.CL],
  }),
);

// aspect ratio, half-chord sweep, lift slope
const HELMBOLD: Array<[number, number, number]> = [
  [4, 0, 3.8832],
  [6, 0, 4.5287],
  [8, 0, 4.9058],
  [10, 0, 5.151],
  [12, 0, 5.3227],
  [16, 0, 5.5467],
  [5, 45, 3.3605],
  [8, 20, 4.678],
  [10, 10, 5.0879],
];

/** The closed forms assume an even downwash; an elliptic chord comes closest. Its line of half chords is straight. */
function ellipticWithHalfChordSweep(aspectRatio: number, angle: number) {
  const root = 4 / (Math.PI * aspectRatio);
  const expression = `${0.5 * Math.tan(angle * RADIANS)} * eta + ${root / 4} * (1 - sqrt(1 - eta^2))`;
  return plainDesign({
    chord: chordOf(aspectRatio, 'elliptic'),
    sweep: angle === 0 ? { kind: 'straight', angle: 0 } : { kind: 'formula', expression },
  });
}

const helmboldRows = HELMBOLD.map(
  ([aspectRatio, sweep, slope]): PublishedRow => ({
    quantities: ['lift slope'],
    conditions: `closed form, elliptic chord, AR ${aspectRatio}, half-chord sweep ${sweep} degrees`,
    published: [slope],
    tolerance: [{ share: 0.05 }], // the closed form's own error
    source:
      sweep === 0
        ? 'H. B. Helmbold 1942, 2 pi AR/(2 + sqrt(AR^2 + 4))'
        : 'Kuechemann form as printed in J. D. Anderson, Aircraft Performance and Design, 1999, eq. 2.19',
    status: 'derived',
    method: 'extended line',
    compute: () => [solveSmall(ellipticWithHalfChordSweep(aspectRatio, sweep)).lift.CLalpha],
  }),
);

export const swept: PublishedRow[] = [
  workedExample,
  manyEqualStrips,
  ...latticeRows,
  fineLattice,
  ...warrenRows,
  ...measuredRows,
  ...helmboldRows,
];
