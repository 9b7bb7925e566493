/** The running states at the brief's speeds, written out: attitude and trim, drag by source. */
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, formatWithUnit, type UnitSystem, unitOf } from '../../session/units.ts';
import type { DragSources } from '../../solver/report.ts';
import type { SpeedCase, SpeedPoint } from '../../solver/studies/speed.ts';
import { figureTable } from '../figure-table.ts';
import { footPlace, margin, signed } from './words.ts';

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

export function runningTable(cases: ReadonlyArray<[string, SpeedCase]>, footAt: number, units: UnitSystem) {
  const rows: Array<[string, (point: SpeedPoint) => string]> = [
    ['fuselage to the flow', ({ alpha }) => signed(alpha, 'angle', units)],
    ['board to the flow', ({ boardAngle }) => signed(boardAngle, 'angle', units)],
    ['stabilizer incidence', ({ incidence }) => signed(incidence, 'angle', units)],
    ['balance point, from the strut', ({ stance }) => footPlace(stance, footAt, units)],
    ['feet, from the strut', ({ feet }) => footPlace(feet, footAt, units)],
    ['wing CL', ({ CLwing }) => formatValue(CLwing, 'ratio', units, { decimals: 2 })],
    ['wing, to stall', ({ stallMargin }) => margin(stallMargin, units)],
    [
      'stabilizer CL',
      ({ CLstabilizer }) => (CLstabilizer === null ? '' : signed(CLstabilizer, 'ratio', units, 2)),
    ],
    [
      'tips below the surface',
      ({ tipDepth }) => (tipDepth === null ? 'deep water' : formatWithUnit(tipDepth, 'length', units)),
    ],
    ['V/√(g h)', ({ froude }) => (froude ? writeFixed(froude.depth, 1) : 'deep water')],
    ['drag', ({ total }) => formatWithUnit(total, 'force', units)],
    ['lift to drag', ({ liftToDrag }) => formatValue(liftToDrag, 'ratio', units, { decimals: 1 })],
    ['power', ({ power }) => `${writeFixed(power, 0)} W`],
    ['glide angle', ({ glideAngle }) => formatWithUnit(glideAngle, 'angle', units, { decimals: 1 })],
  ];
  const head = ['', ...cases.map(([name, { speed }]) => `${name}, ${formatWithUnit(speed, 'speed', units)}`)];
  return figureTable(
    'Running level',
    head,
    rows.map(([name, write]) => ({
      cells: [name, ...cases.map((each) => cell(each, write))],
    })),
  );
}

export function dragTable(cases: ReadonlyArray<[string, SpeedCase]>, units: UnitSystem) {
  const write = (value: number) => formatValue(value, 'force', units, { decimals: 1 });
  const rows = (Object.keys(DRAG_NAMES) as Array<keyof DragSources>).map((source) => ({
    cells: [DRAG_NAMES[source], ...cases.map((each) => cell(each, ({ drag }) => write(drag[source])))],
  }));
  rows.push({ cells: ['total', ...cases.map((each) => cell(each, ({ total }) => write(total)))] });
  return figureTable(`Drag by source, ${unitOf('force', units)}`, ['', ...cases.map(([name]) => name)], rows);
}

/** A state that cannot be run, or that no rider can stand at, has no figures. */
function cell([, { point }]: [string, SpeedCase], write: (point: SpeedPoint) => string): string {
  if (!point) return 'not possible';
  return point.isReachable ? write(point) : 'out of reach';
}
