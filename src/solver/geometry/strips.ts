/**
 * A surface cut into strips for the vortex system: flat arrays, starboard half, root to tip.
 *
 * Edges are spaced as sin(theta), theta uniform over the half (bunched at the tip), and the control stations sit at
 * the mid-angles. A second surface shares its edges in y with the first where the two overlap, so that a wake never
 * passes at a chance distance from a control station of the other surface (docs/theory.md, "Shared edges").
 *
 *      root                         tip          rows (M): each strip has M bound segments along the chord,
 *   a ---+---+--+-+|  bound segments             at a quarter of each row, and M control stations at three quarters.
 *        |   |  | ||  trailing legs along +x
 */
import { etaAtY, type Surface } from './surface.ts';
import { type StrutSlope, thinStrut } from './thin.ts';

/** One surface in strips. Row r of strip i has index r * count + i; nodes r * (count + 1) + i. Lengths in m. */
export interface Strips {
  count: number; // strips, N
  rows: number; // M
  /** Bound-line nodes, (N + 1) M. */
  nodeX: Float64Array;
  nodeY: Float64Array;
  nodeZ: Float64Array;
  /** Control stations, N M. */
  controlX: Float64Array;
  controlY: Float64Array;
  controlZ: Float64Array;
  /** Per strip, N. */
  eta: Float64Array; // control station
  quarterX: Float64Array; // quarter chord at the control station
  chord: Float64Array;
  width: Float64Array; // along the unrolled line
  droop: Float64Array; // rad, positive down; the untwisted normal is (0, sin droop, cos droop)
  pitch: Float64Array; // rad, zero-lift line to the x axis
}

/** What the vortex system is made of. */
export interface Parts {
  wing: Strips;
  stabilizer: Strips | null;
  strut: Strips | null;
}

/** Stations along a half: edges (N + 1) and control stations (N), as eta. */
export interface Stations {
  edges: Float64Array;
  controls: Float64Array;
}

const MERGED = 1e-9; // m: a height below this is the strut's foot itself

export type Spacing = 'cosine' | 'equal';

export function spaceStations(count: number, spacing: Spacing = 'cosine'): Stations {
  const place = spacing === 'equal' ? (t: number) => t : (t: number) => Math.sin(0.5 * Math.PI * t);
  return {
    edges: Float64Array.from({ length: count + 1 }, (_, k) => (k === count ? 1 : place(k / count))),
    controls: Float64Array.from({ length: count }, (_, k) => place((k + 0.5) / count)),
  };
}

/**
 * Stations of two surfaces with shared edges in y. The narrower one keeps its own sine spacing; the wider takes the
 * same y up to that tip and spends the rest of its strips beyond, bunched at both ends of that piece.
 * The wider surface may come out with a few strips more or, where both spans are equal, fewer than asked for.
 */
export function shareStations(
  wing: Surface,
  stabilizer: Surface,
  wingCount: number,
  stabilizerCount: number,
): { wing: Stations; stabilizer: Stations } {
  if (stabilizer.halfSpan <= wing.halfSpan) {
    const narrow = spaceStations(stabilizerCount);
    return { wing: follow(wing, stabilizer, narrow, wingCount), stabilizer: narrow };
  }
  const narrow = spaceStations(wingCount);
  return { wing: narrow, stabilizer: follow(stabilizer, wing, narrow, stabilizerCount) };
}

function follow(wide: Surface, narrow: Surface, stations: Stations, wanted: number): Stations {
  const inner = stations.controls.length;
  const tip = etaAtY(wide, narrow.halfSpan);
  // An odd number of wide strips to each narrow one keeps the narrow control station in the middle of a strip.
  const natural = (wanted * Math.asin(tip)) / (Math.PI / 2);
  const split = 2 * Math.max(0, Math.round((natural / inner - 1) / 2)) + 1;
  const shared = inner * split;
  const outer = tip > 1 - 1e-9 ? 0 : Math.max(wanted - shared, Math.min(6, wanted));
  const edges = new Float64Array(shared + outer + 1);
  const controls = new Float64Array(shared + outer);
  const narrowY = (t: number) => narrow.point(Math.sin(0.5 * Math.PI * t)).y;
  for (let k = 1; k < shared; k++) edges[k] = etaAtY(wide, narrowY(k / shared));
  for (let k = 0; k < shared; k++) controls[k] = etaAtY(wide, narrowY((k + 0.5) / shared));
  for (let k = 0; k <= outer; k++)
    edges[shared + k] = tip + (1 - tip) * 0.5 * (1 - Math.cos((Math.PI * k) / Math.max(1, outer)));
  for (let k = 0; k < outer; k++)
    controls[shared + k] = tip + (1 - tip) * 0.5 * (1 - Math.cos((Math.PI * (k + 0.5)) / outer));
  edges[shared + outer] = 1;
  return { edges, controls };
}

/** Cuts a surface at the given stations into `rows` chordwise rows. */
export function cutStrips(surface: Surface, stations: Stations, rows: number): Strips {
  const count = stations.controls.length;
  const strips = emptyStrips(count, rows);
  for (let k = 0; k <= count; k++) {
    const eta = stations.edges[k]!;
    const { y, z } = surface.point(eta);
    const x = surface.x(eta);
    const chord = surface.chord(eta);
    for (let r = 0; r < rows; r++) {
      const node = r * (count + 1) + k;
      strips.nodeX[node] = x + chord * ((r + 0.25) / rows - 0.25);
      strips.nodeY[node] = y;
      strips.nodeZ[node] = z;
    }
  }
  for (let k = 0; k < count; k++) {
    const eta = stations.controls[k]!;
    const { y, z } = surface.point(eta);
    const x = surface.x(eta);
    const chord = surface.chord(eta);
    strips.eta[k] = eta;
    strips.quarterX[k] = x;
    strips.chord[k] = chord;
    strips.width[k] = surface.halfLength * (stations.edges[k + 1]! - stations.edges[k]!);
    strips.droop[k] = surface.droop(eta);
    const { zeroLift, slope } = surface.lift(eta, chord);
    strips.pitch[k] = surface.setting(eta) - zeroLift;
    const aft = controlDistance(slope, rows);
    for (let r = 0; r < rows; r++) {
      const at = r * count + k;
      strips.controlX[at] = x + chord * ((r + 0.25) / rows - 0.25 + aft);
      strips.controlY[at] = y;
      strips.controlZ[at] = z;
    }
  }
  return strips;
}

/**
 * How far behind its bound vortex a row meets the flow, in chords: a vortex alone turns the stream by as much as a section
 * of that lift slope (per rad) asks for, half a row for 2 pi.
 */
function controlDistance(slope: number, rows: number): number {
  return slope / (4 * Math.PI * rows);
}

export function emptyStrips(count: number, rows: number): Strips {
  const nodes = () => new Float64Array((count + 1) * rows);
  const controls = () => new Float64Array(count * rows);
  const perStrip = () => new Float64Array(count);
  return {
    count,
    rows,
    nodeX: nodes(),
    nodeY: nodes(),
    nodeZ: nodes(),
    controlX: controls(),
    controlY: controls(),
    controlZ: controls(),
    eta: perStrip(),
    quarterX: perStrip(),
    chord: perStrip(),
    width: perStrip(),
    droop: perStrip(),
    pitch: perStrip(),
  };
}

/** The flat twin of the same span: every strip keeps its y, x, chord and pitch; the droop is taken out. */
export function flatten(strips: Strips, height: number): Strips {
  const flat: Strips = {
    ...strips,
    nodeZ: strips.nodeZ.slice().fill(height),
    controlZ: strips.controlZ.slice().fill(height),
    droop: new Float64Array(strips.count),
    width: new Float64Array(strips.count),
  };
  for (let k = 0; k < strips.count; k++) flat.width[k] = strips.nodeY[k + 1]! - strips.nodeY[k]!;
  return flat;
}

/**
 * The strut: a vertical surface in the plane of symmetry from its foot at (x, 0, 0) to `top`, x its quarter chord.
 * A node is put at `crossing` (the stabilizer's height), where the root wake of that surface passes.
 * Its untwisted "droop" is a right angle: the normal is (0, 1, 0). `slope` is how its section lifts.
 */
export function cutStrut(
  x: number,
  chord: number,
  top: number,
  count: number,
  rows: number,
  crossing: number | null,
  slope: StrutSlope = thinStrut,
): Strips {
  const strips = emptyStrips(count, rows);
  const place = (t: number) => 0.5 * top * (1 - Math.cos(Math.PI * t));
  const edges = Float64Array.from({ length: count + 1 }, (_, k) => place(k / count));
  const controls = Float64Array.from({ length: count }, (_, k) => place((k + 0.5) / count));
  if (crossing !== null && crossing > MERGED && crossing < top) {
    let nearest = 1;
    for (let k = 2; k < count; k++)
      if (Math.abs(edges[k]! - crossing) < Math.abs(edges[nearest]! - crossing)) nearest = k;
    edges[nearest] = crossing;
    for (const k of [nearest - 1, nearest]) controls[k] = 0.5 * (edges[k]! + edges[k + 1]!);
  }
  for (let k = 0; k <= count; k++)
    for (let r = 0; r < rows; r++) {
      strips.nodeX[r * (count + 1) + k] = x + chord * ((r + 0.25) / rows - 0.25);
      strips.nodeZ[r * (count + 1) + k] = edges[k]!;
    }
  for (let k = 0; k < count; k++) {
    strips.eta[k] = controls[k]! / top;
    strips.quarterX[k] = x;
    strips.chord[k] = chord;
    strips.width[k] = edges[k + 1]! - edges[k]!;
    strips.droop[k] = Math.PI / 2;
    const aft = controlDistance(slope(top - edges[k + 1]!, top - edges[k]!), rows);
    for (let r = 0; r < rows; r++) {
      strips.controlX[r * count + k] = x + chord * ((r + 0.25) / rows - 0.25 + aft);
      strips.controlZ[r * count + k] = controls[k]!;
    }
  }
  return strips;
}
