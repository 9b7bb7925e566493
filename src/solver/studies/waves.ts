/**
 * Regular waves of small slope on deep water: what they do to a foil held at its depth, and what a downwind rider can
 * take from them. Linear wave theory (H. Lamb, Hydrodynamics, 6th ed. 1932, art. 229): omega^2 = g kappa, velocities
 * a omega exp(-kappa d). SI; angles in degrees where handed out.
 */

import { highestStation } from '../geometry/heel.ts';
import type { PressureWatch } from './cavitation.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import type { RunningState } from './level-running.ts';
import type { LevelRunner, SpeedCase } from './speed.ts';
import { heave, liftShare } from './unsteady.ts';

const DEGREES = 180 / Math.PI;

export interface Waves {
  height: number; // m, crest to trough
  period: number; // s
  heading: number; // degrees between the course and the way the waves run; 0 running with them, 180 into them
}

export interface WaveSwing {
  length: number; // m
  celerity: number; // m/s
  encounterPeriod: number; // s; infinite when the foil keeps pace with the waves
  orbitalSpeed: number; // m/s at the foil
  reducedFrequency: number; // omega_e c/(2V)
  liftShare: number; // |C(k)|: what of the quasi-steady swing the lift follows
  alphaSwing: number; // degrees, amplitude
  clSwing: number; // amplitude on the wing, with the unsteady share
  stallMargin: number | null; // at the height of the swing
  cavitationMargin: number; // least of both ends of the swing, the trough overhead
  troughDepth: number | null; // m over the origin when the trough passes
  breaches: boolean; // the foil's highest station meets the surface there
}

/** The swing a foil sees at a speed, held level at its depth. Null in deep water, which has no waves. */
export function waveSwing(
  runner: LevelRunner,
  watch: PressureWatch,
  speed: number,
  waves: Waves,
): WaveSwing | null {
  const { brief } = runner.design;
  const depth = depthAtSpeed(brief, speed);
  if (depth === null) return null;
  const state = runner.run(speed, 'incidence', depth);
  const { craft, loads } = runner.rigFor(depth);
  const omega = (2 * Math.PI) / waves.period;
  const number = (omega * omega) / GRAVITY;
  const amplitude = waves.height / 2;
  const encounter = Math.abs(omega - number * speed * Math.cos(waves.heading / DEGREES));
  const orbital = amplitude * omega * Math.exp(-number * depth);
  const k = (encounter * craft.wing.meanChord) / (2 * speed);
  const share = liftShare(k);
  const swing = Math.atan2(orbital, speed);
  const step = 1e-4;
  const slope = (loads.at(state.alpha + step, 0)[0].z - loads.at(state.alpha, 0)[0].z) / step;
  const clSwing = (2 * slope * swing * share) / craft.wing.projectedArea;
  return {
    length: (2 * Math.PI) / number,
    celerity: omega / number,
    encounterPeriod: encounter > 0 ? (2 * Math.PI) / encounter : Number.POSITIVE_INFINITY,
    orbitalSpeed: orbital,
    reducedFrequency: k,
    liftShare: share,
    alphaSwing: swing * DEGREES,
    clSwing,
    stallMargin: Number.isFinite(state.stallMargin) ? state.stallMargin - clSwing : null,
    cavitationMargin: swungMargin(watch, state, clSwing, amplitude),
    troughDepth: depth - amplitude,
    breaches: depth - amplitude <= highestStation(craft.wing),
  };
}

/** Least cavitation margin where the swing adds to the lift and where it takes from it, with the trough overhead. */
function swungMargin(watch: PressureWatch, state: RunningState, clSwing: number, drop: number): number {
  const swing = clSwing / state.liftCoefficients.wing;
  const margin = (load: number) => watch.worst(state, { load, drop }).margin;
  return Math.min(margin(1 + swing), margin(1 - swing));
}

export interface DownwindRow {
  speed: number; // m/s
  slope: number; // least wave slope, degrees: its pull m g sin(slope) carries the drag
  height: number; // m of a wave that runs at this speed and has that slope at its steepest
  missingPower: number; // W to find by pumping when there is no wave
}

/** Least slope that carries the glide at each speed; the wave that keeps pace has celerity = speed. */
export function downwindTable(runner: LevelRunner, cases: readonly SpeedCase[]): DownwindRow[] {
  const mass = runner.design.brief.allUpMass;
  return cases.flatMap(({ point }) => {
    if (!point) return [];
    const sine = point.total / (mass * GRAVITY);
    if (sine >= 1) return [];
    const slope = Math.asin(sine);
    const number = GRAVITY / point.speed ** 2;
    return [
      {
        speed: point.speed,
        slope: slope * DEGREES,
        height: (2 * Math.tan(slope)) / number,
        missingPower: point.power,
      },
    ];
  });
}

/** A foil that keeps pace with the waves it is given, on their steepest face. */
export interface FaceRide {
  speed: number; // m/s along the course that keeps pace
  slope: number; // degrees along the course, at its steepest
  pull: number; // N forward that the face gives the whole weight
  drag: number; // N
  missingPower: number; // W to find by pumping; below 0 the face gives more than the drag
}

/** Null where the course leads away from the waves' way, or where that speed cannot be run. */
export function faceRide(runner: LevelRunner, { height, period, heading }: Waves): FaceRide | null {
  const along = Math.cos(heading / DEGREES);
  if (along <= 0.1) return null;
  const omega = (2 * Math.PI) / period;
  const speed = GRAVITY / omega / along;
  const slope = Math.atan(((omega * omega) / GRAVITY) * (height / 2) * along);
  try {
    const { totalDrag: drag } = runner.run(speed, 'incidence');
    const pull = runner.design.brief.allUpMass * GRAVITY * Math.sin(slope);
    return { speed, slope: slope * DEGREES, pull, drag, missingPower: (drag - pull) * speed };
  } catch {
    return null;
  }
}

export interface Pumping {
  frequency: number; // Hz
  amplitude: number; // m, half the stroke, that replaces the drag
  power: number; // W into the water
  efficiency: number;
}

/**
 * Pumping that keeps a foil running at a speed against `drag` (N): heave at `frequency` whose mean thrust equals the
 * drag, in strip fashion on the wing's mean chord. Null when it would take more than half a metre of amplitude.
 */
export function pumping(
  runner: LevelRunner,
  speed: number,
  drag: number,
  frequency: number,
  density: number,
): Pumping | null {
  const { wing } = runner.rigFor(depthAtSpeed(runner.design.brief, speed)).craft;
  const omega = 2 * Math.PI * frequency;
  const unit = heave(wing.meanChord, 1, omega, speed, density);
  const amplitude = Math.sqrt(drag / (unit.thrust * wing.span));
  if (!(amplitude <= 0.5)) return null;
  return {
    frequency,
    amplitude,
    power: unit.power * wing.span * amplitude * amplitude,
    efficiency: unit.efficiency,
  };
}
