/**
 * The unsplit vortex system of a heeled foil under a level surface, where port and starboard differ.
 *
 * Frame: x aft, y starboard, z up with the water level; the foil is turned about its x axis through the origin by the
 * heel angle (positive starboard down). Both halves are unknowns, port tip to starboard tip, then the strut, foot to
 * surface. The image keeps endpoint order and circulation, as in system.ts. Per unit stream speed and rho V^2.
 *
 * Heel and leeway are exact here; angle of attack and leeway are mixtures of unit streams (ahead, up, sideways) along
 * the heeled foil's own axes. Legs run along x. Used for studies at a few angles; it allocates freely.
 */
import type { Craft } from '../geometry/craft.ts';
import { cutStrut, type Strips } from '../geometry/strips.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import { addComponent, addVelocity, addWakeComponent, type BoundLine, MEAN_DISTANCE } from './filament.ts';
import { forcePoint } from './force-place.ts';
import { STABILIZER, STRUT, WING } from './system.ts';
import { inducedDrag } from './wake.ts';

/** One lifting strip of the whole foil, heeled frame resolved into the level frame. */
interface Station {
  surface: number;
  pitch: number; // rad, of the zero-lift line
  plain: [y: number, z: number]; // normal of the untwisted strip
}

export interface WholeFoil {
  lines: BoundLine[];
  nodes: Float64Array; // x, y and z in turn
  controls: { x: Float64Array; y: Float64Array; z: Float64Array };
  stations: Station[];
  chord: Float64Array;
  width: Float64Array;
  eta: Float64Array; // of the strip, negative to port
}

/** Force and moment about the origin per rho V^2, level frame: x aft, y starboard, z up. */
export interface WholeLoad {
  x: number;
  y: number;
  z: number;
  mx: number;
  my: number;
  mz: number;
}

export interface WholeSolution {
  foil: WholeFoil;
  circulation: Float64Array;
  loads: [WholeLoad, WholeLoad, WholeLoad]; // wing, stabilizer, strut
  inducedDrag(): number; // far field, m2; worked out when asked for
}

/** Lays out both halves at a heel angle (rad). The strut reaches the surface at `depth`, or its full length. */
export function wholeFoil(craft: Craft, heel: number): WholeFoil {
  const { parts, strut, strutSlope, depth } = craft;
  const pieces: Array<{ strips: Strips; surface: number }> = [{ strips: parts.wing, surface: WING }];
  if (parts.stabilizer) pieces.push({ strips: parts.stabilizer, surface: STABILIZER });
  const builder = new Builder(heel);
  for (const { strips, surface } of pieces) builder.addPair(strips, surface);
  if (strut && parts.strut) {
    const top = depth === null ? strut.length : Math.min(strut.length, depth / Math.cos(heel));
    const stands = cutStrut(strut.x ?? 0, strut.chord, top, parts.strut.count, 1, null, strutSlope);
    builder.addStrut(stands);
  }
  return builder.finish();
}

class Builder {
  private readonly nodes: number[] = [];
  private readonly cx: number[] = [];
  private readonly cy: number[] = [];
  private readonly cz: number[] = [];
  private readonly chord: number[] = [];
  private readonly width: number[] = [];
  private readonly eta: number[] = [];
  private readonly lines: BoundLine[] = [];
  private readonly stations: Station[] = [];
  private readonly c: number;
  private readonly s: number;

  constructor(heel: number) {
    this.c = Math.cos(heel);
    this.s = Math.sin(heel);
  }

  /** Starboard down: what was to starboard goes down, what was up goes to starboard. */
  private turn(y: number, z: number): [number, number] {
    return [y * this.c + z * this.s, z * this.c - y * this.s];
  }

  private addNode(x: number, y: number, z: number): void {
    const [ty, tz] = this.turn(y, z);
    this.nodes.push(x, ty, tz);
  }

  private addStation(strips: Strips, k: number, side: number, surface: number): void {
    const droop = strips.droop[k]!;
    const [ty, tz] = this.turn(side * strips.controlY[k]!, strips.controlZ[k]!);
    this.cx.push(strips.controlX[k]!);
    this.cy.push(ty);
    this.cz.push(tz);
    const [ny, nz] = this.turn(side * Math.sin(droop), Math.cos(droop));
    this.stations.push({ surface, pitch: strips.pitch[k]!, plain: [ny, nz] });
    this.chord.push(strips.chord[k]!);
    this.width.push(strips.width[k]!);
    this.eta.push(side * strips.eta[k]!);
  }

  addPair(strips: Strips, surface: number): void {
    const { count, nodeX, nodeY, nodeZ } = strips;
    const line = {
      node: this.nodes.length / 3,
      column: this.stations.length,
      count: 2 * count,
      surface,
      core: strips.chord[0]! / Math.PI,
    };
    this.lines.push(line);
    for (let k = count; k > 0; k--) this.addNode(nodeX[k]!, -nodeY[k]!, nodeZ[k]!);
    for (let k = 0; k <= count; k++) this.addNode(nodeX[k]!, nodeY[k]!, nodeZ[k]!);
    for (let k = count - 1; k >= 0; k--) this.addStation(strips, k, -1, surface);
    for (let k = 0; k < count; k++) this.addStation(strips, k, 1, surface);
  }

  addStrut(strips: Strips): void {
    const { count, nodeX, nodeZ } = strips;
    this.lines.push({
      node: this.nodes.length / 3,
      column: this.stations.length,
      count,
      surface: STRUT,
      core: strips.chord[0]! / Math.PI,
    });
    for (let k = 0; k <= count; k++) this.addNode(nodeX[k]!, 0, nodeZ[k]!);
    for (let k = 0; k < count; k++) this.addStation(strips, k, 1, STRUT);
  }

  finish(): WholeFoil {
    const array = (values: number[]) => Float64Array.from(values);
    return {
      lines: this.lines,
      nodes: array(this.nodes),
      controls: { x: array(this.cx), y: array(this.cy), z: array(this.cz) },
      stations: this.stations,
      chord: array(this.chord),
      width: array(this.width),
      eta: array(this.eta),
    };
  }
}

/** A stream of unit speed in the level frame: x, y, z components. */
export type UnitStream = [number, number, number];

/** Answers for a stream; `turn` (rad) is the change of the stabilizer's incidence from the drawn one. */
export type WholeSolver = (stream: UnitStream, turn?: number) => WholeSolution;

/** Factors the whole system once and answers for any stream. `depth` of the origin, null in deep water. */
export function solveWhole(foil: WholeFoil, depth: number | null): WholeSolver {
  const n = foil.stations.length;
  const matrix = new Float64Array(n * n);
  const row = new Float64Array(n);
  const { nodes, controls } = foil;
  for (let i = 0; i < n; i++) {
    row.fill(0);
    const [ay, az] = foil.stations[i]!.plain;
    const px = controls.x[i]!;
    const py = controls.y[i]!;
    const pz = controls.z[i]!;
    for (const line of foil.lines) {
      addComponent(row, 0, line, nodes, px, py, pz, ay, az);
      if (depth === null) continue;
      addComponent(row, 0, line, nodes, px, py, 2 * depth - pz, -ay, az);
    }
    matrix.set(row, i * n);
  }
  const pivots = new Int32Array(n);
  factor(matrix, n, pivots);
  const field = bindField(foil, depth);
  let wake: Float64Array | null = null;
  return (stream, turn = 0) => {
    const circulation = Float64Array.from(foil.stations, ({ surface, pitch, plain }) => {
      const angle = surface === STABILIZER ? pitch + turn : pitch;
      const across = stream[1] * plain[0] + stream[2] * plain[1];
      return -(stream[0] * Math.sin(angle) + across * Math.cos(angle));
    });
    solveFactored(matrix, n, pivots, circulation);
    return {
      foil,
      circulation,
      loads: sumWhole(foil, circulation, field, stream),
      inducedDrag: () => {
        wake ??= fillWholeWake(foil, depth);
        return 0.5 * inducedDrag(wake, circulation);
      },
    };
  };
}

/** Velocity where every bound segment carries its force, per circulation, row by row; x, y and z in turn. */
function bindField(foil: WholeFoil, depth: number | null): Float64Array {
  const n = foil.stations.length;
  const field = new Float64Array(3 * n * n);
  forEachSegment(foil, (i, a) => {
    const [px, py, pz] = placeOf(foil, i, a);
    const surface = foil.stations[i]!.surface;
    const own = MEAN_DISTANCE * foil.chord[i]!;
    for (const line of foil.lines) {
      const [core, spread] = line.surface === surface ? [0, own] : [line.core, 0];
      addVelocity(field, i * n, line, foil.nodes, px, py, pz, 1, 1, 1, core, spread);
      if (depth === null) continue;
      const above = 2 * depth - pz;
      addVelocity(field, i * n, line, foil.nodes, px, py, above, -1, -1, 1, 0, 0);
    }
  });
  return field;
}

/** Where segment i, which begins at node a, carries its force. */
function placeOf({ nodes, controls }: WholeFoil, i: number, a: number): [number, number, number] {
  return forcePoint(nodes, a, controls.y[i]!, controls.z[i]!);
}

function forEachSegment(foil: WholeFoil, visit: (segment: number, node: number) => void): void {
  for (const line of foil.lines) for (let k = 0; k < line.count; k++) visit(line.column + k, line.node + k);
}

function sumWhole(foil: WholeFoil, circulation: Float64Array, field: Float64Array, stream: UnitStream) {
  const empty = (): WholeLoad => ({ x: 0, y: 0, z: 0, mx: 0, my: 0, mz: 0 });
  const loads: [WholeLoad, WholeLoad, WholeLoad] = [empty(), empty(), empty()];
  const { nodes } = foil;
  const n = circulation.length;
  forEachSegment(foil, (i, a) => {
    let [vx, vy, vz] = stream;
    for (let j = 0, at = 3 * i * n; j < n; j++, at += 3) {
      vx += field[at]! * circulation[j]!;
      vy += field[at + 1]! * circulation[j]!;
      vz += field[at + 2]! * circulation[j]!;
    }
    const lx = nodes[3 * a + 3]! - nodes[3 * a]!;
    const ly = nodes[3 * a + 4]! - nodes[3 * a + 1]!;
    const lz = nodes[3 * a + 5]! - nodes[3 * a + 2]!;
    const strength = circulation[i]!;
    const fx = strength * (vy * lz - vz * ly);
    const fy = strength * (vz * lx - vx * lz);
    const fz = strength * (vx * ly - vy * lx);
    const [px, py, pz] = placeOf(foil, i, a);
    const load = loads[foil.stations[i]!.surface as 0 | 1 | 2];
    load.x += fx;
    load.y += fy;
    load.z += fz;
    load.mx += py * fz - pz * fy;
    load.my += pz * fx - px * fz;
    load.mz += px * fy - py * fx;
  });
  return loads;
}

/** Normalwash of the far wake per circulation, row by row; strut included. */
function fillWholeWake(foil: WholeFoil, depth: number | null): Float64Array {
  const { nodes } = foil;
  const n = foil.stations.length;
  const wake = new Float64Array(n * n);
  const row = new Float64Array(n);
  forEachSegment(foil, (i, a) => {
    row.fill(0);
    const ny = -(nodes[3 * a + 5]! - nodes[3 * a + 2]!);
    const nz = nodes[3 * a + 4]! - nodes[3 * a + 1]!;
    const py = foil.controls.y[i]!;
    const pz = foil.controls.z[i]!;
    for (const line of foil.lines) {
      addWakeComponent(row, 0, line, nodes, py, pz, ny, nz);
      if (depth !== null) addWakeComponent(row, 0, line, nodes, py, 2 * depth - pz, -ny, nz);
    }
    wake.set(row, i * n);
  });
  return wake;
}
