/**
 * What evenly spread roughness adds to the friction of a turbulent layer, sand grains being the measure. Lengths in
 * chords, speeds in stream speeds, like the layer it is read from.
 */
import type { SideState } from './state.ts';

const KAPPA = 0.41;
const SMOOTH_INTERCEPT = 5.2;
const ROUGH_INTERCEPT = 8.5;

/**
 * Loss of speed in wall units behind grains k+ = k u_tau/nu high: none below 2.25, the fully rough law of J. Nikuradse
 * (1933) above 90, T. Cebeci and P. Bradshaw, Momentum Transfer in Boundary Layers (1977), in between (from memory).
 */
export function speedLoss(grain: number): number {
  if (grain <= 2.25) return 0;
  const full = Math.log(grain) / KAPPA + SMOOTH_INTERCEPT - ROUGH_INTERCEPT;
  return grain >= 90 ? full : full * Math.sin(0.4258 * (Math.log(grain) - 0.811));
}

/**
 * Friction coefficient of a rough wall from that of a smooth one, cf, under a layer `thicker` times as thick: both follow
 * u+ = ln(y+)/kappa + C, the rough one shifted down by `speedLoss`. `grain`: k u/nu by the speed u at the layer's edge.
 */
export function roughFriction(cf: number, grain: number, thicker = 1): number {
  if (!(cf > 0)) return cf;
  const smooth = Math.sqrt(2 / cf);
  let plus = smooth; // u/u_tau on the rough wall
  for (let round = 0; round < 40; round++) {
    const next = Math.max(3, smooth + Math.log((thicker * smooth) / plus) / KAPPA - speedLoss(grain / plus));
    const moved = next - plus;
    plus += 0.6 * moved;
    if (Math.abs(moved) < 1e-9) break;
  }
  return 2 / plus ** 2;
}

/**
 * Drag coefficient that grains of height k add to one side: the momentum integral of the extra friction over the turbulent
 * run, the shape factor kept, carried into the wake as H. B. Squire and A. D. Young, ARC R&M 1838 (1937), do it.
 */
export function roughnessDrag(side: SideState, k: number, reynolds: number): number {
  const { arc, speed, friction, theta, shape, isTurbulent } = side;
  const last = arc.length - 1;
  let extra = 0; // momentum thickness beyond the smooth one
  let before = 0; // extra friction at the place before
  for (let i = 1; i <= last; i++) {
    if (!isTurbulent[i]) continue;
    const thicker = 1 + extra / theta[i]!;
    const added = roughFriction(friction[i]!, k * speed[i]! * reynolds, thicker) - friction[i]!;
    const step = arc[i]! - arc[i - 1]!;
    const squeeze = (shape[i]! + 2) * Math.log(speed[i]! / speed[i - 1]!);
    extra = Math.max(0, (extra + 0.25 * (before + added) * step) * (1 - squeeze));
    before = added;
  }
  return 2 * extra * speed[last]! ** (0.5 * (shape[last]! + 5));
}
