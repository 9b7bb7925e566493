/**
 * Forces on the bound segments by Kutta and Joukowski: F = rho circulation V x l, V the velocity on the segment
 * itself, abreast of its control station (docs/theory.md, "Near field"). Everything here is per rho V^2: forces in m2, moments in m3.
 *
 * A force is bilinear in (circulation, velocity), so two unit solutions a and b give F(a, b); with the stream at angle
 * alpha, F = cos^2 F(ahead, ahead) + cos sin (F(ahead, up) + F(up, ahead)) + sin^2 F(up, up).
 */
import type { SymmetricUnits, Unit } from '../vortex/causes.ts';
import { STABILIZER, type VortexSystem, WING } from '../vortex/system.ts';

/** Force and pitching moment of one surface, both halves: x aft, z up, pitch nose up about the origin. */
export interface Load {
  x: number;
  z: number;
  pitch: number;
}

/** Loads of wing and stabilizer as quadratics in (cos alpha, sin alpha). */
export interface AlphaLoads {
  ahead: [Load, Load];
  mixed: [Load, Load];
  up: [Load, Load];
}

export function alphaLoads(system: VortexSystem, units: SymmetricUnits): AlphaLoads {
  const { ahead, up } = units;
  const mixed = sumLoads(system, ahead, up);
  addLoads(mixed, sumLoads(system, up, ahead), 1);
  return { ahead: sumLoads(system, ahead, ahead), mixed, up: sumLoads(system, up, up) };
}

/** Symmetric load of circulations `a` in the velocities of `b`, both halves: [wing, stabilizer]. */
export function sumLoads(system: VortexSystem, a: Unit, b: Unit): [Load, Load] {
  const loads: [Load, Load] = [
    { x: 0, z: 0, pitch: 0 },
    { x: 0, z: 0, pitch: 0 },
  ];
  const { alongX, alongY, alongZ, placeX, placeZ, surfaceOf } = system;
  const { x, y, z } = b.field;
  for (let i = 0; i < system.foil; i++) {
    const circulation = 2 * a.circulation[i]!;
    const fx = circulation * (y[i]! * alongZ[i]! - z[i]! * alongY[i]!);
    const fz = circulation * (x[i]! * alongY[i]! - y[i]! * alongX[i]!);
    const load = loads[surfaceOf[i] === STABILIZER ? STABILIZER : WING]!;
    load.x += fx;
    load.z += fz;
    load.pitch += placeZ[i]! * fx - placeX[i]! * fz;
  }
  return loads;
}

export function addLoads(to: [Load, Load], from: [Load, Load], share: number): void {
  for (const k of [WING, STABILIZER] as const) {
    to[k].x += share * from[k].x;
    to[k].z += share * from[k].z;
    to[k].pitch += share * from[k].pitch;
  }
}

/** Loads at an angle (rad): [wing, stabilizer]. `slope` true: their derivatives by the angle. */
export function loadsAt(loads: AlphaLoads, alpha: number, slope = false): [Load, Load] {
  const c = Math.cos(alpha);
  const s = Math.sin(alpha);
  const result: [Load, Load] = [
    { x: 0, z: 0, pitch: 0 },
    { x: 0, z: 0, pitch: 0 },
  ];
  addLoads(result, loads.ahead, slope ? -2 * c * s : c * c);
  addLoads(result, loads.mixed, slope ? c * c - s * s : c * s);
  addLoads(result, loads.up, slope ? 2 * c * s : s * s);
  return result;
}

/** Lift across the stream of a load at an angle (rad). */
export function liftOf(load: Load, alpha: number): number {
  return load.z * Math.cos(alpha) - load.x * Math.sin(alpha);
}

/** d(lift)/d(alpha) of both surfaces together at an angle (rad). */
export function liftSlopeAt(loads: AlphaLoads, alpha: number): number {
  const [wing, stabilizer] = loadsAt(loads, alpha);
  const [wingSlope, stabilizerSlope] = loadsAt(loads, alpha, true);
  const turned = (wing.x + stabilizer.x) * Math.cos(alpha) + (wing.z + stabilizer.z) * Math.sin(alpha);
  return liftOf(wingSlope, alpha) + liftOf(stabilizerSlope, alpha) - turned;
}

/** rad, beyond which no design is asked to stand. */
export const STEEPEST = Math.PI / 4;

/**
 * Angle (rad) at which the foil lifts `lift` (m2, per rho V^2), by Newton from zero.
 * Throws when no angle within `limit` (rad) carries it.
 */
export function alphaForLift(loads: AlphaLoads, lift: number, limit = STEEPEST): number {
  let alpha = 0;
  for (let i = 0; i < 60; i++) {
    const [wing, stabilizer] = loadsAt(loads, alpha);
    const miss = lift - liftOf(wing, alpha) - liftOf(stabilizer, alpha);
    const step = miss / liftSlopeAt(loads, alpha);
    alpha += Math.max(-0.2, Math.min(0.2, step));
    if (!(Math.abs(alpha) < limit)) break;
    if (Math.abs(step) < 1e-13) return alpha;
  }
  const most = Number(((limit * 180) / Math.PI).toFixed(1));
  throw new Error(`no angle between -${most} and ${most} degrees carries this lift at this speed`);
}

/** Circulations and velocities of the foil at an angle (rad), stream speed 1, into `to`. */
export function mixAlpha(units: SymmetricUnits, alpha: number, to: Unit): void {
  mix(units, Math.cos(alpha), Math.sin(alpha), to);
}

/** Their derivatives by the angle. */
export function mixAlphaSlope(units: SymmetricUnits, alpha: number, to: Unit): void {
  mix(units, -Math.sin(alpha), Math.cos(alpha), to);
}

function mix({ ahead, up }: SymmetricUnits, c: number, s: number, to: Unit): void {
  for (let i = 0; i < to.circulation.length; i++) {
    to.circulation[i] = c * ahead.circulation[i]! + s * up.circulation[i]!;
    to.field.x[i] = c * ahead.field.x[i]! + s * up.field.x[i]!;
    to.field.y[i] = c * ahead.field.y[i]! + s * up.field.y[i]!;
    to.field.z[i] = c * ahead.field.z[i]! + s * up.field.z[i]!;
  }
}
