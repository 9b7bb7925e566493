/** How the second design is drawn in charts: the same lines in grey, dashed, told apart by their dashes. */
import type { ChartSeries } from './chart-columns.ts';
import type { PlotCell } from './curve/plot-model.ts';
import { readBetween, YOURS } from './curve/plot-model.ts';

export type { Ghost } from '../session/ghost.ts';

const LOOKS = [
  [6, 4],
  [2, 3],
  [10, 3, 2, 3],
  [4, 2],
].map((dash) => ({
  colour: '--ghost' as const,
  dash,
  width: 1.5,
}));
const lookOf = (k: number) => LOOKS[k % LOOKS.length]!;
const nameOf = (name: string) => `ghost: ${name}`;

/** Lines of the open design with those of the ghost, where there is one. */
export function withGhost(
  own: readonly ChartSeries[],
  ghost: readonly ChartSeries[] | null | undefined,
): ChartSeries[] {
  return [...own, ...(ghost ?? []).map((line, k) => ({ ...line, name: nameOf(line.name), ...lookOf(k) }))];
}

/** The same for plots over one axis: the ghost's values are read at the places of `x`. */
export function cellsWithGhost(
  own: readonly PlotCell[],
  x: readonly number[],
  ghost: { cells: readonly PlotCell[]; x: readonly number[] } | null,
): PlotCell[] {
  return own.map((cell) => {
    const twin = ghost?.cells.find(({ name, unit }) => name === cell.name && unit === cell.unit);
    if (!ghost || !twin) return cell;
    const read = (y: readonly number[]) => x.map((place) => readBetween(ghost.x, y, place) ?? Number.NaN);
    const lines = twin.lines
      .filter(({ name }) => name !== YOURS)
      .map((line, k) => ({ name: nameOf(line.name), y: read(line.y), ...lookOf(k) }));
    return { ...cell, lines: [...cell.lines, ...lines] };
  });
}
