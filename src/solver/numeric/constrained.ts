/**
 * Least of a smooth function of a few bounded variables under inequalities, from values alone: successive quadratic
 * programming in a trust region (R. Fletcher, Practical Methods of Optimization, 2nd ed. 1987, ch. 12 and 14.4), slopes by
 * differences, second derivatives by damped updates (M. J. D. Powell, Lecture Notes in Mathematics 630, 1978). What
 * cannot be met at once is let off by one common slack at a price, so that every step exists and a search that ends with
 * slack left names the inequalities that clash.
 *
 * The quadratic programs are the npm package quadprog's (dual active set of D. Goldfarb and A. Idnani, 1983): plain
 * JavaScript without dependencies, widely used, it hands out the multipliers that an explanation needs. Compared: a
 * WebAssembly build of a C collection of searches (900 kB, unchanged for years; the page's security policy forbids
 * compiling it; its simplex-based constrained search takes several hundred values for ten variables and gives no
 * multipliers); pure JavaScript simplex, gradient and dividing-rectangles packages (no constraints beyond bounds, penalties
 * cannot hold a limit to a thousandth); evolutionary ones (none kept up; ten thousands of values). No package offers
 * the outer loop, hence this file.
 */
import quadprog from 'quadprog';

/** Value of the function and of the inequalities, each met at 0 or above. */
export interface Values {
  objective: number;
  margins: Float64Array; // may change in number where the function jumps
}

export interface ConstrainedOptions {
  price?: number; // of slack to begin with, in units of the objective; default 10
  rounds?: number; // most steps; default 60
  reach?: number; // most that a variable moves in the first step; default 0.2
  tolerance?: number; // of the objective and the margins at the end; default 1e-6
}

export interface Least {
  x: Float64Array;
  values: Values;
  multipliers: Float64Array; // d(least)/d(margin asked for), one an inequality, never negative
  lower: Float64Array; // the same of each variable's lower bound
  upper: Float64Array;
  violation: number; // worst margin below 0, as a positive number
  evaluations: number;
}

/** What the function answers where it has no value. */
export type Evaluate = (x: Float64Array) => Values | null;

const STEP = 1e-5; // of the differences
const DEAREST = 1e5; // price of slack beyond which the inequalities are taken to clash
const ROUNDING = 1e-12; // how near to a bound is at it
const STIFFNESS = 1e-6; // curvature of slack: the quadratic program wants every direction curved

interface Step {
  d: Float64Array;
  slack: number;
  multipliers: Float64Array;
  lower: Float64Array;
  upper: Float64Array;
}

/** Searches from `start`; every variable runs from 0 to 1. Yields after each value. Throws where the start has none. */
export function* minimise(
  evaluate: Evaluate,
  start: Float64Array,
  options: ConstrainedOptions = {},
): Generator<Least, Least, void> {
  const search = new Search(evaluate, start, options);
  yield* search.begin();
  for (let round = 0; round < (options.rounds ?? 60); round++) {
    if (yield* search.advance()) break;
  }
  return search.least();
}

class Search {
  private x: Float64Array;
  private values!: Values;
  private slope!: Float64Array; // of the objective
  private slopes!: Float64Array; // of the margins, row by row
  private curvature: Float64Array; // of the Lagrangian, n by n
  private last: Step | null = null;
  private price: number;
  private reach: number;
  private readonly tolerance: number;
  private readonly n: number;
  private evaluations = 0;

  constructor(
    private readonly evaluate: Evaluate,
    start: Float64Array,
    options: ConstrainedOptions,
  ) {
    this.x = start.map((value) => Math.min(1, Math.max(0, value)));
    this.n = start.length;
    this.curvature = new Float64Array(this.n * this.n);
    for (let i = 0; i < this.n; i++) this.curvature[i * this.n + i] = 1;
    this.price = options.price ?? 10;
    this.reach = options.reach ?? 0.2;
    this.tolerance = options.tolerance ?? 1e-6;
  }

  *begin(): Generator<Least, void, void> {
    const values = this.value(this.x);
    if (!values) throw new Error('the search has no value to start from');
    this.values = values;
    yield this.least();
    yield* this.difference();
  }

  /** One accepted step, or several refused ones; true at the end. */
  *advance(): Generator<Least, boolean, void> {
    for (let tries = 0; tries < 12; tries++) {
      const step = this.solve(this.values.margins);
      if (!step) return true;
      this.last = step;
      const gain = this.merit(this.values) - this.model(step);
      if (gain < this.tolerance) return this.settled();
      let trial = this.moved(step.d);
      let values = this.value(trial);
      yield this.least();
      const isComparable = values?.margins.length === this.values.margins.length;
      if (values && isComparable && this.ratio(values, gain) < 0.1) {
        // The margins bend: aim again with what they came out as at the far end (second-order correction).
        const again = this.solve(this.corrected(values, step.d));
        if (again) {
          const other = this.moved(again.d);
          const better = this.value(other);
          yield this.least();
          if (better && this.merit(better) < this.merit(values)) [trial, values] = [other, better];
        }
      }
      const ratio = values ? this.ratio(values, gain) : -1;
      const length = largest(step.d);
      if (ratio < 0.25) this.reach = 0.4 * Math.min(this.reach, length);
      else if (ratio > 0.75 && length > 0.9 * this.reach) this.reach = Math.min(0.5, 2 * this.reach);
      if (values && ratio > 1e-3) {
        yield* this.accept(trial, values, step);
        return false;
      }
      if (this.reach < 1e-7) return this.settled();
    }
    return true;
  }

  least(): Least {
    const zero = () => new Float64Array(this.n);
    return {
      x: this.x,
      values: this.values,
      multipliers: this.last?.multipliers ?? new Float64Array(this.values.margins.length),
      lower: this.last?.lower ?? zero(),
      upper: this.last?.upper ?? zero(),
      violation: violationOf(this.values.margins),
      evaluations: this.evaluations,
    };
  }

  /** Nothing is left to gain at this price of slack: the end, unless slack is left and may cost more. */
  private settled(): boolean {
    if (violationOf(this.values.margins) <= 10 * this.tolerance || this.price >= DEAREST) return true;
    this.price = Math.min(DEAREST, 10 * this.price);
    this.reach = Math.max(this.reach, 0.05);
    return false;
  }

  private *accept(x: Float64Array, values: Values, step: Step): Generator<Least, void, void> {
    const before = this.lagrangian(step);
    const moved = x.map((value, i) => value - this.x[i]!);
    const isSmooth = values.margins.length === this.values.margins.length;
    this.x = x;
    this.values = values;
    yield* this.difference();
    if (!isSmooth) {
      this.last = null; // its multipliers belong to other margins
      return;
    }
    const after = this.lagrangian(step);
    this.bend(
      moved,
      after.map((value, i) => value - before[i]!),
    );
  }

  /** Slope of the Lagrangian at the present place with a step's multipliers. */
  private lagrangian({ multipliers }: Step): Float64Array {
    const { n } = this;
    const slope = this.slope.slice();
    multipliers.forEach((multiplier, j) => {
      if (multiplier !== 0) for (let i = 0; i < n; i++) slope[i]! -= multiplier * this.slopes[j * n + i]!;
    });
    return slope;
  }

  private *difference(): Generator<Least, void, void> {
    const { n } = this;
    const m = this.values.margins.length;
    this.slope = new Float64Array(n);
    this.slopes = new Float64Array(m * n);
    for (let i = 0; i < n; i++) {
      const forward = this.x[i]! + STEP <= 1 ? STEP : -STEP;
      const found = this.beside(i, forward) ?? this.beside(i, -forward);
      yield this.least();
      if (!found) continue; // no value on either side: taken as level
      const { values, step } = found;
      this.slope[i] = (values.objective - this.values.objective) / step;
      for (let j = 0; j < m; j++)
        this.slopes[j * n + i] = (values.margins[j]! - this.values.margins[j]!) / step;
    }
  }

  private beside(i: number, step: number): { values: Values; step: number } | null {
    const x = this.x.slice();
    x[i]! += step;
    const values = x[i]! >= 0 && x[i]! <= 1 ? this.value(x) : null;
    // Another number of margins: the function jumps between here and there, and has no slope on that side.
    return values?.margins.length === this.values.margins.length ? { values, step } : null;
  }

  private value(x: Float64Array): Values | null {
    this.evaluations++;
    const values = this.evaluate(x);
    return values && Number.isFinite(values.objective) && values.margins.every(Number.isFinite)
      ? values
      : null;
  }

  private moved(d: Float64Array): Float64Array {
    return this.x.map((value, i) => {
      const to = value + d[i]!;
      return to < ROUNDING ? 0 : to > 1 - ROUNDING ? 1 : to;
    });
  }

  private merit({ objective, margins }: Values): number {
    return objective + this.price * violationOf(margins);
  }

  private ratio(values: Values, gain: number): number {
    return (this.merit(this.values) - this.merit(values)) / gain;
  }

  /** The merit that the quadratic model sees at the end of a step. */
  private model({ d, slack }: Step): number {
    let value = this.values.objective + this.price * slack;
    for (let i = 0; i < this.n; i++) {
      value += this.slope[i]! * d[i]!;
      for (let j = 0; j < this.n; j++) value += 0.5 * d[i]! * this.curvature[i * this.n + j]! * d[j]!;
    }
    return value;
  }

  private corrected(far: Values, d: Float64Array): Float64Array {
    const { n } = this;
    return far.margins.map((margin, j) => {
      let linear = 0;
      for (let i = 0; i < n; i++) linear += this.slopes[j * n + i]! * d[i]!;
      return margin - linear;
    });
  }

  /** The quadratic program: d within reach and bounds, margins plus slopes d plus slack at 0 or above. */
  private solve(margins: Float64Array): Step | null {
    const { n, reach } = this;
    const m = margins.length;
    const size = n + 1;
    const D = Array.from({ length: size + 1 }, () => new Array<number>(size + 1).fill(0));
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) D[i + 1]![j + 1] = this.curvature[i * n + j]!;
    D[size]![size] = STIFFNESS * this.price;
    const linear = [0, ...Array.from(this.slope, (value) => -value), -this.price];
    const count = m + 1 + 2 * n;
    const A = Array.from({ length: size + 1 }, () => new Array<number>(count + 1).fill(0));
    const b = new Array<number>(count + 1).fill(0);
    for (let j = 0; j < m; j++) {
      for (let i = 0; i < n; i++) A[i + 1]![j + 1] = this.slopes[j * n + i]!;
      A[size]![j + 1] = 1;
      b[j + 1] = -margins[j]!;
    }
    A[size]![m + 1] = 1;
    for (let i = 0; i < n; i++) {
      A[i + 1]![m + 2 + i] = 1;
      b[m + 2 + i] = Math.max(-reach, -this.x[i]!);
      A[i + 1]![m + 2 + n + i] = -1;
      b[m + 2 + n + i] = -Math.min(reach, 1 - this.x[i]!);
    }
    const { solution, Lagrangian, message } = quadprog.solveQP(D, linear, A, b);
    if (message || !solution.slice(1).every(Number.isFinite)) return null;
    const bound = (from: number, isBound: (i: number) => boolean) =>
      Float64Array.from({ length: n }, (_, i) => (isBound(i) ? (Lagrangian[from + i] ?? 0) : 0));
    return {
      d: Float64Array.from(solution.slice(1, n + 1)),
      slack: Math.max(0, solution[size]!),
      multipliers: Float64Array.from(Lagrangian.slice(1, m + 1)),
      lower: bound(m + 2, (i) => this.x[i]! <= reach),
      upper: bound(m + 2 + n, (i) => 1 - this.x[i]! <= reach),
    };
  }

  /** Powell's damped update: the curvature stays positive definite. */
  private bend(s: Float64Array, y: Float64Array): void {
    const { n, curvature } = this;
    const Bs = new Float64Array(n);
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) Bs[i]! += curvature[i * n + j]! * s[j]!;
    const sBs = dot(s, Bs);
    const sy = dot(s, y);
    if (!(sBs > 1e-16)) return;
    const share = sy >= 0.2 * sBs ? 1 : (0.8 * sBs) / (sBs - sy);
    const r = y.map((value, i) => share * value + (1 - share) * Bs[i]!);
    const sr = dot(s, r);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) curvature[i * n + j]! += (r[i]! * r[j]!) / sr - (Bs[i]! * Bs[j]!) / sBs;
  }
}

function violationOf(margins: Float64Array): number {
  let worst = 0;
  for (const margin of margins) if (-margin > worst) worst = -margin;
  return worst;
}

function largest(d: Float64Array): number {
  return d.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}
