/**
 * The coupling of sideslip, roll and yaw, solved, part by part: what wing, stabilizer and strut each add to every
 * lateral derivative, the part that strip drag adds, and the same for lift and pitch by angle, pitch rate and depth.
 *
 * Lateral derivatives as in derivatives.ts, along the design's axes. Vertical ones: lift CL and pitching moment Cm (nose
 * up, on the mean chord) about a point, by alpha (rad), by pitch rate q cbar/2V, and by depth in mean chords.
 */
import type { Stream } from '../forces/drag-sources.ts';
import { mixAlpha } from '../forces/loads.ts';
import type { ProfileModel } from '../forces/profile.ts';
import type { Derivatives } from '../report.ts';
import type { FlowPool } from '../vortex/flow.ts';
import { STABILIZER, STRUT, WING } from '../vortex/system.ts';
import { derivativesAbout, type LateralLoads, lateralLoads, type Reference } from './derivatives.ts';
import { profileLoads, stripDrags } from './profile-derivatives.ts';
import type { RunningFoil } from './running.ts';
import { sumOf } from './sums.ts';
import { type VerticalByPart, verticalByPart } from './vertical-slopes.ts';

/** One derivative set for each part of the craft and for all of it. */
export interface ByPart<T> {
  wing: T;
  stabilizer: T;
  strut: T;
  total: T;
}

export interface LateralCoupling {
  vortex: ByPart<Derivatives>;
  profile: ByPart<Derivatives>; // the part of strip drag, to be added
}

export interface Coupling {
  foil: LateralCoupling; // about the origin, without the strut
  craft: LateralCoupling; // about the balance point, with the strut
  vertical: VerticalByPart;
}

/** The three ratios that say how a foil feels; null where the denominator lies within its own band: not resolved. */
export interface Ratios {
  rollFromYaw: number | null; // Clr/|Clp|
  yawFromRoll: number | null; // Cnp/|Cnr|
  rollOverYaw: number | null; // Clbeta/Cnbeta
}

export function ratiosOf(by: Derivatives, band: Derivatives): Ratios {
  const over = (value: number, key: keyof Derivatives, divisor: number) =>
    Math.abs(by[key]) > band[key] ? value / divisor : null;
  return {
    rollFromYaw: over(by.Clr, 'Clp', Math.abs(by.Clp)),
    yawFromRoll: over(by.Cnp, 'Cnr', Math.abs(by.Cnr)),
    rollOverYaw: over(by.Clbeta, 'Cnbeta', by.Cnbeta),
  };
}

/** Everything at once for a foil whose flow was solved with scope 'whole'. `balance` in m, z up from the origin. */
export function couplingOf(
  pool: FlowPool,
  foil: RunningFoil,
  stream: Stream,
  profile: ProfileModel,
  balance: { x: number; height: number },
): Coupling {
  const { craft, flow, alpha } = foil;
  const { projectedArea: area, span } = craft.wing;
  mixAlpha(flow.symmetric, alpha, flow.base);
  const origin = { area, span, x: 0, z: 0 };
  const point = { area, span, x: balance.x, z: balance.height };
  const drags = stripDrags(craft, flow, stream, profile);
  return {
    foil: {
      vortex: byPart(lateralLoads(flow.system, flow.base, flow.foil), origin),
      profile: byPart(profileLoads(craft, flow, flow.foil, alpha, drags, false), origin),
    },
    craft: {
      vortex: byPart(lateralLoads(flow.system, flow.base, flow.craft), point),
      profile: byPart(profileLoads(craft, flow, flow.craft, alpha, drags, true), point),
    },
    vertical: verticalByPart(pool, foil, balance),
  };
}

function byPart(loads: LateralLoads, reference: Reference): ByPart<Derivatives> {
  const of = (part: number) =>
    derivativesAbout(loads.beta[part]!, loads.rollRate[part]!, loads.yawRate[part]!, reference);
  const [wing, stabilizer, strut] = [of(WING), of(STABILIZER), of(STRUT)];
  return { wing, stabilizer, strut, total: sumOf([wing, stabilizer, strut]) };
}

/**
 * The same derivatives along axes turned into the stream by the angle of attack (rad), about the same point: with
 * R = [cos, sin; -sin, cos], moments and rates turn alike. Flat wings differ much between the two.
 */
export function alongStream(by: Derivatives, alpha: number): Derivatives {
  const c = Math.cos(alpha);
  const s = Math.sin(alpha);
  const roll = {
    beta: c * by.Clbeta + s * by.Cnbeta,
    p: c * by.Clp + s * by.Cnp,
    r: c * by.Clr + s * by.Cnr,
  };
  const yaw = { beta: c * by.Cnbeta - s * by.Clbeta, p: c * by.Cnp - s * by.Clp, r: c * by.Cnr - s * by.Clr };
  return {
    CYbeta: by.CYbeta,
    Clbeta: roll.beta,
    Cnbeta: yaw.beta,
    CYp: c * by.CYp + s * by.CYr,
    Clp: c * roll.p + s * roll.r,
    Cnp: c * yaw.p + s * yaw.r,
    CYr: c * by.CYr - s * by.CYp,
    Clr: c * roll.r - s * roll.p,
    Cnr: c * yaw.r - s * yaw.p,
  };
}
