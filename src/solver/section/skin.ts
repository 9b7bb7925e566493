/**
 * How smooth is smooth enough: friction of plates, and heights that a laminar or a turbulent layer does not notice.
 * Pure functions in SI units; every law names its source.
 */

/** Laminar plate, one side: local and mean friction coefficient. H. Blasius, Z. Math. Phys. 56 (1908) 1. */
export function blasiusLocal(reynoldsByArc: number): number {
  return 0.664115 / Math.sqrt(reynoldsByArc);
}

export function blasiusMean(reynolds: number): number {
  return 1.328229 / Math.sqrt(reynolds);
}

/** Turbulent plate, local friction coefficient. F. M. White, Viscous Fluid Flow, 2nd ed. 1991, eq. 6-78. */
export function turbulentLocal(reynoldsByArc: number): number {
  return 0.455 / Math.log(0.06 * reynoldsByArc) ** 2;
}

/** Fully turbulent plate, mean. L. Prandtl and H. Schlichting: H. Schlichting, Boundary-Layer Theory, ch. XXI. */
export function prandtlSchlichting(reynolds: number): number {
  return 0.455 / Math.log10(reynolds) ** 2.58;
}

/** Ship model correlation line, mean; it holds some form effect, so it lies above a plate's. ITTC 1957. */
export function ittcLine(reynolds: number): number {
  return 0.075 / (Math.log10(reynolds) - 2) ** 2;
}

/**
 * Plate that turns turbulent at a given Reynolds number: the laminar run's gain taken off, (C_turbulent - C_laminar) at
 * transition times its share of the length. Schlichting, ch. XXI, where the product is tabulated rounded as A.
 */
export function transitionalPlate(reynolds: number, reynoldsAtTransition: number): number {
  if (reynolds <= reynoldsAtTransition) return blasiusMean(reynolds);
  const gain = prandtlSchlichting(reynoldsAtTransition) - blasiusMean(reynoldsAtTransition);
  return prandtlSchlichting(reynolds) - (gain * reynoldsAtTransition) / reynolds;
}

/** A laminar layer at a place, as far as a small bump feels it. */
export interface WallFlow {
  speed: number; // m/s at the edge of the layer
  slope: number; // 1/s, du/dy at the wall
  viscosity: number; // m2/s
}

/** Wall flow of a laminar plate, x metres behind its edge. */
export function plateWallFlow(speed: number, x: number, viscosity: number): WallFlow {
  return { speed, viscosity, slope: WALL_SLOPE * speed * Math.sqrt(speed / (viscosity * x)) };
}

/** Wall flow of a layer whose friction coefficient, by the speed at its edge, is known. */
export function wallFlow(speed: number, friction: number, viscosity: number): WallFlow {
  return { speed, viscosity, slope: (0.5 * friction * speed * speed) / viscosity };
}

/**
 * Reynolds number of an isolated bump, by its height and the speed of the water there without it, at which turbulence
 * starts right behind it. A. L. Braslow and E. C. Knox, NACA TN 4363 (1958); A. E. von Doenhoff and A. L. Braslow
 * (1961): about 600, 450 to 600 in use (from memory).
 */
export const CRITICAL_BUMP = 600;

/**
 * Height in m of the bump that a laminar layer just bears, from u(k) k/nu = `critical`. The profile is that of the
 * plate, stretched to the wall's slope: exact on a plate, leading-order right elsewhere.
 */
export function criticalBump({ speed, slope, viscosity }: WallFlow, critical = CRITICAL_BUMP): number {
  if (!(slope > 0)) return 0; // a layer about to leave the wall bears nothing
  const unit = (WALL_SLOPE * speed) / slope; // m per unit of the similarity coordinate
  let low = 0;
  let high = (critical * viscosity) / speed + 10 * unit;
  for (let k = 0; k < 60; k++) {
    const middle = 0.5 * (low + high);
    if ((speed * plateProfile(middle / unit) * middle) / viscosity < critical) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/**
 * Two-dimensional faults across the stream that leave a laminar layer be, by the Reynolds number of their height or
 * width and the speed of the stream. J. P. Nenni and G. L. Gluyas, Aeronaut. Astronaut. 4 (1966) 52 (from memory):
 * forward-facing step 1800, aft-facing step 900, gap 15000. A second-hand copy has the two steps the other way round:
 * until the document is seen, 900 is taken for both.
 */
export const CRITICAL_STEP = 900;
export const CRITICAL_GAP = 15000;

export function criticalStep(speed: number, viscosity: number): number {
  return (CRITICAL_STEP * viscosity) / speed;
}

export function criticalGap(speed: number, viscosity: number): number {
  return (CRITICAL_GAP * viscosity) / speed;
}

/**
 * Height over length of a single wave that leaves a laminar layer be; a third of it where waves follow one another. B.
 * H. Carmichael, as cited in B. J. Holmes et al., NASA TP 2256 (1984), from memory; unswept. To be read as +-40 %.
 */
export function criticalWave(chord: number, length: number, reynolds: number): number {
  return Math.sqrt((59000 * chord) / (length * reynolds ** 1.5));
}

/** Height of evenly spread roughness that a turbulent layer does not notice: u k/nu = 100. Schlichting, ch. XXI. */
export function smoothHeight(speed: number, viscosity: number): number {
  return (100 * viscosity) / speed;
}

/** f''(0) of the Blasius profile. */
const WALL_SLOPE = 0.332057;

const PROFILE_STEP = 0.05;
const PROFILE_END = 8;
const profile = blasiusProfile();

/** u over the edge speed in a laminar plate's layer, at y sqrt(u/(nu x)). */
export function plateProfile(eta: number): number {
  if (eta >= PROFILE_END) return 1;
  const place = eta / PROFILE_STEP;
  const k = Math.floor(place);
  return profile[k]! + (place - k) * (profile[k + 1]! - profile[k]!);
}

/** Integrates 2 f''' + f f'' = 0 from the wall by the classical Runge-Kutta rule; values of f'. */
function blasiusProfile(): Float64Array {
  const count = Math.round(PROFILE_END / PROFILE_STEP) + 1;
  const out = new Float64Array(count + 1).fill(1);
  let state = [0, 0, WALL_SLOPE];
  const rates = ([f, g, h]: number[]) => [g!, h!, -0.5 * f! * h!];
  const moved = (by: number[], step: number) => state.map((value, i) => value + step * by[i]!);
  for (let k = 0; k < count; k++) {
    out[k] = state[1]!;
    const a = rates(state);
    const b = rates(moved(a, 0.5 * PROFILE_STEP));
    const c = rates(moved(b, 0.5 * PROFILE_STEP));
    const d = rates(moved(c, PROFILE_STEP));
    state = state.map((value, i) => value + (PROFILE_STEP / 6) * (a[i]! + 2 * b[i]! + 2 * c[i]! + d[i]!));
  }
  return out;
}
