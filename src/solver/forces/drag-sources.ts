/**
 * Drag that is not induced: one function a source, each with its correlation. Arguments SI; results in N.
 *
 * S. F. Hoerner, Fluid-Dynamic Drag, 1965 (from memory): chapter 6 form factors, chapter 8 junctions, chapter 10 spray.
 * Friction: ITTC-1957 line, 8th International Towing Tank Conference, Madrid 1957.
 */
import type { Fuselage, Strut } from '../design/document.ts';

/** Stream speed with what the drag laws need of the water. */
export interface Stream {
  speed: number; // m/s
  density: number; // kg/m3
  viscosity: number; // m2/s, kinematic
}

/** Dynamic pressure, N/m2. */
export function dynamicPressure({ speed, density }: Stream): number {
  return 0.5 * density * speed * speed;
}

/** Friction coefficient of a turbulent flat plate, one side: ITTC-1957, 0.075/(log10 Re - 2)^2. */
export function turbulentFriction(reynolds: number): number {
  return 0.075 / (Math.log10(Math.max(reynolds, 2e4)) - 2) ** 2;
}

/** Form factor of a section on the friction of its two sides: 1 + 2 t/c + 60 (t/c)^4 (Hoerner ch. 6). */
export function sectionForm(thicknessRatio: number): number {
  return 1 + 2 * thicknessRatio + 60 * thicknessRatio ** 4;
}

/** Profile drag of the strut's wetted length, turbulent throughout. */
export function strutFrictionDrag(strut: Strut, wetted: number, stream: Stream): number {
  const reynolds = (stream.speed * strut.chord) / stream.viscosity;
  const cd = 2 * turbulentFriction(reynolds) * sectionForm(strut.thickness / strut.chord);
  return cd * strut.chord * wetted * dynamicPressure(stream);
}

/** Friction of the fuselage as a slender body: form 1 + 1.5 (d/l)^1.5 + 7 (d/l)^3 on the wetted area pi d l (ch. 6). */
export function fuselageDrag(fuselage: Fuselage, length: number, stream: Stream): number {
  const slenderness = fuselage.diameter / length;
  const form = 1 + 1.5 * slenderness ** 1.5 + 7 * slenderness ** 3;
  const friction = turbulentFriction((stream.speed * length) / stream.viscosity);
  return friction * form * Math.PI * fuselage.diameter * length * dynamicPressure(stream);
}

/** One junction of a section of thickness t and chord c with a wall: q t^2 (17 (t/c)^2 - 0.05), never negative (ch. 8). */
export function junctionDrag(thickness: number, chord: number, stream: Stream): number {
  const ratio = thickness / chord;
  return dynamicPressure(stream) * thickness ** 2 * Math.max(0, 17 * ratio * ratio - 0.05);
}

/** Spray thrown up by a strut that pierces the surface: 0.24 q t^2 (ch. 10). */
export function sprayDrag(thickness: number, stream: Stream): number {
  return 0.24 * dynamicPressure(stream) * thickness ** 2;
}
