/** Lines of the spread of lift, root to tip, in the shown units. */
import { toDisplay, type UnitSystem } from '../../session/units.ts';
import type { Report } from '../../solver/report.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { type Ghost, withGhost } from '../ghost.ts';
import { leastMargin, liftPerSpan, runsBeyond } from './spread-reading.ts';

const THIN = [2, 3];
const DASH_DOT = [10, 3, 2, 3]; // the stabilizer: told apart without colour
const CLOSE = 0.3; // of a lift coefficient: the usable one is drawn only where it matters, since it lifts the whole axis

type Part = 'wing' | 'stabilizer';
type Looks = Pick<ChartSeries, 'colour' | 'width' | 'dash'>;

/** A line over the strips' places; one value more than strips stands at the tip itself. */
function line(
  name: string,
  report: Report,
  part: Part,
  y: number[],
  units: UnitSystem,
  looks: Looks,
): ChartSeries {
  const strips = report.strips[part];
  const tip = (report.geometry[part]?.span ?? 0) / 2;
  const places = strips.map((strip) => strip.y);
  const x = y.length > strips.length ? [...places, tip] : places;
  return { name, x: x.map((place) => toDisplay(place, 'length', units)), y, ...looks };
}

/** One quantity of wing and stabilizer, and of the ghost's. */
function partLines(
  report: Report,
  ghost: Ghost | null,
  units: UnitSystem,
  of: (which: Report, part: Part) => number[],
): ChartSeries[] {
  const series = [line('wing', report, 'wing', of(report, 'wing'), units, { colour: '--carry' })];
  if (report.strips.stabilizer.length > 0)
    series.push(
      line('stabilizer', report, 'stabilizer', of(report, 'stabilizer'), units, {
        colour: '--tail',
        dash: DASH_DOT,
      }),
    );
  const behind = ghost?.report;
  if (!behind) return series;
  const parts = (['wing', 'stabilizer'] as const).filter((part) => behind.strips[part].length > 0);
  const lines = parts.map((part) => line(part, behind, part, of(behind, part), units, { colour: '--ghost' }));
  return withGhost(series, lines);
}

export function liftSeries(report: Report, ghost: Ghost | null, units: UnitSystem): ChartSeries[] {
  const { density, speed } = report.condition;
  const [wing, ...others] = partLines(report, ghost, units, (which, part) => [
    ...which.strips[part].map(liftPerSpan),
    0,
  ]);
  const least = report.strips.wing.map(({ leastCirculation }) => density * speed * leastCirculation);
  const best = line('least drag for this curve', report, 'wing', [...least, 0], units, {
    colour: '--ink',
    width: 1,
    dash: THIN,
  });
  return [wing!, best, ...others].map((each) => ({
    ...each,
    y: each.y.map((value) => toDisplay(value, 'liftPerSpan', units)),
  }));
}

export function coefficientSeries(report: Report, ghost: Ghost | null, units: UnitSystem): ChartSeries[] {
  const lines = partLines(report, ghost, units, (which, part) => which.strips[part].map(({ cl }) => cl));
  return [...lines, ...limitSeries(report, units)];
}

/** What the wing's sections usably carry, where a strip is close to it, and a thick line along strips beyond. */
function limitSeries(report: Report, units: UnitSystem): ChartSeries[] {
  const { wing } = report.strips;
  if (leastMargin(wing).margin > CLOSE) return [];
  const usable = wing.map(({ usableCl }) => usableCl);
  const beyond = runsBeyond(wing).map((run, k): ChartSeries => {
    const ends = run.length > 1 ? run : [run[0]!, run[0]!];
    const half = run.length > 1 ? 0 : 0.25 * run[0]!.width; // a strip by itself still shows
    return {
      name: k === 0 ? 'beyond usable' : `beyond usable, ${k + 1}`,
      x: ends.map(({ y }, i) => toDisplay(y + (i === 0 ? -half : half), 'length', units)),
      y: ends.map(({ cl }) => cl),
      colour: '--thrown',
      width: 5,
    };
  });
  const limit = line('usable, wing', report, 'wing', usable, units, {
    colour: '--ink',
    width: 1,
    dash: THIN,
  });
  return [limit, ...beyond];
}
