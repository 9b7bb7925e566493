/**
 * How the flow answers a small deflection of the foil, or the speed of one, about a running state: quasi-steady, linear.
 *
 * A strip whose body turns by theta meets the stream U at another angle: its boundary condition changes by U . (theta x n).
 * The circulations follow from the same factored system as the unit solutions; forces as in derivatives.ts, plus the
 * running force turned with its strip, circulation V x (theta x l). Influences of strips on one another are held.
 * Everything per rho V^2; one half of the foil stands for both.
 */
import type { Craft } from '../geometry/craft.ts';
import { moveOf, turnOf } from '../structure/frame.ts';
import type { PointForces } from '../structure/press.ts';
import type { Symmetry } from '../structure/shapes.ts';
import type { Skeleton } from '../structure/skeleton.ts';
import { cross, type Triple } from '../structure/triple.ts';
import { makeUnit, type Unit } from '../vortex/causes.ts';
import type { Flow } from '../vortex/flow.ts';
import { type Carriers, carriersOf, segmentForces, symmetricPoints } from './strip-forces.ts';

/** Force and moment about the origin of the whole foil, per rho V^2. */
export interface Total {
  force: Triple;
  moment: Triple;
}

/** Forces per segment (triples, starboard half) and their sum over the whole foil. */
export interface Answer {
  forces: Float64Array;
  total: Total;
}

/**
 * One symmetry class of a foil's answers at one running state. `flow.base` must hold the state's mix of unit solutions;
 * the flow must not be solved anew while this is in use. With `hasStrut` the strut's strips carry load (scope 'whole').
 */
export class FlowAnswers {
  private readonly rows: number;
  private readonly carriers: Carriers;
  private readonly bodies: Int32Array;
  private readonly running: Float64Array; // forces of the running state
  private readonly scratch: Unit;
  private readonly ahead: Triple; // the stream's direction

  constructor(
    private readonly flow: Flow,
    alpha: number,
    craft: Craft,
    skeleton: Skeleton,
    private readonly symmetry: Symmetry,
    private readonly hasStrut: boolean,
  ) {
    const { system, base } = flow;
    this.ahead = [Math.cos(alpha), 0, Math.sin(alpha)];
    this.rows = hasStrut && symmetry === 'antisymmetric' ? system.all : system.foil;
    this.carriers = carriersOf(craft, skeleton);
    const { starboard, strut } = this.carriers;
    this.bodies = Int32Array.from([...starboard, ...strut].slice(0, this.rows));
    this.scratch = makeUnit(system);
    this.running = segmentForces(system, base, base, system.foil);
  }

  /** The running state's forces on both halves. */
  runningPoints(): PointForces {
    return symmetricPoints(this.flow.system, this.carriers, this.running);
  }

  /** Forces that a unit solution of the flow adds to the running state. */
  ofCause({ circulation, field }: Unit): Answer {
    this.scratch.circulation.set(circulation);
    this.scratch.field.x.set(field.x);
    this.scratch.field.y.set(field.y);
    this.scratch.field.z.set(field.z);
    return this.answer(null);
  }

  /** Forces when every body stands moved by a small motion. */
  atRest(motion: Float64Array): Answer {
    const { circulation, field } = this.scratch;
    circulation.fill(0);
    for (let i = 0; i < this.rows; i++) {
      const bent = cross(turnOf(motion, this.bodies[i]!), this.normal(i));
      circulation[i] = -(this.ahead[0] * bent[0] + this.ahead[2] * bent[2]);
    }
    for (const axis of [field.x, field.y, field.z]) axis.fill(0);
    this.settle();
    return this.answer(motion);
  }

  /** Forces when every body moves at the rate of a small motion, per (1/s) at a stream of 1 m/s. */
  inMotion(motion: Float64Array): Answer {
    const { system } = this.flow;
    const { circulation, field } = this.scratch;
    circulation.fill(0);
    for (let i = 0; i < this.rows; i++) {
      const body = this.bodies[i]!;
      const at = moveOf(motion, body, [system.controlX[i]!, system.controlY[i]!, system.controlZ[i]!]);
      const n = this.normal(i);
      circulation[i] = at[0] * n[0] + at[1] * n[1] + at[2] * n[2];
      const place = moveOf(motion, body, [system.placeX[i]!, system.placeY[i]!, system.placeZ[i]!]);
      field.x[i] = -place[0];
      field.y[i] = -place[1];
      field.z[i] = -place[2];
    }
    this.settle();
    return this.answer(null);
  }

  /** Work of segment forces on a small motion, over the whole foil. */
  workOn(motion: Float64Array, forces: Float64Array): number {
    return this.work(this.movesOf(motion), forces);
  }

  /** How far the places where segments carry their force go in a small motion: triples. */
  movesOf(motion: Float64Array): Float64Array {
    const { placeX, placeY, placeZ } = this.flow.system;
    const moves = new Float64Array(3 * this.rows);
    for (let i = 0; i < this.rows; i++)
      moves.set(moveOf(motion, this.bodies[i]!, [placeX[i]!, placeY[i]!, placeZ[i]!]), 3 * i);
    return moves;
  }

  /** Work of segment forces on such moves, over the whole foil. */
  work(moves: Float64Array, forces: Float64Array): number {
    const foil = 3 * this.flow.system.foil;
    let pairs = 0;
    let strut = 0;
    for (let i = 0; i < moves.length; i++) {
      const work = moves[i]! * forces[i]!;
      if (i < foil) pairs += work;
      else strut += work;
    }
    return 2 * pairs + strut;
  }

  private normal(i: number): Triple {
    const { sinPitch, cosPitch, normalY, normalZ } = this.flow.system;
    return [sinPitch[i]!, cosPitch[i]! * normalY[i]!, cosPitch[i]! * normalZ[i]!];
  }

  /** Solves the scratch's right-hand side and adds what its circulations induce. */
  private settle(): void {
    const { system } = this.flow;
    const { circulation, field } = this.scratch;
    if (this.symmetry === 'symmetric') {
      system.solveSymmetric(circulation);
      circulation.fill(0, system.foil);
      system.addSymmetricField(circulation, field, system.foil);
    } else {
      system.solveAntisymmetric(circulation, this.hasStrut);
      if (!this.hasStrut) circulation.fill(0, system.foil);
      system.addAntisymmetricField(circulation, field, this.hasStrut);
    }
  }

  /** Forces of the scratch's change about the running state, turned and moved with `motion` where it stands so. */
  private answer(motion: Float64Array | null): Answer {
    const { system, base } = this.flow;
    const { alongX, alongY, alongZ, placeX, placeY, placeZ, foil } = system;
    const { circulation, field } = this.scratch;
    const forces = new Float64Array(3 * this.rows);
    const total: Total = { force: [0, 0, 0], moment: [0, 0, 0] };
    for (let i = 0; i < this.rows; i++) {
      const g = circulation[i]!;
      const G = i < foil ? base.circulation[i]! : 0;
      const along: Triple = [alongX[i]!, alongY[i]!, alongZ[i]!];
      const stream: Triple = [base.field.x[i]!, base.field.y[i]!, base.field.z[i]!];
      const change: Triple = [field.x[i]!, field.y[i]!, field.z[i]!];
      const mixed: Triple = [
        g * stream[0] + G * change[0],
        g * stream[1] + G * change[1],
        g * stream[2] + G * change[2],
      ];
      let force = cross(i < foil ? mixed : [g * stream[0], g * stream[1], g * stream[2]], along);
      const at: Triple = [placeX[i]!, placeY[i]!, placeZ[i]!];
      if (motion && i < foil) {
        const turned = cross(stream, cross(turnOf(motion, this.bodies[i]!), along));
        force = [force[0] + G * turned[0], force[1] + G * turned[1], force[2] + G * turned[2]];
      }
      forces.set(force, 3 * i);
      this.gather(total, i, at, force, motion);
    }
    return { forces, total };
  }

  private gather(total: Total, i: number, at: Triple, force: Triple, motion: Float64Array | null): void {
    const isFoil = i < this.flow.system.foil;
    const halves = isFoil ? 2 : 1;
    const moment = cross(at, force);
    if (motion && isFoil) {
      const move = moveOf(motion, this.bodies[i]!, at);
      const shifted = cross(move, [this.running[3 * i]!, this.running[3 * i + 1]!, this.running[3 * i + 2]!]);
      for (const axis of [0, 1, 2] as const) moment[axis] += shifted[axis];
    }
    // What the other half cancels: side forces and roll of a symmetric load, the rest of an antisymmetric one.
    const isOdd = this.symmetry === 'antisymmetric';
    for (const axis of [0, 1, 2] as const) {
      if ((axis === 1) === isOdd) total.force[axis] += halves * force[axis];
      if ((axis === 1) !== isOdd) total.moment[axis] += halves * moment[axis];
    }
  }
}
