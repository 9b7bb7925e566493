/** What waves do and give, written out in the chosen units. */
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { WaveStudy } from '../../solver/studies/wave-study.ts';
import { figureTable } from '../figure-table.ts';
import { margin, signed } from './words.ts';

export function waveTable({ swing }: WaveStudy, units: UnitSystem) {
  return figureTable(
    'Swing in the waves, margins at its extremes',
    [
      'speed',
      'meets one every',
      'swing of angle',
      'swing of CL',
      'to stall',
      'to boiling',
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
              `±${writeFixed(found.clSwing, 2)}`,
              margin(found.stallMargin, units),
              signed(found.cavitationMargin, 'ratio', units, 2),
              found.breaches
                ? 'breaches'
                : found.troughDepth === null
                  ? ''
                  : formatWithUnit(found.troughDepth, 'length', units),
            ]
          : ['', '', '', '', '', 'deep water']),
      ],
    })),
  );
}

export function downwindTable({ downwind }: WaveStudy, units: UnitSystem) {
  return figureTable(
    'What a wave must give',
    ['speed', 'least slope', 'height of a wave that keeps pace', 'or by pumping'],
    downwind.map((row) => ({
      cells: [
        formatWithUnit(row.speed, 'speed', units),
        formatWithUnit(row.slope, 'angle', units, { decimals: 1 }),
        formatWithUnit(row.height, 'length', units),
        `${writeFixed(row.missingPower, 0)} W`,
      ],
    })),
  );
}
