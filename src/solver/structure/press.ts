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
  const above = shapes.map((shape) => turnsAbove(frame, shape));
  const pulls = shapes.map((shape) => pullsOf(frame, tensors, shape));
  const n = shapes.length;
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const value = pulled(pulls[i]!, above[j]!) + pulled(pulls[j]!, above[i]!);
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

/** What turns above each hinge, with half of the hinge's own turn: triples. */
function turnsAbove({ count, parent, drawn }: Frame, { turns, motion }: Shape): Float64Array {
  const above = new Float64Array(3 * count);
  for (let j = 0; j < count; j++) {
    const up = parent[j]!;
    for (let i = 0; i < 3; i++)
      above[3 * j + i] = (up >= 0 ? motion[6 * up + i]! : 0) + 0.5 * turns[j]! * drawn.axis[3 * j + i]!;
  }
  return above;
}

/** W^T B - tr(W) B for the hinges that turn (B): what the second work takes from a turn above them. */
interface Pulls {
  hinges: number[];
  pull: Float64Array; // triples, one for each of them
}

function pullsOf({ count, drawn }: Frame, tensors: Float64Array, { turns }: Shape): Pulls {
  const hinges = Array.from({ length: count }, (_, j) => j).filter((j) => turns[j] !== 0);
  const pull = new Float64Array(3 * hinges.length);
  hinges.forEach((j, at) => {
    const w = 9 * j;
    const trace = tensors[w]! + tensors[w + 4]! + tensors[w + 8]!;
    for (let k = 0; k < 3; k++) {
      let sum = -trace * drawn.axis[3 * j + k]!;
      for (let row = 0; row < 3; row++) sum += drawn.axis[3 * j + row]! * tensors[w + 3 * row + k]!;
      pull[3 * at + k] = turns[j]! * sum;
    }
  });
  return { hinges, pull };
}

function pulled({ hinges, pull }: Pulls, above: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < hinges.length; at++) {
    const p = 3 * hinges[at]!;
    sum += pull[3 * at]! * above[p]! + pull[3 * at + 1]! * above[p + 1]! + pull[3 * at + 2]! * above[p + 2]!;
  }
  return sum;
}
