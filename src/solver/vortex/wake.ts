/**
 * The far-field plane behind the foil: induced drag, and the least drag that a wing's curve allows.
 * Circulations per unit stream speed, one a strip of the starboard half; results per rho V^2 (drag in m2).
 *
 * D = -(rho/2) sum circulation (w . n) ds over both halves, with the trailing legs along the design's x.
 * Munk: the least drag for a given lift leaves a normalwash proportional to cos Gamma, the strip's share of lift
 * (M. M. Munk, The Minimum Induced Drag of Aerofoils, NACA Report 121, 1921).
 */
import { dot, factor, solveFactored } from '../numeric/dense.ts';
import type { VortexSystem } from './system.ts';

/** Sums the rows of each strip: segment circulations to strip circulations, into `to` (strips). */
export function gatherStrips(system: VortexSystem, circulation: Float64Array, to: Float64Array): void {
  const wing = system.wingSegments / system.rows;
  const stabilizer = system.strips - wing;
  to.fill(0);
  for (let r = 0; r < system.rows; r++) {
    for (let k = 0; k < wing; k++) to[k]! += circulation[r * wing + k]!;
    for (let k = 0; k < stabilizer; k++)
      to[wing + k]! += circulation[system.wingSegments + r * stabilizer + k]!;
  }
}

/** Induced drag per rho V^2 (m2) of strip circulations in a wake of `fillWakes`. */
export function inducedDrag(wake: Float64Array, circulation: Float64Array): number {
  const n = circulation.length;
  let drag = 0;
  for (let i = 0; i < n; i++) drag -= circulation[i]! * dot(wake, i * n, circulation, 0, n);
  return drag;
}

export interface LeastDrag {
  /** Strip circulations of the wing with the least drag, scaled so that drag (m2) = their sum of circulation dy. */
  circulation: Float64Array;
  /** Sum of circulation dy over one half, m2: vertical lift is twice this, drag is this. */
  measure: number;
  /** k: drag of the flat elliptic wing in deep water of equal span and lift, over this least drag. */
  factor: number;
}

/** Least induced drag of the wing alone (with its image), from the wake of the whole foil. */
export function leastDrag(system: VortexSystem, wake: Float64Array, span: number): LeastDrag {
  const wing = system.wingSegments / system.rows;
  const a = new Float64Array(wing * wing);
  for (let i = 0; i < wing; i++)
    for (let j = 0; j < wing; j++) a[i * wing + j] = -wake[i * system.strips + j]!;
  const pivots = new Int32Array(wing);
  const circulation = system.alongY.slice(0, wing);
  factor(a, wing, pivots);
  solveFactored(a, wing, pivots, circulation);
  let measure = 0;
  for (let i = 0; i < wing; i++) measure += circulation[i]! * system.alongY[i]!;
  return { circulation, measure, factor: (8 * measure) / (Math.PI * span * span) };
}
