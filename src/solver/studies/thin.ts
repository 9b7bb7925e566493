/**
 * How thin can it be: strut thickness and fuselage diameter varied, everything else kept. Stiffness follows the cube of
 * the strut's thickness (a solid section; the fourth power of a rod's diameter), drag falls with both, and a thicker strut
 * lets the water boil sooner where it meets the wing. Columns over the thicknesses; m, N, N m2, degrees, m/s; NaN where
 * a figure does not exist. Estimates for comparing, no approval of strength.
 */
import type { Design, Strut } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { waterProperties } from '../design/water.ts';
import {
  fuselageDrag,
  junctionDrag,
  type Stream,
  sprayDrag,
  strutFrictionDrag,
} from '../forces/drag-sources.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { outlinePoints } from '../geometry/outline.ts';
import { findRoot } from '../numeric/roots.ts';
import { monotoneCubic } from '../numeric/spline.ts';
import { fuselageBeam, strutBeam } from '../structure/beam.ts';
import { springOf } from '../structure/joints.ts';
import { ATMOSPHERE, lowestPressure, type Place, PressureWatch } from './cavitation.ts';
import { TEST_FORCE, TEST_MOMENT } from './compliance.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import { profileFor } from './profile-for.ts';
import { fuselageLength } from './rig.ts';
import { LevelRunner } from './speed.ts';
import type { Study } from './study.ts';

const DEGREES = 180 / Math.PI;
const COUNT = 31;
const INCEPTIONS = 7; // thicknesses at which the boiling speed is solved; a curve joins them
const RESOLUTION: Resolution = { strips: 20, stabilizerStrips: 10, rows: 1 };

export const THIN_COLUMNS = [
  'size', // m, thickness or diameter
  'bending', // N m2, to the side
  'torsion', // N m2
  'deflection', // m under TEST_FORCE: the strut's foot on its box; the stabilizer's end of the fuselage, held at the strut
  'twist', // degrees under TEST_MOMENT, the same way
  'drag', // N at cruise: profile or friction, junctions and spray
  'inception', // m/s at which the water first boils at the junction with the wing
] as const;
export type ThinColumn = (typeof THIN_COLUMNS)[number];

export interface ThinSeries {
  columns: Record<ThinColumn, Float64Array>;
  present: number; // m
  mark: number; // m, the user's thickness mark
  limit: number; // m of deflection allowed
  /** Size at which the deflection is the limit; null where none of the sizes allowed does it. */
  thinnest: number | null;
  junction: Place | null; // what the inception speed is taken at
}

export interface ThinStudy {
  speed: number; // m/s of the drag
  strut: ThinSeries | null;
  fuselage: ThinSeries | null;
}

export function* thinStudy(design: Design): Study<ThinStudy> {
  const { cruise } = design.brief.speeds;
  const { density, viscosity } = waterProperties(design.brief.water.kind, design.brief.water.temperature);
  const stream: Stream = { speed: cruise, density, viscosity };
  const strut = design.strut && strutSeries(design, design.strut, stream);
  const fuselage = design.fuselage && fuselageSeries(design, design.fuselage.diameter, stream);
  const rounds = [strut, fuselage].filter((series) => series !== null);
  let done = 0;
  for (const { series, inceptionAt } of rounds) {
    const { size } = series.columns;
    const at = Array.from(
      { length: INCEPTIONS },
      (_, k) => size[0]! + ((size[COUNT - 1]! - size[0]!) * k) / (INCEPTIONS - 1),
    );
    const speeds: number[] = [];
    for (const value of at) {
      speeds.push(inceptionAt(value));
      yield ++done / (INCEPTIONS * rounds.length);
    }
    if (speeds.every(Number.isFinite)) series.columns.inception.set(size.map(monotoneCubic(at, speeds)));
  }
  return { speed: cruise, strut: strut?.series ?? null, fuselage: fuselage?.series ?? null };
}

interface Round {
  series: ThinSeries;
  inceptionAt: (size: number) => number;
}

/** A strut as thick as asked at its foot, the rest of it in proportion. */
export function withThickness(strut: Strut, thickness: number): Strut {
  const scale = thickness / strut.thickness;
  return {
    ...strut,
    thickness,
    ...(strut.top && { top: { ...strut.top, thickness: strut.top.thickness * scale } }),
  };
}

function strutSeries(design: Design, strut: Strut, stream: Stream): Round {
  const { min, max } = RANGES['strut.thickness'];
  const limits = design.laminate?.limits;
  const mark = limits?.strutThickness ?? RANGES['laminate.limits.strutThickness'].default;
  const limit = limits?.strutDeflection ?? RANGES['laminate.limits.strutDeflection'].default;
  const give = (thickness: number) => strutGive(design, withThickness(strut, thickness));
  const depth = depthAtSpeed(design.brief, stream.speed);
  const columns = makeColumns(sizesAbout([strut.thickness, mark], min, max), (size) => {
    const drawn = withThickness(strut, size);
    const beam = strutBeam(drawn, design.laminate?.strut)(0);
    const wetted = depth ?? strut.length;
    const drag =
      strutFrictionDrag(drawn, wetted, stream) +
      junctionDrag(size, drawn.chord, stream) +
      (depth === null ? 0 : sprayDrag(size, stream));
    return { size, bending: beam.flap, torsion: beam.torsion, ...give(size), drag, inception: Number.NaN };
  });
  const junction: Place =
    (strut.x ?? 0) < craftOf(design, null, RESOLUTION).wing.chord(0) ? 'wing junction' : 'strut junction';
  return {
    series: {
      columns,
      present: strut.thickness,
      mark,
      limit,
      thinnest: findRoot((size) => give(size).deflection - limit, min, max, 1e-6),
      junction,
    },
    inceptionAt: (size) => strutInception(design, withThickness(strut, size), junction),
  };
}

/** Deflection of the foot under the test force and twist under the test moment: the strut and its box. */
export function strutGive(design: Design, strut: Strut): { deflection: number; twist: number } {
  const beam = strutBeam(strut, design.laminate?.strut);
  const { length } = strut;
  let bending = 0; // integral of lever^2/EI
  let torsion = 0;
  const steps = 40;
  for (let k = 0; k < steps; k++) {
    const share = (k + 0.5) / steps; // from the foot
    const { flap, torsion: stiffness } = beam(share);
    bending += ((share * length) ** 2 * length) / steps / flap;
    torsion += length / steps / stiffness;
  }
  const box = (axis: 'roll' | 'yaw') => springOf(design.joints, 'box', axis);
  return {
    deflection: TEST_FORCE * (bending + length ** 2 / box('roll')),
    twist: TEST_MOMENT * (torsion + 1 / box('yaw')) * DEGREES,
  };
}

function strutInception(design: Design, strut: Strut, junction: Place): number {
  const changed = { ...design, strut };
  try {
    const watch = new PressureWatch(new LevelRunner(changed, RESOLUTION, profileFor(changed)));
    return watch.inceptionSpeed(junction, design.brief.speeds.takeOff)?.speed ?? Number.NaN;
  } catch {
    return Number.NaN;
  }
}

function fuselageSeries(design: Design, diameter: number, stream: Stream): Round {
  const { min, max } = RANGES['fuselage.diameter'];
  const limits = design.laminate?.limits;
  const mark = limits?.fuselageDiameter ?? RANGES['laminate.limits.fuselageDiameter'].default;
  const limit = limits?.fuselageDeflection ?? RANGES['laminate.limits.fuselageDeflection'].default;
  const craft = craftOf(design, null, RESOLUTION);
  const run = Math.abs((craft.stabilizer?.arm ?? 0) - (design.strut?.x ?? 0));
  const length = fuselageLength(design, craft);
  const beamOf = (size: number) =>
    fuselageBeam({ ...design, fuselage: { ...design.fuselage!, diameter: size } })!;
  const deflection = (size: number) => (TEST_FORCE * run ** 3) / (3 * beamOf(size).flap);
  const columns = makeColumns(sizesAbout([diameter, mark], min, max), (size) => {
    const beam = beamOf(size);
    return {
      size,
      bending: beam.flap,
      torsion: beam.torsion,
      deflection: deflection(size),
      twist: ((TEST_MOMENT * run) / beam.torsion) * DEGREES,
      drag: fuselageDrag({ ...design.fuselage!, diameter: size }, length, stream),
      inception: Number.NaN,
    };
  });
  return {
    series: {
      columns,
      present: diameter,
      mark,
      limit,
      thinnest: run > 0 ? findRoot((size) => deflection(size) - limit, min, max, 1e-6) : null,
      junction: 'wing junction',
    },
    inceptionAt: fuselageInception(design, length),
  };
}

/** The water speeds up along the fuselage as along a spheroid as long and thick; at the wing's root both add. */
function fuselageInception(design: Design, length: number): (diameter: number) => number {
  const runner = new LevelRunner(design, RESOLUTION, profileFor(design));
  const wing = lowestPressure(outlinePoints(design.wing.section.root, 161));
  const { water, speeds } = design.brief;
  const { density, vapourPressure } = waterProperties(water.kind, water.temperature);
  const clAt = (speed: number) => runner.run(speed, 'incidence').stripCl[0]!;
  return (diameter) => {
    const gain = spheroidGain(diameter / length);
    const margin = (speed: number) => {
      const depth = depthAtSpeed(design.brief, speed) ?? design.strut?.length ?? 1;
      const sigma = (ATMOSPHERE + density * GRAVITY * depth - vapourPressure) / (0.5 * density * speed ** 2);
      return sigma + 1 - (Math.sqrt(1 - wing(clAt(speed))) + gain) ** 2;
    };
    try {
      return findRoot(margin, speeds.takeOff, 40, 1e-3) ?? Number.NaN;
    } catch {
      return Number.NaN;
    }
  };
}

/** Greatest speed along a spheroid in a stream along its axis, less the stream: k1 = a/(2 - a) (H. Lamb, Hydrodynamics, art. 114). */
export function spheroidGain(slenderness: number): number {
  const e = Math.sqrt(1 - slenderness ** 2);
  const a = ((2 * (1 - e * e)) / e ** 3) * (0.5 * Math.log((1 + e) / (1 - e)) - e);
  return a / (2 - a);
}

/** Sizes from well below to well above those that matter. */
function sizesAbout(sizes: readonly number[], min: number, max: number): number[] {
  const low = Math.max(min, 0.6 * Math.min(...sizes));
  const high = Math.min(max, 1.5 * Math.max(...sizes));
  return Array.from({ length: COUNT }, (_, k) => low + ((high - low) * k) / (COUNT - 1));
}

function makeColumns(
  sizes: readonly number[],
  row: (size: number) => Record<ThinColumn, number>,
): Record<ThinColumn, Float64Array> {
  const rows = sizes.map(row);
  return Object.fromEntries(
    THIN_COLUMNS.map((name) => [name, Float64Array.from(rows, (values) => values[name])]),
  ) as Record<ThinColumn, Float64Array>;
}
