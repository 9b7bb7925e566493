/**
 * One walk along the whole boundary layer: from the stagnation point aft along the upper side, along the lower one,
 * then down the wake. At each station the outer flow's answer (response.ts) is split into what all other stations do,
 * held at its latest value, and what this one does to itself, solved together with the layer (interval.ts).
 *
 * Stations: surface nodes in the order of the panels, then the wake's. Chord 1, stream speed 1.
 */
import * as step from './interval.ts';
import { Interval, type Kind, LAMINAR, TURBULENT, WAKE } from './interval.ts';
import { STAGNATION_SHAPE, STAGNATION_THETA } from './laminar.ts';
import type { MassResponse } from './response.ts';
import { amplification, michelReTheta } from './transition.ts';
import { startingStress } from './turbulent.ts';

/** One side of the section. Arcs are along the panels, from their first node. */
export interface Side {
  sign: 1 | -1; // of the clockwise speed
  trip: number; // arc of the trip; NaN where there is none
  transition: number; // arc of transition; NaN where the layer stays laminar up to the trailing edge
}

export class Walker {
  readonly arc: Float64Array; // from the stagnation point
  readonly theta: Float64Array; // of one half in the wake
  readonly shape: Float64Array;
  readonly speed: Float64Array; // along the flow, positive
  readonly stress: Float64Array; // q; 0 where laminar
  readonly friction: Float64Array; // cf/2
  readonly growth: Float64Array; // of disturbances, where laminar: n, or Re_theta over Michel's
  readonly kind: Uint8Array;
  readonly mass: Float64Array; // m as `MassResponse` takes it
  readonly inviscid: Float64Array; // speed at the stations
  readonly upper: Side = { sign: 1, trip: Number.NaN, transition: Number.NaN };
  readonly lower: Side = { sign: -1, trip: Number.NaN, transition: Number.NaN };
  stagnation = 0; // arc along the panels
  failures = 0; // steps that did not solve in the last walk
  growthLimit = 9;
  usesMichel = false;
  readonly interval = new Interval();
  private ahead: number; // last node above the stagnation point

  constructor(readonly response: MassResponse) {
    const { stations, columns, surface } = response;
    this.arc = new Float64Array(stations);
    this.theta = new Float64Array(stations);
    this.shape = new Float64Array(stations);
    this.speed = new Float64Array(stations);
    this.stress = new Float64Array(stations);
    this.friction = new Float64Array(stations);
    this.growth = new Float64Array(stations);
    this.kind = new Uint8Array(stations);
    this.mass = new Float64Array(columns);
    this.inviscid = new Float64Array(stations);
    this.ahead = (surface - 1) / 2;
  }

  /** Renews the layer and `mass` once, in place. */
  walk(): void {
    this.failures = 0;
    this.findStagnation();
    this.walkSide(this.upper, this.ahead, -1);
    this.walkSide(this.lower, this.ahead + 1, 1);
    this.walkWake();
  }

  /** Speed at a station, clockwise on the surface, by the latest mass defect. */
  speedAt(i: number): number {
    const { change, columns } = this.response;
    const { mass } = this;
    const row = i * columns;
    let j = 0;
    let a = this.inviscid[i]!; // four running sums: with one, each addition would wait for the last
    let b = 0;
    let c = 0;
    let d = 0;
    for (; j + 3 < columns; j += 4) {
      a += change[row + j]! * mass[j]!;
      b += change[row + j + 1]! * mass[j + 1]!;
      c += change[row + j + 2]! * mass[j + 2]!;
      d += change[row + j + 3]! * mass[j + 3]!;
    }
    for (; j < columns; j++) a += change[row + j]! * mass[j]!;
    return a + b + (c + d);
  }

  private findStagnation(): void {
    const { count, arc } = this.response.flow.panels;
    let k = this.ahead;
    while (k > 1 && this.speedAt(k) <= 0) k--;
    while (k < count - 2 && this.speedAt(k + 1) > 0) k++;
    const above = this.speedAt(k);
    const below = this.speedAt(k + 1);
    this.ahead = k;
    this.stagnation = arc[k]! + ((arc[k + 1]! - arc[k]!) * above) / (above - below);
  }

  /** Walks from node `first` to the trailing edge, up or down the nodes. */
  private walkSide(side: Side, first: number, direction: 1 | -1): void {
    const { panels } = this.response.flow;
    const { columns, change, surface } = this.response;
    const { mass, interval } = this;
    const end = direction > 0 ? surface - 1 : 0;
    side.transition = Number.NaN;
    this.beginSide(side, first);
    for (let i = first + direction; i !== end + direction; i += direction) {
      const arc = Math.abs(panels.arc[i]! - this.stagnation);
      const isTail = i === end; // whose mass the wake starts with
      const own = change[i * columns + i]! + (isTail ? side.sign * change[i * columns + surface]! : 0);
      const old = side.sign * mass[i]!;
      const others = side.sign * this.speedAt(i) - own * old;
      if (Number.isNaN(side.transition)) this.passLaminar(side, i, i - direction, arc, others, own);
      else this.pass(TURBULENT, i, arc, others, own);
      const found = interval.far[step.MASS]!;
      mass[i] = side.sign * found;
      if (isTail) mass[surface]! += found - old;
      this.keep(i);
    }
  }

  /** The first station lies in a stagnation flow: the speed grows evenly over the panel. */
  private beginSide(side: Side, first: number): void {
    const { arc, length } = this.response.flow.panels;
    const { interval, ahead } = this;
    const { far } = interval;
    const slope = Math.max((this.speedAt(ahead) - this.speedAt(ahead + 1)) / length[ahead]!, 1e-3);
    far[step.ARC] = Math.max(Math.abs(arc[first]! - this.stagnation), 1e-4 * length[ahead]!);
    far[step.THETA] = STAGNATION_THETA / Math.sqrt(slope * interval.reynolds);
    far[step.SHAPE] = STAGNATION_SHAPE;
    far[step.SPEED] = slope * far[step.ARC]!;
    far[step.STRESS] = 0;
    far[step.MASS] = far[step.SPEED]! * far[step.THETA]! * STAGNATION_SHAPE;
    interval.near.set(far);
    interval.begin(LAMINAR);
    this.mass[first] = side.sign * far[step.MASS]!;
    this.growth[first] = 0;
    this.kind[first] = LAMINAR;
    this.store(first);
    this.friction[first] = interval.friction();
  }

  /** A step that starts laminar: as a whole, or up to the point of transition and turbulent from there. */
  private passLaminar(side: Side, i: number, before: number, arc: number, others: number, own: number): void {
    const { interval, growth } = this;
    const { near, far } = interval;
    this.pass(LAMINAR, i, arc, others, own);
    growth[i] = this.grown(growth[before]!);
    const start = near[step.ARC]!;
    const natural = (this.growthLimit - growth[before]!) / Math.max(growth[i]! - growth[before]!, 1e-30);
    const tripped = (Math.abs(side.trip - this.stagnation) - start) / (arc - start); // NaN without a trip
    const nearest = Number.isNaN(tripped) ? natural : Math.min(tripped, natural);
    const share = Math.max(0, nearest);
    if (share >= 1) return;
    side.transition = this.stagnation - side.sign * (start + share * (arc - start));
    for (let k = 0; k <= step.SPEED; k++) near[k] = near[k]! ** (1 - share) * far[k]! ** share;
    near[step.STRESS] = 1;
    interval.onset = near[step.ARC]!;
    interval.begin(TURBULENT);
    near[step.STRESS] = startingStress(near[step.SHAPE]!) * interval.balance();
    interval.begin(TURBULENT);
    growth[i] = 0;
    this.pass(TURBULENT, i, arc, others, own);
  }

  /** Growth of disturbances at the far end of a laminar step. */
  private grown(before: number): number {
    const { near, far, reynolds } = this.interval;
    if (this.usesMichel)
      return (
        (reynolds * far[step.SPEED]! * far[step.THETA]!) /
        michelReTheta(reynolds * far[step.SPEED]! * far[step.ARC]!)
      );
    const first = amplification(near[step.SHAPE]!, reynolds * near[step.SPEED]! * near[step.THETA]!);
    const last = amplification(far[step.SHAPE]!, reynolds * far[step.SPEED]! * far[step.THETA]!);
    const reach = far[step.ARC]! - near[step.ARC]!;
    return before + 0.5 * reach * (first / near[step.THETA]! + last / far[step.THETA]!);
  }

  /** Solves one step, from the last walk's answer or, failing that, from the near end's. */
  private pass(kind: Kind, i: number, arc: number, others: number, own: number): void {
    const { interval, theta, shape, speed, stress } = this;
    const { near, far } = interval;
    const wasSame = this.kind[i] === kind && theta[i]! > 0;
    this.kind[i] = kind;
    if (wasSame) {
      far[step.THETA] = theta[i]!;
      far[step.MASS] = theta[i]! * shape[i]! * speed[i]!;
      far[step.STRESS] = stress[i]!;
      if (interval.solve(kind, arc, others, own)) {
        this.store(i);
        return;
      }
    }
    far.set(near);
    far[step.MASS] = (near[step.SPEED]! - others) / own; // the speed of the near end kept
    if (far[step.MASS]! > 0 && interval.solve(kind, arc, others, own)) {
      this.store(i);
      return;
    }
    far.set(near);
    far[step.MASS] = near[step.THETA]! * near[step.SHAPE]! * near[step.SPEED]!;
    if (!interval.solve(kind, arc, others, own)) this.stand(kind, arc);
    this.store(i);
  }

  /** Keeps the near end's state where a step has no answer: counted, unless a spent wake only ran out of shape. */
  private stand(kind: Kind, arc: number): void {
    const { near, far } = this.interval;
    if (kind !== WAKE || near[step.SHAPE]! > 1.05) this.failures++;
    far.set(near);
    far[step.ARC] = arc;
    far[step.MASS] = near[step.THETA]! * near[step.SHAPE]! * near[step.SPEED]!;
  }

  private store(i: number): void {
    const { far } = this.interval;
    this.arc[i] = far[step.ARC]!;
    this.theta[i] = far[step.THETA]!;
    this.shape[i] = far[step.SHAPE]!;
    this.speed[i] = far[step.SPEED]!;
    this.stress[i] = this.kind[i] === LAMINAR ? 0 : far[step.STRESS]!;
  }

  private keep(i: number): void {
    this.interval.advance();
    this.friction[i] = this.interval.friction();
  }

  /** The wake starts with the sum of the two layers and the width of the trailing edge. */
  private walkWake(): void {
    const { interval, theta, shape, speed, mass, response } = this;
    const { change, columns, surface, wake, wakeArc } = response;
    const { near } = interval;
    const last = surface - 1;
    const thickness = theta[0]! + theta[last]!;
    const displaced = theta[0]! * shape[0]! + theta[last]! * shape[last]! + response.flow.panels.gap;
    const stress = (theta[0]! * this.tailStress(0) + theta[last]! * this.tailStress(last)) / thickness;
    const from = 0.5 * (this.arc[0]! + this.arc[last]!);
    near[step.ARC] = from;
    near[step.THETA] = 0.5 * thickness;
    near[step.SHAPE] = displaced / thickness;
    near[step.SPEED] = 0.5 * (speed[0]! + speed[last]!);
    near[step.STRESS] = stress;
    interval.begin(WAKE);
    mass[surface] = near[step.SPEED]! * displaced;
    for (let k = 1; k <= wake; k++) {
      const i = last + k;
      const own = change[i * columns + i + 1]!;
      const others = this.speedAt(i) - own * mass[i + 1]!;
      this.pass(WAKE, i, from + wakeArc[k]!, others, 2 * own); // a half's m counts twice
      mass[i + 1] = 2 * interval.far[step.MASS]!;
      this.keep(i);
    }
  }

  /** q at the end of a side; a layer still laminar turns turbulent there. */
  private tailStress(i: number): number {
    if (this.kind[i] === TURBULENT) return this.stress[i]!;
    const { near } = this.interval;
    near[step.ARC] = this.arc[i]!;
    near[step.THETA] = this.theta[i]!;
    near[step.SHAPE] = this.shape[i]!;
    near[step.SPEED] = this.speed[i]!;
    near[step.STRESS] = 1;
    this.interval.begin(TURBULENT);
    return startingStress(near[step.SHAPE]!) * this.interval.balance();
  }
}
