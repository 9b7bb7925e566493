/**
 * The vortex system of wing, stabilizer and strut under the free surface, split by symmetry.
 *
 * Unknowns are the circulations of the starboard half's bound segments (m2/s per unit stream speed). Everything is
 * solved for a stream of speed 1; forces scale with density and speed squared. x aft, y starboard, z up, metres.
 *
 * Four copies of each starboard line act on a point P = (x, y, z), with h the depth of the origin:
 *   itself                            seen from (x,  y, z)         signs ( 1,  1, 1)
 *   its mirror to port                seen from (x, -y, z)         signs ( 1, -1, 1)
 *   its image above the free surface  seen from (x,  y, 2h - z)    signs (-1, -1, 1)
 *   the image's mirror                seen from (x, -y, 2h - z)    signs (-1,  1, 1)
 * The image keeps endpoint order and circulation (infinite Froude number: no perturbation potential on the surface).
 * Symmetric loading adds the mirrors, antisymmetric loading subtracts them: two systems of half size. The strut lies
 * in the plane of symmetry, carries antisymmetric load only and is its own mirror.
 *
 * Tangency uses the strip's untwisted normal for what the vortices induce, the turned normal (twist, incidence,
 * zero-lift angle) for the stream: so all solutions are linear in their causes. Legs run along the design's x.
 * Source: J. Katz and A. Plotkin, Low-Speed Aerodynamics, 2nd ed. 2001, ch. 12; splitting as in docs/theory.md.
 */
import type { Parts, Strips } from '../geometry/strips.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import type { Field } from './causes.ts';
import { addMirroredWake, type BoundLine, MEAN_DISTANCE } from './filament.ts';
import { forcePlace } from './force-place.ts';
import { fillInfluence, type Influence, makeInfluence, splitRows } from './influence.ts';

/** Far behind the foil: [i * strips + j] is the flow that strip j's circulation makes through strip i, per unit of it. */
export interface Wakes {
  free: Float64Array; // under the free surface at infinite Froude number: images of the same sign
  lid: Float64Array; // under a rigid lid (Froude number zero): images of opposite sign
}

export const WING = 0;
export const STABILIZER = 1;
export const STRUT = 2;

/**
 * Owns all arrays for given strip counts; `load` refills them in place, so a dragged handle allocates nothing.
 * Whatever it hands out is overwritten by the next `load`.
 */
export class VortexSystem {
  readonly foil: number; // segments of wing and stabilizer
  readonly all: number; // with the strut
  readonly strips: number; // strips of wing and stabilizer
  readonly wingSegments: number;
  readonly rows: number;

  readonly nodes: Float64Array; // of the bound lines, x, y and z in turn
  readonly controlX: Float64Array;
  readonly controlY: Float64Array;
  readonly controlZ: Float64Array;
  readonly normalY: Float64Array; // untwisted normal (0, normalY, normalZ)
  readonly normalZ: Float64Array;
  readonly sinPitch: Float64Array; // of the zero-lift line
  readonly cosPitch: Float64Array;
  readonly placeX: Float64Array; // on each bound segment, where its force is taken
  readonly placeY: Float64Array;
  readonly placeZ: Float64Array;
  readonly alongX: Float64Array; // bound segment, root to tip
  readonly alongY: Float64Array;
  readonly alongZ: Float64Array;
  readonly surfaceOf: Uint8Array;
  readonly spread: Float64Array; // m, mean distance across the chord

  readonly lines: BoundLine[] = [];
  readonly foilLines: BoundLine[];
  readonly strutLines: BoundLine[];
  height = Number.POSITIVE_INFINITY; // of the free surface above the origin
  private readonly wakeLines: Array<BoundLine & { segment: number }> = []; // one a surface, columns by strip
  private readonly influence: Influence;
  private readonly symmetricPivots: Int32Array;
  private readonly antisymmetricPivots: Int32Array;
  private readonly wakes: Wakes;

  constructor(wing: number, stabilizer: number, strut: number, rows: number) {
    const counts = [wing, stabilizer, strut];
    let node = 0;
    let column = 0;
    let strip = 0;
    counts.forEach((count, surface) => {
      if (count > 0 && surface !== STRUT) {
        this.wakeLines.push({ node, column: strip, count, surface, core: 0, segment: column });
        strip += count;
      }
      for (let r = 0; r < rows && count > 0; r++) {
        this.lines.push({ node, column, count, surface, core: 0 });
        node += count + 1;
        column += count;
      }
    });
    const foil = (wing + stabilizer) * rows;
    const all = foil + strut * rows;
    this.foil = foil;
    this.all = all;
    this.rows = rows;
    this.strips = wing + stabilizer;
    this.wingSegments = wing * rows;
    this.foilLines = this.lines.filter((line) => line.surface !== STRUT);
    this.strutLines = this.lines.filter((line) => line.surface === STRUT);
    const each = (size: number) => new Float64Array(size);
    this.nodes = each(3 * node);
    this.controlX = each(all);
    this.controlY = each(all);
    this.controlZ = each(all);
    this.normalY = each(all);
    this.normalZ = each(all);
    this.sinPitch = each(all);
    this.cosPitch = each(all);
    this.placeX = each(all);
    this.placeY = each(all);
    this.placeZ = each(all);
    this.alongX = each(all);
    this.alongY = each(all);
    this.alongZ = each(all);
    this.surfaceOf = new Uint8Array(all);
    this.spread = each(all);
    this.influence = makeInfluence(foil, all);
    this.symmetricPivots = new Int32Array(foil);
    this.antisymmetricPivots = new Int32Array(all);
    this.wakes = { free: each(this.strips * this.strips), lid: each(this.strips * this.strips) };
  }

  /** Takes new geometry of the same counts; `depth` of the origin below the surface, null in deep water. */
  load(parts: Parts, depth: number | null): void {
    this.height = depth ?? Number.POSITIVE_INFINITY;
    let node = 0;
    let row = 0;
    [parts.wing, parts.stabilizer, parts.strut].forEach((strips, surface) => {
      if (!strips) return;
      for (let k = 0, at = 3 * node; k < strips.nodeX.length; k++, at += 3) {
        this.nodes[at] = strips.nodeX[k]!;
        this.nodes[at + 1] = strips.nodeY[k]!;
        this.nodes[at + 2] = strips.nodeZ[k]!;
      }
      this.controlX.set(strips.controlX, row);
      this.controlY.set(strips.controlY, row);
      this.controlZ.set(strips.controlZ, row);
      this.loadSegments(strips, surface, row);
      for (const line of this.lines)
        if (line.surface === surface) line.core = strips.chord[0]! / (Math.PI * strips.rows);
      node += strips.nodeX.length;
      row += strips.controlX.length;
    });
  }

  private loadSegments(strips: Strips, surface: number, row: number): void {
    const { count, rows } = strips;
    for (let r = 0; r < rows; r++)
      for (let k = 0; k < count; k++) {
        const i = row + r * count + k;
        const a = r * (count + 1) + k;
        this.normalY[i] = Math.sin(strips.droop[k]!);
        this.normalZ[i] = Math.cos(strips.droop[k]!);
        this.sinPitch[i] = Math.sin(strips.pitch[k]!);
        this.cosPitch[i] = Math.cos(strips.pitch[k]!);
        this.alongX[i] = strips.nodeX[a + 1]! - strips.nodeX[a]!;
        this.alongY[i] = strips.nodeY[a + 1]! - strips.nodeY[a]!;
        this.alongZ[i] = strips.nodeZ[a + 1]! - strips.nodeZ[a]!;
        const share = placeShare(strips, r * count + k, a);
        this.placeX[i] = strips.nodeX[a]! + share * this.alongX[i]!;
        this.placeY[i] = strips.nodeY[a]! + share * this.alongY[i]!;
        this.placeZ[i] = strips.nodeZ[a]! + share * this.alongZ[i]!;
        this.spread[i] = (MEAN_DISTANCE * strips.chord[k]!) / rows;
        this.surfaceOf[i] = surface;
      }
  }

  /** Fills what `factorise` and the fields need; as in influence.ts. */
  fillInfluence(antisymmetric: boolean, deep: VortexSystem | null = null): void {
    fillInfluence(this, this.influence, antisymmetric, deep?.influence ?? null);
  }

  /** Factors what `fillInfluence` filled. Throws when two strips coincide. */
  factorise(antisymmetric: boolean): void {
    factor(this.influence.symmetric, this.foil, this.symmetricPivots);
    if (antisymmetric) factor(this.influence.antisymmetric, this.all, this.antisymmetricPivots, this.foil);
  }

  /** Circulations that cancel the flow `b` through the strips; `b` (foil) is overwritten by them. */
  solveSymmetric(b: Float64Array): void {
    solveFactored(this.influence.symmetric, this.foil, this.symmetricPivots, b);
  }

  /** The same for antisymmetric flow, with the strut (`b`: all) or for the foil alone (the strut's part is ignored). */
  solveAntisymmetric(b: Float64Array, withStrut: boolean): void {
    solveFactored(
      this.influence.antisymmetric,
      this.all,
      this.antisymmetricPivots,
      b,
      withStrut ? this.all : this.foil,
    );
  }

  /** Adds to `field` (all segments) what symmetric circulations induce; `rowCount` segments from the first. */
  addSymmetricField(circulation: Float64Array, field: Field, rowCount: number): void {
    multiplyAdd(this.influence.symmetricField, this.foil, circulation, this.foil, field, rowCount);
  }

  /** Adds to `field` (foil segments) what antisymmetric circulations induce. */
  addAntisymmetricField(circulation: Float64Array, field: Field, withStrut: boolean): void {
    const columns = withStrut ? this.all : this.foil;
    multiplyAdd(this.influence.antisymmetricField, this.all, circulation, columns, field, this.foil);
  }

  /**
   * The flow (normal velocity times the strip's width in the y-z plane, at the control station) that symmetric trailing
   * pairs make far behind the foil. In deep water both are the same.
   */
  fillWakes(): Wakes {
    const { strips, wakes, nodes } = this;
    const { free, lid } = wakes;
    let row = 0;
    lid.fill(0); // gathers what the wakes themselves do, `free` their images, before the two are split
    free.fill(0);
    for (const line of this.wakeLines)
      for (let k = 0; k < line.count; k++, row += strips) {
        const i = line.segment + k;
        const py = this.controlY[i]!;
        const pz = this.controlZ[i]!;
        const ny = -this.alongZ[i]!;
        const nz = this.alongY[i]!;
        const above = 2 * this.height - pz;
        for (const source of this.wakeLines) {
          addMirroredWake(lid, row, source, nodes, py, pz, ny, nz);
          if (Number.isFinite(above)) addMirroredWake(free, row, source, nodes, py, above, -ny, nz);
        }
        splitRows(lid, row, free, row, strips);
      }
    return wakes;
  }
}

/** Where the segment from node a carries its force, as a share of it; `control` is its station. */
function placeShare({ nodeY, nodeZ, controlY, controlZ }: Strips, control: number, a: number): number {
  const [y, z] = [controlY[control]!, controlZ[control]!];
  return forcePlace(nodeY[a]!, nodeZ[a]!, nodeY[a + 1]!, nodeZ[a + 1]!, y, z);
}

/** Rows of velocities, x, y and z in turn, times a vector. */
function multiplyAdd(
  matrix: Float64Array,
  stride: number,
  vector: Float64Array,
  columns: number,
  field: Field,
  rowCount: number,
): void {
  for (let i = 0; i < rowCount; i++) {
    let at = 3 * i * stride;
    let ux = 0;
    let uy = 0;
    let uz = 0;
    let vx = 0;
    let vy = 0;
    let vz = 0;
    let j = 0;
    for (; j + 1 < columns; j += 2, at += 6) {
      const one = vector[j]!;
      const next = vector[j + 1]!;
      ux += matrix[at]! * one;
      uy += matrix[at + 1]! * one;
      uz += matrix[at + 2]! * one;
      vx += matrix[at + 3]! * next;
      vy += matrix[at + 4]! * next;
      vz += matrix[at + 5]! * next;
    }
    if (j < columns) {
      const last = vector[j]!;
      ux += matrix[at]! * last;
      uy += matrix[at + 1]! * last;
      uz += matrix[at + 2]! * last;
    }
    field.x[i]! += ux + vx;
    field.y[i]! += uy + vy;
    field.z[i]! += uz + vz;
  }
}
