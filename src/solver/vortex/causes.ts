/**
 * Unit solutions: the circulations that each cause calls up in a stream of speed 1, and the velocity it makes at the
 * places where the bound segments carry their force (the cause's own stream plus what all circulations induce).
 *
 * Symmetric causes: the stream along x (through twist, incidence and camber), the stream along z (angle of attack),
 * a pitch rate about the origin, a radian of stabilizer incidence. Antisymmetric: sideslip (water from starboard), roll
 * rate and yaw rate about the origin; each for the foil alone and with the strut. A body rate (p, q, r) is the vector
 * (-p, q, -r) in x aft, y starboard, z up; the water passes a point R with -(rate x R).
 */
import { STABILIZER, type VortexSystem } from './system.ts';

/** A velocity field where the forces of the bound segments are taken, per unit stream speed. */
export interface Field {
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

export interface Unit {
  circulation: Float64Array; // foil segments, then the strut's; m2/s per m/s
  field: Field; // m/s per m/s at those places
}

export interface SymmetricUnits {
  ahead: Unit;
  up: Unit;
  pitchRate: Unit; // per rad/s at stream speed 1
  incidence: Unit; // per rad of stabilizer incidence
}

export interface AntisymmetricUnits {
  beta: Unit; // per rad
  rollRate: Unit; // per rad/s
  yawRate: Unit; // per rad/s
}

/** The water's velocity at a place, as a cause alone makes it, into `out`. */
export type Stream = (x: number, y: number, z: number, out: { x: number; y: number; z: number }) => void;

const ahead: Stream = (_x, _y, _z, out) => set(out, 1, 0, 0);
const up: Stream = (_x, _y, _z, out) => set(out, 0, 0, 1);
const pitchRate: Stream = (x, _y, z, out) => set(out, -z, 0, x);
const still: Stream = (_x, _y, _z, out) => set(out, 0, 0, 0);
export const beta: Stream = (_x, _y, _z, out) => set(out, 0, -1, 0);
export const rollRate: Stream = (_x, y, z, out) => set(out, 0, -z, y);
export const yawRate: Stream = (x, y, _z, out) => set(out, -y, x, 0);

function set(out: { x: number; y: number; z: number }, x: number, y: number, z: number): void {
  out.x = x;
  out.y = y;
  out.z = z;
}

const at = { x: 0, y: 0, z: 0 };

export function makeUnit(system: VortexSystem): Unit {
  const each = () => new Float64Array(system.all);
  return { circulation: each(), field: { x: each(), y: each(), z: each() } };
}

/** Solves the symmetric causes into `units`; the system must be filled and factored. */
export function solveSymmetricUnits(system: VortexSystem, units: SymmetricUnits, rates: boolean): void {
  solveSymmetric(system, units.ahead, ahead);
  solveSymmetric(system, units.up, up);
  if (!rates) return;
  solveSymmetric(system, units.pitchRate, pitchRate);
  setIncidenceCause(system, units.incidence.circulation);
  system.solveSymmetric(units.incidence.circulation);
  setStream(system, units.incidence.field, still, system.all);
  system.addSymmetricField(units.incidence.circulation, units.incidence.field, system.all);
}

/** Solves the antisymmetric causes into `units`, with the strut or for the foil alone. */
export function solveAntisymmetricUnits(
  system: VortexSystem,
  units: AntisymmetricUnits,
  withStrut: boolean,
): void {
  solveAntisymmetric(system, units.beta, beta, withStrut);
  solveAntisymmetric(system, units.rollRate, rollRate, withStrut);
  solveAntisymmetric(system, units.yawRate, yawRate, withStrut);
}

function solveSymmetric(system: VortexSystem, unit: Unit, stream: Stream): void {
  setCause(system, unit.circulation, stream, system.foil);
  system.solveSymmetric(unit.circulation);
  unit.circulation.fill(0, system.foil);
  setStream(system, unit.field, stream, system.all);
  system.addSymmetricField(unit.circulation, unit.field, system.all);
}

function solveAntisymmetric(system: VortexSystem, unit: Unit, stream: Stream, withStrut: boolean): void {
  setCause(system, unit.circulation, stream, withStrut ? system.all : system.foil);
  system.solveAntisymmetric(unit.circulation, withStrut);
  if (!withStrut) unit.circulation.fill(0, system.foil);
  setStream(system, unit.field, stream, system.foil);
  system.addAntisymmetricField(unit.circulation, unit.field, withStrut);
}

/** Minus the stream through each strip, whose normal is turned by its pitch. */
function setCause(system: VortexSystem, b: Float64Array, stream: Stream, count: number): void {
  for (let i = 0; i < count; i++) {
    stream(system.controlX[i]!, system.controlY[i]!, system.controlZ[i]!, at);
    const across = at.y * system.normalY[i]! + at.z * system.normalZ[i]!;
    b[i] = -(at.x * system.sinPitch[i]! + across * system.cosPitch[i]!);
  }
}

/** d/d(incidence) of the cause of the stream ahead, on the stabilizer. */
function setIncidenceCause(system: VortexSystem, b: Float64Array): void {
  b.fill(0);
  for (let i = 0; i < system.foil; i++) if (system.surfaceOf[i] === STABILIZER) b[i] = -system.cosPitch[i]!;
}

function setStream(system: VortexSystem, field: Field, stream: Stream, count: number): void {
  for (let i = 0; i < count; i++) {
    stream(system.placeX[i]!, system.placeY[i]!, system.placeZ[i]!, at);
    field.x[i] = at.x;
    field.y[i] = at.y;
    field.z[i] = at.z;
  }
}
