/**
 * The search for a proposal: from the drawn design and from places scattered by a seed, each start a local search of
 * numeric/constrained.ts on a coarse foil, in any order and on any number of threads; the best of them settled on the
 * program's own resolution. The same seed gives the same answer.
 */
import type { Design } from '../../design/document.ts';
import type { Resolution } from '../../geometry/craft.ts';
import { type Evaluate, type Least, minimise } from '../../numeric/constrained.ts';
import { randomFrom } from '../../numeric/random.ts';
import { profileFor } from '../profile-for.ts';
import type { Study } from '../study.ts';
import { type Bench, makeBench } from './candidate.ts';
import { designAt, evaluateAt, limitsOf, type Problem, placeOf, problemOf, variantsOf } from './problem.ts';

export const COARSE: Resolution = { strips: 24, stabilizerStrips: 12, rows: 1 };
export const FINE: Resolution = { strips: 40, stabilizerStrips: 20, rows: 1 }; // what `solve` has when nothing is said

/** Starts for each law that is tried: the drawn design and some scattered ones. */
const STARTS = 3;
const TRIES = 200; // scattered places looked at for one that can run
const MOST_ROUNDS = 60;

/** Worst margin, in its figure's scale, that still counts as held. */
export const HELD = 1e-4;

export interface StartOptions {
  seed: number;
  start: number; // from 0; see startsOf
}

/** Where a local search ended. */
export interface Found {
  start: number;
  variant: number; // of variantsOf
  x: Float64Array;
  drag: number; // N, weighted, on the coarse foil
  violation: number;
  isHeld: boolean; // every limit is
  evaluations: number;
  design: Design;
}

/** How many starts a design is searched from. */
export function startsOf(design: Design): number {
  return STARTS * variantsOf(design).length;
}

/** One bench for all candidates of a design: its sections do not change, and so their polars are asked for once. */
export function benchOf(design: Design, resolution: Resolution): Bench {
  const isStrutFixed = !design.wanted?.free?.strutThickness;
  const profile = profileFor(design);
  return makeBench(resolution, (changed) => (isStrutFixed ? profile : profileFor(changed)));
}

/** The search as it stands for one of the laws tried. */
export function problemFor(design: Design, variant: number, bench: Bench): Problem {
  return problemOf(variantsOf(design)[variant]!, limitsOf(design, benchOf(design, FINE)), bench);
}

/** One local search. Null where no place of this start can run. */
export function* searchFrom(design: Design, { seed, start }: StartOptions): Study<Found | null> {
  const variants = variantsOf(design).length;
  const variant = start % variants;
  const round = Math.floor(start / variants);
  const bench = benchOf(design, COARSE);
  const problem = problemFor(design, variant, bench);
  const evaluate = evaluateAt(problem, bench);
  const from = firstPlace(problem, evaluate, round === 0 ? null : randomFrom(seed * 1000 + start));
  if (!from) return null;
  const { x, values, violation, evaluations } = yield* share(minimise(evaluate, from), from.length);
  const drag = values.objective * problem.drag;
  const isHeld = violation <= HELD;
  return { start, variant, x, drag, violation, isHeld, evaluations, design: designAt(problem, x) };
}

/** The drawn design's place, or a scattered one that can run; null where none is found. */
function firstPlace(
  problem: Problem,
  evaluate: Evaluate,
  random: (() => number) | null,
): Float64Array | null {
  const drawn = placeOf(problem, problem.design);
  if (!random) return evaluate(drawn) ? drawn : null;
  for (let k = 0; k < TRIES; k++) {
    const place = drawn.map(() => random());
    if (evaluate(place)) return place;
  }
  return null;
}

/** A search with its share done guessed from the values it took: most end within thirty steps. */
export function* share(search: Generator<Least, Least, void>, variables: number): Study<Least> {
  const usual = Math.min(MOST_ROUNDS, 30) * (variables + 2);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    yield 1 - Math.exp((-2 * step.value.evaluations) / usual);
  }
}

/** The better of two ends: one that holds the limits, then the lower drag, then the earlier start. */
export function better(one: Found | null, other: Found | null): Found | null {
  if (!one || !other) return one ?? other;
  const [a, b] = one.start < other.start ? [one, other] : [other, one];
  if (a.isHeld !== b.isHeld) return a.isHeld ? a : b;
  if (!a.isHeld) return b.violation < a.violation * 0.99 ? b : a;
  return b.drag < a.drag * (1 - 1e-6) ? b : a;
}
