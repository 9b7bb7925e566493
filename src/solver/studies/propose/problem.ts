/**
 * A brief as a search sees it: the quantities that may move as variables from 0 to 1, the weighted drag as the objective,
 * the limits as margins at 0 or above.
 */
import type { ChordLaw, Design, DroopLaw } from '../../design/document.ts';
import type { TRIED_LAWS, Wanted } from '../../design/wanted.ts';
import { scaledChord } from '../../geometry/scale.ts';
import { surfaceOf } from '../../geometry/surface.ts';
import type { Values } from '../../numeric/constrained.ts';
import { REACH } from '../speed.ts';
import { type Bench, Candidate, SPEED_NAMES, type SpeedName } from './candidate.ts';
import { FIGURES, type FigureName } from './figures.ts';
import {
  QUANTITIES,
  QUANTITY_NAMES,
  type QuantityName,
  type Span,
  USUALLY_FREE,
  usualRange,
} from './quantities.ts';

export type Weights = Record<SpeedName, number>;
export const WEIGHTS: Weights = { takeOff: 0.2, cruise: 0.6, top: 0.2 };

export type Side = 'least' | 'most';

export interface Limit {
  figure: FigureName;
  side: Side;
  value: number;
}

/** A quantity that moves: `count` variables in a row, all with one range. */
export interface Free extends Span {
  name: QuantityName;
  count: number;
}

export interface Problem {
  design: Design; // with the law that is tried
  free: Free[];
  limits: Limit[];
  /** With the stabilizer's incidence free, the drawn stance must balance at cruise. */
  isBalanced: boolean;
  weights: Weights;
  drag: number; // N, unit of the objective
}

const MOST_TURN = 14; // degrees
const BALANCE_SCALE = 0.1; // m of stance
const UNKNOWN = 1e3; // margin of a strip whose section has no known greatest lift

/** What a search works on. `limits`: what `limitsOf` gave. */
export function problemOf(design: Design, limits: readonly Limit[], bench: Bench): Problem {
  const free = freeOf(design);
  const weights = weightsOf(design.wanted);
  return {
    design,
    free,
    limits: [...limits],
    isBalanced: design.stabilizer !== null && free.some(({ name }) => name === 'stabilizerIncidence'),
    weights,
    drag: startDrag(design, weights, bench),
  };
}

export function weightsOf(wanted: Wanted | undefined): Weights {
  const all = { ...WEIGHTS, ...wanted?.weights };
  const sum = all.takeOff + all.cruise + all.top;
  return { takeOff: all.takeOff / sum, cruise: all.cruise / sum, top: all.top / sum };
}

/** The quantities that may move, in the order in which they are written. Throws where none is left. */
export function freeOf(design: Design): Free[] {
  const asked = design.wanted?.free;
  for (const other of ['area', 'taper', 'fullness'] as const)
    if (asked?.chords && asked[other])
      throw new Error(`wanted.free.${other}: found it beside chords, allowed one of the two`);
  const free = QUANTITY_NAMES.flatMap((name): Free[] => {
    const values = QUANTITIES[name].read(design);
    if (!values) return [];
    const span = asked ? asked[name] : USUALLY_FREE.includes(name) ? usualRange(design, name) : null;
    return span && span.most > span.least ? [{ name, count: values.length, ...span }] : [];
  });
  if (free.length > 0) return free;
  const having = QUANTITY_NAMES.filter((name) => QUANTITIES[name].read(design));
  throw new Error(`wanted.free: found nothing that this design can move, allowed ${having.join(', ')}`);
}

/** Figures that a design keeps where its document names no limits, and from which side. */
const KEPT: ReadonlyArray<[FigureName, Side]> = [
  ['holdIndex', 'least'],
  ['staticMargin', 'least'],
  ['stallMargin', 'least'],
  ['stallMarginOnStance', 'least'],
  ['tipDepth', 'least'],
  ['takeOffSpeed', 'most'],
];

/**
 * The limits of a document, or those that keep the drawn design's figures; solved on `bench`, so that of the program's
 * own resolution.
 */
export function limitsOf(design: Design, bench: Bench): Limit[] {
  const start = new Candidate(design, bench);
  const asked = design.wanted?.limits;
  const limits = asked ? askedLimits(asked) : keptLimits(start);
  if (!limits.some(({ figure }) => figure === 'stanceShift')) {
    const shift = figureOf(start, 'stanceShift') ?? 0;
    limits.push({ figure: 'stanceShift', side: 'most', value: Math.max(REACH, shift) });
  }
  return withTurnHeld(limits, figureOf(start, 'turnOnStance'));
}

/**
 * Margins on a kept stance are held only where a modest turn of the stabilizer keeps it, and then that turn too: further
 * on its moment folds over and there is no such running at all.
 */
function withTurnHeld(limits: readonly Limit[], turn: number | null): Limit[] {
  const onStance = Object.values(ON_STANCE);
  if (!limits.some(({ figure }) => onStance.includes(figure))) return [...limits];
  if (turn === null || turn > MOST_TURN) return limits.filter(({ figure }) => !onStance.includes(figure));
  return [...limits, { figure: 'turnOnStance', side: 'most', value: MOST_TURN }];
}

/** Figures that are asked for once and held twice. */
export const ON_STANCE: Readonly<Partial<Record<FigureName, FigureName>>> = {
  stallMargin: 'stallMarginOnStance',
  cavitationMargin: 'cavitationMarginOnStance',
};

function askedLimits(asked: NonNullable<Wanted['limits']>): Limit[] {
  const names = Object.keys(FIGURES).filter((name): name is keyof typeof asked => name in asked);
  return names.flatMap((figure) => {
    const limits = (['least', 'most'] as const).flatMap((side): Limit[] => {
      const value = asked[figure]?.[side];
      return value === undefined ? [] : [{ figure, side, value }];
    });
    const other = ON_STANCE[figure];
    return other ? [...limits, ...limits.map((limit): Limit => ({ ...limit, figure: other }))] : limits;
  });
}

function keptLimits(start: Candidate): Limit[] {
  return KEPT.flatMap(([figure, side]): Limit[] => {
    const value = figureOf(start, figure);
    return value === null || !Number.isFinite(value) ? [] : [{ figure, side, value }];
  });
}

/** A figure; null where the design has none or cannot run as it asks. */
export function figureOf(candidate: Candidate, figure: FigureName): number | null {
  try {
    return FIGURES[figure].value(candidate);
  } catch {
    return null;
  }
}

/** The design at a place of the search. */
export function designAt({ design, free }: Problem, x: ArrayLike<number>): Design {
  let at = 0;
  let made = design;
  for (const { name, count, least, most } of free) {
    const values = Array.from({ length: count }, (_, k) => least + (most - least) * x[at + k]!);
    made = QUANTITIES[name].write(made, values);
    at += count;
  }
  return made;
}

/** The place of a design, its quantities brought into their ranges. */
export function placeOf({ free }: Problem, design: Design): Float64Array {
  return Float64Array.from(
    free.flatMap(({ name, least, most }) =>
      (QUANTITIES[name].read(design) ?? []).map((value) =>
        Math.min(1, Math.max(0, (value - least) / (most - least))),
      ),
    ),
  );
}

/** Objective and margins at a place; null where the foil cannot be drawn, does not fit its water or cannot run. */
export function evaluateAt(problem: Problem, bench: Bench): (x: ArrayLike<number>) => Values | null {
  return (x) => {
    try {
      return valuesOf(problem, new Candidate(designAt(problem, x), bench));
    } catch {
      return null;
    }
  };
}

export function valuesOf(problem: Problem, candidate: Candidate): Values {
  return {
    objective: weightedDrag(candidate, problem.weights) / problem.drag,
    margins: Float64Array.from(marginGroups(problem, candidate).flatMap((group) => Array.from(group))),
  };
}

/** Margins limit by limit, the balance last where it is asked for. */
export function marginGroups({ limits, isBalanced }: Problem, candidate: Candidate): ArrayLike<number>[] {
  const groups = limits.map((limit) => marginsOf(limit, candidate));
  if (!isBalanced) return groups;
  const off = (candidate.at('cruise').stance - candidate.design.brief.balance.x) / BALANCE_SCALE;
  return [...groups, [off, -off]];
}

function marginsOf({ figure, side, value }: Limit, candidate: Candidate): Float64Array {
  const { scale, parts, below, value: read } = FIGURES[figure];
  const isRoot = side === 'most' && below !== undefined;
  const parted = isRoot ? below(candidate, value) : parts?.(candidate);
  const single = parted ? null : read(candidate);
  if (!parted && single === null) return new Float64Array();
  const sign = side === 'least' || isRoot ? 1 : -1;
  const from = isRoot ? 0 : value;
  return Float64Array.from(parted ?? [single!], (part) => {
    const margin = (sign * (part - from)) / scale;
    return Number.isFinite(part) ? margin : UNKNOWN;
  });
}

export function weightedDrag(candidate: Candidate, weights: Weights): number {
  return SPEED_NAMES.reduce((sum, name) => {
    const weight = weights[name];
    return weight === 0 ? sum : sum + weight * candidate.at(name).totalDrag;
  }, 0);
}

/** The drawn design's drag, or a twentieth of its weight where it cannot run. */
function startDrag(design: Design, weights: Weights, bench: Bench): number {
  const start = new Candidate(design, bench);
  try {
    return weightedDrag(start, weights);
  } catch {
    return start.runner.weight / 20;
  }
}

/** The designs to try: the wing with each combination of the laws wanted, area and amplitude kept. */
export function variantsOf(design: Design): Design[] {
  const { droop, chord } = design.wanted?.laws ?? {};
  const droops = droop?.map((kind) => droopOfKind(design, kind)) ?? [design.wing.droop];
  const chords = chord?.map((kind) => chordOfKind(design, kind)) ?? [design.wing.chord];
  return droops.flatMap((bend) =>
    chords.map((chordLaw) => {
      const wing = { ...design.wing, droop: bend, chord: chordLaw };
      const area = surfaceOf(design.wing).projectedArea / surfaceOf(wing).projectedArea;
      return { ...design, wing: { ...wing, chord: scaledChord(chordLaw, area) } };
    }),
  );
}

function droopOfKind({ wing }: Design, kind: (typeof TRIED_LAWS.droop)[number]): DroopLaw {
  if (wing.droop.kind === kind) return wing.droop;
  const tipAngle = (surfaceOf(wing).amplitude * 180) / Math.PI || 10;
  return kind === 'late' ? { kind, tipAngle, from: 0.4, power: 1.5 } : { kind, tipAngle };
}

function chordOfKind({ wing }: Design, kind: (typeof TRIED_LAWS.chord)[number]): ChordLaw {
  if (wing.chord.kind === kind) return wing.chord;
  const root = surfaceOf(wing).chord(0);
  if (kind === 'elliptic') return { kind, root };
  return kind === 'taper' ? { kind, root, tip: 0.4 * root } : { kind, root, n: 2.4, m: 2 };
}
