/** Wedges, heel and turning, written out in the chosen units. */
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { SpeedDetails } from '../../solver/studies/speed-details.ts';
import type { TurnChoice } from '../../solver/studies/turning-choices.ts';
import { tableWithGhost } from '../figure-table.ts';
import { figureCell, quantityCell } from '../table-cells.ts';
import { fixedCell, footPlace, margin, signed, wayCell } from './words.ts';

/** The answer of one design; `footAt`: the strut, m aft of the origin. */
export interface Detailed {
  found: SpeedDetails;
  footAt: number;
}

type Behind = SpeedDetails | null;

export function shimTable(own: Detailed, ghost: Detailed | null, units: UnitSystem) {
  const caption = 'A wedge under the stabilizer; places from the strut';
  return tableWithGhost(caption, own, ghost, ({ found, footAt }) => ({
    head: [
      'wedge, nose up',
      'drawn stance trims at',
      'balance point at cruise',
      'feet at cruise',
      'drag at cruise',
    ],
    rows: found.shims.map(({ shim, trimSpeed, stance, feet, total }) => ({
      cells: [
        signed(shim, 'angle', units),
        quantityCell(trimSpeed, 'speed', units, { why: 'no speed' }),
        footPlace(stance, footAt, units),
        footPlace(feet, footAt, units),
        quantityCell(total, 'force', units, { decimals: 1 }),
      ],
      isHere: shim === 0,
    })),
  }));
}

export function heelTable(own: SpeedDetails, ghost: Behind, units: UnitSystem) {
  return tableWithGhost('Heeled at cruise, the same lift across the span', own, ghost, ({ heel }) => ({
    head: ['heel', 'carries upward', 'pushes sideways', 'induced drag', 'upper tip below the surface'],
    rows: heel.map((row) => ({
      cells: [
        formatWithUnit(row.heel, 'angle', units, { decimals: 0 }),
        quantityCell(row.verticalLift, 'force', units),
        quantityCell(row.sideForce, 'force', units),
        quantityCell(row.inducedDrag, 'force', units, { decimals: 2 }),
        tipCell(row.upperTipDepth, units),
      ],
    })),
  }));
}

/** A tip above the surface has no depth. */
function tipCell(depth: number | null, units: UnitSystem) {
  const length = quantityCell(depth, 'length', units, { why: 'deep water' });
  return figureCell(
    depth,
    (value, isDifference) => (!isDifference && value <= 0 ? 'breaks it' : length.write(value, isDifference)),
    length.why,
  );
}

export function carveTable(own: SpeedDetails, ghost: Behind, units: UnitSystem) {
  return tableWithGhost('A steady carve at cruise', own, ghost, ({ carve }) => ({
    head: [
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
    rows: carve.flatMap((row) =>
      row
        ? [
            {
              cells: [
                formatWithUnit(row.heel, 'angle', units, { decimals: 0 }),
                fixedCell(row.radius, 1, ' m'),
                fixedCell(row.loadFactor, 2, ' g'),
                fixedCell(row.CLwing, 2),
                margin(row.stallMargin, units),
                quantityCell(row.total, 'force', units),
                tipCell(row.upperTipDepth, units),
                signed(row.stabilizerTurn, 'angle', units, 2),
                wayCell(row.stanceShift, units),
              ],
            },
          ]
        : [],
    ),
  }));
}

export function turnsTable(own: SpeedDetails, ghost: Behind, units: UnitSystem) {
  const caption = `Another fuselage or stabilizer for the same hold, in a carve of ${own.turns[0]?.heel ?? 0}° at cruise`;
  return tableWithGhost(caption, own, ghost, ({ turns }) => ({
    head: ['', 'arm', 'stabilizer', 'pitch volume', 'feet move', 'radius for the same move', 'drag'],
    rows: turns.map((choice) => ({
      cells: [
        turnName(choice),
        quantityCell(choice.arm, 'length', units),
        quantityCell(choice.area, 'area', units),
        fixedCell(choice.volume, 2),
        wayCell(choice.shift, units),
        fixedCell(choice.radius, 1, ' m', 'stalls first'),
        quantityCell(choice.total, 'force', units, { decimals: 1 }),
      ],
      isHere: choice.factor === 1,
    })),
  }));
}

function turnName({ change, factor }: TurnChoice): string {
  if (factor === 1) return 'as drawn';
  const percent = `${Math.round(100 * Math.abs(factor - 1))} %`;
  if (change === 'arm') return `fuselage ${percent} ${factor < 1 ? 'shorter' : 'longer'}`;
  return `stabilizer ${percent} ${factor < 1 ? 'flatter' : 'more drooped'}`;
}
