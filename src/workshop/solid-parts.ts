/** Strut and fuselage as closed bodies, where they stand on the craft. Lengths in m. */
import type { Design, Strut } from '../solver/design/document.ts';
import type { Skin } from '../solver/geometry/skin.ts';
import { type Mesh, MeshBuilder, outward } from '../solver/geometry/triangles.ts';
import { fuselageSide, strutSection } from './part-drawings.ts';

const AROUND = 96; // points round the fuselage

/** From its foot to the board, one section all the way. */
export function strutBody(strut: Strut): Mesh {
  const section = strutSection(strut).paths[0]!.points;
  const builder = new MeshBuilder();
  const ring = (z: number) =>
    section.map(([x, y]) => builder.vertex([(strut.x ?? 0) + x / 1000, y / 1000, z]));
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

/** The side view turned about its axis; null where there is no fuselage. */
export function fuselageBody(design: Design, stabilizer: Skin | null): Mesh | null {
  const drawing = fuselageSide(design, stabilizer);
  if (!drawing) return null;
  const profile = drawing.paths[0]!.points.filter(([, y]) => y > 1e-9);
  const start = drawing.paths[0]!.points.reduce((least, [x]) => Math.min(least, x), Infinity);
  const builder = new MeshBuilder();
  const rings = profile.map(([x, radius]) =>
    Array.from({ length: AROUND }, (_, k) => {
      const angle = (2 * Math.PI * k) / AROUND;
      return builder.vertex([x / 1000, (radius * Math.cos(angle)) / 1000, (radius * Math.sin(angle)) / 1000]);
    }),
  );
  const nose = builder.vertex([start / 1000, 0, 0]);
  const tail = builder.vertex([profile[profile.length - 1]![0] / 1000, 0, 0]);
  for (let k = 0; k < AROUND; k++) {
    const next = (k + 1) % AROUND;
    builder.triangle(nose, rings[0]![next]!, rings[0]![k]!);
    for (let r = 1; r < rings.length; r++)
      builder.quad(rings[r - 1]![k]!, rings[r - 1]![next]!, rings[r]![next]!, rings[r]![k]!);
    const end = rings[rings.length - 1]!;
    builder.triangle(tail, end[k]!, end[next]!);
  }
  return outward(builder.mesh());
}
