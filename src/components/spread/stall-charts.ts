/** Charts of stall: strip by strip at several angles, and lift against the angle. */
import { html, type TemplateResult } from 'lit';
import { toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { StallPoint, StallStudy } from '../../solver/studies/stall.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { angle } from './stall-words.ts';

const DASHES = [[], [6, 3], [10, 3, 2, 3], [2, 2]] as const;
const COLOURS = ['--carry', '--lean', '--thrown', '--tail'] as const;

/** The settled states nearest to usable, first, greatest lift and the last, each once. */
function shown({ points, usable, first, greatest }: StallStudy): StallPoint[] {
  const settled = points.filter(({ isSettled }) => isSettled);
  const near = (alpha: number) =>
    settled.reduce((best, point) =>
      Math.abs(point.alpha - alpha) < Math.abs(best.alpha - alpha) ? point : best,
    );
  if (settled.length === 0) return [];
  const marks = [usable, first, greatest, settled.at(-1)!].flatMap((mark) =>
    mark ? [near(mark.alpha)] : [],
  );
  return [...new Set(marks)].sort((a, b) => a.alpha - b.alpha);
}

/** Strip lift along the span at several angles, against what the sections can carry. */
function spanLines(study: StallStudy, states: readonly StallPoint[], units: UnitSystem): ChartSeries[] {
  const x = Array.from(study.y, (place) => toDisplay(place, 'length', units));
  const limit = [...study.limit];
  return [
    {
      name: 'usable',
      x,
      y: limit.map((cl) => study.usableShare * cl),
      colour: '--ink',
      dash: [6, 4],
      width: 1,
    },
    { name: 'greatest of the section', x, y: limit, colour: '--ink', dash: [2, 3], width: 1 },
    ...states.map(
      ({ alpha, cl }, k): ChartSeries => ({
        name: `at ${angle(alpha)}`,
        x,
        y: [...cl],
        colour: COLOURS[k % COLOURS.length]!,
        dash: DASHES[k % DASHES.length]!,
      }),
    ),
  ];
}

/** Of the ghost the state in which it first passes its usable lift, and what its sections can carry. */
export function spanChart(study: StallStudy, ghost: StallStudy | null, units: UnitSystem): TemplateResult {
  const behind =
    ghost && spanLines(ghost, shown({ ...ghost, first: null, greatest: null }).slice(0, 1), units);
  return html`<line-chart
    heading="How stall spreads along the wing"
    .summary=${'Lift coefficient of the strips from root to tip at several angles, against the usable and the greatest one of their sections.'}
    x-name="from the middle"
    .xUnit=${unitOf('length', units)}
    .xDecimals=${units === 'workshop' ? 0 : units === 'si' ? 3 : 2}
    y-name="cl"
    .yDecimals=${3}
    .series=${withGhost(spanLines(study, shown(study), units), behind)}
  ></line-chart>`;
}

/** Lift coefficients against the angle, up to the first angle that did not settle. */
export function liftChart(study: StallStudy, ghost: StallStudy | null): TemplateResult {
  return html`<line-chart
    heading="Lift coefficient against the angle"
    .summary=${'Lift coefficients of the wing and of the whole foil against the angle, past the greatest lift, with the share of the wing that is stalled.'}
    x-name="angle"
    x-unit="°"
    .xDecimals=${1}
    y-name="CL, share"
    .yDecimals=${3}
    .series=${withGhost(liftLines(study), ghost && liftLines(ghost))}
  ></line-chart>`;
}

/** The states up to the first that did not settle. */
export function settledRun({ points }: StallStudy): StallPoint[] {
  const astray = points.findIndex(({ isSettled }) => !isSettled);
  return astray < 0 ? points : points.slice(0, astray);
}

function liftLines(study: StallStudy): ChartSeries[] {
  const kept = settledRun(study);
  const x = kept.map(({ alpha }) => alpha);
  return [
    { name: 'wing', x, y: kept.map(({ CLwing }) => CLwing), colour: '--carry' },
    { name: 'wing and stabilizer', x, y: kept.map(({ CL }) => CL), colour: '--tail', dash: [6, 3] },
    {
      name: 'share of the wing stalled',
      x,
      y: kept.map(({ stalledShare }) => stalledShare),
      colour: '--thrown',
      dash: [2, 3],
    },
  ];
}
