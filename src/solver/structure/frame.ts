/**
 * A foil as a tree of elastic hinges: every joint is one, and a beam is hinges at the Gauss points of its segments, so
 * that a load at the end of an even segment bends it exactly (Euler-Bernoulli and Saint-Venant; two points integrate
 * moment times lever, a cubic at most, without error). Nothing is redundant in a foil: moments follow from the loads
 * alone, turns from the moments. Cost grows with the number of hinges only.
 *
 *   board --(box)--(strut ...)--(strut joint)--+--(fuselage)--(wing joint)--+--(wing ...) starboard
 *                                              |                            +--(wing ...) port
 *                                              +--(fuselage)--(stabilizer joint)-- ... the same
 *
 * Hinge j turns all that hangs on it - body j - about one axis through its place, by its give (rad per N m) times the
 * moment about that axis. A hinge comes after its parent; parent -1 is the board, which stands still. Document axes,
 * metres, newtons, radians; a load on a body is six numbers (force, then moment about the origin of coordinates), a small
 * motion of a body six numbers (turn, then drift of the point at the origin): a point p moves by drift + turn x p.
 */
import type { Triple } from './triple.ts';

export interface Hinge {
  parent: number;
  place: Readonly<Triple>;
  axis: Readonly<Triple>; // unit length
  give: number; // rad per N m
  strain: number; // of the outermost fibre per N m; 0 where a joint or torsion strains none
  group: string; // what it belongs to: "strut.side"
}

/** Where hinges are: as drawn, or as a pose has moved them. Triples one after another. */
export interface Places {
  at: Float64Array;
  axis: Float64Array;
}

export class Frame {
  readonly count: number;
  readonly parent: Int32Array;
  readonly drawn: Places;
  readonly give: Float64Array;
  readonly strain: Float64Array;
  readonly groups: readonly string[]; // each name once
  readonly groupOf: Uint16Array; // index in groups, by hinge

  constructor(hinges: readonly Hinge[]) {
    const n = hinges.length;
    this.count = n;
    this.parent = new Int32Array(n);
    this.give = new Float64Array(n);
    this.strain = new Float64Array(n);
    this.groupOf = new Uint16Array(n);
    this.drawn = { at: new Float64Array(3 * n), axis: new Float64Array(3 * n) };
    const groups = new Map<string, number>();
    hinges.forEach(({ parent, place, axis, give, strain, group }, j) => {
      this.parent[j] = parent;
      this.give[j] = give;
      this.strain[j] = strain;
      this.drawn.at.set(place, 3 * j);
      this.drawn.axis.set(axis, 3 * j);
      if (!groups.has(group)) groups.set(group, groups.size);
      this.groupOf[j] = groups.get(group)!;
    });
    this.groups = [...groups.keys()];
    for (let j = 0; j < n; j++)
      if (!(this.parent[j]! < j)) throw new Error(`hinge ${j} comes before its parent ${this.parent[j]}`);
  }

  /** Loads for every body, to be filled by `addForce` and `addMoment`. */
  makeLoads(): Float64Array {
    return new Float64Array(6 * this.count);
  }

  /** Moment about each hinge's axis. `loads` is left as it was. */
  carry(loads: Float64Array, { at, axis }: Places = this.drawn): Float64Array {
    const total = loads.slice();
    const moments = new Float64Array(this.count);
    for (let j = this.count - 1; j >= 0; j--) {
      const p = 3 * j;
      const w = 6 * j;
      const fx = total[w]!;
      const fy = total[w + 1]!;
      const fz = total[w + 2]!;
      const mx = total[w + 3]! - (at[p + 1]! * fz - at[p + 2]! * fy);
      const my = total[w + 4]! - (at[p + 2]! * fx - at[p]! * fz);
      const mz = total[w + 5]! - (at[p]! * fy - at[p + 1]! * fx);
      moments[j] = mx * axis[p]! + my * axis[p + 1]! + mz * axis[p + 2]!;
      const up = 6 * this.parent[j]!;
      if (up >= 0) for (let i = 0; i < 6; i++) total[up + i]! += total[w + i]!;
    }
    return moments;
  }

  /** Turn of each hinge under its moment. */
  turns(moments: Float64Array): Float64Array {
    return moments.map((moment, j) => moment * this.give[j]!);
  }

  /** Small motion of every body when the hinges turn. */
  motion(turns: Float64Array): Float64Array {
    const { at, axis } = this.drawn;
    const motion = new Float64Array(6 * this.count);
    for (let j = 0; j < this.count; j++) {
      const p = 3 * j;
      const w = 6 * j;
      const up = 6 * this.parent[j]!;
      if (up >= 0) for (let i = 0; i < 6; i++) motion[w + i] = motion[up + i]!;
      const px = at[p]!;
      const py = at[p + 1]!;
      const pz = at[p + 2]!;
      const tx = turns[j]! * axis[p]!;
      const ty = turns[j]! * axis[p + 1]!;
      const tz = turns[j]! * axis[p + 2]!;
      motion[w]! += tx;
      motion[w + 1]! += ty;
      motion[w + 2]! += tz;
      motion[w + 3]! -= ty * pz - tz * py;
      motion[w + 4]! -= tz * px - tx * pz;
      motion[w + 5]! -= tx * py - ty * px;
    }
    return motion;
  }

  /** Strain energy by group, J: half of moment times turn. */
  energies(moments: Float64Array): Float64Array {
    const sums = new Float64Array(this.groups.length);
    for (let j = 0; j < this.count; j++) sums[this.groupOf[j]!]! += 0.5 * this.give[j]! * moments[j]! ** 2;
    return sums;
  }
}

export function addForce(
  loads: Float64Array,
  body: number,
  [px, py, pz]: Readonly<Triple>,
  [fx, fy, fz]: Readonly<Triple>,
): void {
  const w = 6 * body;
  if (w < 0) return; // the board takes it
  loads[w]! += fx;
  loads[w + 1]! += fy;
  loads[w + 2]! += fz;
  addMoment(loads, body, [py * fz - pz * fy, pz * fx - px * fz, px * fy - py * fx]);
}

export function addMoment(loads: Float64Array, body: number, [mx, my, mz]: Readonly<Triple>): void {
  const w = 6 * body;
  if (w < 0) return;
  loads[w + 3]! += mx;
  loads[w + 4]! += my;
  loads[w + 5]! += mz;
}

/** How far a point fixed to a body moves. */
export function moveOf(motion: Float64Array, body: number, [px, py, pz]: Readonly<Triple>): Triple {
  if (body < 0) return [0, 0, 0];
  const w = 6 * body;
  const [tx, ty, tz] = [motion[w]!, motion[w + 1]!, motion[w + 2]!];
  return [
    motion[w + 3]! + ty * pz - tz * py,
    motion[w + 4]! + tz * px - tx * pz,
    motion[w + 5]! + tx * py - ty * px,
  ];
}

export function turnOf(motion: Float64Array, body: number): Triple {
  if (body < 0) return [0, 0, 0];
  return [motion[6 * body]!, motion[6 * body + 1]!, motion[6 * body + 2]!];
}
