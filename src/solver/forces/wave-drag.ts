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
import type { Flow } from '../vortex/flow.ts';
import { inducedDrag } from '../vortex/wake.ts';

const GRAVITY = 9.80665; // m/s2, standard
const LEAST_PANELS = 120;

/**
 * Wave drag per rho V^2 (m2) of the flow's gathered strip circulations at `depth` (m) and speed (m/s).
 * `infinite` is the induced drag already known, per rho V^2. Refills the flow's wake array.
 */
export function waveDrag(flow: Flow, depth: number, speed: number, infinite: number): number {
  const lid = inducedDrag(flow.system.fillWake(-1), flow.stripCirculation);
  return lid + waveIntegral(flow, depth, GRAVITY / speed ** 2) - infinite;
}

/**
 * The integral, with u = tan t: sec^5 t dt = (1 + u^2)^(3/2) du. The integrand is even and analytic in u and falls as
 * exp(-2 nu d u^2), so the trapezoidal rule reaches rounding once its step resolves the widest phase, nu b u^2.
 */
function waveIntegral(flow: Flow, depth: number, nu: number): number {
  const { system, stripCirculation } = flow;
  const shallowest = depth - highest(flow);
  const end = Math.sqrt(18 / (nu * shallowest));
  const panels = Math.max(LEAST_PANELS, Math.ceil(2.6 * nu * widest(flow) * end * end));
  const step = end / panels;
  let sum = 0;
  for (let k = 0; k <= panels; k++) {
    const u = k * step;
    const secant = 1 + u * u;
    const root = Math.sqrt(secant);
    let real = 0;
    let imaginary = 0;
    for (let s = 0; s < system.strips; s++) {
      const i = segmentOf(flow, s);
      const decay = Math.exp(-nu * (depth - system.middleZ[i]!) * secant);
      const across = Math.cos(nu * system.middleY[i]! * u * root);
      const along = nu * system.middleX[i]! * root;
      const strength = 2 * stripCirculation[s]! * system.alongY[i]! * decay * across; // both halves
      real += strength * Math.cos(along);
      imaginary += strength * Math.sin(along);
    }
    sum += (k === 0 ? 0.5 : 1) * secant * root * (real * real + imaginary * imaginary);
  }
  return (nu * nu * sum * step) / Math.PI;
}

function segmentOf(flow: Flow, strip: number): number {
  const { wingSegments, rows } = flow.system;
  const wing = wingSegments / rows;
  return strip < wing ? strip : wingSegments + strip - wing;
}

function widest(flow: Flow): number {
  let widest = 0;
  for (let i = 0; i < flow.system.foil; i++) widest = Math.max(widest, flow.system.middleY[i]!);
  return widest;
}

function highest(flow: Flow): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < flow.system.foil; i++) top = Math.max(top, flow.system.middleZ[i]!);
  return top;
}
