/**
 * One step of the boundary layer along the surface, together with the outer flow.
 *
 * Unknown at the far end: momentum thickness theta, mass defect m = u H theta and, where turbulent, q, the square root
 * of the shear stress coefficient. The speed is tied to m by what the outer flow does with it, u = c + e m: that keeps
 * the step solvable where a prescribed speed would not be, at and beyond separation. A. E. P. Veldman, AIAA J. 19
 * (1981) 79. Equations, as differences of logarithms so that power laws near a stagnation point are met exactly
 * (M. Drela and M. B. Giles, AIAA J. 25 (1987) 1347, from memory):
 *   momentum  d ln theta + (2 + H) d ln u = (cf/2)/theta ds
 *   energy    d ln H* + (1 - H) d ln u = (2 CD/H* - cf/2)/theta ds
 *   lag       d ln C_tau = LAG (q in equilibrium - q)/delta ds
 * Solved by Newton's method in the logarithms of the unknowns. Lengths in chords, speeds in stream speeds.
 */
import * as slot from './closure.ts';
import { laminarClosure } from './laminar.ts';
import { LAG, turbulentClosure, wakeClosure } from './turbulent.ts';

export const LAMINAR = 0;
export const TURBULENT = 1;
export const WAKE = 2; // one half of it
export type Kind = typeof LAMINAR | typeof TURBULENT | typeof WAKE;

/** Slots of a state: distance from the stagnation point, theta, H, u, q, m. */
export const ARC = 0;
export const THETA = 1;
export const SHAPE = 2;
export const SPEED = 3;
export const STRESS = 4;
export const MASS = 5;
const STATE_SLOTS = 6;

const ITERATIONS = 20;
const TOLERANCE = 2e-4; // of the last step in a logarithm: what is left then is of the order of its square
const LARGEST_STEP = 0.3; // of a logarithm, in one iteration
const LEAST_SHAPE = 1.002;
const LEAST_SPEED = 1e-4;

export class Interval {
  reynolds = 1; // by chord and stream
  /** Arc of the far end, and the speed there by m: u = others + byMass m. */
  end = 0;
  others = 0;
  byMass = 0;
  onset = 0; // arc at which the layer turned turbulent
  spent = 0; // Newton iterations so far
  readonly near = new Float64Array(STATE_SLOTS);
  /** Holds first guesses of theta, m and q on entry to `solve`, and the solution after it. */
  readonly far = new Float64Array(STATE_SLOTS);
  private before = new Float64Array(slot.CLOSURE_SLOTS);
  private after = new Float64Array(slot.CLOSURE_SLOTS);
  private weight = 0.5; // of the far end in the means of the right-hand sides
  private lift = 0; // d ln u/d ln m at the far end
  private span = 0; // ln of the far end's arc over the near end's
  private thetaRise = 0; // ln of the far end's over the near end's, as for q
  private stressRise = 0;
  private readonly matrix = new Float64Array(12); // rows momentum, energy, lag; columns ln theta, ln m, ln q, right side

  /** Makes the state in `near` the start of a step of this kind. */
  begin(kind: Kind): void {
    close(kind, this.near, this.reynolds, this.before);
  }

  /** Makes the solved far end the start of the next step. */
  advance(): void {
    this.near.set(this.far);
    const keep = this.before;
    this.before = this.after;
    this.after = keep;
  }

  /** q in equilibrium at the near end, unless that is laminar. */
  balance(): number {
    return this.before[slot.BALANCE]!;
  }

  /** cf/2 at the near end. */
  friction(): number {
    return this.before[slot.FRICTION]!;
  }

  /** Solves for the far end as `end`, `others` and `byMass` have it. False when the iteration does not settle. */
  solve(kind: Kind): boolean {
    const { near, far, matrix, byMass } = this;
    this.weight = this.farWeight(kind);
    far[ARC] = this.end;
    this.span = Math.log(this.end / near[ARC]!);
    this.thetaRise = Math.log(far[THETA]! / near[THETA]!);
    if (kind !== LAMINAR) this.stressRise = Math.log(far[STRESS]! / near[STRESS]!);
    for (let k = 0; k < ITERATIONS; k++) {
      if (!this.keepPlausible()) return false;
      close(kind, far, this.reynolds, this.after);
      this.spent++;
      const lift = (byMass * far[MASS]!) / far[SPEED]!;
      this.lift = lift;
      this.lineariseFlow();
      if (kind !== LAMINAR) this.lineariseLag();
      eliminate(matrix, kind !== LAMINAR);
      const dStress = kind === LAMINAR ? 0 : matrix[11]!;
      const largest = Math.max(Math.abs(matrix[3]!), Math.abs(matrix[7]!), Math.abs(dStress));
      if (!Number.isFinite(largest)) return false;
      const share = largest > LARGEST_STEP ? LARGEST_STEP / largest : 1;
      this.thetaRise += share * matrix[3]!;
      this.stressRise += share * dStress;
      far[THETA]! *= growth(share * matrix[3]!);
      far[MASS]! *= growth(share * matrix[7]!);
      far[STRESS]! *= growth(share * dStress);
      if (largest < TOLERANCE) {
        this.follow(kind !== LAMINAR);
        return this.keepPlausible();
      }
    }
    return false;
  }

  /** Carries the closure at the far end along with the last step (of ln theta, ln m, ln q), to first order. */
  private follow(hasLag: boolean): void {
    const { after: g, matrix, lift } = this;
    const theta = matrix[3]!;
    const mass = matrix[7]!;
    const stress = hasLag ? matrix[11]! : 0;
    const h = (1 - lift) * mass - theta; // of ln H
    const r = lift * mass + theta; // of ln Re_theta
    g[slot.STAR]! *= 1 + g[slot.STAR_H]! * h + g[slot.STAR_R]! * r;
    g[slot.FRICTION]! += g[slot.FRICTION_H]! * h + g[slot.FRICTION_R]! * r;
    g[slot.DISSIPATION]! +=
      g[slot.DISSIPATION_H]! * h + g[slot.DISSIPATION_R]! * r + g[slot.DISSIPATION_Q]! * stress;
    g[slot.BALANCE]! += g[slot.BALANCE_H]! * h + g[slot.BALANCE_R]! * r;
    g[slot.THICKNESS]! += g[slot.THICKNESS_H]! * h;
  }

  /**
   * Weight of the far end in the means of the right-hand sides. Half is most accurate; just behind transition the
   * shape would overshoot, since it settles within less than a step: there the weight that is exact for a decay over
   * the length since transition is taken, and all of it in the wake, whose shape must approach 1 from above.
   */
  private farWeight(kind: Kind): number {
    if (kind === LAMINAR) return 0.5;
    if (kind === WAKE) return 1;
    const since = this.near[ARC]! - this.onset;
    const z = (this.end - this.near[ARC]!) / (since + 1e-9);
    return z < 0.01 ? 0.5 + z / 12 : 1 / (1 - Math.exp(-z)) - 1 / z;
  }

  /** Derives speed and shape from theta and m, after moving these off values that no layer has. */
  private keepPlausible(): boolean {
    const { far, others, byMass } = this;
    for (let k = 0; k < 60; k++) {
      const speed = others + byMass * far[MASS]!;
      const shape = far[MASS]! / (speed * far[THETA]!);
      far[SPEED] = speed;
      far[SHAPE] = shape;
      if (speed <= LEAST_SPEED) far[MASS]! *= 1.2;
      else if (shape < LEAST_SHAPE) this.thicken(0.97 * shape);
      else if (shape > 60) this.thicken(shape / 50);
      else return Number.isFinite(shape);
    }
    return false;
  }

  private thicken(times: number): void {
    this.far[THETA]! *= times;
    this.thetaRise += Math.log(times);
  }

  /**
   * Rows momentum and energy, with d ln u = lift d ln m and so d ln H = (1 - lift) d ln m - d ln theta. The sources
   * are written times s and integrated over ln s.
   */
  private lineariseFlow(): void {
    const { before: f, after: g, matrix: a, near, far, lift, weight } = this;
    const byMass = 1 - lift; // d ln H/d ln m
    const rise = Math.log(far[SPEED]! / near[SPEED]!);
    const shape = far[SHAPE]!;
    const mean = 0.5 * (near[SHAPE]! + shape);
    const turn = 0.5 * shape * rise; // of (mean shape) times (rise of ln u), by ln H
    const { span } = this;
    const start = ((1 - weight) * span * near[ARC]!) / near[THETA]!;
    const end = (weight * span * far[ARC]!) / far[THETA]!;

    const wall = g[slot.FRICTION]!;
    const wallH = g[slot.FRICTION_H]!;
    const wallR = g[slot.FRICTION_R]!;
    a[0] = 1 - turn + end * (wall + wallH - wallR);
    a[1] = (2 + mean) * lift + turn * byMass - end * (byMass * wallH + lift * wallR);
    a[2] = 0;
    a[3] = start * f[slot.FRICTION]! + end * wall - this.thetaRise - (2 + mean) * rise;

    const gain = g[slot.DISSIPATION]! - wall;
    const gainH = g[slot.DISSIPATION_H]! - wallH;
    const gainR = g[slot.DISSIPATION_R]! - wallR;
    const starH = g[slot.STAR_H]!;
    const starR = g[slot.STAR_R]!;
    a[4] = starR - starH + turn + end * (gain + gainH - gainR);
    a[5] =
      byMass * starH +
      lift * starR +
      (1 - mean) * lift -
      turn * byMass -
      end * (byMass * gainH + lift * gainR);
    a[6] = -end * g[slot.DISSIPATION_Q]!;
    a[7] =
      start * (f[slot.DISSIPATION]! - f[slot.FRICTION]!) +
      end * gain -
      Math.log(g[slot.STAR]! / f[slot.STAR]!) -
      (1 - mean) * rise;
  }

  private lineariseLag(): void {
    const { before: f, after: g, matrix: a, near, far, lift, weight } = this;
    const reach = LAG * (far[ARC]! - near[ARC]!);
    const start = ((1 - weight) * reach) / (f[slot.THICKNESS]! * near[THETA]!);
    const end = (weight * reach) / (g[slot.THICKNESS]! * far[THETA]!);
    const q = far[STRESS]!;
    const lack = g[slot.BALANCE]! - q;
    const byH = g[slot.BALANCE_H]! - (lack * g[slot.THICKNESS_H]!) / g[slot.THICKNESS]!;
    const byR = g[slot.BALANCE_R]!;
    a[8] = end * (byH - byR + lack);
    a[9] = -end * ((1 - lift) * byH + lift * byR);
    a[10] = 2 + end * q;
    a[11] = start * (f[slot.BALANCE]! - near[STRESS]!) + end * lack - 2 * this.stressRise;
  }
}

function close(kind: Kind, state: Float64Array, reynolds: number, out: Float64Array): void {
  const shape = state[SHAPE]!;
  const reTheta = reynolds * state[SPEED]! * state[THETA]!;
  if (kind === LAMINAR) laminarClosure(shape, reTheta, out);
  else if (kind === TURBULENT) turbulentClosure(shape, reTheta, state[STRESS]!, out);
  else wakeClosure(shape, reTheta, state[STRESS]!, out);
}

/** exp(x), within 1e-8 where x is small: Newton's next step takes that out. */
function growth(x: number): number {
  return Math.abs(x) < 0.02 ? 1 + x * (1 + x * (0.5 + x / 6)) : Math.exp(x);
}

/** Solves the rows in place, the answers in the fourth column. Momentum has no q: with it gone from energy, two by two. */
function eliminate(a: Float64Array, hasLag: boolean): void {
  if (hasLag) {
    const share = a[6]! / a[10]!;
    a[4]! -= share * a[8]!;
    a[5]! -= share * a[9]!;
    a[7]! -= share * a[11]!;
  }
  const determinant = a[0]! * a[5]! - a[1]! * a[4]!;
  const theta = (a[3]! * a[5]! - a[1]! * a[7]!) / determinant;
  const mass = (a[0]! * a[7]! - a[4]! * a[3]!) / determinant;
  a[3] = theta;
  a[7] = mass;
  if (hasLag) a[11] = (a[11]! - a[8]! * theta - a[9]! * mass) / a[10]!;
}
