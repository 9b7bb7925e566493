/** What the study of stall says, in sentences, figures with their working, lines and rows. Words only. */

import { html, type TemplateResult } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import {
  formatValue,
  formatWithUnit,
  type Quantity,
  toDisplay,
  type UnitSystem,
  unitOf,
} from '../../session/units.ts';
import type { StallMark, StallPoint, StallStudy } from '../../solver/studies/stall.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { figureTable } from '../figure-table.ts';
import '../figure-value.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { stallSpeed } from '../study-workings.ts';
import type { Working } from '../workings.ts';

const plain = (value: number, decimals = 2) => writeFixed(value, decimals);
const angle = (value: number) => formatWithUnit(value, 'angle', 'si', { decimals: 1 });

/** A place along the half span: "at the root", "350 mm from the middle (80 % of the half span)". */
export function placeAlong(y: number, tip: number, units: UnitSystem): string {
  const share = y / tip;
  if (share < 0.08) return 'at the root';
  return `${formatWithUnit(y, 'length', units)} from the middle (${Math.round(100 * share)} % of the half span)`;
}

function placeOf({ eta, y }: StallStudy, mark: Pick<StallMark, 'eta'>, units: UnitSystem): string {
  const k = eta.indexOf(mark.eta);
  return placeAlong(y[Math.max(0, k)]!, y.at(-1)!, units);
}

/** Where and when it gives way, and how far that is to be trusted. */
export function stallSentences(study: StallStudy, takeOff: number, units: UnitSystem): string[] {
  const { usable, first, greatest } = study;
  const speed = (mark: StallMark) => formatWithUnit(mark.speed, 'speed', units);
  const lines: string[] = [];
  if (usable)
    lines.push(
      `Slowed down, the wing first passes its usable lift ${placeOf(study, usable, units)}, at ${angle(usable.alpha)} and ${speed(usable)}${
        usable.speed > takeOff
          ? ''
          : `: ${formatWithUnit(takeOff - usable.speed, 'speed', units)} below take-off`
      }.`,
    );
  else lines.push('No strip of the wing passes its usable lift at any angle that was solved.');
  if (first)
    lines.push(
      `A section stalls first ${placeOf(study, first, units)}, at ${angle(first.alpha)} and ${speed(first)}.`,
    );
  if (greatest)
    lines.push(
      greatest.isPassed
        ? `The whole foil lifts most at ${angle(greatest.alpha)}: slower than ${speed(greatest)} nothing carries you.`
        : `Lift still grows at ${angle(greatest.alpha)}, the last angle solved.`,
    );
  return lines;
}

/** Said where take-off asks for more than is counted on; null where it does not. */
export function stallTrouble({ usable }: StallStudy, takeOff: number, units: UnitSystem): string | null {
  if (!usable || usable.speed <= takeOff) return null;
  return `Take-off at ${formatWithUnit(takeOff, 'speed', units)} is slower than the ${formatWithUnit(usable.speed, 'speed', units)} from which every strip stays within its usable lift.`;
}

/** How many angles the strips agreed at, and from where they did not. */
export function settledNote({ points }: StallStudy): string {
  const astray = points.filter(({ isSettled }) => !isSettled);
  const most = Math.max(...points.map(({ alpha }) => alpha));
  if (astray.length === 0)
    return `Converged: strips and sections agree at all ${points.length} angles up to ${angle(most)}.`;
  return `Strips and sections agree at ${points.length - astray.length} of ${points.length} angles; they did not converge at ${astray.map(({ alpha }) => angle(alpha)).join(', ')}, and no figure is taken from there.`;
}

interface Looks {
  quantity?: Quantity;
  decimals?: number;
  note?: string;
  why?: string;
  working: () => Working;
}

function figure(label: string, value: number | null, units: UnitSystem, looks: Looks): TemplateResult {
  return html`<figure-value
    .label=${label}
    .value=${value}
    .quantity=${looks.quantity ?? 'ratio'}
    .units=${units}
    .decimals=${looks.decimals ?? null}
    .note=${looks.note ?? ''}
    .why=${looks.why ?? 'not reached'}
    .working=${value === null ? null : looks.working}
  ></figure-value>`;
}

const SOURCE =
  'strips turned until line and sections agree: decambering, R. Mukherjee and A. Gopalarathnam, J. Aircraft 43 (2006) 660, from memory (theory: Stall)';
const TRUST =
  'The greatest lift of a section stands some 5 to 10 % high of clean measurements and more of rough ones; comparing wings does better. Beyond the greatest lift the flow is unsteady and only the trend counts.';

function lifting(stall: StallStudy, mark: StallMark, units: UnitSystem): Working {
  return { ...stallSpeed({ stall, mark, units }), source: SOURCE, trust: TRUST };
}

function stripAt(study: StallStudy, mark: StallMark, share: number): Working {
  const k = Math.max(0, study.eta.indexOf(mark.eta));
  const limit = study.limit[k]!;
  return {
    formula: 'angle at which cl of the first strip = share × greatest cl of its section',
    numbers: [
      ['greatest cl of that section', plain(limit, 3)],
      ['share', plain(share, 2)],
      ['cl there', plain(share * limit, 3)],
      ['angle', angle(mark.alpha)],
      ['strip at, of the half length', formatWithUnit(mark.eta, 'share', 'si')],
    ],
    source: `${SOURCE}; nine tenths of the greatest lift count as usable: common practice`,
    trust: TRUST,
  };
}

export function stallFigures(study: StallStudy, units: UnitSystem): TemplateResult {
  const { usable, first, greatest } = study;
  const astray = (mark: StallMark) => placeOf(study, mark, units);
  return html`${figure('Usable lift coefficient of the wing', usable?.CLwing ?? null, units, {
    decimals: 2,
    working: () => lifting(study, usable!, units),
  })}
  ${figure('Greatest lift coefficient of the wing', greatest?.CLwing ?? null, units, {
    decimals: 2,
    note: greatest && !greatest.isPassed ? 'still growing at the last angle that settled' : '',
    working: () => lifting(study, greatest!, units),
  })}
  ${figure('Angle at which the first strip passes its usable lift', usable?.alpha ?? null, units, {
    quantity: 'angle',
    decimals: 1,
    note: usable ? astray(usable) : '',
    working: () => stripAt(study, usable!, study.usableShare),
  })}
  ${figure('Speed at usable lift', usable?.speed ?? null, units, {
    quantity: 'speed',
    working: () => lifting(study, usable!, units),
  })}
  ${figure('Angle at which the first section stalls', first?.alpha ?? null, units, {
    quantity: 'angle',
    decimals: 1,
    note: first ? astray(first) : '',
    working: () => stripAt(study, first!, 1),
  })}
  ${figure('Least speed of the whole foil', greatest?.isPassed ? greatest.speed : null, units, {
    quantity: 'speed',
    working: () => lifting(study, greatest!, units),
  })}`;
}

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
export function spanChart(study: StallStudy, units: UnitSystem): TemplateResult {
  const x = Array.from(study.y, (place) => toDisplay(place, 'length', units));
  const limit = [...study.limit];
  const series: ChartSeries[] = [
    {
      name: 'usable',
      x,
      y: limit.map((cl) => study.usableShare * cl),
      colour: '--ink',
      dash: [6, 4],
      width: 1,
    },
    { name: 'greatest of the section', x, y: limit, colour: '--ink', dash: [2, 3], width: 1 },
    ...shown(study).map(
      ({ alpha, cl }, k): ChartSeries => ({
        name: `at ${angle(alpha)}`,
        x,
        y: [...cl],
        colour: COLOURS[k % COLOURS.length]!,
        dash: DASHES[k % DASHES.length]!,
      }),
    ),
  ];
  return html`<line-chart
    heading="How stall spreads along the wing"
    .summary=${'Lift coefficient of the strips from root to tip at several angles, against the usable and the greatest one of their sections.'}
    x-name="from the middle"
    .xUnit=${unitOf('length', units)}
    .xDecimals=${units === 'workshop' ? 0 : units === 'si' ? 3 : 2}
    y-name="cl"
    .yDecimals=${3}
    .series=${series}
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

function liftLines({ points }: StallStudy): ChartSeries[] {
  const astray = points.findIndex(({ isSettled }) => !isSettled);
  const kept = astray < 0 ? points : points.slice(0, astray);
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

const ROWS = 12;

/** Angle by angle from shortly before usable lift is passed. */
export function spreadTable(study: StallStudy, units: UnitSystem): TemplateResult {
  const { points, usable } = study;
  const from = Math.max(0, points.findIndex(({ alpha }) => alpha >= (usable?.alpha ?? 0)) - 2);
  const rest = points.slice(from);
  const every = Math.ceil(rest.length / ROWS);
  const rows = rest.filter((_, k) => k % every === 0 || k === rest.length - 1);
  return figureTable(
    'How stall spreads, angle by angle',
    ['angle', 'CL wing', 'carries at', 'wing stalled', 'from the middle', ''],
    rows.map((point) => {
      const { alpha, isSettled, CLwing, speed, stalledShare } = point;
      if (!isSettled) return { cells: [angle(alpha), '', '', '', '', 'not converged'] };
      return {
        cells: [
          angle(alpha),
          plain(CLwing),
          Number.isFinite(speed) ? formatWithUnit(speed, 'speed', units) : '',
          formatWithUnit(stalledShare, 'share', 'si', { decimals: 0 }),
          stretches(study, point, units),
          'converged',
        ],
      };
    }),
  );
}

const MOST_STRETCHES = 2;

/** Where sections are beyond their greatest lift, root to tip: "0 to 120 mm, 300 to 346 mm". */
function stretches({ y }: StallStudy, { isStalled }: StallPoint, units: UnitSystem): string {
  const decimals = { workshop: 0, si: 3, imperial: 1 }[units];
  const write = (place: number, how: typeof formatValue) => how(place, 'length', units, { decimals });
  const found: string[] = [];
  for (let k = 0, from = -1; k <= isStalled.length; k++) {
    if (isStalled[k]) from = from < 0 ? k : from;
    else if (from >= 0) {
      const start = from === 0 ? 0 : y[from]!; // the first strip reaches the middle
      found.push(`${write(start, formatValue)} to ${write(y[k - 1]!, formatWithUnit)}`);
      from = -1;
    }
  }
  if (found.length <= MOST_STRETCHES) return found.join(', ') || '–';
  const last = isStalled.lastIndexOf(true);
  const first = isStalled.indexOf(true);
  return `in patches, ${write(y[first]!, formatValue)} to ${write(y[last]!, formatWithUnit)}`;
}
