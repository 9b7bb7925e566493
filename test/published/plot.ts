/** Published against computed along a series of rows, as a small picture: rings are published, the line is computed. */
import type { Checked } from './check.ts';

const [WIDTH, HEIGHT] = [340, 210];
const [LEFT, RIGHT, TOP, BOTTOM] = [52, 10, 12, 38];

export interface Series {
  name: string;
  quantity: string;
  axis: string;
  points: Array<{ x: number; published: number; found: number }>;
}

/** The curves that rows make, four points or more, in the order of x. */
export function seriesOf(checked: readonly Checked[]): Series[] {
  const curves = new Map<string, Series>();
  for (const { row, quantity, published, found } of checked) {
    if (!row.series) continue;
    const { name, axis, x } = row.series;
    const curve = curves.get(`${name} ${quantity} ${row.source}`) ?? { name, quantity, axis, points: [] };
    curve.points.push({ x, published, found });
    curves.set(`${name} ${quantity} ${row.source}`, curve);
  }
  const long = [...curves.values()].filter(({ points }) => points.length >= 4);
  for (const { points } of long) points.sort((one, other) => one.x - other.x);
  return long;
}

/** The picture as SVG text; colours come from the page's style. */
export function plot({ name, quantity, axis, points }: Series): string {
  const xs = scale(
    points.map(({ x }) => x),
    LEFT,
    WIDTH - RIGHT,
  );
  const ys = scale(
    points.flatMap(({ published, found }) => [published, found]),
    HEIGHT - BOTTOM,
    TOP,
  );
  const line = points.map(({ x, found }) => `${xs.at(x)},${ys.at(found)}`).join(' ');
  const rings = points.map(
    ({ x, published }) => `<circle cx="${xs.at(x)}" cy="${ys.at(published)}" r="3.5"/>`,
  );
  const ticks = [
    ...ys.ticks.map(
      (tick) =>
        `<path class="grid" d="M${LEFT} ${ys.at(tick)}H${WIDTH - RIGHT}"/><text class="y" x="${LEFT - 6}" y="${ys.at(tick) + 4}">${tick}</text>`,
    ),
    ...xs.ticks.map(
      (tick) => `<text class="x" x="${xs.at(tick)}" y="${HEIGHT - BOTTOM + 16}">${tick}</text>`,
    ),
  ];
  return [
    '<figure>',
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escapeMarkup(`${quantity}, ${name}: published and computed`)}">`,
    ...ticks,
    `<polyline points="${line}"/>`,
    ...rings,
    `<text class="x" x="${(LEFT + WIDTH - RIGHT) / 2}" y="${HEIGHT - 6}">${escapeMarkup(axis)}</text>`,
    '</svg>',
    `<figcaption>${escapeMarkup(quantity)}: ${escapeMarkup(name)}. Rings published, line computed.</figcaption>`,
    '</figure>',
  ].join('\n');
}

/** A linear scale on to pixels, with three to six round ticks. */
function scale(values: readonly number[], from: number, to: number) {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const size = high - low || 1;
  const rough = size / 4;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5].find((factor) => factor * power >= rough) ?? 10);
  const first = Math.floor(low / step) * step;
  const last = Math.ceil(high / step) * step;
  const at = (value: number) => +(from + ((value - first) / (last - first || 1)) * (to - from)).toFixed(1);
  const count = Math.round((last - first) / step);
  return { at, ticks: Array.from({ length: count + 1 }, (_, k) => +(first + k * step).toPrecision(6)) };
}

const escapeMarkup = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
