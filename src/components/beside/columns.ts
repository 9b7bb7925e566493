/** The figures by which designs are compared, and the names of the rider's marks. */
import type { MarkName } from '../../session/kept-record.ts';
import { formatWithUnit, type Quantity, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Report } from '../../solver/report.ts';

export interface FigureColumn {
  name: string;
  quantity: Quantity;
  decimals?: number;
  read: (report: Report) => number | null;
  isRanked?: boolean; // set against the rider's marks
}

export const COLUMNS: readonly FigureColumn[] = [
  { name: 'Span', quantity: 'length', read: ({ geometry }) => geometry.wing.span },
  { name: 'Area', quantity: 'area', read: ({ geometry }) => geometry.wing.projectedArea },
  {
    name: 'Aspect ratio',
    quantity: 'ratio',
    decimals: 1,
    read: ({ geometry }) => geometry.wing.aspectRatio,
    isRanked: true,
  },
  { name: 'Tip drop', quantity: 'length', read: ({ geometry }) => geometry.wing.tipDrop },
  { name: 'CL at cruise', quantity: 'ratio', decimals: 2, read: ({ lift }) => lift.CL, isRanked: true },
  { name: 'Lost to the curve', quantity: 'share', read: ({ ledger }) => ledger.lostFraction },
  {
    name: 'Induced drag',
    quantity: 'force',
    read: ({ inducedDrag }) => inducedDrag.farField,
    isRanked: true,
  },
  { name: 'All drag at cruise', quantity: 'force', read: ({ drag }) => drag.total, isRanked: true },
  {
    name: 'Stall margin',
    quantity: 'ratio',
    decimals: 2,
    read: ({ sections }) => sections.stallMargin,
    isRanked: true,
  },
  {
    name: 'Hold index',
    quantity: 'ratio',
    decimals: 2,
    read: ({ stability }) => stability.holdIndex,
    isRanked: true,
  },
  {
    name: 'Roll from yaw',
    quantity: 'ratio',
    decimals: 3,
    read: ({ stability }) => stability.rollFromYaw,
    isRanked: true,
  },
  { name: 'Neutral droop', quantity: 'angle', decimals: 1, read: ({ stability }) => stability.neutralDroop },
  {
    name: 'Static margin',
    quantity: 'share',
    decimals: 0,
    read: ({ stability }) => stability.staticMargin,
    isRanked: true,
  },
  {
    name: 'Stabilizer volume',
    quantity: 'ratio',
    decimals: 2,
    read: ({ geometry }) => geometry.stabilizer?.volume ?? null,
    isRanked: true,
  },
  { name: 'Neutral point, aft', quantity: 'length', read: ({ stability }) => stability.neutralPoint },
];

export const MARK_NAMES: Readonly<Record<MarkName, string>> = {
  hold: 'Hold',
  glide: 'Glide',
  turn: 'Turn',
  takeOff: 'Take-off',
  pump: 'Pump',
};

export function writeColumn(
  { quantity, decimals }: FigureColumn,
  value: number | null,
  units: UnitSystem,
): string {
  return value === null
    ? 'none'
    : formatWithUnit(value, quantity, units, decimals === undefined ? {} : { decimals });
}

/** "Span, mm" */
export function columnTitle({ name, quantity }: FigureColumn, units: UnitSystem): string {
  const symbol = unitOf(quantity, units);
  return symbol === '' ? name : `${name}, ${symbol}`;
}

/** The number alone in the unit of the title, for a sheet of figures. */
export function shownNumber(
  { quantity }: FigureColumn,
  value: number | null,
  units: UnitSystem,
): number | null {
  return value === null ? null : toDisplay(value, quantity, units);
}
