/**
 * How far the method itself moves the two marked places of the price of hold: the same coarse sweep by the extended line
 * (one row) and by the lifting surface (four rows), the program's own arbiter. Degrees.
 */
import type { Design } from '../design/document.ts';
import { type DroopStudyOptions, droopStudy } from './droop-study.ts';
import { type PriceOptions, priceOf } from './price.ts';
import type { Study } from './study.ts';

export interface PriceBand {
  place: number | null; // surface less line, degrees; null where one of them has no such place
  neutral: number | null; // likewise
}

// Coarse is enough for a difference: the places move by less than 0.1 degrees against 40 strips and 41 droops.
const COUNT = 13;
const STRIPS = { strips: 24, stabilizerStrips: 12 };
const ARBITER_ROWS = 4;

export function* priceBand(
  design: Design,
  options: Pick<DroopStudyOptions, 'kept' | 'to' | 'condition'> & PriceOptions,
): Study<PriceBand> {
  const at = (rows: number) => ({
    ...options,
    count: COUNT,
    condition: { ...options.condition, ...STRIPS, rows },
  });
  const line = priceOf(yield* part(droopStudy(design, at(1)), 0, 0.2), options);
  const surface = priceOf(yield* part(droopStudy(design, at(ARBITER_ROWS)), 0.2, 1), options);
  const moved = (a: number | null, b: number | null) => (a === null || b === null ? null : b - a);
  return {
    place: moved(line.place.at, surface.place.at),
    neutral: moved(line.neutral, surface.neutral),
  };
}

/** A study as a part of another's way from `from` to `to`. */
function* part<Result>(study: Study<Result>, from: number, to: number): Study<Result> {
  for (;;) {
    const step = study.next();
    if (step.done) return step.value;
    yield from + (to - from) * step.value;
  }
}
