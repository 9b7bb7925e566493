/**
 * The front: the least weighted drag for each hold index, the document's other limits held. Its ends are searched first -
 * the least drag of all and the most hold that can be had -, then two chains walk down between them, each point starting
 * where its neighbour ended, on as many threads as there are chains. On the coarse foil of the search.
 */
import type { Design } from '../../design/document.ts';
import { type Evaluate, type Least, minimise, type Values } from '../../numeric/constrained.ts';
import type { Study } from '../study.ts';
import { type Bench, Candidate } from './candidate.ts';
import { FIGURES } from './figures.ts';
import { designAt, evaluateAt, type Problem, placeOf, valuesOf, weightedDrag } from './problem.ts';
import { benchOf, COARSE, HELD, problemFor, share } from './search.ts';

export interface FrontPlace {
  holdIndex: number;
  drag: number; // N, weighted
}

export interface FrontPoint extends FrontPlace {
  x: Float64Array; // place in the search
  design: Design;
}

export interface FrontEnds {
  lightest: FrontPoint; // least drag, whatever the hold
  firmest: FrontPoint; // the last level of the chains: the most hold, or twice what is drawn, wanted or lightest
  drawn: FrontPlace | null; // the present design; null where it cannot run
  variant: number;
  chains: ChainOptions[]; // what is to be walked between them
}

/** One of the two chains; `levels` in the order in which they are walked. */
export interface ChainOptions {
  variant: number;
  from: FrontPoint;
  levels: number[];
}

/** Levels between the ends, both ends apart. */
const LEVELS = 12;
/** Beyond this many times what is drawn, wanted or lightest nobody looks. */
const REACH = 2;
const LEAST_INDEX = 0.5; // of a design that has hardly any

/** The front without its hold limits. */
function frontProblem(design: Design, variant: number, bench: Bench): Problem {
  const problem = problemFor(design, variant, bench);
  return { ...problem, limits: problem.limits.filter(({ figure }) => figure !== 'holdIndex') };
}

function holdOf(candidate: Candidate): number {
  return FIGURES.holdIndex.value(candidate) ?? 0;
}

function pointAt(problem: Problem, bench: Bench, { x, values }: Least): FrontPoint {
  const design = designAt(problem, x);
  const holdIndex = holdOf(new Candidate(design, bench));
  return { holdIndex, drag: values.objective * problem.drag, x, design };
}

/** `near`: a good design to start from, such as the proposal. Null where no wing holds the other limits. */
export function* frontEnds(
  design: Design,
  { near, variant }: { near: Design; variant: number },
): Study<FrontEnds | null> {
  const bench = benchOf(design, COARSE);
  const problem = frontProblem(design, variant, bench);
  const from = placeOf(problem, near);
  const lightest = yield* halved(share(minimise(evaluateAt(problem, bench), from), from.length), 0);
  if (lightest.violation > HELD) return null;
  const wanted = Math.max(
    LEAST_INDEX,
    ...[design, near, designAt(problem, lightest.x)]
      .map((one) => holdOf(new Candidate(one, bench)))
      .map((index) => REACH * index),
    ...(design.wanted?.limits?.holdIndex?.least === undefined
      ? []
      : [REACH * design.wanted.limits.holdIndex.least]),
  );
  // The most hold that is still looked at: a limit is not needed there, the objective itself falls short.
  const scale = FIGURES.holdIndex.scale;
  const firm = (x: ArrayLike<number>): Values | null => {
    try {
      const candidate = new Candidate(designAt(problem, x), bench);
      const { objective, margins } = valuesOf(problem, candidate);
      const short = Math.max(0, wanted - holdOf(candidate)) / scale;
      return { objective: short + 1e-3 * objective, margins };
    } catch {
      return null;
    }
  };
  const most = yield* halved(share(minimise(firm, bentPlace(firm, from), { rounds: 40 }), from.length), 0.5);
  const ends = {
    lightest: pointAt(problem, bench, lightest),
    firmest: pointAt(problem, bench, most),
    drawn: drawnPoint(design, problem, bench),
    variant,
  };
  return { ...ends, chains: chainsOf(ends) };
}

/** Half-way to the middle of every range, where there is droop to climb by; the place itself where that cannot run. */
function bentPlace(evaluate: Evaluate, from: Float64Array): Float64Array {
  const place = from.map((value) => (value + 0.5) / 2);
  return evaluate(place) ? place : from;
}

function* halved<Result>(study: Study<Result>, from: number): Study<Result> {
  for (;;) {
    const step = study.next();
    if (step.done) return step.value;
    yield from + step.value / 2;
  }
}

function drawnPoint(design: Design, problem: Problem, bench: Bench): FrontEnds['drawn'] {
  try {
    const candidate = new Candidate(design, bench);
    const drag = weightedDrag(candidate, problem.weights);
    return { holdIndex: holdOf(candidate), drag };
  } catch {
    return null;
  }
}

/** The two chains that fill the front between its ends. */
function chainsOf({ lightest, firmest, variant }: Omit<FrontEnds, 'chains'>): ChainOptions[] {
  const [low, high] = [lightest.holdIndex, firmest.holdIndex];
  if (high - low < 1e-3) return [];
  const levels = Array.from({ length: LEVELS }, (_, k) => low + ((high - low) * (k + 1)) / (LEVELS + 1));
  return [
    // Both walk down: a flat wing's hold has no slope to climb by, as it is a product of two droops.
    { variant, from: firmest, levels: levels.slice(0, LEVELS / 2).reverse() },
    { variant, from: firmest, levels: levels.slice(LEVELS / 2).reverse() },
  ];
}

/** The points of one chain. A level that cannot be held is left out. */
export function* frontChain(design: Design, { variant, from, levels }: ChainOptions): Study<FrontPoint[]> {
  const bench = benchOf(design, COARSE);
  const base = frontProblem(design, variant, bench);
  const points: FrontPoint[] = [];
  let x = from.x;
  for (const [k, level] of levels.entries()) {
    const limits = [...base.limits, { figure: 'holdIndex', side: 'least', value: level } as const];
    const problem: Problem = { ...base, limits };
    const search = share(minimise(evaluateAt(problem, bench), x, { reach: 0.1, rounds: 40 }), x.length);
    let step = search.next();
    for (; !step.done; step = search.next()) yield (k + step.value) / levels.length;
    if (step.value.violation > HELD) continue;
    x = step.value.x;
    points.push(pointAt(problem, bench, step.value));
  }
  return points;
}

export interface Front {
  points: FrontPoint[]; // hold rising
  drawn: FrontEnds['drawn'];
  over: number | null; // N that the present design pays over the best wing of its hold; null beside the front
}

/** Ends and chains together: only the points that no other one beats. */
export function frontOf(ends: FrontEnds, chains: readonly FrontPoint[][]): Front {
  const sorted = [ends.lightest, ...chains.flat()].sort((a, b) => a.holdIndex - b.holdIndex);
  const apart = 1e-3 * (sorted.at(-1)!.holdIndex - sorted[0]!.holdIndex);
  // A level that does not bind ends where the one above it did.
  const all = sorted.filter(({ holdIndex }, k) => k === 0 || holdIndex - sorted[k - 1]!.holdIndex > apart);
  const points = all.filter((point, k) =>
    all.slice(k + 1).every((other) => other.drag > point.drag * (1 - 1e-5)),
  );
  return { points, drawn: ends.drawn, over: dragOverFront(points, ends.drawn) };
}

/** N that a design pays over the best wing of its hold; null beside the front. */
export function dragOverFront(points: readonly FrontPlace[], drawn: FrontPlace | null): number | null {
  const first = points[0];
  if (!drawn || !first) return null;
  if (drawn.holdIndex <= first.holdIndex) return drawn.drag - first.drag;
  const k = points.findIndex(({ holdIndex }) => holdIndex >= drawn.holdIndex);
  if (k < 1) return null;
  const [a, b] = [points[k - 1]!, points[k]!];
  const along = (drawn.holdIndex - a.holdIndex) / (b.holdIndex - a.holdIndex);
  return drawn.drag - (a.drag + along * (b.drag - a.drag));
}
