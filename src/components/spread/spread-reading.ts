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

/** The strip closest to its usable lift coefficient, or furthest beyond it (a negative margin). */
export function leastMargin(strips: readonly StripFigures[]): { strip: StripFigures; margin: number } {
  const strip = strips.reduce((least, each) => (marginOf(each) < marginOf(least) ? each : least));
  return { strip, margin: marginOf(strip) };
}

/** Neighbouring strips beyond their usable lift coefficient, run by run from root to tip. */
export function runsBeyond(strips: readonly StripFigures[]): StripFigures[][] {
  const runs: StripFigures[][] = [];
  strips.forEach((strip, k) => {
    if (marginOf(strip) >= 0) return;
    if (k > 0 && marginOf(strips[k - 1]!) < 0) runs.at(-1)!.push(strip);
    else runs.push([strip]);
  });
  return runs;
}

const marginOf = ({ usableCl, cl }: StripFigures): number => usableCl - cl;

/** Vertical force per metre of span seen from above. */
export const liftPerSpan = ({ forceZ, width, droop }: StripFigures): number =>
  forceZ / (width * Math.cos((droop * Math.PI) / 180));
