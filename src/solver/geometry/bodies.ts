/**
 * Strut and fuselage as closed bodies, where they stand on the craft, and the curves they are made of. Lengths in m;
 * x aft from the origin.
 */
import type { Design, Fuselage, Strut } from '../design/document.ts';
import { evenly, tracePolyline } from '../numeric/refine.ts';
import { fourDigitThickness } from './outline.ts';
import type { Pair, Skin } from './skin.ts';
import { type Mesh, MeshBuilder, outward } from './triangles.ts';

/** How finely a body is cut: how far a curve may stand off its polyline (m), points round a fuselage. */
export interface Fineness {
  tolerance: number;
  around: number;
}

const TO_CUT: Fineness = { tolerance: 2e-6, around: 96 };
const NOSE_LENGTH = 2; // diameters, half an ellipse

/**
 * The strut's section from its quarter chord, trailing edge over one side to the nose and back. It is taken as a
 * symmetric four-digit one of the document's thickness (the document names none).
 */
export function strutLoop({ chord, thickness }: Strut, tolerance: number): Pair[] {
  const digits = { camber: 0, position: 0, thickness: thickness / chord };
  const at = (share: number): Pair => {
    const x = 0.5 * (1 + Math.cos(Math.PI * share));
    const half = fourDigitThickness(digits, x) * (share <= 1 ? 1 : -1);
    return [(x - 0.25) * chord, half * chord];
  };
  return tracePolyline(at, evenly(0, 2, 32), tolerance);
}

/** x of the fuselage's end: the stabilizer's trailing edge at the root, as the length is measured on screen. */
export function fuselageEnd({ stabilizer: drawn, strut }: Design, stabilizer: Skin | null): number {
  if (drawn && stabilizer) return drawn.arm + 0.75 * stabilizer.rib(0).chord;
  return (strut?.x ?? 0) + 0.75 * (strut?.chord ?? 0.1);
}

/** x and radius of the fuselage from the point of its nose to its end. */
export function fuselageProfile({ diameter, nose }: Fuselage, end: number, tolerance: number): Pair[] {
  const radius = 0.5 * diameter;
  const length = Math.min(2 * NOSE_LENGTH * radius, 0.5 * (end + nose));
  const curve = (t: number): Pair => [length * (1 - Math.cos(t)) - nose, radius * Math.sin(t)];
  return [...tracePolyline(curve, evenly(0, 0.5 * Math.PI, 8), tolerance), [end, radius]];
}

/** From its foot to the board, one section all the way. */
export function strutBody(strut: Strut, { tolerance }: Fineness = TO_CUT): Mesh {
  const builder = new MeshBuilder();
  const section = strutLoop(strut, tolerance);
  const ring = (z: number) => section.map(([x, y]) => builder.vertex([(strut.x ?? 0) + x, y, z]));
  const foot = ring(0);
  const head = ring(strut.length);
  const last = foot.length - 1;
  for (let k = 0; k <= last; k++) {
    const next = (k + 1) % foot.length;
    builder.quad(foot[k]!, foot[next]!, head[next]!, head[k]!);
  }
  // Upper and lower side have the same places along the chord: the caps are slices between them.
  for (let k = 0; k < last - k; k++) {
    builder.quad(head[k]!, head[k + 1]!, head[last - k - 1]!, head[last - k]!);
    builder.quad(foot[last - k]!, foot[last - k - 1]!, foot[k + 1]!, foot[k]!);
  }
  return outward(builder.mesh());
}

/** The profile turned about its axis; null where there is no fuselage. */
export function fuselageBody(
  design: Design,
  stabilizer: Skin | null,
  { tolerance, around }: Fineness = TO_CUT,
): Mesh | null {
  if (!design.fuselage) return null;
  const profile = fuselageProfile(design.fuselage, fuselageEnd(design, stabilizer), tolerance);
  const builder = new MeshBuilder();
  const rings = profile.slice(1).map(([x, radius]) =>
    Array.from({ length: around }, (_, k) => {
      const angle = (2 * Math.PI * k) / around;
      return builder.vertex([x, radius * Math.cos(angle), radius * Math.sin(angle)]);
    }),
  );
  const nose = builder.vertex([profile[0]![0], 0, 0]);
  const tail = builder.vertex([profile[profile.length - 1]![0], 0, 0]);
  for (let k = 0; k < around; k++) {
    const next = (k + 1) % around;
    builder.triangle(nose, rings[0]![next]!, rings[0]![k]!);
    for (let r = 1; r < rings.length; r++)
      builder.quad(rings[r - 1]![k]!, rings[r - 1]![next]!, rings[r]![next]!, rings[r]![k]!);
    const end = rings[rings.length - 1]!;
    builder.triangle(tail, end[k]!, end[next]!);
  }
  return outward(builder.mesh());
}
