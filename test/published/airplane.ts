/**
 * A published general-aviation airplane as these equations of motion take it: R. C. Nelson, Flight Stability and Automatic
 * Control, Navion example; slugs, feet, seconds. Coefficients and airplane data read (second-hand copy).
 */
import type { Derivatives } from '../../src/solver/report.ts';
import { lateralMotion, type Pushes, verticalMotion } from '../../src/solver/studies/motion.ts';

export const DRY = new Float64Array(36); // no added mass

const SPEED = 176;
const WEIGHT = 2750;
const GRAVITY = 32.174;
const RUNNING = { density: (2 * 36.83) / SPEED ** 2, speed: SPEED, weight: WEIGHT, alpha: 0 };
const MASSES = { mass: WEIGHT / GRAVITY, roll: 1048, pitch: 3000, yaw: 3530, rollYaw: 0 };
const SIDEWAYS: Derivatives = {
  CYbeta: -0.564,
  Clbeta: -0.074,
  Cnbeta: 0.071,
  CYp: 0,
  Clp: -0.41,
  Cnp: -0.0575,
  CYr: 0,
  Clr: 0.107,
  Cnr: -0.125,
};

/** States v, p, r, phi. */
export const airplaneSideways = (): Float64Array =>
  lateralMotion(RUNNING, MASSES, DRY, SIDEWAYS, { area: 184, span: 33.4 });

/** States u, w, q, theta, d; the slope by the rate of w stands as added mass. */
export function airplaneUpright(): Float64Array {
  const { mass, pitch } = MASSES;
  const water = DRY.slice();
  water[4 * 6 + 2] = 0.005165 * pitch;
  const pushes: Pushes = {
    u: [-0.0451 * mass, -0.3697 * mass, 0],
    w: [0.0361 * mass, -2.0244 * mass, -0.05 * pitch],
    q: [0, 0, -2.0767 * pitch],
    depth: [0, 0, 0],
  };
  return verticalMotion(RUNNING, MASSES, water, pushes, 0);
}
