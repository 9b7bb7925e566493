/**
 * Equations of small motion about level running, rider rigid on the board, controls untouched. Body axes along the
 * design's (x ahead, y to starboard, z down) from the balance point; SI, radians.
 *
 * Lateral states: sideways speed v, roll rate p, yaw rate r, roll angle phi. Vertical states: speed ahead u, sinking
 * speed w, pitch rate q, pitch angle theta, depth d. B. Etkin and L. D. Reid, Dynamics of Flight, 3rd ed. 1996,
 * sections 4.9 and 4.12, with these differences: the mass matrix carries the water's added mass; the weight that acts
 * is what the rig leaves, (1-u) m g, since its upward pull keeps its direction and acts through the balance point; the
 * drive ahead stays what it is; depth is a state, because lift changes with it. Heel under the surface is left out: it
 * changes the rolling moment by less than a hundredth of what the weight's height does.
 */
import { factor, solveFactored } from '../numeric/dense.ts';
import type { Derivatives } from '../report.ts';

export interface LevelRunning {
  density: number; // kg/m3
  speed: number; // m/s
  weight: number; // N, what the foil carries
  alpha: number; // rad, x axis to the stream
}

export interface Masses {
  mass: number; // kg
  roll: number; // kg m2 about the balance point
  pitch: number;
  yaw: number;
  rollYaw: number; // integral of x z dm
}

/** Slopes of the force ahead (N), the force down (N) and the nose-up moment (N m) about the balance point. */
export interface Pushes {
  u: [number, number, number]; // per m/s of speed ahead
  w: [number, number, number]; // per m/s of sinking
  q: [number, number, number]; // per rad/s
  depth: [number, number, number]; // per m of depth of the origin
}

/**
 * d/dt (v, p, r, phi) = A (v, p, r, phi), row after row. `by` about the balance point on area (m2) and span (m);
 * `water` is the 6 by 6 added-mass matrix.
 */
export function lateralMotion(
  running: LevelRunning,
  own: Masses,
  water: Float64Array,
  by: Derivatives,
  reference: { area: number; span: number },
): Float64Array {
  const { masses, forces } = lateralBalance(running, own, water, by, reference);
  return withAngles(masses, forces, [[0, 1, Math.tan(running.alpha), 0]]);
}

/** Masses (3 by 3, row after row) of sway, roll and yaw, and the forces on them by v, p, r and phi. */
export function lateralBalance(
  { density, speed, weight, alpha }: LevelRunning,
  { mass, roll, yaw, rollYaw }: Masses,
  water: Float64Array,
  by: Derivatives,
  { area, span }: { area: number; span: number },
): { masses: Float64Array; forces: [number[], number[], number[]] } {
  const force = 0.5 * density * speed * area; // N per m/s, times a coefficient
  const moment = force * span;
  const arm = 0.5 * span;
  const ahead = speed * Math.cos(alpha);
  const down = speed * Math.sin(alpha);
  return {
    masses: block(water, [1, 3, 5], [mass, 0, 0, 0, roll, -rollYaw, 0, -rollYaw, yaw]),
    forces: [
      [
        force * by.CYbeta,
        force * arm * by.CYp + mass * down,
        force * arm * by.CYr - mass * ahead,
        weight * Math.cos(alpha),
      ],
      [moment * by.Clbeta, moment * arm * by.Clp, moment * arm * by.Clr, 0],
      [moment * by.Cnbeta, moment * arm * by.Cnp, moment * arm * by.Cnr, 0],
    ],
  };
}

/**
 * d/dt (u, w, q, theta, d) = A (u, w, q, theta, d), row after row. `lead` is how far the origin rises for each radian
 * of nose-up turn about the balance point (m).
 */
export function verticalMotion(
  { speed, weight, alpha }: LevelRunning,
  { mass, pitch }: Masses,
  water: Float64Array,
  by: Pushes,
  lead: number,
): Float64Array {
  const ahead = speed * Math.cos(alpha);
  const down = speed * Math.sin(alpha);
  const masses = block(water, [0, 2, 4], [mass, 0, 0, 0, mass, 0, 0, 0, pitch]);
  const byRate = [-mass * down, mass * ahead, 0];
  const byAngle = [-weight * Math.cos(alpha), -weight * Math.sin(alpha), 0];
  const forces = [0, 1, 2].map((k) => [
    by.u[k]!,
    by.w[k]!,
    by.q[k]! + byRate[k]!,
    byAngle[k]! - by.depth[k]! * lead,
    by.depth[k]!,
  ]);
  return withAngles(masses, forces, [
    [0, 0, 1, 0, 0],
    [-Math.sin(alpha), Math.cos(alpha), 0, -speed, 0],
  ]);
}

/** Rows and columns of the added mass that three states feel, with the craft's own mass added. */
function block(water: Float64Array, rows: readonly number[], own: readonly number[]): Float64Array {
  return Float64Array.from(own, (value, k) => value + water[6 * rows[Math.floor(k / 3)]! + rows[k % 3]!]!);
}

/** Solves the three momentum equations for the accelerations; the rows of the angles stand below them. */
function withAngles(
  masses: Float64Array,
  forces: ReadonlyArray<readonly number[]>,
  angles: ReadonlyArray<readonly number[]>,
): Float64Array {
  const n = 3 + angles.length;
  const pivots = new Int32Array(3);
  factor(masses, 3, pivots);
  const matrix = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    const column = Float64Array.from(forces, (row) => row[j]!);
    solveFactored(masses, 3, pivots, column);
    for (let i = 0; i < 3; i++) matrix[i * n + j] = column[i]!;
  }
  matrix.set(angles.flat(), 3 * n);
  return matrix;
}
