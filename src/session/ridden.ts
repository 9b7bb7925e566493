/** What the rider's marks for hold say of the hold index, over the kept designs that have both. */
import { type GoodBand, goodBand } from '../solver/design/marks.ts';
import type { KeptDesign } from './kept.ts';
import type { Reports } from './reports.ts';

export interface RiddenPoint {
  name: string;
  index: number; // hold index of the design as it was kept
  mark: number; // for hold, 1 to 5
}

export interface RiddenHold {
  points: readonly RiddenPoint[]; // rising by index
  band: GoodBand | null; // where the good marks begin; null with fewer than eight, or where they do not
}

export function riddenHold(kept: readonly KeptDesign[], reports: Reports): RiddenHold {
  const points = kept.flatMap((each): RiddenPoint[] => {
    const { name, marks } = each;
    if (marks.hold === undefined) return [];
    const index = reports.of(each)?.stability.holdIndex ?? null;
    return index === null ? [] : [{ name, index, mark: marks.hold }];
  });
  points.sort((one, other) => one.index - other.index);
  return { points, band: goodBand(points.map(({ index, mark }) => ({ figure: index, mark }))) };
}
