/**
 * The vortex system of a foil whose halves differ: both sides and all images in one system, where `VortexSystem` splits
 * by symmetry. One chordwise row; a strut stands in the plane of symmetry and carries what the difference of the halves
 * sends across it. Same model and conventions as system.ts; stream speed and density 1 (forces in
 * m2, moments in m3).
 */
import type { Strips } from '../geometry/strips.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import { addComponent, addVelocity, type BoundLine, MEAN_DISTANCE } from './filament.ts';
import { forcePoint } from './force-place.ts';

/** A surface by halves; both cut at the same stations, roots at the same place. */
export interface Halves {
  starboard: Strips;
  port: Strips;
}

export interface LopsidedLoads {
  lift: number; // across the stream
  roll: number; // about the x axis, starboard down positive
  yaw: number; // about the z axis, nose to starboard positive
}

/** Loads at an angle (rad) of the x axis to the stream. */
export type LopsidedFlow = (alpha: number) => LopsidedLoads;

interface Arrays {
  lines: BoundLine[];
  nodes: Float64Array; // x, y, z in turn
  control: Float64Array; // x, y, z in turn
  normal: Float64Array; // untwisted: y, z in turn
  pitch: Float64Array;
  surface: Uint8Array;
  spread: Float64Array; // m, mean distance across the chord of each strip
}

export function lopsidedFlow(
  surfaces: readonly Halves[],
  strut: Strips | null,
  depth: number | null,
): LopsidedFlow {
  const arrays = layOut(surfaces, strut);
  const count = arrays.pitch.length;
  const matrix = tangencyOf(arrays, depth);
  const pivots = new Int32Array(count);
  factor(matrix, count, pivots);
  const field = fieldOf(arrays, depth);
  const solveFor = (ahead: number, up: number): Float64Array => {
    const b = arrays.pitch.map(
      (pitch, i) => -(ahead * Math.sin(pitch) + up * arrays.normal[2 * i + 1]! * Math.cos(pitch)),
    );
    solveFactored(matrix, count, pivots, b);
    return b;
  };
  const [byAhead, byUp] = [solveFor(1, 0), solveFor(0, 1)];
  return (alpha) => {
    const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
    const circulation = byAhead.map((value, i) => c * value + s * byUp[i]!);
    return sumLoads(arrays, field, circulation, alpha);
  };
}

/** One line a surface, from the port tip to the starboard tip; the strut's runs up from its foot. */
function layOut(surfaces: readonly Halves[], strut: Strips | null): Arrays {
  const lines: BoundLine[] = [];
  const nodes: number[] = [];
  const control: number[] = [];
  const normal: number[] = [];
  const pitch: number[] = [];
  const surface: number[] = [];
  const spread: number[] = [];
  const addStrip = (strips: Strips, k: number, side: 1 | -1, which: number) => {
    control.push(strips.controlX[k]!, side * strips.controlY[k]!, strips.controlZ[k]!);
    normal.push(side * Math.sin(strips.droop[k]!), Math.cos(strips.droop[k]!));
    pitch.push(strips.pitch[k]!);
    surface.push(which);
    spread.push(MEAN_DISTANCE * strips.chord[k]!);
  };
  const addNode = (strips: Strips, k: number, side: 1 | -1) => {
    nodes.push(strips.nodeX[k]!, side * strips.nodeY[k]!, strips.nodeZ[k]!);
  };
  for (const [which, { port, starboard }] of surfaces.entries()) {
    lines.push({
      node: nodes.length / 3,
      column: pitch.length,
      count: port.count + starboard.count,
      surface: which,
      core: starboard.chord[0]! / Math.PI,
    });
    for (let k = port.count; k >= 1; k--) addNode(port, k, -1);
    for (let k = 0; k <= starboard.count; k++) addNode(starboard, k, 1);
    for (let k = port.count - 1; k >= 0; k--) addStrip(port, k, -1, which);
    for (let k = 0; k < starboard.count; k++) addStrip(starboard, k, 1, which);
  }
  if (strut) {
    const which = surfaces.length;
    const core = strut.chord[0]! / Math.PI;
    lines.push({ node: nodes.length / 3, column: pitch.length, count: strut.count, surface: which, core });
    for (let k = 0; k <= strut.count; k++) addNode(strut, k, 1);
    for (let k = 0; k < strut.count; k++) addStrip(strut, k, 1, which);
  }
  const flat = (values: number[]) => Float64Array.from(values);
  return {
    lines,
    nodes: flat(nodes),
    control: flat(control),
    normal: flat(normal),
    pitch: flat(pitch),
    surface: Uint8Array.from(surface),
    spread: flat(spread),
  };
}

function tangencyOf({ lines, nodes, control, normal, pitch }: Arrays, depth: number | null): Float64Array {
  const count = pitch.length;
  const matrix = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const [x, y, z] = [control[3 * i]!, control[3 * i + 1]!, control[3 * i + 2]!];
    const [ny, nz] = [normal[2 * i]!, normal[2 * i + 1]!];
    for (const line of lines) {
      addComponent(matrix, i * count, line, nodes, x, y, z, ny, nz);
      if (depth !== null) addComponent(matrix, i * count, line, nodes, x, y, 2 * depth - z, -ny, nz);
    }
  }
  return matrix;
}

/** Velocities where the bound segments carry their forces, per circulation, row after row; x, y, z in turn. */
function fieldOf(arrays: Arrays, depth: number | null): Float64Array {
  const { lines, nodes, pitch, surface, spread } = arrays;
  const count = pitch.length;
  const field = new Float64Array(3 * count * count);
  for (const target of lines)
    for (let k = 0; k < target.count; k++) {
      const i = target.column + k;
      const [x, y, z] = placeOf(arrays, i, target.node + k);
      for (const line of lines) {
        const [core, own] = line.surface === surface[i] ? [0, spread[i]!] : [line.core, 0];
        addVelocity(field, i * count, line, nodes, x, y, z, 1, 1, 1, core, own);
        if (depth !== null) addVelocity(field, i * count, line, nodes, x, y, 2 * depth - z, -1, -1, 1, 0, 0);
      }
    }
  return field;
}

/** Where segment i, which begins at node a, carries its force. */
function placeOf({ nodes, control }: Arrays, i: number, a: number): [number, number, number] {
  return forcePoint(nodes, a, control[3 * i + 1]!, control[3 * i + 2]!);
}

/** Kutta and Joukowski on every bound segment. */
function sumLoads(
  arrays: Arrays,
  field: Float64Array,
  circulation: Float64Array,
  alpha: number,
): LopsidedLoads {
  const { lines, nodes, pitch } = arrays;
  const count = pitch.length;
  const total = { x: 0, z: 0, roll: 0, yaw: 0 };
  for (const { node, column, count: segments } of lines)
    for (let k = 0; k < segments; k++) {
      const i = column + k;
      const velocity = [Math.cos(alpha), 0, Math.sin(alpha)].map((stream, axis) => {
        let sum = stream;
        for (let j = 0; j < count; j++) sum += field[3 * (i * count + j) + axis]! * circulation[j]!;
        return sum;
      });
      const a = 3 * (node + k);
      const along = [0, 1, 2].map((axis) => nodes[a + 3 + axis]! - nodes[a + axis]!);
      const [mx, my, mz] = placeOf(arrays, i, node + k);
      const force = [0, 1, 2].map((axis) => {
        const [a, b] = [(axis + 1) % 3, (axis + 2) % 3];
        return circulation[i]! * (velocity[a]! * along[b]! - velocity[b]! * along[a]!);
      });
      total.x += force[0]!;
      total.z += force[2]!;
      total.roll -= my * force[2]! - mz * force[1]!;
      total.yaw -= mx * force[1]! - my * force[0]!;
    }
  return { lift: total.z * Math.cos(alpha) - total.x * Math.sin(alpha), roll: total.roll, yaw: total.yaw };
}
