/** The stabilizer's surface where it stands on the foil, computed once for each stabilizer. */
import type { Design, Stabilizer } from '../solver/design/document.ts';
import { type Surface, surfaceOf } from '../solver/geometry/surface.ts';

const surfaces = new WeakMap<Stabilizer, Surface | null>();

/** Null without a stabilizer, or where none can be drawn. */
export function stabilizerSurface({ stabilizer }: Design): Surface | null {
  if (!stabilizer) return null;
  const known = surfaces.get(stabilizer);
  if (known !== undefined) return known;
  let surface: Surface | null = null;
  try {
    surface = surfaceOf(stabilizer, { arm: stabilizer.arm, height: stabilizer.height });
  } catch {
    // an unreachable drop or length: the page says so elsewhere
  }
  surfaces.set(stabilizer, surface);
  return surface;
}
