/**
 * Where another design stands among proposals for this brief: in its water, at its speeds, under its weight, measured as
 * start and proposal are, and on the coarse foil of the front. SI, angles in degrees.
 */
import type { Brief, Design } from '../../design/document.ts';
import type { Wanted } from '../../design/wanted.ts';
import { Candidate, SPEED_NAMES, type SpeedName } from './candidate.ts';
import { FIGURES, type FigureName } from './figures.ts';
import { dragOverFront, type FrontPlace } from './front.ts';
import { weightedDrag, weightsOf } from './problem.ts';
import { Figures } from './proposal.ts';
import { QUANTITIES, QUANTITY_NAMES, type QuantityName } from './quantities.ts';
import { benchOf, COARSE, FINE } from './search.ts';

export interface StandingOptions {
  brief: Brief;
  weights: Wanted['weights'] | null; // of the speeds; null: the usual ones
  front: readonly FrontPlace[]; // what is drawn, hold rising; none: nothing yet
}

export interface Standing {
  weightedDrag: number | null; // N
  drag: Record<SpeedName, number | null>; // N, incidence as drawn, the stance follows
  figures: Record<FigureName, number | null>;
  quantities: Record<QuantityName, number[] | null>;
  front: FrontPlace | null; // null where it cannot run in this brief
  over: number | null; // N that it pays over the best wing of its hold; null beside the front
}

/** Null where the design cannot be put into the brief's water at all. */
export function standingOf(other: Design, { brief, weights, front }: StandingOptions): Standing | null {
  const design: Design = { ...other, brief };
  const weighed = weightsOf(weights ? { weights } : undefined);
  try {
    const figures = new Figures(design, benchOf(design, FINE));
    const place = onFront(design, weighed);
    return {
      weightedDrag: figures.weightedDrag(weighed),
      drag: recordOf(SPEED_NAMES, (name) => figures.dragAt(name)),
      figures: recordOf(Object.keys(FIGURES) as FigureName[], (name) => figures.value(name)),
      quantities: recordOf(QUANTITY_NAMES, (name) => QUANTITIES[name].read(design)),
      front: place,
      over: dragOverFront(front, place),
    };
  } catch {
    return null;
  }
}

function onFront(design: Design, weights: ReturnType<typeof weightsOf>): Standing['front'] {
  try {
    const candidate = new Candidate(design, benchOf(design, COARSE));
    return { holdIndex: FIGURES.holdIndex.value(candidate) ?? 0, drag: weightedDrag(candidate, weights) };
  } catch {
    return null;
  }
}

function recordOf<Name extends string, Value>(
  names: readonly Name[],
  read: (name: Name) => Value,
): Record<Name, Value> {
  return Object.fromEntries(names.map((name) => [name, read(name)])) as Record<Name, Value>;
}
