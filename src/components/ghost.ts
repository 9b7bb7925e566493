/** How the second design is drawn in charts: the same lines, dashed and grey. */
import type { ChartSeries } from './chart-columns.ts';

export type { Ghost } from '../session/ghost.ts';

const DASH = [6, 4];

/** A line of the ghost's. */
export function ghostLine(series: ChartSeries): ChartSeries {
  return { ...series, name: `ghost: ${series.name}`, colour: '--ghost', dash: DASH, width: 1.5 };
}
