/** The tables of Speed: a study's plain data written out in the chosen units. */
import { formatValue, formatWithUnit, type Quantity, type UnitSystem, unitOf } from '../../session/units.ts';
import type { DragSources } from '../../solver/studies/level-drag.ts';
import type { SpeedCase, SpeedPoint } from '../../solver/studies/speed.ts';
import type { SpeedDetails } from '../../solver/studies/speed-study.ts';
import { figureTable } from '../figure-table.ts';

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

/** Forward and aft are named, since a sign says nothing on the beach. */
export function footPlace(aft: number, from: number, units: UnitSystem): string {
  const shift = aft - from;
  const size = formatWithUnit(Math.abs(shift), 'length', units);
  return Math.abs(shift) < 5e-4 ? 'at the strut' : `${size} ${shift > 0 ? 'aft' : 'forward'}`;
}

export function runningTable(cases: ReadonlyArray<[string, SpeedCase]>, footAt: number, units: UnitSystem) {
  const rows: Array<[string, (point: SpeedPoint) => string]> = [
    ['fuselage to the flow', ({ alpha }) => signed(alpha, 'angle', units)],
    ['board to the flow', ({ boardAngle }) => signed(boardAngle, 'angle', units)],
    ['stabilizer incidence', ({ incidence }) => signed(incidence, 'angle', units)],
    ['feet, from the strut', ({ feet }) => footPlace(feet, footAt, units)],
    ['wing CL', ({ CLwing }) => formatValue(CLwing, 'ratio', units, { decimals: 2 })],
    [
      'stabilizer CL',
      ({ CLstabilizer }) => (CLstabilizer === null ? '' : signed(CLstabilizer, 'ratio', units, 2)),
    ],
    ['drag', ({ total }) => formatWithUnit(total, 'force', units)],
    ['lift to drag', ({ liftToDrag }) => formatValue(liftToDrag, 'ratio', units, { decimals: 1 })],
    ['power', ({ power }) => `${power.toFixed(0)} W`],
    ['glide angle', ({ glideAngle }) => formatWithUnit(glideAngle, 'angle', units, { decimals: 1 })],
  ];
  const head = ['', ...cases.map(([name, { speed }]) => `${name}, ${formatWithUnit(speed, 'speed', units)}`)];
  return figureTable(
    'Running level',
    head,
    rows.map(([name, write]) => ({
      cells: [name, ...cases.map(([, { point }]) => (point ? write(point) : 'not possible'))],
    })),
  );
}

export function dragTable(cases: ReadonlyArray<[string, SpeedCase]>, units: UnitSystem) {
  const write = (value: number) => formatValue(value, 'force', units, { decimals: 1 });
  const rows = (Object.keys(DRAG_NAMES) as Array<keyof DragSources>).map((source) => ({
    cells: [DRAG_NAMES[source], ...cases.map(([, { point }]) => (point ? write(point.drag[source]) : ''))],
  }));
  rows.push({ cells: ['total', ...cases.map(([, { point }]) => (point ? write(point.total) : ''))] });
  return figureTable(`Drag by source, ${unitOf('force', units)}`, ['', ...cases.map(([name]) => name)], rows);
}

export function shimRows({ shims }: SpeedDetails, footAt: number, units: UnitSystem) {
  return figureTable(
    'A wedge under the stabilizer',
    ['wedge, nose up', 'drawn stance trims at', 'stance at cruise, from the strut', 'drag at cruise'],
    shims.map(({ shim, trimSpeed, stance, total }) => ({
      cells: [
        signed(shim, 'angle', units),
        trimSpeed === null ? 'no speed' : formatWithUnit(trimSpeed, 'speed', units),
        footPlace(stance, footAt, units),
        formatWithUnit(total, 'force', units, { decimals: 1 }),
      ],
      isHere: shim === 0,
    })),
  );
}

export function heelTable({ heel }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'Heeled at cruise, the same lift across the span',
    ['heel', 'carries upward', 'pushes sideways', 'induced drag', 'upper tip below the surface'],
    heel.map((row) => ({
      cells: [
        formatWithUnit(row.heel, 'angle', units, { decimals: 0 }),
        formatWithUnit(row.verticalLift, 'force', units),
        formatWithUnit(row.sideForce, 'force', units),
        formatWithUnit(row.inducedDrag, 'force', units, { decimals: 2 }),
        formatWithUnit(row.upperTipDepth, 'length', units),
      ],
    })),
  );
}

export function carveTable({ carve }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'A steady carve at cruise',
    ['heel', 'radius', 'load', 'wing CL', 'to stall', 'drag', 'asks of the stabilizer', 'or of the feet'],
    carve.flatMap((row) =>
      row
        ? [
            {
              cells: [
                formatWithUnit(row.heel, 'angle', units, { decimals: 0 }),
                `${row.radius.toFixed(1)} m`,
                `${row.loadFactor.toFixed(2)} g`,
                row.CLwing.toFixed(2),
                row.stallMargin === null
                  ? 'not known'
                  : formatValue(row.stallMargin, 'ratio', units, { decimals: 2 }),
                formatWithUnit(row.total, 'force', units),
                row.stabilizerTurn === null ? '' : signed(row.stabilizerTurn, 'angle', units, 2),
                `${formatWithUnit(Math.abs(row.stanceShift), 'length', units)} ${row.stanceShift > 0 ? 'aft' : 'forward'}`,
              ],
            },
          ]
        : [],
    ),
  );
}

export function waveTable({ swing }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'Swing in the waves',
    [
      'speed',
      'meets one every',
      'swing of angle',
      'swing of CL',
      'to stall at the crest',
      'origin below the trough',
    ],
    swing.map(({ speed, swing: found }) => ({
      cells: [
        formatWithUnit(speed, 'speed', units),
        ...(found
          ? [
              Number.isFinite(found.encounterPeriod)
                ? formatWithUnit(found.encounterPeriod, 'time', units)
                : 'keeps pace',
              `±${formatWithUnit(found.alphaSwing, 'angle', units, { decimals: 2 })}`,
              `±${found.clSwing.toFixed(2)}`,
              found.stallMargin === null
                ? 'not known'
                : formatValue(found.stallMargin, 'ratio', units, { decimals: 2 }),
              found.breaches
                ? 'breaches'
                : found.troughDepth === null
                  ? ''
                  : formatWithUnit(found.troughDepth, 'length', units),
            ]
          : ['', '', '', '', 'deep water']),
      ],
    })),
  );
}

export function downwindRows({ downwind }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'What a wave must give',
    ['speed', 'least slope', 'height of a wave that keeps pace', 'or by pumping'],
    downwind.map((row) => ({
      cells: [
        formatWithUnit(row.speed, 'speed', units),
        formatWithUnit(row.slope, 'angle', units, { decimals: 1 }),
        formatWithUnit(row.height, 'length', units),
        `${row.missingPower.toFixed(0)} W`,
      ],
    })),
  );
}

const PLACE_NAMES = {
  anywhere: 'anywhere',
  wing: 'wing',
  stabilizer: 'stabilizer',
  strut: 'strut',
  'wing junction': 'junction of wing and strut',
  'strut junction': 'foot of the strut',
} as const;

export function inceptionTable({ inception }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'Where the water first boils, running level',
    ['', 'from', 'at', 'deep'],
    inception
      .filter(({ place }) => place !== 'anywhere')
      .sort((a, b) => a.speed - b.speed)
      .map(({ place, speed, eta, depth }) => ({
        cells: [
          PLACE_NAMES[place],
          formatWithUnit(speed, 'speed', units),
          place === 'wing' || place === 'stabilizer' ? `${Math.round(100 * eta)} % of the half length` : '',
          formatWithUnit(depth, 'length', units),
        ],
      })),
  );
}

export function pressureTable({ pressures }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'Lowest pressure',
    ['', 'speed', 'where', 'cavitation number', 'lowest Cp', 'margin', 'against the air'],
    pressures.flatMap(({ name, speed, worst }) =>
      worst
        ? [
            {
              cells: [
                name,
                formatWithUnit(speed, 'speed', units),
                PLACE_NAMES[worst.place],
                worst.sigma.toFixed(2),
                worst.cpMin.toFixed(2).replace('-', '\u2212'),
                signed(worst.margin, 'ratio', units, 2),
                `${signed(worst.againstAir / 1000, 'ratio', units, 0)} kPa`,
              ],
            },
          ]
        : [],
    ),
  );
}

function signed(value: number, quantity: Quantity, units: UnitSystem, decimals?: number): string {
  return formatWithUnit(value, quantity, units, { sign: true, ...(decimals !== undefined && { decimals }) });
}
