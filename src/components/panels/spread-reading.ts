/** What is to be seen in the spread of lift, as numbers for a sentence. */
import type { StripFigures } from '../../solver/report.ts';

/** The strip with the largest lift coefficient; null where none carries upward. */
export function hardestStation(strips: readonly StripFigures[]): StripFigures | null {
  const hardest = strips.reduce<StripFigures | null>(
    (best, strip) => (best === null || strip.cl > best.cl ? strip : best),
    null,
  );
  return hardest && hardest.cl > 0 ? hardest : null;
}

/** The share of the wing's vertical lift that stands elsewhere than in the least-drag loading. */
export function liftToMove(strips: readonly StripFigures[]): number {
  let apart = 0;
  let whole = 0;
  for (const { circulation, leastCirculation, width, droop } of strips) {
    const span = width * Math.cos((droop * Math.PI) / 180);
    apart += Math.abs(circulation - leastCirculation) * span;
    whole += leastCirculation * span;
  }
  return whole > 0 ? apart / (2 * whole) : 0;
}
