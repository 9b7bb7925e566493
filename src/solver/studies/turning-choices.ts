/**
 * Which fuselage and stabilizer turn tighter for the same hold. A turn pitches the foil, and the stabilizer at the end of
 * its fuselage resists: the rider answers with the feet. Each choice keeps the hold: of the hold index, the product
 * sideways share x unrolled area x arm (hold.ts) stays; on a flat stabilizer, whose index is nothing, area x arm stays,
 * the pitch term. Compared is the shift of the feet in one carve, and the radius a rider turns with the shift of the
 * present foil. SI; heel in degrees.
 */
import type { Design, Stabilizer } from '../design/document.ts';
import { withDroopAmplitude } from '../design/laws.ts';
import { scaledPlanform } from '../geometry/scale.ts';
import { surfaceOf } from '../geometry/surface.ts';
import { findRoot } from '../numeric/roots.ts';
import { GRAVITY } from './condition.ts';
import { sidewaysVolume, stabilizerVolume } from './hold.ts';
import type { LevelRunner } from './speed.ts';
import { type CarveRow, carve } from './turning.ts';

const RADIANS = Math.PI / 180;
const COMPARED_HEEL = 30; // degrees
const STEEPEST = 75;

export interface TurnChoice {
  change: 'arm' | 'droop';
  factor: number; // of the present arm, or of the stabilizer's present droop
  heel: number; // degrees, of the compared carve
  arm: number; // m
  area: number; // m2, projected
  sidewaysVolume: number;
  volume: number; // V_H: what the choice does to the pitch stability
  shift: number; // m the feet move aft in the compared carve
  radius: number | null; // m with the present foil's shift; null where the wing stalls or no heel gives it
  total: number; // N, drag in the compared carve
}

const ARMS = [0.8, 0.9, 1, 1.1, 1.25];
const DROOPS = [0.75, 1.25];

/** Empty without a stabilizer, or where the present foil cannot be carved. */
export function turningChoices(
  make: (design: Design) => LevelRunner,
  design: Design,
  speed: number,
): TurnChoice[] {
  const { stabilizer } = design;
  const present = carve(make(design), speed, [COMPARED_HEEL])[0];
  if (!stabilizer || !present) return [];
  const isFlat = surfaceOf(stabilizer).sidewaysShare < 1e-6;
  const wanted = [
    ...ARMS.map((factor) => ({ change: 'arm' as const, factor })),
    ...(isFlat ? [] : DROOPS.map((factor) => ({ change: 'droop' as const, factor }))),
  ];
  return wanted.flatMap(({ change, factor }) => {
    const changed = change === 'arm' ? onArm(stabilizer, factor) : drooped(stabilizer, factor);
    const choice = measure(make({ ...design, stabilizer: changed }), speed, present);
    return choice ? [{ change, factor, heel: COMPARED_HEEL, arm: changed.arm, ...choice }] : [];
  });
}

function onArm(stabilizer: Stabilizer, factor: number): Stabilizer {
  return { ...scaledPlanform(stabilizer, 1 / Math.sqrt(factor)), arm: stabilizer.arm * factor };
}

/** Bent more or less, and scaled so that the sideways share times the unrolled area stays. */
function drooped(stabilizer: Stabilizer, factor: number): Stabilizer {
  const before = surfaceOf(stabilizer);
  const amplitude = before.amplitude / RADIANS;
  const bent = {
    ...stabilizer,
    length: { kind: 'unrolled' as const, value: before.unrolledLength },
    droop: withDroopAmplitude(stabilizer.droop, amplitude, amplitude * factor),
  };
  const after = surfaceOf(bent);
  const area = (before.sidewaysShare * before.unrolledArea) / (after.sidewaysShare * after.unrolledArea);
  return scaledPlanform(bent, Math.sqrt(area));
}

function measure(runner: LevelRunner, speed: number, present: CarveRow) {
  const row = carve(runner, speed, [COMPARED_HEEL])[0];
  const { wing, stabilizer } = runner.rigFor(present.depth).craft;
  if (!row || !stabilizer) return null;
  return {
    area: stabilizer.projectedArea,
    sidewaysVolume: sidewaysVolume(wing, stabilizer),
    volume: stabilizerVolume(wing, stabilizer),
    shift: row.stanceShift,
    radius: radiusWith(runner, speed, present.stanceShift),
    total: row.total,
  };
}

/** Radius of the carve that asks for a given shift of the feet. */
function radiusWith(runner: LevelRunner, speed: number, shift: number): number | null {
  const miss = (degrees: number) => {
    const row = carve(runner, speed, [degrees])[0];
    return row ? row.stanceShift - shift : Number.NaN;
  };
  const heel = findRoot(miss, 1, STEEPEST, 1e-3);
  const row = heel === null ? null : carve(runner, speed, [heel])[0];
  if (heel === null || !row || (row.stallMargin ?? 0) < 0) return null;
  return speed ** 2 / (GRAVITY * Math.tan(heel * RADIANS));
}
