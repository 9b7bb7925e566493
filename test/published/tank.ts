/**
 * Group 4, the towing tank: what tank tests of hydrofoils found, and the closed methods their authors held against them.
 * The measured tables of the NACA reports on foils of aspect ratio 4 and 10 were not at hand: their method stands in, from
 * memory, and what their summaries say in numbers. Dihedral lift is from the wind tunnel, where it was measured apart.
 */
import { waveDrag } from '../../src/solver/forces/wave-drag.ts';
import { craftOf } from '../../src/solver/geometry/craft.ts';
import { VortexSystem } from '../../src/solver/vortex/system.ts';
import { plainDesign } from '../support/designs.ts';
import { glauertSeries } from './glauert-series.ts';
import type { PublishedRow } from './row.ts';
import { chordOf, slopeAndEfficiency, solveSmall } from './wing.ts';

const GRAVITY = 9.80665; // m/s2, standard

const REPORT_1232 =
  'method of K. L. Wadlin, C. L. Shuford and J. R. McGehee, NACA Report 1232, 1955: lifting line, edge correction, image';

/** A rectangular wing of span 1 whose depth is in chords. */
const rectangle = (aspectRatio: number, chords: number | null) =>
  plainDesign(
    { chord: chordOf(aspectRatio, 1) },
    { brief: { depth: chords === null ? null : chords / aspectRatio } },
  );

const slopeAt = (aspectRatio: number, chords: number | null, rows = 1) =>
  solveSmall(rectangle(aspectRatio, chords), rows > 1 ? { rows, strips: 20 } : {}).lift.CLalpha;

/**
 * The report's closed form: the section's slope times the two-dimensional depth factor over Jones's edge correction
 * 1 + 1/A, and the induced angle of the lifting line raised by Prandtl's biplane factor of a wing and its image.
 */
function tankMethod(aspectRatio: number, chords: number): number {
  const section = 2 * Math.PI;
  const factor = (1 + 16 * chords ** 2) / (2 + 16 * chords ** 2);
  const edge = 1 + 1 / aspectRatio;
  const gap = (2 * chords) / aspectRatio;
  const image = Math.max(0, (1 - 0.66 * gap) / (1.05 + 3.7 * gap));
  const induced = 1 / glauertSeries(aspectRatio, 1).liftSlope - 1 / section;
  return 1 / (edge / (section * factor) + (1 + image) * induced);
}

const DEPTHS = [0.5, 1, 2, 4];

// The edge correction is good to some 4 %, and at half a chord the factor of one vortex is 2.5 % low (group 4): the two
// together say how far the method can stand from a lifting surface.
const METHOD_BAND = [{ share: 0.08 }];

const methodRows = [4, 10].flatMap((aspectRatio) =>
  DEPTHS.flatMap((chords): PublishedRow[] => {
    const published = [tankMethod(aspectRatio, chords)];
    const shared = {
      quantities: ['lift slope'],
      published,
      source: REPORT_1232,
      status: 'from memory + derived',
    } as const;
    const name = `rectangular foil of AR ${aspectRatio} near the surface`;
    return [
      {
        ...shared,
        series: { name: `${name}, twelve rows`, axis: 'depth, chords', x: chords },
        conditions: `AR ${aspectRatio}, rectangular, depth ${chords} chords, twelve rows`,
        tolerance: METHOD_BAND,
        method: 'twelve rows',
        compute: () => [slopeAt(aspectRatio, chords, 12)],
      },
      {
        ...shared,
        series: { name: `${name}, extended line`, axis: 'depth, chords', x: chords },
        conditions: `AR ${aspectRatio}, rectangular, depth ${chords} chords, extended line`,
        tolerance: METHOD_BAND,
        method: 'extended line',
        compute: () => [slopeAt(aspectRatio, chords)],
      },
    ];
  }),
);

const ratioAt = (chords: number) => slopeAt(6, chords) / slopeAt(6, null);

const summaries: PublishedRow[] = [
  {
    quantities: ['lift over that in deep water'],
    conditions: 'AR 6 at 4.5 chords: no measurable effect of the surface deeper than 4 to 5 chords',
    published: [1],
    tolerance: [{ within: 0.02 }], // what the balance of a towing tank resolves (common practice)
    source: 'J. M. Benson and N. S. Land, NACA WR L-758, 1942, summary',
    status: 'read',
    method: 'extended line',
    compute: () => [ratioAt(4.5)],
  },
  {
    quantities: ['lift over that in deep water'],
    conditions: 'AR 6 at 2 chords: little effect of the surface deeper than that',
    published: [1],
    tolerance: [{ within: 0.05 }],
    source: 'M. Daskovsky, Ocean Engineering 27, 2000, abstract',
    status: 'read',
    method: 'extended line',
    compute: () => [ratioAt(2)],
  },
];

/** Lift slope on the unrolled area of a vee over that of the flat wing, in deep water. */
function dihedralFactor(angle: number): number {
  const slope = (degrees: number) => {
    const design = plainDesign({
      chord: chordOf(6, 1),
      droop: degrees === 0 ? { kind: 'flat' } : { kind: 'vee', tipAngle: -degrees },
    });
    const [onProjected] = slopeAndEfficiency(design);
    return onProjected * Math.cos((degrees * Math.PI) / 180); // projected over unrolled area
  };
  return slope(angle) / slope(0);
}

const dihedralRows = [0, 10, 20, 30].map(
  (angle): PublishedRow => ({
    quantities: ['vertical lift slope over that of the flat wing'],
    series: { name: 'foil of AR 6 with dihedral, on the unrolled area', axis: 'dihedral, degrees', x: angle },
    conditions: `AR 6, dihedral ${angle} degrees, the same unrolled area`,
    published: [Math.cos((angle * Math.PI) / 180) ** 2],
    tolerance: [{ share: 0.03 }], // scatter of the tunnel tests about the law, as remembered
    source:
      'P. E. Purser and J. P. Campbell, NACA Report 823, 1945: cos^2 of the dihedral, verified in the tunnel',
    status: 'from memory',
    method: 'extended line',
    compute: () => [dihedralFactor(angle)],
    ...(angle === 30 && {
      missed: 'the law leaves out that the wake of a vee pulls less on it than a flat wake on a flat wing',
    }),
  }),
);

/** Wave drag coefficient of a very wide foil with an elliptic loading, per the mean square of its lift coefficient. */
function wideFoilWaves(chord: number, speed: number, depth: number, lift: number): number {
  const span = (20 * 2 * Math.PI * speed ** 2) / GRAVITY; // twenty waves wide
  const strips = 800;
  const design = plainDesign({
    length: { kind: 'unrolled', value: span },
    chord: { kind: 'taper', root: chord, tip: chord },
  });
  const { parts } = craftOf(design, depth, { strips, stabilizerStrips: 1, rows: 1 });
  const system = new VortexSystem(strips, 0, 0, 1);
  system.load(parts, depth);
  const circulation = Float64Array.from(system.controlY, (y) => Math.sqrt(1 - ((2 * y) / span) ** 2));
  const drag = waveDrag(system, system.fillWakes(), circulation, depth, speed) / ((2 / 3) * span); // m, of unit circulation
  const strength = 0.5 * chord * lift; // circulation over speed, m
  return (2 * drag * strength ** 2) / chord;
}

// chord, speed, depth, CL, coefficient
const WAVES: Array<[number, number, number, number, number]> = [
  [0.12, 6, 0.5, 0.4, 0.0019915],
  [0.15, 4, 0.3, 0.6, 0.011457],
];

const waveRows = WAVES.map(
  ([chord, speed, depth, lift, coefficient]): PublishedRow => ({
    quantities: ['two-dimensional wave drag coefficient'],
    conditions: `chord ${chord} m, ${speed} m/s, depth ${depth} m, CL ${lift}`,
    published: [coefficient],
    tolerance: [{ share: 0.02 }], // a span of twenty waves is not endless
    source:
      'wave of a vortex, 2 circulation/V exp(-g h/V^2), and its resistance: H. Lamb, Hydrodynamics, 1932, art. 249',
    status: 'derived',
    method: 'wave integral of a foil twenty waves wide',
    compute: () => [wideFoilWaves(chord, speed, depth, lift)],
  }),
);

export const tank: PublishedRow[] = [...methodRows, ...summaries, ...dihedralRows, ...waveRows];
