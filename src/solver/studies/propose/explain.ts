/**
 * Why a proposal is what it is: which limits bind and what each costs, from the multipliers of the search, and which change
 * of a limit, of a range or of a quantity that was held would save most. Costs are first-order, in N of weighted drag.
 */
import type { Least } from '../../numeric/constrained.ts';
import { type Bench, Candidate } from './candidate.ts';
import { FIGURES, type FigureName } from './figures.ts';
import { designAt, type Limit, marginGroups, type Problem, valuesOf } from './problem.ts';
import { QUANTITIES, QUANTITY_NAMES, type QuantityName } from './quantities.ts';

export interface Binding extends Limit {
  cost: number; // N saved by each unit that the limit is eased, 0 or above
}

/** A change that would save drag, by a step that a builder would take. */
export interface Easing {
  kind: 'limit' | 'range' | 'held'; // a limit that binds, a range at its end, a quantity that was not free
  name: FigureName | QuantityName;
  by: number; // signed step of the limit, the range's end or the quantity; in its own unit
  saves: number; // N
}

const BINDS = 1e-3; // margin, in the figure's scale, below which a limit with a cost binds
const LEAST_COST = 1e-4; // of the drag, by one scale of the figure
const STEP = 1e-4; // of a take-off speed, m/s

export function bindingsOf(problem: Problem, bench: Bench, least: Least): Binding[] {
  const candidate = new Candidate(designAt(problem, least.x), bench);
  const groups = marginGroups(problem, candidate);
  let at = 0;
  return problem.limits.flatMap((limit, k): Binding[] => {
    const group = Array.from(groups[k]!);
    const multipliers = least.multipliers.subarray(at, at + group.length);
    at += group.length;
    const total = multipliers.reduce((sum, value) => sum + value, 0);
    if (total < LEAST_COST || Math.min(...group) > BINDS) return [];
    return [{ ...limit, cost: problem.drag * costOf(limit, candidate, group, multipliers) }];
  });
}

/** Share of the objective saved by a unit of ease. */
function costOf(limit: Limit, candidate: Candidate, group: number[], multipliers: Float64Array): number {
  const { below, scale } = FIGURES[limit.figure];
  if (limit.side === 'least' || !below) return multipliers.reduce((sum, value) => sum + value, 0) / scale;
  // The limit is a speed at which margins are looked at: a faster one changes each of them.
  const faster = below(candidate, limit.value + STEP);
  return group.reduce((sum, margin, j) => sum + (multipliers[j]! * (faster[j]! / scale - margin)) / STEP, 0);
}

/** Changes in falling order of what they save. */
export function easingsOf(
  problem: Problem,
  bench: Bench,
  least: Least,
  bindings: readonly Binding[],
): Easing[] {
  const easings = [
    ...limitEasings(bindings),
    ...rangeEasings(problem, least),
    ...heldEasings(problem, bench, least),
  ];
  const worthwhile = easings.filter(({ saves }) => saves > LEAST_COST * problem.drag);
  return worthwhile.sort((a, b) => b.saves - a.saves);
}

function limitEasings(bindings: readonly Binding[]): Easing[] {
  return bindings.map(({ figure, side, cost }): Easing => {
    const { step } = FIGURES[figure];
    return { kind: 'limit', name: figure, by: side === 'least' ? -step : step, saves: cost * step };
  });
}

function rangeEasings({ free, drag }: Problem, { lower, upper }: Least): Easing[] {
  let at = 0;
  return free.flatMap(({ name, count, least, most }): Easing[] => {
    const { step } = QUANTITIES[name];
    const sum = (bounds: Float64Array) =>
      bounds.subarray(at, at + count).reduce((total, value) => total + value, 0);
    const [low, high] = [sum(lower), sum(upper)];
    at += count;
    const per = (drag * step) / (most - least);
    return [
      { kind: 'range', name, by: -step, saves: low * per },
      { kind: 'range', name, by: step, saves: high * per },
    ];
  });
}

/** Quantities that stayed as drawn: the slope of the Lagrangian along each. */
function heldEasings(problem: Problem, bench: Bench, least: Least): Easing[] {
  const base = designAt(problem, least.x);
  const lagrangian = ({ objective, margins }: { objective: number; margins: Float64Array }) =>
    margins.reduce((sum, margin, j) => sum - least.multipliers[j]! * margin, objective);
  const here = lagrangian(valuesOf(problem, new Candidate(base, bench)));
  const isFree = new Set<QuantityName>(problem.free.map(({ name }) => name));
  // Chords one by one are another way to say area, taper and fullness, and the balance needs a free incidence.
  const passedOver: readonly QuantityName[] = ['chords', 'stabilizerIncidence'];
  return QUANTITY_NAMES.flatMap((name): Easing[] => {
    const { read, write, step, range } = QUANTITIES[name];
    const values = read(base);
    if (isFree.has(name) || passedOver.includes(name) || values?.length !== 1) return [];
    try {
      const nudge = 1e-3 * step;
      const moved = valuesOf(problem, new Candidate(write(base, [values[0]! + nudge]), bench));
      if (moved.margins.length !== least.multipliers.length) return [];
      const slope = ((lagrangian(moved) - here) / nudge) * problem.drag;
      const by = slope > 0 ? -step : step;
      const to = values[0]! + by;
      return to < range.min || to > range.max
        ? []
        : [{ kind: 'held', name, by, saves: Math.abs(slope) * step }];
    } catch {
      return [];
    }
  });
}

/** Limits and ranges that stand against one another where not all can be held. */
export interface Clash {
  limits: Limit[];
  isBalance: boolean; // the drawn stance balancing at cruise is among them
  ranges: Array<{ name: QuantityName; end: 'least' | 'most' }>;
}

/** From a search that ended with slack at its dearest: what has a share in its price. */
export function clashOf(problem: Problem, bench: Bench, least: Least): Clash {
  const candidate = new Candidate(designAt(problem, least.x), bench);
  const total = least.multipliers.reduce((sum, value) => sum + value, 0);
  const shares = (() => {
    let at = 0;
    return marginGroups(problem, candidate).map(({ length }) => {
      const sum = least.multipliers.subarray(at, at + length).reduce((all, value) => all + value, 0);
      at += length;
      return sum / total;
    });
  })();
  const counts = (share: number) => share > 0.01;
  let at = 0;
  const ranges = problem.free.flatMap(({ name, count }): Clash['ranges'] => {
    const sum = (bounds: Float64Array) =>
      bounds.subarray(at, at + count).reduce((all, value) => all + value, 0);
    const [low, high] = [sum(least.lower) / total, sum(least.upper) / total];
    at += count;
    if (counts(low)) return [{ name, end: 'least' }];
    return counts(high) ? [{ name, end: 'most' }] : [];
  });
  return {
    limits: problem.limits.filter((_, k) => counts(shares[k]!)),
    isBalance: problem.isBalanced && counts(shares[problem.limits.length]!),
    ranges,
  };
}
