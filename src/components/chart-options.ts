/** How every chart is drawn: axes with units, quiet grid, ranges that move in steps, colours from tokens.css. */
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type uPlot from 'uplot';
import { writePlain } from '../session/number-format.ts';
import { nextPreferred } from '../session/rounding.ts';
import type { ChartSeries } from './chart-columns.ts';

const HEIGHT = 210;
const FONT = '12px system-ui, sans-serif';

interface Labels {
  xName: string;
  xUnit: string;
  yName: string;
  yUnit: string;
  series: readonly ChartSeries[];
  stacked: boolean;
}

export function plotOptions(
  { xName, xUnit, yName, yUnit, series, stacked }: Labels,
  width: number,
  colour: (name: string) => string,
  onCursor: () => void,
): uPlot.Options {
  const unit = (name: string, symbol: string) => (symbol ? `${name}, ${symbol}` : name);
  const axis = (label: string, size: number): uPlot.Axis => ({
    label,
    size,
    labelSize: 20,
    gap: 4,
    font: FONT,
    labelFont: FONT,
    stroke: () => colour('--soft'),
    grid: { stroke: () => colour('--line'), width: 1 },
    ticks: { stroke: () => colour('--line'), width: 1, size: 4 },
    values: (_plot, ticks) => ticks.map(writePlain),
  });
  return {
    width,
    height: HEIGHT,
    padding: [8, 14, 0, 0],
    legend: { show: false },
    cursor: { y: false, drag: { x: false, y: false }, points: { size: 7 } },
    scales: {
      x: { time: false, range: (_plot, least, most) => [Math.min(0, least), most] },
      y: { range: (_plot, least, most) => steadyRange(least, most) },
    },
    axes: [axis(unit(xName, xUnit), 30), axis(unit(yName, yUnit), 46)],
    series: [
      {},
      ...series.map(
        (each, k): uPlot.Series => ({
          label: each.name,
          stroke: () => colour(each.colour),
          width: each.width ?? 2,
          ...(each.dash && { dash: [...each.dash] }),
          ...(stacked && k === 0 && { fill: () => thinned(colour(each.colour)) }),
          points: { show: false },
          spanGaps: false,
        }),
      ),
    ],
    ...(stacked && {
      bands: series
        .filter(({ isAlone }) => !isAlone)
        .slice(1)
        .map((each, k) => areaBetween(k + 2, () => colour(each.colour))),
    }),
    hooks: { setCursor: [onCursor] },
  };
}

const thinned = (colour: string) => (/^#[\da-f]{6}$/i.test(colour) ? `${colour}55` : 'transparent');

/** The area between a stacked line and the one below it, in the line's colour, thinned. */
function areaBetween(line: number, colour: () => string): uPlot.Band {
  return {
    series: [line, line - 1],
    fill: () => thinned(colour()),
  };
}

/** From zero to the next preferred number, so that the axis stands still while values creep. */
export function steadyRange(least: number | null, most: number | null): [number, number] {
  const low = Math.min(0, least ?? 0);
  const high = Math.max(0, most ?? 0);
  const room = (value: number) => (value > 0 ? nextPreferred(1.04 * value) : 0);
  const range: [number, number] = [-room(-low), room(high)];
  return range[0] === range[1] ? [0, 1] : range;
}

/** Custom properties resolved for a canvas; read again when the scheme changes. */
export class Palette implements ReactiveController {
  #known = new Map<string, string>();
  readonly #queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((query) =>
    matchMedia(query),
  );

  constructor(
    private readonly host: ReactiveControllerHost & HTMLElement,
    private readonly onChange: () => void,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    for (const query of this.#queries) query.addEventListener('change', this.#refresh);
    this.#known.clear();
  }

  hostDisconnected(): void {
    for (const query of this.#queries) query.removeEventListener('change', this.#refresh);
  }

  colour(name: string): string {
    const known = this.#known.get(name);
    if (known) return known;
    const value = getComputedStyle(this.host).getPropertyValue(name).trim();
    const colour = /^#[\da-f]{6}$/i.test(value) ? value : this.#resolved(value);
    this.#known.set(name, colour);
    return colour;
  }

  /** A colour of the system, or mixed from some: a canvas wants it worked out. */
  #resolved(value: string): string {
    const probe = document.createElement('span');
    probe.style.forcedColorAdjust = 'none';
    probe.style.color = value || 'currentColor';
    (this.host.shadowRoot ?? this.host).append(probe);
    const { color } = getComputedStyle(probe);
    probe.remove();
    return color;
  }

  readonly #refresh = (): void => {
    this.#known.clear();
    this.onChange();
  };
}
