/** The running states at the brief's speeds, written out: attitude and trim, drag by source; the ghost's below. */
import { formatWithUnit, type UnitSystem, unitOf } from '../../session/units.ts';
import type { DragSources } from '../../solver/report.ts';
import type { SpeedCase, SpeedPoint } from '../../solver/studies/speed.ts';
import { type TableRow, tableWithGhost } from '../figure-table.ts';
import { type Cell, type FigureCell, quantityCell } from '../table-cells.ts';
import { fixedCell, footPlace, margin, signed } from './words.ts';

export const DRAG_NAMES: Record<keyof DragSources, string> = {
  wingInduced: 'wing, induced',
  stabilizerInduced: 'stabilizer, induced',
  wingProfile: 'wing, profile',
  stabilizerProfile: 'stabilizer, profile',
  strutProfile: 'strut, profile',
  fuselage: 'fuselage',
  junctions: 'junctions',
  spray: 'spray',
  wave: 'waves, estimate',
};

export type NamedCase = [string, SpeedCase];

/** The states at the three speeds of a brief; `footAt`: the strut, m aft of the origin. */
export interface NamedRun {
  cases: readonly NamedCase[];
  footAt: number;
}

export function runningTable(own: NamedRun, ghost: NamedRun | null, units: UnitSystem) {
  return tableWithGhost('Running level', own, ghost, ({ cases, footAt }) => {
    const rows: Array<[string, (point: SpeedPoint) => Cell]> = [
      ['fuselage to the flow', ({ alpha }) => signed(alpha, 'angle', units)],
      ['board to the flow', ({ boardAngle }) => signed(boardAngle, 'angle', units)],
      ['stabilizer incidence', ({ incidence }) => signed(incidence, 'angle', units)],
      ['balance point, from the strut', ({ stance }) => footPlace(stance, footAt, units)],
      ['feet, from the strut', ({ feet }) => footPlace(feet, footAt, units)],
      ['wing CL', ({ CLwing }) => quantityCell(CLwing, 'ratio', units, { decimals: 2 })],
      ['wing, to stall', ({ stallMargin }) => margin(stallMargin, units)],
      ['stabilizer CL', ({ CLstabilizer }) => signed(CLstabilizer, 'ratio', units, 2)],
      ['tips below the surface', ({ tipDepth }) => quantityCell(tipDepth, 'length', units, DEEP)],
      ['V/√(g h)', ({ froude }) => fixedCell(froude?.depth, 1, '', DEEP.why)],
      ['drag', ({ total }) => quantityCell(total, 'force', units)],
      ['lift to drag', ({ liftToDrag }) => quantityCell(liftToDrag, 'ratio', units, { decimals: 1 })],
      ['power', ({ power }) => fixedCell(power, 0, ' W')],
      ['glide angle', ({ glideAngle }) => quantityCell(glideAngle, 'angle', units, { decimals: 1 })],
    ];
    return {
      head: ['', ...cases.map(([name, { speed }]) => `${name}, ${formatWithUnit(speed, 'speed', units)}`)],
      rows: rows.map(([name, read]) => ({ cells: [name, ...cases.map((each) => cell(each, read))] })),
    };
  });
}

const DEEP = { why: 'deep water' };

export function dragTable(own: NamedRun, ghost: NamedRun | null, units: UnitSystem) {
  const force = (value: number): FigureCell =>
    quantityCell(value, 'force', units, { decimals: 1, bare: true });
  const sources = Object.keys(DRAG_NAMES) as Array<keyof DragSources>;
  return tableWithGhost(`Drag by source, ${unitOf('force', units)}`, own, ghost, ({ cases }) => {
    const row = (name: string, read: (point: SpeedPoint) => number): TableRow => ({
      cells: [name, ...cases.map((each) => cell(each, (point) => force(read(point))))],
    });
    return {
      head: ['', ...cases.map(([name]) => name)],
      rows: [
        ...sources.map((source) => row(DRAG_NAMES[source], ({ drag }) => drag[source])),
        row('total', ({ total }) => total),
      ],
    };
  });
}

/** A state that cannot be run, or that no rider can stand at, has no figures. */
function cell([, { point }]: NamedCase, read: (point: SpeedPoint) => Cell): Cell {
  if (!point) return 'not possible';
  return point.isReachable ? read(point) : 'out of reach';
}
