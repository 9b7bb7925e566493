/** How stall spreads, angle by angle. */
import type { TemplateResult } from 'lit';
import { formatValue, formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { StallPoint, StallStudy } from '../../solver/studies/stall.ts';
import { readBetween } from '../curve/plot-model.ts';
import { figureTable, type TableContent } from '../figure-table.ts';
import { type Cell, quantityCell } from '../table-cells.ts';
import { settledRun } from './stall-charts.ts';
import { angle } from './stall-words.ts';

const ROWS = 12;

/** Angle by angle from shortly before usable lift is passed; the ghost's at the same angles. */
export function spreadTable(study: StallStudy, ghost: StallStudy | null, units: UnitSystem): TemplateResult {
  const { points, usable } = study;
  const from = Math.max(0, points.findIndex(({ alpha }) => alpha >= (usable?.alpha ?? 0)) - 2);
  const rest = points.slice(from);
  const every = Math.ceil(rest.length / ROWS);
  const shown = rest.filter((_, k) => k % every === 0 || k === rest.length - 1);
  const head = ['angle', 'CL wing', 'carries at', 'wing stalled', 'from the middle', ''];
  const rows = shown.map((point) => {
    const { alpha, isSettled } = point;
    if (!isSettled) return { cells: [angle(alpha), '', '', '', '', 'not converged'] };
    return { cells: [angle(alpha), ...figuresOf(point, units), stretches(study, point, units), 'converged'] };
  });
  return figureTable(
    'How stall spreads, angle by angle',
    head,
    rows,
    ghost && behind(ghost, shown, head, units),
  );
}

type Figures = Pick<StallPoint, 'CLwing' | 'speed' | 'stalledShare'>;

const figuresOf = ({ CLwing, speed, stalledShare }: Figures, units: UnitSystem): Cell[] => [
  quantityCell(CLwing, 'ratio', 'si', { decimals: 2 }),
  quantityCell(speed, 'speed', units, { why: '' }),
  quantityCell(stalledShare, 'share', 'si', { decimals: 0 }),
];

/** Read between the ghost's settled angles, and no further than they go. */
function behind(
  ghost: StallStudy,
  shown: readonly StallPoint[],
  head: readonly string[],
  units: UnitSystem,
): TableContent {
  const run = settledRun(ghost);
  const x = run.map(({ alpha }) => alpha);
  const read = (key: keyof Figures, at: number) =>
    readBetween(
      x,
      run.map((point) => point[key]),
      at,
    ) ?? Number.NaN;
  const rows = shown
    .filter(({ isSettled }) => isSettled)
    .map(({ alpha }) => {
      const found = {
        CLwing: read('CLwing', alpha),
        speed: read('speed', alpha),
        stalledShare: read('stalledShare', alpha),
      };
      return { cells: [angle(alpha), ...figuresOf(found, units)] };
    });
  return { head, rows };
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
