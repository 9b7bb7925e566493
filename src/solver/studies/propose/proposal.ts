/**
 * The answer of a search: the proposed design with its figures beside the drawn one's, what binds, what it costs and what
 * would be the next cheapest change; or, where the limits cannot all be held, which of them clash. SI, angles in degrees.
 */
import type { Design } from '../../design/document.ts';
import { type Evaluate, minimise } from '../../numeric/constrained.ts';
import type { Study } from '../study.ts';
import { type Bench, Candidate, SPEED_NAMES, type SpeedName } from './candidate.ts';
import { type Binding, bindingsOf, type Clash, clashOf, type Easing, easingsOf } from './explain.ts';
import { FIGURES, type FigureName } from './figures.ts';
import {
  designAt,
  evaluateAt,
  figureOf,
  type Limit,
  type Problem,
  placeOf,
  type Weights,
} from './problem.ts';
import { QUANTITIES, QUANTITY_NAMES, type QuantityName, type Span } from './quantities.ts';
import {
  benchOf,
  better,
  FINE,
  type Found,
  HELD,
  problemFor,
  searchFrom,
  share,
  startsOf,
} from './search.ts';

/** A figure of the drawn and of the proposed design; null where a design has none. */
export interface Pair {
  start: number | null;
  proposal: number | null;
}

export interface FigureRow extends Pair {
  name: FigureName;
  least: number | null; // held at least
  most: number | null; // held at most
}

export interface QuantityRow {
  name: QuantityName;
  start: number[]; // several for a law of points
  proposal: number[];
  range: Span | null; // null: it was held
}

export interface ProposalTable {
  weightedDrag: Pair; // N
  drag: Record<SpeedName, Pair>; // N, incidence as drawn, the stance follows
  figures: FigureRow[];
  quantities: QuantityRow[];
}

export type Proposal =
  | {
      outcome: 'found';
      design: Design;
      variant: number; // which of the laws tried
      weights: Weights;
      table: ProposalTable;
      binding: Binding[];
      easings: Easing[];
      seed: number;
      evaluations: number; // of the starts and the settling together
    }
  | { outcome: 'clash'; clash: Clash; seed: number; evaluations: number }
  | { outcome: 'nowhere'; seed: number; evaluations: number }; // nothing in the ranges can be drawn and run

export interface SettleOptions {
  seed: number;
  founds: readonly Found[]; // of all starts, in any order
}

/** Brings the best start to the program's own resolution and explains it. */
export function* settle(design: Design, { seed, founds }: SettleOptions): Study<Proposal> {
  const inOrder = [...founds].sort((a, b) => a.start - b.start); // threads end in any order
  const found = inOrder.reduce<Found | null>(better, null);
  const evaluations = founds.reduce((sum, one) => sum + one.evaluations, 0);
  if (!found) return { outcome: 'nowhere', seed, evaluations };
  const bench = benchOf(design, FINE);
  const problem = problemFor(design, found.variant, bench);
  const evaluate = evaluateAt(problem, bench);
  const from = nearPlace(evaluate, placeOf(problem, found.design), placeOf(problem, problem.design));
  if (!from) return { outcome: 'nowhere', seed, evaluations };
  const search = minimise(evaluate, from, { reach: 0.05 });
  const least = yield* share(search, found.x.length);
  const all = evaluations + least.evaluations;
  if (least.violation > HELD)
    return { outcome: 'clash', clash: clashOf(problem, bench, least), seed, evaluations: all };
  const proposed = tidied(designAt(problem, least.x), design);
  const binding = bindingsOf(problem, bench, least);
  return {
    outcome: 'found',
    design: proposed,
    variant: found.variant,
    weights: problem.weights,
    table: tableOf(design, proposed, problem, bench),
    binding,
    easings: easingsOf(problem, bench, least, binding),
    seed,
    evaluations: all,
  };
}

/** The place, or one on the way to the drawn design where the finer foil finds none here; null where there is none. */
function nearPlace(evaluate: Evaluate, place: Float64Array, drawn: Float64Array): Float64Array | null {
  for (const back of [0, 0.02, 0.1, 0.4, 1]) {
    const here = place.map((value, i) => value + back * (drawn[i]! - value));
    if (evaluate(here)) return here;
  }
  return null;
}

/** All starts and the settling in one row: for a single thread. */
export function* propose(design: Design, { seed }: { seed: number }): Study<Proposal> {
  const starts = startsOf(design);
  const founds: Found[] = [];
  for (let start = 0; start < starts; start++) {
    const search = searchFrom(design, { seed, start });
    let step = search.next();
    for (; !step.done; step = search.next()) yield (start + step.value) / (starts + 1);
    if (step.value) founds.push(step.value);
  }
  const settling = settle(design, { seed, founds });
  let step = settling.next();
  for (; !step.done; step = settling.next()) yield (starts + step.value) / (starts + 1);
  return step.value;
}

const ROUNDED = new Set(['wing', 'stabilizer', 'strut'] as const);

/** Numbers that a search has moved, to seven digits: far below what a limit feels, and short to read in a file. */
function tidied(proposed: Design, drawn: Design): Design {
  const result = { ...proposed };
  for (const part of ROUNDED) Object.assign(result, { [part]: roundedBeside(proposed[part], drawn[part]) });
  return result;
}

function roundedBeside(value: unknown, drawn: unknown): unknown {
  if (typeof value === 'number') return value === drawn ? value : Number(value.toPrecision(7));
  if (typeof value !== 'object' || value === null || value === drawn) return value;
  const beside = (key: string | number) =>
    (drawn as Record<string | number, unknown> | null | undefined)?.[key];
  if (Array.isArray(value)) return value.map((item, k) => roundedBeside(item, beside(k)));
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [key, roundedBeside(item, beside(key))]),
  );
}

/** Figures of start and proposal, each solved as the rest of the program would. */
export function tableOf(design: Design, proposed: Design, problem: Problem, bench: Bench): ProposalTable {
  const [start, proposal] = [new Figures(design, bench), new Figures(proposed, bench)];
  const pair = (read: (figures: Figures) => number | null): Pair => ({
    start: read(start),
    proposal: read(proposal),
  });
  const limit = (name: FigureName, side: Limit['side']) =>
    problem.limits.find((one) => one.figure === name && one.side === side)?.value ?? null;
  const names = (Object.keys(FIGURES) as FigureName[]).filter(
    (name) => name !== 'turnOnStance' || limit(name, 'most') !== null,
  );
  return {
    weightedDrag: pair((figures) => figures.weightedDrag(problem.weights)),
    drag: {
      takeOff: pair((figures) => figures.dragAt('takeOff')),
      cruise: pair((figures) => figures.dragAt('cruise')),
      top: pair((figures) => figures.dragAt('top')),
    },
    figures: names.map((name) => ({
      name,
      ...pair((figures) => figures.value(name)),
      least: limit(name, 'least'),
      most: limit(name, 'most'),
    })),
    quantities: quantityRows(design, proposed, problem),
  };
}

/** Everything of one design before the work arrays go to the next one. */
export class Figures {
  private readonly values = new Map<FigureName, number | null>();
  private readonly drags = new Map<SpeedName, number | null>();

  constructor(design: Design, bench: Bench) {
    const candidate = new Candidate(design, bench);
    for (const name of Object.keys(FIGURES) as FigureName[]) this.values.set(name, figureOf(candidate, name));
    for (const name of SPEED_NAMES) this.drags.set(name, dragOf(candidate, name));
  }

  value(name: FigureName): number | null {
    const value = this.values.get(name) ?? null;
    return value !== null && Number.isFinite(value) ? value : null;
  }

  dragAt(name: SpeedName): number | null {
    return this.drags.get(name) ?? null;
  }

  weightedDrag(weights: Weights): number | null {
    let sum = 0;
    for (const name of SPEED_NAMES) {
      const drag = this.dragAt(name);
      if (weights[name] > 0 && drag === null) return null;
      sum += weights[name] * (drag ?? 0);
    }
    return sum;
  }
}

function dragOf(candidate: Candidate, name: SpeedName): number | null {
  try {
    return candidate.at(name).totalDrag;
  } catch {
    return null;
  }
}

function quantityRows(design: Design, proposed: Design, { free }: Problem): QuantityRow[] {
  return QUANTITY_NAMES.flatMap((name): QuantityRow[] => {
    const { read } = QUANTITIES[name];
    const [start, proposal] = [read(design), read(proposed)];
    const range = free.find((one) => one.name === name);
    if (!proposal) return [];
    return [
      {
        name,
        start: start ?? [],
        proposal,
        range: range ? { least: range.least, most: range.most } : null,
      },
    ];
  });
}
