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
import {
  addComponent,
  addMirroredWake,
  addVelocity,
  type BoundLine,
  forcePlace,
  MEAN_DISTANCE,
} from './filament.ts';

/** A velocity field where the forces of the bound segments are taken, per unit stream speed. */
export interface Field {
  x: Float64Array;
  y: Float64Array;
  z: Float64Array;
}

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

  readonly nodeX: Float64Array;
  readonly nodeY: Float64Array;
  readonly nodeZ: Float64Array;
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

  private readonly lines: BoundLine[] = [];
  private readonly foilLines: BoundLine[];
  private readonly strutLines: BoundLine[];
  private readonly wakeLines: Array<BoundLine & { segment: number }> = []; // one a surface, columns by strip
  private height = Number.POSITIVE_INFINITY; // of the free surface above the origin
  private readonly symmetric: Float64Array;
  private readonly antisymmetric: Float64Array;
  private readonly symmetricPivots: Int32Array;
  private readonly antisymmetricPivots: Int32Array;
  private readonly symmetricField: Field; // rows: all segments, columns: foil
  private readonly antisymmetricField: Field; // rows: foil segments, columns: all
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
    const field = (size: number): Field => ({ x: each(size), y: each(size), z: each(size) });
    this.nodeX = each(node);
    this.nodeY = each(node);
    this.nodeZ = each(node);
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
    this.symmetric = each(foil * foil);
    this.antisymmetric = each(all * all);
    this.symmetricPivots = new Int32Array(foil);
    this.antisymmetricPivots = new Int32Array(all);
    this.symmetricField = field(all * foil);
    this.antisymmetricField = field(foil * all);
    this.wakes = { free: each(this.strips * this.strips), lid: each(this.strips * this.strips) };
  }

  /** Takes new geometry of the same counts; `depth` of the origin below the surface, null in deep water. */
  load(parts: Parts, depth: number | null): void {
    this.height = depth ?? Number.POSITIVE_INFINITY;
    let node = 0;
    let row = 0;
    [parts.wing, parts.stabilizer, parts.strut].forEach((strips, surface) => {
      if (!strips) return;
      this.nodeX.set(strips.nodeX, node);
      this.nodeY.set(strips.nodeY, node);
      this.nodeZ.set(strips.nodeZ, node);
      this.controlX.set(strips.controlX, row);
      this.controlY.set(strips.controlY, row);
      this.controlZ.set(strips.controlZ, row);
      this.loadSegments(strips, surface, node, row);
      for (const line of this.lines)
        if (line.surface === surface) line.core = strips.chord[0]! / (Math.PI * strips.rows);
      node += strips.nodeX.length;
      row += strips.controlX.length;
    });
  }

  private placeShare(i: number, a: number): number {
    const { nodeY, nodeZ, controlY, controlZ } = this;
    return forcePlace(nodeY[a]!, nodeZ[a]!, nodeY[a + 1]!, nodeZ[a + 1]!, controlY[i]!, controlZ[i]!);
  }

  private loadSegments(strips: Strips, surface: number, node: number, row: number): void {
    const { count, rows } = strips;
    for (let r = 0; r < rows; r++)
      for (let k = 0; k < count; k++) {
        const i = row + r * count + k;
        const a = node + r * (count + 1) + k;
        this.normalY[i] = Math.sin(strips.droop[k]!);
        this.normalZ[i] = Math.cos(strips.droop[k]!);
        this.sinPitch[i] = Math.sin(strips.pitch[k]!);
        this.cosPitch[i] = Math.cos(strips.pitch[k]!);
        this.alongX[i] = this.nodeX[a + 1]! - this.nodeX[a]!;
        this.alongY[i] = this.nodeY[a + 1]! - this.nodeY[a]!;
        this.alongZ[i] = this.nodeZ[a + 1]! - this.nodeZ[a]!;
        const share = this.placeShare(i, a);
        this.placeX[i] = this.nodeX[a]! + share * this.alongX[i]!;
        this.placeY[i] = this.nodeY[a]! + share * this.alongY[i]!;
        this.placeZ[i] = this.nodeZ[a]! + share * this.alongZ[i]!;
        this.spread[i] = (MEAN_DISTANCE * strips.chord[k]!) / rows;
        this.surfaceOf[i] = surface;
      }
  }

  /**
   * Fills the influence of the symmetric system and, when asked, of the antisymmetric one. `deep`, the same foil
   * without strut or surface, is given its symmetric one on the way: all but the images.
   */
  fillInfluence(antisymmetric: boolean, deep: VortexSystem | null = null): void {
    for (let i = 0; i < this.foil; i++) {
      this.fillTangency(i, antisymmetric, deep);
      this.fillField(i, antisymmetric, deep);
    }
    if (!antisymmetric) return;
    for (let i = this.foil; i < this.all; i++) {
      this.fillStrutTangency(i);
      this.fillStrutField(i);
    }
  }

  /**
   * Rows i of both matrices: the velocity through strip i of the foil per circulation. The copies to starboard are gathered
   * in the antisymmetric row, their mirrors in the symmetric one, before the two are split; where only that is asked for,
   * all are gathered there.
   */
  private fillTangency(i: number, antisymmetric: boolean, deep: VortexSystem | null): void {
    const { foil, all, symmetric: even, antisymmetric: odd, nodeX, nodeY, nodeZ } = this;
    const row = i * foil;
    const oddRow = i * all;
    const [own, ownRow] = antisymmetric ? [odd, oddRow] : [even, row];
    even.fill(0, row, row + foil);
    if (antisymmetric) odd.fill(0, oddRow, oddRow + all);
    const px = this.controlX[i]!;
    const py = this.controlY[i]!;
    const pz = this.controlZ[i]!;
    const ny = this.normalY[i]!;
    const nz = this.normalZ[i]!;
    const image = 2 * this.height - pz;
    const under = Number.isFinite(image);
    for (const line of this.foilLines) {
      addComponent(own, ownRow, line, nodeX, nodeY, nodeZ, px, py, pz, ny, nz);
      addComponent(even, row, line, nodeX, nodeY, nodeZ, px, -py, pz, -ny, nz);
    }
    if (deep) sumRows(own, ownRow, even, row, deep.symmetric, foil);
    if (under)
      for (const line of this.foilLines) {
        addComponent(own, ownRow, line, nodeX, nodeY, nodeZ, px, py, image, -ny, nz);
        addComponent(even, row, line, nodeX, nodeY, nodeZ, px, -py, image, ny, nz);
      }
    if (!antisymmetric) return;
    splitRows(odd, oddRow, even, row, foil);
    for (const line of this.strutLines) {
      addComponent(odd, oddRow, line, nodeX, nodeY, nodeZ, px, py, pz, ny, nz);
      if (under) addComponent(odd, oddRow, line, nodeX, nodeY, nodeZ, px, py, image, -ny, nz);
    }
  }

  /** The same for a strip of the strut: in the plane of symmetry the mirrors blow through it the other way, as hard. */
  private fillStrutTangency(i: number): void {
    const { foil, all, antisymmetric: odd, nodeX, nodeY, nodeZ } = this;
    const row = i * all;
    odd.fill(0, row, row + all);
    const px = this.controlX[i]!;
    const py = this.controlY[i]!;
    const pz = this.controlZ[i]!;
    const ny = this.normalY[i]!;
    const nz = this.normalZ[i]!;
    const image = 2 * this.height - pz;
    for (const line of this.lines) {
      addComponent(odd, row, line, nodeX, nodeY, nodeZ, px, py, pz, ny, nz);
      if (Number.isFinite(image)) addComponent(odd, row, line, nodeX, nodeY, nodeZ, px, py, image, -ny, nz);
    }
    for (let j = row; j < row + foil; j++) odd[j]! *= 2;
  }

  /** Rows i of both velocity fields: the velocity on bound segment i of the foil per circulation; gathered likewise. */
  private fillField(i: number, antisymmetric: boolean, deep: VortexSystem | null): void {
    const { foil, all, symmetricField: even, antisymmetricField: odd, nodeX, nodeY, nodeZ } = this;
    const row = i * foil;
    const oddRow = i * all;
    const [own, ownRow] = antisymmetric ? [odd, oddRow] : [even, row];
    clearRow(even, row, foil);
    if (antisymmetric) clearRow(odd, oddRow, all);
    const px = this.placeX[i]!;
    const py = this.placeY[i]!;
    const pz = this.placeZ[i]!;
    const image = 2 * this.height - pz;
    const under = Number.isFinite(image);
    for (const line of this.foilLines) {
      // On its own surface a line has no finite chord to cut off the velocity, which would grow without end.
      const isOwn = line.surface === this.surfaceOf[i];
      const core = isOwn ? 0 : line.core;
      const spread = isOwn ? this.spread[i]! : 0;
      addVelocity(own.x, own.y, own.z, ownRow, line, nodeX, nodeY, nodeZ, px, py, pz, 1, 1, 1, core, spread);
      addVelocity(
        even.x,
        even.y,
        even.z,
        row,
        line,
        nodeX,
        nodeY,
        nodeZ,
        px,
        -py,
        pz,
        1,
        -1,
        1,
        core,
        spread,
      );
    }
    if (deep) sumFields(own, ownRow, even, row, deep.symmetricField, foil);
    if (under)
      for (const line of this.foilLines) {
        addVelocity(own.x, own.y, own.z, ownRow, line, nodeX, nodeY, nodeZ, px, py, image, -1, -1, 1, 0, 0);
        addVelocity(even.x, even.y, even.z, row, line, nodeX, nodeY, nodeZ, px, -py, image, -1, 1, 1, 0, 0);
      }
    if (!antisymmetric) return;
    splitRows(odd.x, oddRow, even.x, row, foil);
    splitRows(odd.y, oddRow, even.y, row, foil);
    splitRows(odd.z, oddRow, even.z, row, foil);
    for (const line of this.strutLines) {
      addVelocity(odd.x, odd.y, odd.z, oddRow, line, nodeX, nodeY, nodeZ, px, py, pz, 1, 1, 1, line.core, 0);
      if (under)
        addVelocity(odd.x, odd.y, odd.z, oddRow, line, nodeX, nodeY, nodeZ, px, py, image, -1, -1, 1, 0, 0);
    }
  }

  /** The symmetric one for a segment of the strut: there the mirrors do the same, turned about in y. */
  private fillStrutField(i: number): void {
    const { foil, symmetricField: even, nodeX, nodeY, nodeZ } = this;
    const row = i * foil;
    clearRow(even, row, foil);
    const px = this.placeX[i]!;
    const py = this.placeY[i]!;
    const pz = this.placeZ[i]!;
    const image = 2 * this.height - pz;
    for (const line of this.foilLines) {
      addVelocity(even.x, even.y, even.z, row, line, nodeX, nodeY, nodeZ, px, py, pz, 1, 1, 1, line.core, 0);
      if (Number.isFinite(image))
        addVelocity(even.x, even.y, even.z, row, line, nodeX, nodeY, nodeZ, px, py, image, -1, -1, 1, 0, 0);
    }
    for (let j = row; j < row + foil; j++) {
      even.x[j]! *= 2;
      even.y[j] = 0;
      even.z[j]! *= 2;
    }
  }

  /** Factors what `fillInfluence` filled. Throws when two strips coincide. */
  factorise(antisymmetric: boolean): void {
    factor(this.symmetric, this.foil, this.symmetricPivots);
    if (antisymmetric) factor(this.antisymmetric, this.all, this.antisymmetricPivots, this.foil);
  }

  /** Circulations that cancel the flow `b` through the strips; `b` (foil) is overwritten by them. */
  solveSymmetric(b: Float64Array): void {
    solveFactored(this.symmetric, this.foil, this.symmetricPivots, b);
  }

  /** The same for antisymmetric flow, with the strut (`b`: all) or for the foil alone (the strut's part is ignored). */
  solveAntisymmetric(b: Float64Array, withStrut: boolean): void {
    solveFactored(
      this.antisymmetric,
      this.all,
      this.antisymmetricPivots,
      b,
      withStrut ? this.all : this.foil,
    );
  }

  /** Adds to `field` (all segments) what symmetric circulations induce; `rowCount` segments from the first. */
  addSymmetricField(circulation: Float64Array, field: Field, rowCount: number): void {
    multiplyAdd(this.symmetricField, this.foil, circulation, this.foil, field, rowCount);
  }

  /** Adds to `field` (foil segments) what antisymmetric circulations induce. */
  addAntisymmetricField(circulation: Float64Array, field: Field, withStrut: boolean): void {
    const columns = withStrut ? this.all : this.foil;
    multiplyAdd(this.antisymmetricField, this.all, circulation, columns, field, this.foil);
  }

  /**
   * The flow (normal velocity times the strip's width in the y-z plane, at the control station) that symmetric trailing
   * pairs make far behind the foil. In deep water both are the same.
   */
  fillWakes(): Wakes {
    const { strips, wakes, nodeY, nodeZ } = this;
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
          addMirroredWake(lid, row, source, nodeY, nodeZ, py, pz, ny, nz);
          if (Number.isFinite(above)) addMirroredWake(free, row, source, nodeY, nodeZ, py, above, -ny, nz);
        }
        splitRows(lid, row, free, row, strips);
      }
    return wakes;
  }
}

function clearRow({ x, y, z }: Field, at: number, count: number): void {
  x.fill(0, at, at + count);
  y.fill(0, at, at + count);
  z.fill(0, at, at + count);
}

/** What own copies and mirrors have gathered so far, in two rows or in one, into the same row of another matrix. */
function sumRows(
  own: Float64Array,
  ownRow: number,
  even: Float64Array,
  row: number,
  matrix: Float64Array,
  count: number,
): void {
  if (own === even) for (let j = row; j < row + count; j++) matrix[j] = even[j]!;
  else for (let j = 0; j < count; j++) matrix[row + j] = own[ownRow + j]! + even[row + j]!;
}

function sumFields(own: Field, ownRow: number, even: Field, row: number, field: Field, count: number): void {
  sumRows(own.x, ownRow, even.x, row, field.x, count);
  sumRows(own.y, ownRow, even.y, row, field.y, count);
  sumRows(own.z, ownRow, even.z, row, field.z, count);
}

/** Starboard copies in one row and their mirrors in the other become the difference and the sum. */
function splitRows(odd: Float64Array, oddRow: number, even: Float64Array, row: number, count: number): void {
  for (let j = 0; j < count; j++) {
    const own = odd[oddRow + j]!;
    const mirrored = even[row + j]!;
    odd[oddRow + j] = own - mirrored;
    even[row + j] = own + mirrored;
  }
}

function multiplyAdd(
  matrix: Field,
  stride: number,
  vector: Float64Array,
  columns: number,
  field: Field,
  rowCount: number,
): void {
  const { x, y, z } = matrix;
  for (let i = 0; i < rowCount; i++) {
    let at = i * stride;
    let ux = 0;
    let uy = 0;
    let uz = 0;
    let vx = 0;
    let vy = 0;
    let vz = 0;
    let j = 0;
    for (; j + 1 < columns; j += 2, at += 2) {
      const one = vector[j]!;
      const next = vector[j + 1]!;
      ux += x[at]! * one;
      uy += y[at]! * one;
      uz += z[at]! * one;
      vx += x[at + 1]! * next;
      vy += y[at + 1]! * next;
      vz += z[at + 1]! * next;
    }
    if (j < columns) {
      const last = vector[j]!;
      ux += x[at]! * last;
      uy += y[at]! * last;
      uz += z[at]! * last;
    }
    field.x[i]! += ux + vx;
    field.y[i]! += uy + vy;
    field.z[i]! += uz + vz;
  }
}
