/** Wedges, heel and turning, written out in the chosen units. */
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { SpeedDetails } from '../../solver/studies/speed-details.ts';
import type { TurnChoice } from '../../solver/studies/turning-choices.ts';
import { figureTable } from '../figure-table.ts';
import { footPlace, margin, signed } from './words.ts';

export function shimTable({ shims }: SpeedDetails, footAt: number, units: UnitSystem) {
  return figureTable(
    'A wedge under the stabilizer; places from the strut',
    [
      'wedge, nose up',
      'drawn stance trims at',
      'balance point at cruise',
      'feet at cruise',
      'drag at cruise',
    ],
    shims.map(({ shim, trimSpeed, stance, feet, total }) => ({
      cells: [
        signed(shim, 'angle', units),
        trimSpeed === null ? 'no speed' : formatWithUnit(trimSpeed, 'speed', units),
        footPlace(stance, footAt, units),
        footPlace(feet, footAt, units),
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
        row.upperTipDepth <= 0 ? 'breaks it' : formatWithUnit(row.upperTipDepth, 'length', units),
      ],
    })),
  );
}

export function carveTable({ carve }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    'A steady carve at cruise',
    [
      'heel',
      'radius',
      'load',
      'wing CL',
      'to stall',
      'drag',
      'upper tip below the surface',
      'asks of the stabilizer',
      'or of the feet',
    ],
    carve.flatMap((row) =>
      row
        ? [
            {
              cells: [
                formatWithUnit(row.heel, 'angle', units, { decimals: 0 }),
                `${writeFixed(row.radius, 1)} m`,
                `${writeFixed(row.loadFactor, 2)} g`,
                writeFixed(row.CLwing, 2),
                margin(row.stallMargin, units),
                formatWithUnit(row.total, 'force', units),
                row.upperTipDepth === null
                  ? 'deep water'
                  : row.upperTipDepth <= 0
                    ? 'breaks it'
                    : formatWithUnit(row.upperTipDepth, 'length', units),
                row.stabilizerTurn === null ? '' : signed(row.stabilizerTurn, 'angle', units, 2),
                `${formatWithUnit(Math.abs(row.stanceShift), 'length', units)} ${row.stanceShift > 0 ? 'aft' : 'forward'}`,
              ],
            },
          ]
        : [],
    ),
  );
}

export function turnsTable({ turns }: SpeedDetails, units: UnitSystem) {
  return figureTable(
    `Another fuselage or stabilizer for the same hold, in a carve of ${turns[0]?.heel ?? 0}° at cruise`,
    ['', 'arm', 'stabilizer', 'pitch volume', 'feet move', 'radius for the same move', 'drag'],
    turns.map((choice) => ({
      cells: [
        turnName(choice),
        formatWithUnit(choice.arm, 'length', units),
        formatWithUnit(choice.area, 'area', units),
        writeFixed(choice.volume, 2),
        `${formatWithUnit(Math.abs(choice.shift), 'length', units)} ${choice.shift > 0 ? 'aft' : 'forward'}`,
        choice.radius === null ? 'stalls first' : `${writeFixed(choice.radius, 1)} m`,
        formatWithUnit(choice.total, 'force', units, { decimals: 1 }),
      ],
      isHere: choice.factor === 1,
    })),
  );
}

function turnName({ change, factor }: TurnChoice): string {
  if (factor === 1) return 'as drawn';
  const percent = `${Math.round(100 * Math.abs(factor - 1))} %`;
  if (change === 'arm') return `fuselage ${percent} ${factor < 1 ? 'shorter' : 'longer'}`;
  return `stabilizer ${percent} ${factor < 1 ? 'flatter' : 'more drooped'}`;
}
