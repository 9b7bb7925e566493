/**
 * What a proposal would be looked for with, before it is: the quantities that can move and those that may, the limits that
 * hold and those that could, the weights. What the page shows to be changed.
 */
import type { Design } from '../../design/document.ts';
import type { LimitName } from '../../design/wanted.ts';
import { Candidate } from './candidate.ts';
import type { FigureName } from './figures.ts';
import { figureOf, freeOf, limitsOf, ON_STANCE, type Side, type Weights, weightsOf } from './problem.ts';
import { QUANTITIES, QUANTITY_NAMES, type QuantityName, usualRange } from './quantities.ts';
import { benchOf, FINE, startsOf } from './search.ts';

export interface PlannedQuantity {
  name: QuantityName;
  values: number[]; // as drawn
  isFree: boolean;
  least: number; // of the range it moves in, or would
  most: number;
}

export interface PlannedLimit {
  name: LimitName;
  side: Side;
  drawn: number | null; // the drawn design's figure
  held: number | null; // the limit; null where it is not held
}

export interface Plan {
  starts: number;
  quantities: PlannedQuantity[];
  limits: PlannedLimit[];
  weights: Weights;
  problem: string | null; // why nothing can be looked for
}

/** Sides from which builders hold a figure, in the order in which they ask. */
const SIDES: ReadonlyArray<[LimitName, Side]> = [
  ['holdIndex', 'least'],
  ['rollFromYaw', 'most'],
  ['staticMargin', 'least'],
  ['staticMargin', 'most'],
  ['takeOffSpeed', 'most'],
  ['stallMargin', 'least'],
  ['cavitationMargin', 'least'],
  ['span', 'most'],
  ['tipDepth', 'least'],
  ['tipChord', 'least'],
  ['thickness', 'least'],
  ['rootMoment', 'most'],
  ['strutDeflection', 'most'],
  ['stanceShift', 'most'],
];

export function planOf(design: Design): Plan {
  let problem: string | null = null;
  try {
    freeOf(design);
  } catch (error) {
    problem = error instanceof Error ? error.message : String(error);
  }
  return {
    starts: startsOf(design),
    quantities: plannedQuantities(design, problem === null),
    limits: plannedLimits(design),
    weights: weightsOf(design.wanted),
    problem,
  };
}

function plannedQuantities(design: Design, canMove: boolean): PlannedQuantity[] {
  const free = canMove ? freeOf(design) : [];
  return QUANTITY_NAMES.flatMap((name): PlannedQuantity[] => {
    const { read } = QUANTITIES[name];
    const values = read(design);
    const usual = usualRange(design, name);
    if (!values || !usual) return [];
    const span = free.find((one) => one.name === name);
    const { least, most } = span ?? design.wanted?.free?.[name] ?? usual;
    return [{ name, values, isFree: span !== undefined, least, most }];
  });
}

function plannedLimits(design: Design): PlannedLimit[] {
  const bench = benchOf(design, FINE);
  const limits = limitsOf(design, bench);
  const drawn = new Candidate(design, bench);
  const figures = new Map(SIDES.map(([name]) => [name, figureOf(drawn, name)]));
  const silent: FigureName[] = [...Object.values(ON_STANCE), 'turnOnStance'];
  const asked = limits.filter(({ figure }) => !silent.includes(figure));
  const others = asked.flatMap(({ figure, side }): Array<[LimitName, Side]> => {
    const name = figure as LimitName;
    return SIDES.some(([one, from]) => one === name && from === side) ? [] : [[name, side]];
  });
  return [...SIDES, ...others].flatMap(([name, side]): PlannedLimit[] => {
    const held = asked.find(({ figure, side: from }) => figure === name && from === side)?.value ?? null;
    const figure = figures.get(name) ?? null;
    if (figure === null && held === null) return [];
    return [{ name, side, drawn: figure !== null && Number.isFinite(figure) ? figure : null, held }];
  });
}
