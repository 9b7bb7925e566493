/**
 * Unsteady thin-airfoil theory in two dimensions.
 *
 * T. Theodorsen, General Theory of Aerodynamic Instability and the Mechanism of Flutter, NACA Report 496, 1935:
 * C(k) = F + iG = H1(2)(k) / (H1(2)(k) + i H0(2)(k)), reduced frequency k = omega c/(2V).
 * I. E. Garrick, Propulsion of a Flapping and Oscillating Airfoil, NACA Report 567, 1936: a section that heaves with
 * amplitude h pulls, on average, with pi rho V^2 b (h/b)^2 k^2 (F^2 + G^2) per span, b = c/2, and needs the power
 * pi rho V^3 b (h/b)^2 k^2 F; efficiency (F^2 + G^2)/F.
 */
import { besselOne, besselZero } from '../numeric/bessel.ts';

export interface Theodorsen {
  f: number;
  g: number;
}

export function theodorsen(k: number): Theodorsen {
  if (k <= 0) return { f: 1, g: 0 };
  const zero = besselZero(k);
  const one = besselOne(k);
  const a = one.j + zero.y;
  const b = one.y - zero.j;
  const size = a * a + b * b;
  return {
    f: (one.j * a + one.y * b) / size,
    g: -(one.y * zero.y + one.j * zero.j) / size,
  };
}

/** Share of a quasi-steady lift that circulates at a reduced frequency: |C(k)|. */
export function liftShare(k: number): number {
  const { f, g } = theodorsen(k);
  return Math.hypot(f, g);
}

export interface Heave {
  thrust: number; // N per m of span, mean
  power: number; // W per m of span, mean
  efficiency: number;
}

/** Pure heave of a section: chord c (m), amplitude (m), angular frequency (1/s), speed (m/s), density (kg/m3). */
export function heave(c: number, amplitude: number, omega: number, speed: number, density: number): Heave {
  const b = c / 2;
  const k = (omega * b) / speed;
  const { f, g } = theodorsen(k);
  const scale = Math.PI * density * speed ** 2 * b * (amplitude / b) ** 2 * k * k;
  return { thrust: scale * (f * f + g * g), power: scale * f * speed, efficiency: (f * f + g * g) / f };
}
