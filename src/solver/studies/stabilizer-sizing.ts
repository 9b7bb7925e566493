/**
 * Stabilizer sizing: which area at a given arm, or which arm at a given area, gives a wanted static margin or a wanted
 * hold index; and what each choice costs.
 *
 * Every choice is run level with the stance kept and the stabilizer's incidence found (level-running.ts), so that the
 * drags compare trimmed foils. Lengths in m, areas in m2, forces in N, angles in degrees.
 */
import type { Design } from '../design/document.ts';
import { findRoot } from '../numeric/roots.ts';
import type { ConditionOptions } from '../report.ts';
import { StabilizerTrials, type TriedStabilizer } from './stabilizer-trials.ts';
import type { Study } from './study.ts';

export interface SizingOptions {
  staticMargin?: number; // wanted, in mean chords; default 0: the neutral point level with the balance point
  holdIndex?: number; // wanted; default: a point more than the present one
  arm?: number; // m, at which areas are looked for; default: the present one
  area?: number; // m2 projected, at which arms are looked for; default: the present one
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export type SizingGoal = 'present' | 'marginByArea' | 'marginByArm' | 'holdByArea' | 'holdByArm';

/** A choice, or why there is none. */
export type SizingChoice =
  | { goal: SizingGoal; found: TriedStabilizer; problem: null }
  | { goal: SizingGoal; found: null; problem: string };

export interface Sizing {
  wanted: { staticMargin: number; holdIndex: number };
  given: { arm: number; area: number };
  drawn: { incidence: number; stance: number }; // of the design as it is, untrimmed
  choices: SizingChoice[]; // the present one first
}

const SMALLEST = 0.3; // of every length
const LARGEST = 3;
const SHORTEST = 0.15; // m
const LONGEST = 2;

/** Null for a foil without a stabilizer. */
export function* sizeStabilizer(design: Design, options: SizingOptions = {}): Study<Sizing | null> {
  const { stabilizer } = design;
  if (!stabilizer) return null;
  const trials = new StabilizerTrials(design, stabilizer, options.condition ?? {});
  const present = trials.measure(stabilizer.arm, 1);
  const { staticMargin = 0, holdIndex = (present.holdIndex ?? 0) + 1 } = options;
  const arm = options.arm ?? stabilizer.arm;
  const area = options.area ?? present.area;
  const scale = Math.sqrt(area / present.area);
  const hasHold = present.holdIndex !== null && present.holdIndex !== 0;
  const byMargin = (at: number, size: number) => trials.measure(at, size).staticMargin - staticMargin;
  const byHold = (at: number, size: number) => (trials.holdIndex(at, size) ?? 0) - holdIndex;
  const choices: SizingChoice[] = [choiceOf(trials, 'present', stabilizer.arm, 1)];
  yield 0.2;
  choices.push(areaFor(trials, 'marginByArea', arm, byMargin));
  yield 0.4;
  choices.push(armFor(trials, 'marginByArm', scale, byMargin));
  yield 0.6;
  choices.push(hasHold ? areaFor(trials, 'holdByArea', arm, byHold) : without('holdByArea'));
  yield 0.8;
  choices.push(hasHold ? armFor(trials, 'holdByArm', scale, byHold) : without('holdByArm'));
  return {
    wanted: { staticMargin, holdIndex },
    given: { arm, area },
    drawn: { incidence: stabilizer.incidence, stance: design.brief.balance.x },
    choices,
  };
}

type Miss = (arm: number, scale: number) => number;

function areaFor(trials: StabilizerTrials, goal: SizingGoal, arm: number, miss: Miss): SizingChoice {
  const place = placeOf((at) => miss(arm, at), SMALLEST, LARGEST, 1);
  if (place.found !== null) return choiceOf(trials, goal, arm, place.found);
  const [from, to] = place.searched.map((scale) => Number((scale ** 2).toPrecision(2)));
  const none = `no area from ${from} to ${to} times the present one gives it at this arm`;
  return { goal, found: null, problem: place.problem ?? none };
}

function armFor(trials: StabilizerTrials, goal: SizingGoal, scale: number, miss: Miss): SizingChoice {
  const place = placeOf((at) => miss(at, scale), SHORTEST, LONGEST, trials.drawn.arm);
  if (place.found !== null) return choiceOf(trials, goal, place.found, scale);
  const [from, to] = place.searched.map((arm) => Number(arm.toPrecision(2)));
  const none = `no arm from ${from} to ${to} m gives it at this area`;
  return { goal, found: null, problem: place.problem ?? none };
}

interface Place {
  found: number | null;
  searched: [number, number];
  problem: string | null; // why nothing can be said even where the foil is now
}

/**
 * Where the miss vanishes. An end at which the foil does not fit (the stabilizer runs into the wing, a tip out of the
 * water) is drawn in towards `inside`, where it does.
 */
function placeOf(miss: (at: number) => number, low: number, high: number, inside: number): Place {
  const fits = (at: number): boolean => problemOf(() => miss(at)) === null;
  const drawnIn = (end: number): number => {
    const shares = [0, 0.25, 0.5, 0.75, 0.9];
    const share = shares.find((each) => fits(end + each * (inside - end))) ?? 1;
    return end + share * (inside - end);
  };
  const searched: [number, number] = [drawnIn(low), drawnIn(high)];
  let found: number | null = null;
  const problem = problemOf(() => {
    miss(inside);
    found = findRoot(miss, ...searched, 1e-5);
  });
  return { found, searched, problem };
}

function problemOf(solve: () => unknown): string | null {
  try {
    solve();
    return null;
  } catch (error) {
    return messageOf(error);
  }
}

function without(goal: SizingGoal): SizingChoice {
  return { goal, found: null, problem: 'the hold index is nothing at any size: wing or stabilizer is flat' };
}

function choiceOf(trials: StabilizerTrials, goal: SizingGoal, arm: number, scale: number): SizingChoice {
  try {
    return { goal, found: trials.run(arm, scale, 'stance'), problem: null };
  } catch (error) {
    return { goal, found: null, problem: messageOf(error) };
  }
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
