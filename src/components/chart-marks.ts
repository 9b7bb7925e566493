/** Marks on a chart that are no curve: an upright line at a place, with its name in the key. */
import type { ChartSeries } from './chart-columns.ts';

const WIDTH = 0.004; // share of the range; places nearer than that are one place to a chart

/** An upright line at a place (shown unit), from zero or the lowest value to the highest of the others. */
export function uprightMark(
  name: string,
  at: number,
  others: readonly ChartSeries[],
  colour: ChartSeries['colour'],
  dash: readonly number[] = [],
): ChartSeries {
  const places = others.flatMap(({ x }) => [x[0] ?? at, x.at(-1) ?? at]);
  const values = others.flatMap(({ y }) => [...y]);
  const width = WIDTH * (Math.max(...places) - Math.min(...places));
  const y = [Math.min(0, ...values), Math.max(...values)];
  return { name, x: [at - width, at], y, colour, dash, width: 1 };
}
