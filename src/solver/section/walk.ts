/**
 * One walk along the whole boundary layer: from the stagnation point aft along the upper side, along the lower one,
 * then down the wake. At each station the outer flow's answer (response.ts) is split into what all other stations do,
 * held at its latest value, and what this one does to itself, solved together with the layer (interval.ts).
 */
import * as step from './interval.ts';
import { Interval, type Kind, LAMINAR, TURBULENT, WAKE } from './interval.ts';
import { STAGNATION_SHAPE, STAGNATION_THETA } from './laminar.ts';
import type { Side, Stations } from './stations.ts';
import { amplification, michelReTheta } from './transition.ts';
import { startingStress } from './turbulent.ts';

export class Walker {
  failures = 0; // steps that did not solve in the last walk
  growthLimit = 9;
  usesMichel = false;
  readonly interval = new Interval();
  private rate = 0; // of growth by arc, at the near end of a laminar step

  constructor(private readonly stations: Stations) {}

  /** Renews the stations and their mass defect once, in place. */
  walk(): void {
    const { stations } = this;
    this.failures = 0;
    stations.findStagnation();
    this.walkSide(stations.upper, stations.ahead, -1);
    this.walkSide(stations.lower, stations.ahead + 1, 1);
    this.walkWake();
  }

  /** Walks from node `first` to the trailing edge, up or down the nodes. */
  private walkSide(side: Side, first: number, direction: 1 | -1): void {
    const { stations, interval } = this;
    const { columns, change, surface, flow } = stations.response;
    const { mass } = stations;
    const end = direction > 0 ? surface - 1 : 0;
    side.transition = Number.NaN;
    this.beginSide(side, first);
    for (let i = first + direction; i !== end + direction; i += direction) {
      const arc = Math.abs(flow.panels.arc[i]! - stations.stagnation);
      const isTail = i === end; // whose mass the wake starts with
      const own = change[i * columns + i]! + (isTail ? side.sign * change[i * columns + surface]! : 0);
      const old = side.sign * mass[i]!;
      interval.end = arc;
      interval.byMass = own;
      interval.others = side.sign * stations.speedAt(i) - own * old;
      if (Number.isNaN(side.transition)) this.passLaminar(side, i, i - direction);
      else this.pass(TURBULENT, i);
      const found = interval.far[step.MASS]!;
      mass[i] = side.sign * found;
      if (isTail) mass[surface]! += found - old;
      this.advance(i);
    }
  }

  /** The first station lies in a stagnation flow: the speed grows evenly over the panel. */
  private beginSide(side: Side, first: number): void {
    const { interval, stations } = this;
    const { ahead } = stations;
    const { arc, length } = stations.response.flow.panels;
    const { far } = interval;
    const slope = Math.max((stations.speedAt(ahead) - stations.speedAt(ahead + 1)) / length[ahead]!, 1e-3);
    far[step.ARC] = Math.max(Math.abs(arc[first]! - stations.stagnation), 1e-4 * length[ahead]!);
    far[step.THETA] = STAGNATION_THETA / Math.sqrt(slope * interval.reynolds);
    far[step.SHAPE] = STAGNATION_SHAPE;
    far[step.SPEED] = slope * far[step.ARC]!;
    far[step.STRESS] = 0;
    far[step.MASS] = far[step.SPEED]! * far[step.THETA]! * STAGNATION_SHAPE;
    interval.near.set(far);
    interval.begin(LAMINAR);
    stations.mass[first] = side.sign * far[step.MASS]!;
    stations.growth[first] = 0;
    this.rate = this.rateOf(far);
    stations.kind[first] = LAMINAR;
    stations.friction[first] = interval.friction();
    this.store(first);
  }

  /** A step that starts laminar: as a whole, or up to the point of transition and turbulent from there. */
  private passLaminar(side: Side, i: number, before: number): void {
    const { interval, stations } = this;
    const { growth, stagnation } = stations;
    const { near, far, end: arc } = interval;
    this.pass(LAMINAR, i);
    growth[i] = this.grown(growth[before]!);
    const start = near[step.ARC]!;
    const natural = (this.growthLimit - growth[before]!) / Math.max(growth[i]! - growth[before]!, 1e-30);
    const tripped = (side.sign * (stagnation - side.trip) - start) / (arc - start); // NaN without a trip
    const share = Math.max(0, Number.isNaN(tripped) ? natural : Math.min(tripped, natural));
    if (share >= 1) return;
    side.transition = stagnation - side.sign * (start + share * (arc - start));
    for (let k = 0; k <= step.SPEED; k++) near[k] = near[k]! ** (1 - share) * far[k]! ** share;
    interval.onset = near[step.ARC]!;
    near[step.STRESS] = this.freshStress();
    interval.begin(TURBULENT);
    growth[i] = 0;
    this.pass(TURBULENT, i);
  }

  /** Growth of disturbances at the far end of a laminar step. */
  private grown(before: number): number {
    const { near, far, reynolds } = this.interval;
    if (this.usesMichel) {
      const reTheta = reynolds * far[step.SPEED]! * far[step.THETA]!;
      return reTheta / michelReTheta(reynolds * far[step.SPEED]! * far[step.ARC]!);
    }
    const first = this.rate;
    this.rate = this.rateOf(far);
    return before + 0.5 * (far[step.ARC]! - near[step.ARC]!) * (first + this.rate);
  }

  private rateOf(state: Float64Array): number {
    const theta = state[step.THETA]!;
    return amplification(state[step.SHAPE]!, this.interval.reynolds * state[step.SPEED]! * theta) / theta;
  }

  /** q with which a layer in the state of the near end starts to be turbulent. */
  private freshStress(): number {
    const { interval } = this;
    interval.near[step.STRESS] = 1; // the balance does not depend on it
    interval.begin(TURBULENT);
    return startingStress(interval.near[step.SHAPE]!) * interval.balance();
  }

  /** Solves one step, from the last walk's answer or, failing that, from the near end's. */
  private pass(kind: Kind, i: number): void {
    const { kind: kinds, theta } = this.stations;
    const wasSame = kinds[i] === kind && theta[i]! > 0;
    kinds[i] = kind;
    const isSolved = (wasSame && this.solveFromLast(kind, i)) || this.solveFromNear(kind);
    if (!isSolved) this.stand(kind);
    this.store(i);
  }

  private solveFromLast(kind: Kind, i: number): boolean {
    const { theta, shape, speed, stress } = this.stations;
    const { far } = this.interval;
    far[step.THETA] = theta[i]!;
    far[step.MASS] = theta[i]! * shape[i]! * speed[i]!;
    far[step.STRESS] = stress[i]!;
    return this.interval.solve(kind);
  }

  /** First with the speed of the near end kept, as it is where the layer leads; then with its mass defect. */
  private solveFromNear(kind: Kind): boolean {
    const { near, far, others, byMass } = this.interval;
    far.set(near);
    far[step.MASS] = (near[step.SPEED]! - others) / byMass;
    if (far[step.MASS]! > 0 && this.interval.solve(kind)) return true;
    far.set(near);
    far[step.MASS] = near[step.THETA]! * near[step.SHAPE]! * near[step.SPEED]!;
    return this.interval.solve(kind);
  }

  /** Keeps the near end's state where a step has no answer: counted, unless a spent wake only ran out of shape. */
  private stand(kind: Kind): void {
    const { near, far, end } = this.interval;
    if (kind !== WAKE || near[step.SHAPE]! > 1.05) this.failures++;
    far.set(near);
    far[step.ARC] = end;
    far[step.MASS] = near[step.THETA]! * near[step.SHAPE]! * near[step.SPEED]!;
  }

  private store(i: number): void {
    const { stations } = this;
    const { far } = this.interval;
    stations.arc[i] = far[step.ARC]!;
    stations.theta[i] = far[step.THETA]!;
    stations.shape[i] = far[step.SHAPE]!;
    stations.speed[i] = far[step.SPEED]!;
    stations.stress[i] = stations.kind[i] === LAMINAR ? 0 : far[step.STRESS]!;
  }

  private advance(i: number): void {
    this.interval.advance();
    this.stations.friction[i] = this.interval.friction();
  }

  /** The wake starts with the sum of the two layers and the width of the trailing edge. */
  private walkWake(): void {
    const { interval, stations } = this;
    const { theta, shape, speed, mass, arc, response } = stations;
    const { change, columns, surface, wake, wakeArc, flow } = response;
    const { near } = interval;
    const last = surface - 1;
    const thickness = theta[0]! + theta[last]!;
    const displaced = theta[0]! * shape[0]! + theta[last]! * shape[last]! + flow.panels.gap;
    const stress = (theta[0]! * this.tailStress(0) + theta[last]! * this.tailStress(last)) / thickness;
    const from = 0.5 * (arc[0]! + arc[last]!);
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
      const others = stations.speedAt(i) - own * mass[i + 1]!;
      interval.end = from + wakeArc[k]!;
      interval.others = others;
      interval.byMass = 2 * own; // a half's m counts twice
      this.pass(WAKE, i);
      mass[i + 1] = 2 * interval.far[step.MASS]!;
      this.advance(i);
    }
  }

  /** q at the end of a side; a layer still laminar turns turbulent there. */
  private tailStress(i: number): number {
    const { theta, shape, speed, stress, arc, kind } = this.stations;
    if (kind[i] === TURBULENT) return stress[i]!;
    const { near } = this.interval;
    near[step.ARC] = arc[i]!;
    near[step.THETA] = theta[i]!;
    near[step.SHAPE] = shape[i]!;
    near[step.SPEED] = speed[i]!;
    return this.freshStress();
  }
}
