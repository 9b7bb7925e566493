/**
 * Group 4: foils near a free surface at infinite Froude number (an image of the same sign above). Not computed here: a
 * rigid plane (the opposite image), waves, tank observations without a number to meet.
 */
import type { DroopLaw } from '../../src/solver/design/document.ts';
import { craftOf } from '../../src/solver/geometry/craft.ts';
import { VortexSystem } from '../../src/solver/vortex/system.ts';
import { inducedDrag } from '../../src/solver/vortex/wake.ts';
import { plainDesign } from '../support/designs.ts';
import type { PublishedRow } from './row.ts';
import { chordOf, OWN_LATTICE, slopeAndEfficiency, solveSmall } from './wing.ts';

const wing = (aspectRatio: number, taper: number, depth: number | null, droop: DroopLaw = { kind: 'flat' }) =>
  plainDesign({ chord: chordOf(aspectRatio, taper), droop }, { brief: { depth } });

/** Lift slope at a depth (chords) over that in deep water, as good as two-dimensional. */
function liftFactor(depth: number, rows: number): number {
  const aspectRatio = 1000;
  const options = { rows, strips: rows > 1 ? 16 : 40 };
  const near = solveSmall(wing(aspectRatio, 1, depth / aspectRatio), options).lift.CLalpha;
  return near / solveSmall(wing(aspectRatio, 1, null), options).lift.CLalpha;
}

// depth in chords; one vortex; a flat plate of many
const FACTORS: Array<[number, number, number]> = [
  [0.5, 0.83333, 0.85452],
  [1.5, 0.97368, 0.97435],
  [2, 0.98485, 0.98507],
];

const factorRows = FACTORS.flatMap(([depth, single, plate]): PublishedRow[] => [
  {
    quantities: ['lift factor'],
    conditions: `two-dimensional, one vortex, depth ${depth} chords`,
    published: [single],
    tolerance: [{ share: 0.005 }],
    source: '(1 + 16 H^2)/(2 + 16 H^2), as used in K. L. Wadlin et al., NACA Report 1232, 1955',
    status: 'derived',
    method: 'extended line at AR 1000',
    compute: () => [liftFactor(depth, 1)],
  },
  {
    quantities: ['lift factor'],
    conditions: `two-dimensional, flat plate, depth ${depth} chords`,
    published: [plate],
    tolerance: [{ share: 0.005 }],
    source: 'own solution with 400 and 800 vortices along the chord, independent of this program',
    status: 'derived',
    method: 'twelve rows at AR 1000',
    compute: () => [liftFactor(depth, 12)],
  },
]);

/** Prandtl's sigma of two equal elliptic loadings: what the image adds to a wing's own induced drag. */
function biplaneFactor(gapOverSpan: number): number {
  const craft = craftOf(wing(10, 1, gapOverSpan / 2), gapOverSpan / 2, {
    strips: 80,
    stabilizerStrips: 1,
    rows: 1,
  });
  const { parts } = craft;
  const system = new VortexSystem(parts.wing.count, 0, 0, 1);
  const circulation = parts.wing.controlY.map((y) => Math.sqrt(1 - 4 * y * y));
  const drag = (depth: number | null) => {
    system.load(parts, depth);
    return inducedDrag(system.fillWakes().free, circulation);
  };
  return drag(craft.depth) / drag(null) - 1;
}

// gap over span; sigma; sigma as printed
const BIPLANES: Array<[number, number, number]> = [
  [0.05, 0.7845, 0.78],
  [0.1, 0.6565, 0.655],
  [0.2, 0.4842, 0.485],
  [0.25, 0.4221, 0.42],
  [0.3, 0.3705, 0.37],
  [0.4, 0.2905, 0.29],
  [0.5, 0.2322, 0.23],
];

const biplaneRows = BIPLANES.flatMap(([gap, sigma, printed]): PublishedRow[] => {
  const shared = {
    quantities: ["Prandtl's biplane factor"],
    series: { name: 'equal spans, elliptic loadings', axis: 'gap over span', x: gap },
    conditions: `equal spans, elliptic loadings, gap over span ${gap}`,
    method: 'far-field drag with the image at twice the depth',
    compute: () => [biplaneFactor(gap)],
  };
  return [
    {
      ...shared,
      published: [sigma],
      tolerance: [{ within: 5e-4 }],
      source: 'quadrature of the elliptic sheet, independent of this program',
      status: 'derived',
    },
    {
      ...shared,
      published: [printed],
      tolerance: [{ within: 0.006 }],
      source:
        'L. Prandtl, Applications of modern hydrodynamics to aeronautics, NACA Report 116, 1921, biplane table',
      status: 'from memory',
    },
  ];
});

const interpolation: PublishedRow = {
  quantities: ["Prandtl's biplane factor"],
  conditions: 'gap over span 0.2, by the interpolation (1 - 0.66 x)/(1.05 + 3.7 x)',
  published: [0.4849],
  tolerance: [{ within: 0.002 }], // the formula's own error
  source: 'L. Prandtl, NACA Report 116, 1921; Glauert ch. XIII',
  status: 'from memory + derived',
  method: 'far-field drag with the image at twice the depth',
  compute: () => [biplaneFactor(0.2)],
};

// depth over span, k
const OPTIMA: Array<[number, number]> = [
  [0.05, 0.6079],
  [0.1, 0.67729],
  [0.15, 0.7319],
  [0.25, 0.81226],
  [0.35, 0.86567],
  [0.5, 0.91453],
];

const optimumRows = OPTIMA.map(
  ([depth, k]): PublishedRow => ({
    quantities: ['k'],
    series: { name: 'flat wing under a free surface', axis: 'depth over span', x: depth },
    conditions: `flat wing under a free surface, depth over span ${depth}`,
    published: [k],
    tolerance: [{ within: 5e-4 }],
    source: 'own Trefftz-plane minimisation with the image, independent of this program',
    status: 'derived',
    method: 'least drag of the curve',
    compute: () => [solveSmall(wing(10, 1, depth)).inducedDrag.leastFactor],
  }),
);

const deepEnough: PublishedRow = {
  quantities: ['lift over that in deep water'],
  conditions: 'AR 6 at a depth of 5 chords: no measurable effect beyond 4 to 5 chords',
  published: [1],
  tolerance: [{ within: 0.03 }], // what a towing tank of the day resolves (common practice)
  source: 'J. M. Benson and N. S. Land, NACA WR L-758, 1942, summary',
  status: 'read',
  method: 'extended line',
  compute: () => {
    const [near, deep] = [5 / 6, null].map((depth) => solveSmall(wing(6, 1, depth)).lift.CLalpha) as [
      number,
      number,
    ];
    return [near / deep];
  },
};

// aspect ratio, taper, depth over mean chord, slope, efficiency
const FLAT: Array<[number, number, number, number, number]> = [
  [6, 1, 0.5, 3.3283, 0.6518],
  [6, 1, 1, 3.7564, 0.7423],
  [6, 1, 2, 4.0015, 0.849],
  [10, 0.4, 0.5, 3.8891, 0.6066],
  [10, 0.4, 2, 4.7066, 0.7722],
  [10, 0.4, 4, 4.8752, 0.8806],
];

// droop, root depth over unrolled mean chord, slope on projected area, efficiency; unrolled AR 10, taper 0.4
const DROOPED: Array<[DroopLaw & { kind: 'vee' | 'arc' }, number, number, number]> = [
  [{ kind: 'arc', tipAngle: 20 }, 1, 4.4897, 0.7524],
  [{ kind: 'arc', tipAngle: 20 }, 2, 4.7086, 0.8286],
  [{ kind: 'arc', tipAngle: 40 }, 2, 4.5802, 0.9034],
  [{ kind: 'vee', tipAngle: 10 }, 2, 4.7275, 0.8276],
  [{ kind: 'vee', tipAngle: 10 }, 4, 4.8428, 0.9089],
  [{ kind: 'vee', tipAngle: 20 }, 1, 4.4912, 0.8267],
  [{ kind: 'vee', tipAngle: 20 }, 4, 4.6904, 0.9448],
];

const nearSurface = (
  aspectRatio: number,
  taper: number,
  chords: number,
  published: [number, number],
  droop: DroopLaw & { kind: 'flat' | 'vee' | 'arc' },
): PublishedRow => ({
  quantities: ['lift slope', 'span efficiency'],
  conditions: `${droop.kind}${'tipAngle' in droop ? ` to ${droop.tipAngle} degrees` : ''}, AR ${aspectRatio}, taper ${taper}, depth ${chords} mean chords`,
  published,
  tolerance: [{ share: 0.005 }, { within: 0.004 }],
  source: `${OWN_LATTICE}, one row with an image of the same sign`,
  status: 'derived',
  method: 'extended line',
  compute: () => slopeAndEfficiency(wing(aspectRatio, taper, chords / aspectRatio, droop)),
});

export const surface: PublishedRow[] = [
  ...factorRows,
  ...biplaneRows,
  interpolation,
  ...optimumRows,
  deepEnough,
  ...FLAT.map(([aspectRatio, taper, chords, slope, efficiency]) =>
    nearSurface(aspectRatio, taper, chords, [slope, efficiency], { kind: 'flat' }),
  ),
  ...DROOPED.map(([droop, chords, slope, efficiency]) =>
    nearSurface(10, 0.4, chords, [slope, efficiency], droop),
  ),
];
