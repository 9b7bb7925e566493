/**
 * Pitch: neutral point, balance, and what would trim. Vortex forces and the moment of the sections' camber
 * (profile drag, strut drag and the rig's drive are the running state's business, see Speed); stabilizer as drawn. Lengths in m, angles in radians, nose up positive.
 */
import { type AlphaLoads, liftOf, loadsAt, mixAlpha, sumLoads } from '../forces/loads.ts';
import type { Craft } from '../geometry/craft.ts';
import type { Unit } from '../vortex/causes.ts';
import type { Flow } from '../vortex/flow.ts';
import { STABILIZER } from '../vortex/system.ts';

/** x of the neutral point aft of the origin: -(dm/dalpha)/(dFz/dalpha) at the condition's angle. */
export function neutralPoint(loads: AlphaLoads, alpha: number): number {
  const { force, moment } = pitchSlopes(loads, alpha);
  return -moment / force;
}

/** Slopes by the angle of the vertical force (m2) and of the moment about the origin (m3), per rho V^2. */
export function pitchSlopes(loads: AlphaLoads, alpha: number): { force: number; moment: number } {
  const [wing, stabilizer] = loadsAt(loads, alpha, true);
  return { force: wing.z + stabilizer.z, moment: wing.pitch + stabilizer.pitch };
}

/** Moment of the sections' camber, m3 per rho V^2; it does not change with the angle. */
export function camberMoment({ wing, stabilizer }: Craft): number {
  return 0.5 * (wing.camberMoment() + (stabilizer?.camberMoment() ?? 0));
}

/** Moment (m3, per rho V^2) about a point at (x, z) of the loads at an angle, without the camber's. */
export function momentAbout(loads: AlphaLoads, alpha: number, x: number, z: number): number {
  const [wing, stabilizer] = loadsAt(loads, alpha);
  return wing.pitch + stabilizer.pitch - z * (wing.x + stabilizer.x) + x * (wing.z + stabilizer.z);
}

/** Where the balance point would have to stand for the moment to vanish; null without vertical force. */
export function trimStance(loads: AlphaLoads, alpha: number, height: number, camber: number): number | null {
  const [wing, stabilizer] = loadsAt(loads, alpha);
  const fz = wing.z + stabilizer.z;
  if (Math.abs(fz) < 1e-12) return null;
  return (height * (wing.x + stabilizer.x) - wing.pitch - stabilizer.pitch - camber) / fz;
}

/**
 * Change of stabilizer incidence (rad) that brings the moment about (x, z), the camber's included, to nothing at the same lift; null when the
 * stabilizer has no leverage or the answer is beyond 30 degrees. Newton in angle and incidence; incidence enters as
 * the tangent of its unit solution, good to a thousandth within a few degrees.
 */
export function trimIncidence(
  flow: Flow,
  loads: AlphaLoads,
  alpha: number,
  x: number,
  z: number,
  camber: number,
): number | null {
  const { system, symmetric, base } = flow;
  const [wing, stabilizer] = loadsAt(loads, alpha);
  const lift = liftOf(wing, alpha) + liftOf(stabilizer, alpha);
  let angle = alpha;
  let turn = 0;
  const state = () => {
    mixAlpha(symmetric, angle, base);
    addShare(base, symmetric.incidence, turn);
    const [w, s] = sumLoads(system, base, base);
    const fx = w.x + s.x;
    const fz = w.z + s.z;
    return {
      lift: fz * Math.cos(angle) - fx * Math.sin(angle) - lift,
      moment: w.pitch + s.pitch - z * fx + x * fz + camber,
    };
  };
  const step = 1e-4;
  for (let i = 0; i < 20; i++) {
    const here = state();
    angle += step;
    const byAngle = state();
    angle -= step;
    turn += step;
    const byTurn = state();
    turn -= step;
    const [a, b] = [(byAngle.lift - here.lift) / step, (byTurn.lift - here.lift) / step];
    const [c, d] = [(byAngle.moment - here.moment) / step, (byTurn.moment - here.moment) / step];
    const determinant = a * d - b * c;
    if (Math.abs(determinant) < 1e-15) return null;
    const angleStep = (here.lift * d - b * here.moment) / determinant;
    const turnStep = (a * here.moment - c * here.lift) / determinant;
    angle -= angleStep;
    turn -= turnStep;
    if (!(Math.abs(turn) < Math.PI / 6)) return null;
    if (Math.abs(angleStep) + Math.abs(turnStep) < 1e-10) return turn;
  }
  return null;
}

function addShare(to: Unit, from: Unit, share: number): void {
  for (let i = 0; i < to.circulation.length; i++) {
    to.circulation[i]! += share * from.circulation[i]!;
    to.field.x[i]! += share * from.field.x[i]!;
    to.field.y[i]! += share * from.field.y[i]!;
    to.field.z[i]! += share * from.field.z[i]!;
  }
}

/**
 * d(downwash angle)/d(alpha) at the stabilizer's quarter-chord line, averaged over its area: the flow that the wing's
 * change of circulation sends down through the stabilizer's strips. `chord` and `width` per stabilizer strip.
 */
export function downwashSlope(flow: Flow, chord: Float64Array, width: Float64Array): number {
  const { system, symmetric } = flow;
  const wingOnly = symmetric.up.circulation.slice(0, system.foil);
  for (let i = 0; i < system.foil; i++) if (system.surfaceOf[i] === STABILIZER) wingOnly[i] = 0;
  const each = () => new Float64Array(system.all);
  const field = { x: each(), y: each(), z: each() };
  system.addSymmetricField(wingOnly, field, system.foil);
  let sum = 0;
  let area = 0;
  for (let k = 0; k < chord.length; k++) {
    const i = system.wingSegments + k;
    const through = field.y[i]! * system.normalY[i]! + field.z[i]! * system.normalZ[i]!;
    const share = chord[k]! * width[k]!;
    sum -= share * through;
    area += share;
  }
  return sum / area;
}
