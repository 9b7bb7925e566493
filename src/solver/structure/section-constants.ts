/**
 * Constants of a cross-section on a unit chord, from its outline: area, centroid, second moments, torsion constant,
 * shear centre; solid, or a skin of even thickness over a core. All per unit chord: areas times c^2, second moments and
 * torsion constant times c^4 give a section of chord c. x aft from the leading edge, y up from the chord line.
 *
 * Bending axes are taken along and square to the chord line through the centroid: the principal axes of a foil section
 * lie within a few degrees of them. Solid sections: line integrals round the outline, exact for its points (Green's
 * theorem). Skins and torsion: stations along the mean line (torsion.ts).
 */
import type { OutlinePoints } from '../geometry/outline.ts';
import { closedCellTorsion, solidTorsion, type ThinSection } from './torsion.ts';

export interface SectionConstants {
  area: number;
  x: number; // centroid
  y: number;
  flap: number; // second moment for bending square to the chord
  lag: number; // for bending along the chord
  torsion: number; // Saint-Venant's J
}

/** An outline with what does not depend on how it is built. */
export interface Section extends ThinSection {
  x: Float64Array; // mean line at the stations
  y: Float64Array;
  edges: Float64Array; // half thickness between the stations, leading edge to trailing edge
  points: OutlinePoints;
  thickness: number; // greatest, across the mean line
  /** Reach of the outline, for strain: lowest, highest, and both ends in x. */
  reach: { low: number; high: number; nose: number; tail: number };
}

/** `points` from `outlinePoints` with a count of 4 m + 1: each station takes two intervals of it. */
export function sectionOf(points: OutlinePoints): Section {
  const { x, y } = points;
  const last = x.length - 1;
  const nose = last / 2;
  const count = nose / 2;
  const middle = (k: number) => [0.5 * (x[nose - k]! + x[nose + k]!), 0.5 * (y[nose - k]! + y[nose + k]!)];
  const halfAt = (k: number) => 0.5 * Math.hypot(x[nose - k]! - x[nose + k]!, y[nose - k]! - y[nose + k]!);
  const each = () => new Float64Array(count);
  const section = { x: each(), y: each(), along: each(), width: each(), half: each() };
  const edges = Float64Array.from({ length: count + 1 }, (_, k) => halfAt(2 * k));
  let along = 0;
  for (let k = 0; k < count; k++) {
    const [fromX, fromY] = middle(2 * k) as [number, number];
    const [toX, toY] = middle(2 * k + 2) as [number, number];
    const [atX, atY] = middle(2 * k + 1) as [number, number];
    const width = Math.hypot(toX - fromX, toY - fromY);
    section.x[k] = atX;
    section.y[k] = atY;
    section.width[k] = width;
    section.along[k] = along + 0.5 * width;
    section.half[k] = halfAt(2 * k + 1);
    along += width;
  }
  const thickness = 2 * Math.max(...section.half);
  const reach = { low: Math.min(...y), high: Math.max(...y), nose: Math.min(...x), tail: Math.max(...x) };
  return { ...section, edges, points, thickness, reach };
}

/** The whole outline of one material. */
export function solidConstants(section: Section): SectionConstants {
  return { ...outlineConstants(section.points), torsion: solidTorsion(section) };
}

/** Line integrals round straight-sided points, closed at the trailing edge. */
function outlineConstants({ x, y }: OutlinePoints): Omit<SectionConstants, 'torsion'> {
  const n = x.length;
  let area = 0;
  let momentX = 0;
  let momentY = 0;
  let squareX = 0;
  let squareY = 0;
  for (let k = 0; k < n; k++) {
    const [x0, y0] = [x[k]!, y[k]!];
    const [x1, y1] = [x[(k + 1) % n]!, y[(k + 1) % n]!];
    const cross = x0 * y1 - x1 * y0;
    area += cross / 2;
    momentX += (cross * (x0 + x1)) / 6;
    momentY += (cross * (y0 + y1)) / 6;
    squareX += (cross * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
    squareY += (cross * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
  }
  const [atX, atY] = [momentX / area, momentY / area];
  return { area, x: atX, y: atY, flap: squareY - area * atY * atY, lag: squareX - area * atX * atX };
}

/** A skin of thickness `wall` (share of the chord, square to the surface) and the core inside it. */
export function shellConstants(
  section: Section,
  wall: number,
): { skin: SectionConstants; core: SectionConstants } {
  const { half } = section;
  const steep = steepness(section);
  const inner = half.map((h, k) => Math.max(0, h - wall * steep[k]!));
  const core = layerConstants(section, new Float64Array(half.length), inner);
  const skin = layerConstants(section, inner, half);
  const coreTorsion = core.area > 0 ? solidTorsion({ ...section, half: inner }) : 0;
  // Bredt's wall holds for thin skins, the solid less its core for thick ones: mixed by how much core there is.
  const filled = core.area / (core.area + skin.area);
  const thick = solidTorsion(section) - coreTorsion;
  const thin = cellTorsion(section, inner, steep, wall);
  return {
    skin: { ...skin, torsion: filled * thin + (1 - filled) * thick },
    core: { ...core, torsion: coreTorsion },
  };
}

/** Bredt's constant of the part that has a core: beyond it the skins lie on one another and close the cell. */
function cellTorsion(
  { half, width }: Section,
  inner: Float64Array,
  steep: Float64Array,
  wall: number,
): number {
  let enclosed = 0;
  let perimeter = 0;
  for (let k = 0; k < half.length; k++) {
    if (inner[k]! <= 0) continue;
    enclosed += width[k]! * (half[k]! + inner[k]!);
    perimeter += 2 * width[k]! * steep[k]!;
  }
  return closedCellTorsion(enclosed, perimeter, wall);
}

/** Material between two distances from the mean line, on both sides of it. */
function layerConstants(
  { x, y, width }: Section,
  from: Float64Array,
  to: Float64Array,
): Omit<SectionConstants, 'torsion'> {
  let [area, momentX, momentY, squareX, squareY] = [0, 0, 0, 0, 0];
  for (let k = 0; k < x.length; k++) {
    const slice = 2 * width[k]! * (to[k]! - from[k]!);
    area += slice;
    momentX += slice * x[k]!;
    momentY += slice * y[k]!;
    squareX += slice * x[k]! ** 2;
    squareY += slice * y[k]! ** 2 + (2 / 3) * width[k]! * (to[k]! ** 3 - from[k]! ** 3);
  }
  if (area === 0) return { area: 0, x: 0, y: 0, flap: 0, lag: 0 };
  const [atX, atY] = [momentX / area, momentY / area];
  return { area, x: atX, y: atY, flap: squareY - area * atY * atY, lag: squareX - area * atX * atX };
}

/** Length of the surface over its run along the mean line. */
function steepness({ width, edges }: Section): Float64Array {
  return width.map((run, k) => Math.hypot(run, edges[k + 1]! - edges[k]!) / run);
}

/**
 * x of the shear centre of a solid section, for a load square to the chord: from the centroid by (1 + 3 nu)/(1 + nu)
 * times the way to the centre of the thickness cubed (W. J. Duncan, D. L. Ellis, C. Scruton, Phil. Mag. 16, 1933; tabled
 * in R. J. Roark, Formulas for Stress and Strain; both from memory). It is where a load bends without twisting.
 */
export function solidShearCentre({ x, width, half }: Section, centroid: number, poisson: number): number {
  let sum = 0;
  let moment = 0;
  for (let k = 0; k < x.length; k++) {
    const stiffness = width[k]! * half[k]! ** 3;
    sum += stiffness;
    moment += stiffness * x[k]!;
  }
  return centroid + ((1 + 3 * poisson) / (1 + poisson)) * (moment / sum - centroid);
}

/**
 * x of the shear centre of a skin as a closed cell of even wall: shear flow Q(s) less its mean round the cell
 * (S. Timoshenko, Strength of Materials, part I, art. on shear centre; T. H. G. Megson, Aircraft Structures, ch. 17).
 */
export function cellShearCentre(section: Section): number {
  const { x, width, half, edges } = section;
  const steep = steepness(section);
  const n = x.length;
  const flow = new Float64Array(n);
  let first = 0; // of the skin's area from the nose, over one side
  let mean = 0;
  let length = 0;
  for (let k = 0; k < n; k++) {
    const skin = width[k]! * steep[k]!;
    flow[k] = first + 0.5 * skin * half[k]!;
    first += skin * half[k]!;
    mean += flow[k]! * skin;
    length += skin;
  }
  mean /= length;
  let force = 0;
  let moment = 0;
  for (let k = 0; k < n; k++) {
    const rise = edges[k + 1]! - edges[k]!;
    const q = flow[k]! - mean;
    force += q * rise;
    moment += q * (x[k]! * rise - half[k]! * width[k]!);
  }
  return moment / force;
}
