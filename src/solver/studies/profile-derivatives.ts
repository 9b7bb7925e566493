/**
 * What the drag of the strips adds to the lateral derivatives: each strip drags along its own water. With e the stream
 * and dv the change of velocity that a cause makes at the strip, the force 1/2 rho cd c ds |v| v changes by
 * 1/2 rho c ds [cd (dv + e (e . dv)) + cd_cl dcl e] per unit speed, dcl from the cause's own circulation. On a flat foil
 * this is nearly all of its yaw damping. Forces per rho V^2 (m2), moments per rho V^2 (m3), as in derivatives.ts.
 */
import { type Stream, sectionForm, turbulentFriction } from '../forces/drag-sources.ts';
import { type ProfileModel, stirredShare, turbulentLength } from '../forces/profile.ts';
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import {
  type AntisymmetricUnits,
  beta,
  type Stream as Cause,
  rollRate,
  type Unit,
  yawRate,
} from '../vortex/causes.ts';
import type { Flow } from '../vortex/flow.ts';
import { gatherStrips } from '../vortex/wake.ts';
import type { LateralLoads, SideLoad, SideLoads } from './derivatives.ts';

/** Section drag strip by strip, wing then stabilizer: the coefficient and its slope by the lift coefficient. */
export interface StripDrags {
  cd: Float64Array;
  byLift: Float64Array;
  strut: Float64Array; // strip by strip of the strut, by its own chord
}

const LIFT_STEP = 0.02; // for the slope of cd by cl: wide enough to pass over the knots of a polar

/** Drags at the running state that `flow.base` holds (stream speed 1). */
export function stripDrags(craft: Craft, flow: Flow, stream: Stream, profile: ProfileModel): StripDrags {
  gatherStrips(flow.system, flow.base.circulation, flow.stripCirculation);
  const circulation = flow.stripCirculation;
  const cd = new Float64Array(circulation.length);
  const byLift = new Float64Array(circulation.length);
  let first = 0;
  for (const part of ['wing', 'stabilizer'] as const) {
    const strips = craft.parts[part];
    if (!strips) continue;
    for (let k = 0; k < strips.count; k++) {
      const chord = strips.chord[k]!;
      const cl = (2 * circulation[first + k]!) / chord;
      const reynolds = (stream.speed * chord) / stream.viscosity;
      const at = (value: number) => profile.cd(part, strips.eta[k]!, value, reynolds);
      cd[first + k] = at(cl);
      byLift[first + k] = (at(cl + LIFT_STEP) - at(cl - LIFT_STEP)) / (2 * LIFT_STEP);
    }
    first += strips.count;
  }
  return { cd, byLift, strut: strutDrag(craft, stream, profile) };
}

function strutDrag({ strut, depth, parts }: Craft, stream: Stream, profile: ProfileModel): Float64Array {
  if (!strut || !parts.strut) return new Float64Array(0);
  const { count, nodeZ } = parts.strut;
  const reynolds = (stream.speed * strut.chord) / stream.viscosity;
  const plain = 2 * turbulentFriction(reynolds) * sectionForm(strut.thickness / strut.chord);
  const natural = profile.strutCd(reynolds, 'natural') ?? plain;
  if (turbulentLength(strut, depth) === 0) return new Float64Array(count).fill(natural);
  const turbulent = profile.strutCd(reynolds, 'turbulent') ?? plain;
  const top = nodeZ[count]!;
  return Float64Array.from({ length: count }, (_, k) => {
    const share = stirredShare(strut, depth, top - nodeZ[k + 1]!, top - nodeZ[k]!);
    return natural + share * (turbulent - natural);
  });
}

/** Loads of wing, stabilizer and (asked for) strut at an angle (rad); `units` are the causes' own circulations. */
export function profileLoads(
  craft: Craft,
  flow: Flow,
  units: AntisymmetricUnits,
  alpha: number,
  drags: StripDrags,
  withStrut: boolean,
): LateralLoads {
  const { wing, stabilizer, strut } = craft.parts;
  const strips = [wing, ...(stabilizer ? [stabilizer] : [])];
  const of = (cause: Cause, unit: Unit): SideLoads => {
    gatherStrips(flow.system, unit.circulation, flow.stripCirculation);
    let first = 0;
    const loads = strips.map((part) => {
      const load = surfaceLoad(part, alpha, cause, drags, flow.stripCirculation, first);
      first += part.count;
      return load;
    });
    const onStrut = withStrut && strut ? strutLoad(strut, alpha, cause, drags.strut) : nothing();
    return [loads[0]!, loads[1] ?? nothing(), onStrut];
  };
  return {
    beta: of(beta, units.beta),
    rollRate: of(rollRate, units.rollRate),
    yawRate: of(yawRate, units.yawRate),
  };
}

const nothing = (): SideLoad => ({ y: 0, mx: 0, mz: 0 });

/** Both halves of a surface; its strips' drags and circulations begin at `first`. */
function surfaceLoad(
  strips: Strips,
  alpha: number,
  cause: Cause,
  drags: StripDrags,
  circulation: Float64Array,
  first: number,
): SideLoad {
  const load = nothing();
  for (let k = 0; k < strips.count; k++) {
    const moreLift = (2 * circulation[first + k]!) / strips.chord[k]!;
    const moreDrag = drags.byLift[first + k]! * moreLift;
    addStrip(load, strips, k, alpha, cause, drags.cd[first + k]!, moreDrag, 2);
  }
  return load;
}

function strutLoad(strips: Strips, alpha: number, cause: Cause, cd: Float64Array): SideLoad {
  const load = nothing();
  for (let k = 0; k < strips.count; k++) addStrip(load, strips, k, alpha, cause, cd[k]!, 0, 1);
  return load;
}

const change = { x: 0, y: 0, z: 0 }; // of the velocity at a strip

function addStrip(
  load: SideLoad,
  strips: Strips,
  k: number,
  alpha: number,
  cause: Cause,
  cd: number,
  moreDrag: number,
  halves: number,
): void {
  const ahead = Math.cos(alpha);
  const up = Math.sin(alpha);
  const x = strips.quarterX[k]!;
  const y = strips.controlY[k]!;
  const z = strips.controlZ[k]!;
  cause(x, y, z, change);
  const { x: vx, y: vy, z: vz } = change;
  const along = cd * (ahead * vx + up * vz) + moreDrag;
  const share = 0.5 * halves * strips.chord[k]! * strips.width[k]!;
  const fx = share * (cd * vx + along * ahead);
  const fy = share * cd * vy;
  const fz = share * (cd * vz + along * up);
  load.y += fy;
  load.mx += y * fz - z * fy;
  load.mz += x * fy - y * fx;
}
