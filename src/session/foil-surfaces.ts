/** Surfaces and their stations as the drawings need them, each computed once. */
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

/** A place on the starboard half of a surface; lengths in m, droop in radians down. */
export interface Station {
  eta: number;
  x: number; // quarter chord
  y: number;
  z: number;
  chord: number;
  droop: number;
}

const COUNT = 40;
const sampled = new WeakMap<Surface, readonly Station[]>();

/** Stations from root to tip, closer towards the tip, where outlines turn fastest. */
export function stationsOf(surface: Surface): readonly Station[] {
  const known = sampled.get(surface);
  if (known) return known;
  const stations = Array.from({ length: COUNT + 1 }, (_, k): Station => {
    const eta = Math.sin((Math.PI * k) / (2 * COUNT));
    return {
      eta,
      ...surface.point(eta),
      x: surface.x(eta),
      chord: surface.chord(eta),
      droop: surface.droop(eta),
    };
  });
  sampled.set(surface, stations);
  return stations;
}
