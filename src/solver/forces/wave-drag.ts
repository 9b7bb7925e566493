/**
 * Wave drag of a lifting foil at finite Froude number, as the difference between two totals:
 *
 *   rigid-lid induced drag (image of opposite sign)
 *   + (rho nu^2/pi) integral_0^{pi/2} sec^5 t |sum circulation dy exp(-nu d sec^2 t) exp(i nu (x sec t + y sin t sec^2 t))|^2 dt
 *   - induced drag at infinite Froude number (image of the same sign),
 *
 * nu = g/V^2, d the depth of each element. It tends to nothing at high speed, in deep water, and to the two-dimensional
 * wave drag of a very wide foil. Only the horizontal part dy of each bound segment makes waves here; the sideways part
 * of a drooped tip is left out. Source of the method: Y. T. Wu, Caltech Hydrodynamics Laboratory Report 26-8, 1953;
 * J. P. Breslin, J. Ship Research 1, 1957 (both from memory).
 */
import type { VortexSystem, Wakes } from '../vortex/system.ts';
import { inducedDrag } from '../vortex/wake.ts';

const GRAVITY = 9.80665; // m/s2, standard
/** Where the integrand has fallen to exp(-2 REACH) of itself, and the steps that hold 1e-9 of the whole there. */
const REACH = 10;
const WIDEST_STEP = 0.4; // of u: sec^3 t branches at u = i
const PHASE_STEPS = 1.8; // a radian of the widest phase
const LEAST_PANELS = 20;

/**
 * Wave drag per rho V^2 (m2) of strip circulations (m2/s per m/s) at `depth` (m) and speed (m/s), from the wakes under a
 * rigid lid and under the free surface.
 */
export function waveDrag(
  system: VortexSystem,
  wakes: Wakes,
  circulation: Float64Array,
  depth: number,
  speed: number,
): number {
  return imageDifference(wakes, circulation) + waveForm(system, [circulation], depth, speed)[0]!;
}

/** Induced drag under a rigid lid less that under the free surface, per rho V^2 (m2). */
export function imageDifference({ lid, free }: Wakes, circulation: Float64Array): number {
  return inducedDrag(lid, circulation) - inducedDrag(free, circulation);
}

/**
 * The integral as a quadratic form in several loadings, row by row: that of a mixture with weights w is the sum of
 * w_a w_b form[a, b]. A speed pays for its waves once, whatever mixtures a balance then tries.
 *
 * With u = tan t, sec^5 t dt = (1 + u^2)^(3/2) du. The integrand is even and analytic in u and falls as
 * exp(-2 nu d u^2), so the trapezoidal rule converges faster than any power once its step resolves the widest phase,
 * nu b u^2.
 */
export function waveForm(
  system: VortexSystem,
  loadings: readonly Float64Array[],
  depth: number,
  speed: number,
): Float64Array {
  const nu = GRAVITY / speed ** 2;
  const shallowest = depth - largest(system.placeZ, system.foil);
  const end = Math.sqrt(REACH / (nu * shallowest));
  const widest = nu * largest(system.placeY, system.foil) * end * end;
  const panels = Math.ceil(Math.max(LEAST_PANELS, end / WIDEST_STEP, PHASE_STEPS * widest));
  const step = end / panels;
  const count = loadings.length;
  const form = new Float64Array(count * count);
  const real = new Float64Array(count);
  const imaginary = new Float64Array(count);
  for (let k = 0; k <= panels; k++) {
    const secant = 1 + (k * step) ** 2;
    sumWaves(system, loadings, depth, nu, k * step, real, imaginary);
    const share = ((k === 0 ? 0.5 : 1) * secant * Math.sqrt(secant) * nu * nu * step) / Math.PI;
    for (let a = 0; a < count; a++)
      for (let b = 0; b < count; b++)
        form[a * count + b]! += share * (real[a]! * real[b]! + imaginary[a]! * imaginary[b]!);
  }
  return form;
}

/** The sum over both halves' strips at u = tan t, one complex number a loading. */
function sumWaves(
  system: VortexSystem,
  loadings: readonly Float64Array[],
  depth: number,
  nu: number,
  u: number,
  real: Float64Array,
  imaginary: Float64Array,
): void {
  const secant = 1 + u * u;
  const root = Math.sqrt(secant);
  real.fill(0);
  imaginary.fill(0);
  for (let s = 0; s < system.strips; s++) {
    const i = segmentOf(system, s);
    const decay = Math.exp(-nu * (depth - system.placeZ[i]!) * secant);
    const across = Math.cos(nu * system.placeY[i]! * u * root);
    const along = nu * system.placeX[i]! * root;
    const reach = 2 * system.alongY[i]! * decay * across; // both halves
    const cosine = reach * Math.cos(along);
    const sine = reach * Math.sin(along);
    for (let a = 0; a < loadings.length; a++) {
      real[a]! += loadings[a]![s]! * cosine;
      imaginary[a]! += loadings[a]![s]! * sine;
    }
  }
}

function segmentOf({ wingSegments, rows }: VortexSystem, strip: number): number {
  const wing = wingSegments / rows;
  return strip < wing ? strip : wingSegments + strip - wing;
}

function largest(values: Float64Array, count: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) most = Math.max(most, values[i]!);
  return most;
}
