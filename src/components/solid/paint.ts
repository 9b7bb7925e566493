/**
 * What is painted on the skin: figures along the half span in bands of colour, or where the layer turns turbulent. Values in
 * SI until they are written out; a place along a half is that of geometry/shell.ts.
 */
import {
  formatValue,
  formatWithUnit,
  fromDisplay,
  type Quantity,
  toDisplay,
  type UnitSystem,
  unitOf,
} from '../../session/units.ts';
import { etaOf, placeOf } from '../../solver/geometry/shell.ts';
import type { Report, StripFigures } from '../../solver/report.ts';
import { liftPerSpan } from '../spread/spread-reading.ts';

export type PaintName = 'plain' | 'lift' | 'coefficient' | 'transition';

export const PAINTS: readonly { value: PaintName; label: string }[] = [
  { value: 'plain', label: 'nothing' },
  { value: 'lift', label: 'lift per span' },
  { value: 'coefficient', label: 'lift coefficient' },
  { value: 'transition', label: 'laminar, turbulent' },
];

export type SkinPart = 'wing' | 'stabilizer';

/** A figure along a half: values at rising places. */
export interface Line {
  places: number[];
  values: number[];
}

/** Bands between edges, low to high; each with the custom property of its colour. */
export interface Bands {
  edges: number[]; // one more than colours
  colours: string[];
}

export interface SpreadPaint {
  title: string;
  quantity: Quantity;
  bands: Bands;
  lines: Record<SkinPart, Line | null>;
}

const SCALE = [1, 2, 3, 4, 5, 6, 7, 8, 9].map((k) => `--scale-${k}`);

const FIGURES = {
  lift: { title: 'Lift per span', quantity: 'liftPerSpan', of: liftPerSpan, tip: 0 },
  coefficient: {
    title: 'Section lift coefficient',
    quantity: 'ratio',
    of: ({ cl }: StripFigures) => cl,
    tip: null,
  },
} as const;

/** Lift of the report along both surfaces, and the bands it falls into. */
export function spreadPaint(report: Report, name: 'lift' | 'coefficient', units: UnitSystem): SpreadPaint {
  const { title, quantity, of, tip } = FIGURES[name];
  const lines = {
    wing: lineOf(report.strips.wing, of, tip),
    stabilizer: report.strips.stabilizer.length > 0 ? lineOf(report.strips.stabilizer, of, tip) : null,
  };
  const values = [...lines.wing.values, ...(lines.stabilizer?.values ?? [])];
  return { title, quantity, lines, bands: bandsOver(values, quantity, units) };
}

/** At the tip itself the lift is gone; a coefficient stays what it was at the last strip. */
function lineOf(
  strips: readonly StripFigures[],
  of: (strip: StripFigures) => number,
  tip: number | null,
): Line {
  const places = strips.map(({ eta }) => placeOf(eta));
  const values = strips.map(of);
  return tip === null ? { places, values } : { places: [...places, 1], values: [...values, tip] };
}

/** Up to nine bands with round edges, as the user's units are round, that hold zero and all values. */
export function bandsOver(values: readonly number[], quantity: Quantity, units: UnitSystem): Bands {
  const shown = values.map((value) => toDisplay(value, quantity, units));
  const [least, most] = [Math.min(0, ...shown), Math.max(0, ...shown)];
  const step = roundStep(most - least);
  const [from, to] = [Math.floor(least / step + 1e-9), Math.ceil(most / step - 1e-9)];
  const count = Math.max(1, to - from);
  const edges = Array.from({ length: count + 1 }, (_, k) => fromDisplay((from + k) * step, quantity, units));
  const colours = Array.from(
    { length: count },
    (_, k) => SCALE[count === 1 ? 4 : Math.round((k * (SCALE.length - 1)) / (count - 1))]!,
  );
  return { edges, colours };
}

/** 1, 2, 2.5 or 5 times a power of ten, so that a range takes at most nine steps, one of them for an end left over. */
function roundStep(range: number): number {
  if (!(range > 0)) return 1;
  const least = range / (SCALE.length - 1);
  const decade = 10 ** Math.floor(Math.log10(least));
  return decade * ([1, 2, 2.5, 5, 10].find((step) => step * decade >= least * (1 - 1e-9)) ?? 10);
}

export function colourAt({ edges, colours }: Bands, value: number): string {
  let k = 0;
  while (k < colours.length - 1 && value >= edges[k + 1]!) k++;
  return colours[k]!;
}

/** Straight between the values, the end values beyond them. */
export function valueAt({ places, values }: Line, place: number): number {
  const next = places.findIndex((at) => at >= place);
  if (next === 0) return values[0]!;
  if (next < 0) return values[values.length - 1]!;
  const [a, b] = [places[next - 1]!, places[next]!];
  return values[next - 1]! + ((values[next]! - values[next - 1]!) * (place - a)) / (b - a);
}

/** The greatest value of a line, and the share of the half span it stands at. */
export function peakOf({ places, values }: Line): { value: number; eta: number } {
  const value = values.reduce((best, each) => (Math.abs(each) > Math.abs(best) ? each : best), 0);
  return { value, eta: etaOf(places[values.indexOf(value)] ?? 0) };
}

/** "200 to 400 N/m", one a band. */
export function bandLabels({ edges }: Bands, quantity: Quantity, units: UnitSystem): string[] {
  const step = Math.abs(toDisplay(edges[1]!, quantity, units) - toDisplay(edges[0]!, quantity, units));
  const decimals = String(Number(step.toPrecision(6))).split('.')[1]?.length ?? 0;
  const write = (value: number) => formatValue(value, quantity, units, { decimals });
  const unit = unitOf(quantity, units);
  return edges
    .slice(1)
    .map((edge, k) => `${write(edges[k]!)} to ${write(edge)}${unit ? `\u00a0${unit}` : ''}`);
}

/** One sentence of what is painted, for those who do not see it. */
export function spreadWords({ title, quantity, lines }: SpreadPaint, units: UnitSystem): string {
  const peak = (line: Line) => {
    const { value, eta } = peakOf(line);
    const place = eta < 0.08 ? 'at the root' : `${Math.round(100 * eta)} % of the way to the tip`;
    return `${formatWithUnit(value, quantity, units)} (${place})`;
  };
  const tail = lines.stabilizer ? `, on the stabilizer ${peak(lines.stabilizer)}` : '';
  return lines.wing ? `${title}: most on the wing ${peak(lines.wing)}${tail}.` : '';
}
