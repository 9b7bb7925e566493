/** The sweep's columns as small plots, in the chosen units. */
import { writeFixed } from '../../session/number-format.ts';
import type { RiddenHold } from '../../session/ridden.ts';
import { toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { CurveStudy } from '../../solver/studies/curve-study.ts';
import type { DroopColumn } from '../../solver/studies/droop-family.ts';
import type { DroopStudy } from '../../solver/studies/droop-study.ts';
import { type PlotCell, type PlotLine, type PlotMark, readBetween, YOURS } from './plot-model.ts';

const HOLD_INDEX = 'Hold index';

const LOOKS = [
  { colour: '--thrown' },
  { colour: '--carry', dash: [7, 3] },
  { colour: '--tail', dash: [2, 3] },
] as const;

export function sweepCells(sweep: DroopStudy, units: UnitSystem): PlotCell[] {
  const { columns } = sweep;
  const line = (name: string, y: Iterable<number>, colour: `--${string}`): PlotLine => ({
    name,
    y: [...y],
    colour,
  });
  const cell = (
    name: string,
    unit: string,
    decimals: number,
    key: DroopColumn,
    colour: `--${string}`,
    scale = 1,
  ) =>
    withSummary(sweep, {
      name,
      unit,
      decimals,
      lines: [
        line(
          name,
          columns[key].map((value) => value * scale),
          colour,
        ),
      ],
    });
  const force = toDisplay(1, 'force', units);
  const area = toDisplay(1, 'area', units);
  const more = (key: DroopColumn) => columns[key].map((value) => (value - columns[key][0]!) * area);
  return [
    cell('Lost lift at the same angle', '%', 2, 'lostFraction', '--lean', 100),
    cell('Extra angle, same lift', '°', 2, 'extraAlpha', '--carry'),
    cell('Extra induced drag', unitOf('force', units), 2, 'extraInducedDrag', '--carry', force),
    cell('Extra profile drag', unitOf('force', units), 2, 'extraProfileDrag', '--surface', force),
    cell('Extra total drag', unitOf('force', units), 2, 'extraTotalDrag', '--thrown', force),
    cell(HOLD_INDEX, '', 2, 'holdIndex', '--tail'),
    cell('Effective droop', '°', 1, 'effectiveDroop', '--ink'),
    cell('Roll from yaw, C_lr/|C_lp|', '', 3, 'rollFromYaw', '--tail'),
    cell('Yaw from roll, C_np/|C_nr|', '', 2, 'yawFromRoll', '--tail'),
    withSummary(sweep, {
      name: 'Wing area drawn, more',
      unit: unitOf('area', units),
      decimals: units === 'si' ? 5 : 1,
      lines: [
        { ...line('unrolled', more('unrolledArea'), '--surface') },
        { ...line('seen from above', more('projectedArea'), '--ink'), dash: [5, 3] },
      ],
    }),
  ];
}

/**
 * The ridden designs on the hold index: where the good marks begin, once there are enough to say, else each with its
 * mark at the edge.
 */
export function withRidden(cells: readonly PlotCell[], { points, band }: RiddenHold): PlotCell[] {
  if (points.length === 0) return [...cells];
  const levels = points.map(({ index, mark }) => ({ at: index, label: String(mark) }));
  const shown = band ? { band } : { levels };
  return cells.map((cell) => (cell.name === HOLD_INDEX ? { ...cell, ...shown } : cell));
}

/** Prices of the next bit; the user's own price is the level line. */
export function priceCells({ sweep, price }: CurveStudy, units: UnitSystem): PlotCell[] {
  const force = toDisplay(1, 'force', units);
  const unit = unitOf('force', units);
  const level = Array.from(price.amplitude, () => 100 * price.limit);
  const line = (name: string, y: Float64Array, scale: number, colour: `--${string}`): PlotLine => ({
    name,
    y: Array.from(y, (value) => value * scale),
    colour,
  });
  const yours: PlotLine = { name: YOURS, y: level, colour: '--ink', dash: [4, 3] };
  const byPoint = price.goods === 'holdPoint';
  const cells: Array<Omit<PlotCell, 'summary'>> = [
    {
      name: 'One degree towards neutral',
      unit: '% of drag',
      decimals: 3,
      lines: [line('all drag', price.perDegreeShare, 100, '--thrown'), ...(byPoint ? [] : [yours])],
    },
    {
      name: 'One degree',
      unit,
      decimals: 3,
      lines: [
        line('towards neutral, all drag', price.perDegree, force, '--thrown'),
        { ...line('more, induced part', price.inducedPerDegree, force, '--carry'), dash: [7, 3] },
      ],
    },
  ];
  if (byPoint)
    cells.unshift(
      {
        name: 'One more point of hold index',
        unit: '% of drag',
        decimals: 2,
        lines: [line('all drag', price.perPointShare, 100, '--thrown'), yours],
      },
      {
        name: 'One more point of hold index',
        unit,
        decimals: 2,
        lines: [line('all drag', price.perPoint, force, '--thrown')],
      },
    );
  return cells.map((cell) => withSummary(sweep, cell));
}

export function couplingCell({ sweep, coupling }: CurveStudy, write: (speed: number) => string): PlotCell {
  return withSummary(sweep, {
    name: 'Roll from yaw, C_lr',
    unit: '',
    decimals: 4,
    lines: coupling.map(({ speed, CL, Clr }, k) => ({
      name: `${write(speed)}, CL ${writeFixed(CL, 2)}`,
      y: [...Clr],
      ...LOOKS[k % LOOKS.length]!,
    })),
  });
}

/** C_lr by CL against the index, as far as the index goes at the speed of the sweep. */
export function indexSeries({ coupling, sweep }: CurveStudy, write: (speed: number) => string) {
  const own = coupling.find(({ speed }) => speed === sweep.speed) ?? coupling[0]!;
  const most = Math.max(...own.index.filter(Number.isFinite));
  return coupling.map(({ speed, CL, index, Clr }, k) => {
    const shown = [...index.keys()].filter((i) => index[i]! <= most && Number.isFinite(Clr[i]!));
    return {
      name: `${write(speed)}, CL ${writeFixed(CL, 2)}`,
      x: shown.map((i) => index[i]!),
      y: shown.map((i) => Clr[i]! / CL),
      ...LOOKS[k % LOOKS.length]!,
    };
  });
}

/** Present design, price and neutral droop, and the ghost's droop, where they lie on the sweep. */
export function droopMarks({ sweep, price }: CurveStudy, ghost: CurveStudy | null): PlotMark[] {
  const last = sweep.columns.amplitude.at(-1)!;
  const marks: PlotMark[] = [];
  const add = (name: string, at: number | null, looks: Omit<PlotMark, 'name' | 'at'>) => {
    if (at !== null && at >= 0 && at <= last + 1e-9) marks.push({ name, at, ...looks });
  };
  add('now', sweep.present, { colour: '--ink', width: 2 });
  add('your price', price.place.at, { colour: '--thrown', dash: [6, 3] });
  add('neutral', price.neutral, { colour: '--tail', dash: [2, 3] });
  if (ghost) add('ghost', ghost.sweep.present, { colour: '--ghost', dash: [4, 4] });
  return marks;
}

function withSummary(sweep: DroopStudy, cell: Omit<PlotCell, 'summary'>): PlotCell {
  const x = [...sweep.columns.amplitude];
  const last = x.at(-1)!;
  const read = (y: readonly number[], at: number) => {
    const value = readBetween(x, y, at);
    return value === null ? 'none' : writeFixed(value, cell.decimals);
  };
  const parts = cell.lines.map(
    ({ name, y }) =>
      `${cell.lines.length > 1 ? `${name} ` : ''}${read(y, 0)} flat, ${read(y, last / 2)} at ${writeFixed(last / 2, 0)} degrees, ${read(y, last)} at ${writeFixed(last, 0)} degrees`,
  );
  return { ...cell, summary: `${parts.join('; ')}${cell.unit ? `, in ${cell.unit}` : ''}.` };
}
