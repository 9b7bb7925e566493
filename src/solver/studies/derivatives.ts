/**
 * Lateral stability derivatives by superposition: the exact slopes of the force sums by sideslip, roll and yaw rate,
 * at the condition's angle. With base circulation G and velocity V, and a cause's g and v:
 * dF = rho (g V x l + G v x l). Strut load is first order, so on the strut only the first term stands.
 *
 * Axes: the design's own (not turned into the stream). Side force to starboard, roll starboard down, yaw nose to
 * starboard: l = -Mx, n = -Mz. Coefficients on projected area S and span b; rates as p b/2V, r b/2V; per radian.
 * Source: B. Etkin and L. D. Reid, Dynamics of Flight, 3rd ed. 1996, ch. 5 for the conventions.
 */
import type { Derivatives } from '../report.ts';
import type { AntisymmetricUnits, Unit } from '../vortex/causes.ts';
import { STRUT, type VortexSystem } from '../vortex/system.ts';

/** Side force (m2) and moments about x and z through the origin (m3), per rho V^2 and per unit cause. */
export interface SideLoad {
  y: number;
  mx: number;
  mz: number;
}

/** Side load of each surface: wing, stabilizer, strut. */
export type SideLoads = [SideLoad, SideLoad, SideLoad];

export interface LateralLoads {
  beta: SideLoads;
  rollRate: SideLoads;
  yawRate: SideLoads;
}

/** Reference lengths and the point about which derivatives are taken (m). */
export interface Reference {
  area: number;
  span: number;
  x: number;
  z: number;
}

export function lateralLoads(system: VortexSystem, base: Unit, units: AntisymmetricUnits): LateralLoads {
  return {
    beta: sideLoads(system, base, units.beta),
    rollRate: sideLoads(system, base, units.rollRate),
    yawRate: sideLoads(system, base, units.yawRate),
  };
}

export function sideLoads(system: VortexSystem, base: Unit, cause: Unit): SideLoads {
  const loads: SideLoads = [
    { y: 0, mx: 0, mz: 0 },
    { y: 0, mx: 0, mz: 0 },
    { y: 0, mx: 0, mz: 0 },
  ];
  const { alongX, alongY, alongZ, placeX, placeY, placeZ, surfaceOf, foil, all } = system;
  const V = base.field;
  const v = cause.field;
  for (let i = 0; i < all; i++) {
    const g = cause.circulation[i]!;
    const G = i < foil ? base.circulation[i]! : 0;
    const lx = alongX[i]!;
    const ly = alongY[i]!;
    const lz = alongZ[i]!;
    // circulation times velocity, both orders, then crossed with the segment once
    const ux = g * V.x[i]! + (i < foil ? G * v.x[i]! : 0);
    const uy = g * V.y[i]! + (i < foil ? G * v.y[i]! : 0);
    const uz = g * V.z[i]! + (i < foil ? G * v.z[i]! : 0);
    const fx = uy * lz - uz * ly;
    const fy = uz * lx - ux * lz;
    const fz = ux * ly - uy * lx;
    const surface = surfaceOf[i]!;
    const halves = surface === STRUT ? 1 : 2;
    const load = loads[surface as 0 | 1 | 2];
    load.y += halves * fy;
    load.mx += halves * (placeY[i]! * fz - placeZ[i]! * fy);
    load.mz += halves * (placeX[i]! * fy - placeY[i]! * fx);
  }
  return loads;
}

/** The nine derivatives of all surfaces together about the reference point. */
export function derivativesOf(loads: LateralLoads, reference: Reference): Derivatives {
  const total = (parts: SideLoads): SideLoad => ({
    y: parts[0].y + parts[1].y + parts[2].y,
    mx: parts[0].mx + parts[1].mx + parts[2].mx,
    mz: parts[0].mz + parts[1].mz + parts[2].mz,
  });
  return derivativesAbout(total(loads.beta), total(loads.rollRate), total(loads.yawRate), reference);
}

/**
 * Moves forces and causes to the reference point. A turn about (x, 0, z) is a turn about the origin and a sideways
 * drift: p brings the sideslip -p z / V, r brings r x / V.
 */
export function derivativesAbout(
  beta: SideLoad,
  rollRate: SideLoad,
  yawRate: SideLoad,
  { area, span, x, z }: Reference,
): Derivatives {
  const byBeta = moved(beta, x, z);
  const byRoll = plus(moved(rollRate, x, z), byBeta, -z);
  const byYaw = plus(moved(yawRate, x, z), byBeta, x);
  const force = 2 / area;
  const moment = 2 / (area * span);
  const rate = 2 / span;
  return {
    CYbeta: force * byBeta.y,
    Clbeta: -moment * byBeta.mx,
    Cnbeta: -moment * byBeta.mz,
    CYp: force * rate * byRoll.y,
    Clp: -moment * rate * byRoll.mx,
    Cnp: -moment * rate * byRoll.mz,
    CYr: force * rate * byYaw.y,
    Clr: -moment * rate * byYaw.mx,
    Cnr: -moment * rate * byYaw.mz,
  };
}

function moved(load: SideLoad, x: number, z: number): SideLoad {
  return { y: load.y, mx: load.mx + z * load.y, mz: load.mz - x * load.y };
}

function plus(load: SideLoad, other: SideLoad, share: number): SideLoad {
  return { y: load.y + share * other.y, mx: load.mx + share * other.mx, mz: load.mz + share * other.mz };
}
