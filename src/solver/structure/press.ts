/**
 * How loads that are already there stiffen or soften a foil: a strut under the lift is a column pressed from below. The
 * work of a load F at a point when its hinges turn twice over, A above and then B, is F . (A x (B x r)) with r from the
 * hinge to the point: a quadratic form in the turns, the geometric stiffness (J. S. Przemieniecki, Theory of Matrix
 * Structural Analysis, 1968, ch. 15; here for a chain of hinges). Loads keep their direction; that lift turns with the
 * wing is for the flow to say.
 */
import type { Frame } from './frame.ts';
import type { Shape } from './shapes.ts';

/** Forces at points: `force[i]` on `body[i]` at `at[i]`, triples one after another. */
export interface PointForces {
  body: Int32Array;
  at: Float64Array;
  force: Float64Array;
}

/**
 * What the loads take from the stiffness of each pair of shapes (row after row, symmetric): positive where they push a
 * deflection on. Loads scale it.
 */
export function pressMatrix(frame: Frame, shapes: readonly Shape[], loads: PointForces): Float64Array {
  const tensors = momentTensors(frame, loads);
  const n = shapes.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const [a, b] = [shapes[i]!, shapes[j]!];
      const value = secondWork(frame, tensors, a, b) + secondWork(frame, tensors, b, a);
      matrix[i * n + j] = value;
      matrix[j * n + i] = value;
    }
  return matrix;
}

/** Sum of F (x) r over all that hangs on each hinge, r from the hinge: nine numbers a hinge. */
function momentTensors(frame: Frame, { body, at, force }: PointForces): Float64Array {
  const { count, parent, drawn } = frame;
  const about = new Float64Array(9 * count); // about the origin first
  const sum = new Float64Array(3 * count);
  for (let i = 0; i < body.length; i++) {
    const b = body[i]!;
    if (b < 0) continue;
    for (let row = 0; row < 3; row++) {
      sum[3 * b + row]! += force[3 * i + row]!;
      for (let k = 0; k < 3; k++) about[9 * b + 3 * row + k]! += force[3 * i + row]! * at[3 * i + k]!;
    }
  }
  for (let j = count - 1; j >= 0; j--) {
    const up = parent[j]!;
    if (up >= 0) {
      for (let i = 0; i < 9; i++) about[9 * up + i]! += about[9 * j + i]!;
      for (let i = 0; i < 3; i++) sum[3 * up + i]! += sum[3 * j + i]!;
    }
  }
  for (let j = 0; j < count; j++)
    for (let row = 0; row < 3; row++)
      for (let k = 0; k < 3; k++) about[9 * j + 3 * row + k]! -= sum[3 * j + row]! * drawn.at[3 * j + k]!;
  return about;
}

/** Sum over hinges of B^T W A - tr(W) A . B, B the hinge's turn in `own`, A what turns above it (half of itself) in `above`. */
function secondWork(frame: Frame, tensors: Float64Array, own: Shape, above: Shape): number {
  const { count, parent, drawn } = frame;
  let total = 0;
  for (let j = 0; j < count; j++) {
    const turn = own.turns[j]!;
    if (turn === 0) continue;
    const up = parent[j]!;
    const half = 0.5 * above.turns[j]!;
    let trace = 0;
    let product = 0;
    let mixed = 0;
    for (let row = 0; row < 3; row++) {
      const b = turn * drawn.axis[3 * j + row]!;
      const a = (up >= 0 ? above.motion[6 * up + row]! : 0) + half * drawn.axis[3 * j + row]!;
      trace += tensors[9 * j + 4 * row]!;
      product += a * b;
      for (let k = 0; k < 3; k++) {
        const aK = (up >= 0 ? above.motion[6 * up + k]! : 0) + half * drawn.axis[3 * j + k]!;
        mixed += b * tensors[9 * j + 3 * row + k]! * aK;
      }
    }
    total += mixed - trace * product;
  }
  return total;
}
