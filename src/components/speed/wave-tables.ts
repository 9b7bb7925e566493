/** What waves do and give, written out in the chosen units; the ghost's below. */
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { WaveStudy } from '../../solver/studies/wave-study.ts';
import { tableWithGhost } from '../figure-table.ts';
import { type Cell, figureCell, quantityCell } from '../table-cells.ts';
import { fixedCell, margin, signed } from './words.ts';

type Swing = NonNullable<WaveStudy['swing'][number]['swing']>;

const SWING_HEAD = [
  'meets one every',
  'swing of angle',
  'swing of CL',
  'to stall',
  'to boiling',
  'origin below the trough',
];

export function waveTable(own: WaveStudy, ghost: WaveStudy | null, units: UnitSystem) {
  return tableWithGhost('Swing in the waves, margins at its extremes', own, ghost, ({ swing }) => ({
    head: ['speed', ...SWING_HEAD],
    rows: swing.map(({ speed, swing: found }, k) => ({
      key: String(k),
      cells: [
        formatWithUnit(speed, 'speed', units),
        ...(found ? swingCells(found, units) : ['', '', '', '', '', 'deep water']),
      ],
    })),
  }));
}

function swingCells(found: Swing, units: UnitSystem): Cell[] {
  return [
    quantityCell(found.encounterPeriod, 'time', units, { why: 'keeps pace' }),
    plusMinus(found.alphaSwing, '°'),
    plusMinus(found.clSwing),
    margin(found.stallMargin, units),
    signed(found.cavitationMargin, 'ratio', units, 2),
    found.breaches ? 'breaches' : quantityCell(found.troughDepth, 'length', units, { why: '' }),
  ];
}

function plusMinus(value: number, unit = '') {
  const plain = fixedCell(value, 2, unit);
  return figureCell(
    value,
    (of, isDifference) => `${isDifference ? '' : '±'}${plain.write(of, isDifference)}`,
  );
}

export function downwindTable(own: WaveStudy, ghost: WaveStudy | null, units: UnitSystem) {
  return tableWithGhost('What a wave must give', own, ghost, ({ downwind }) => ({
    head: ['speed', 'least slope', 'height of a wave that keeps pace', 'or by pumping'],
    rows: downwind.map((row, k) => ({
      key: String(k),
      cells: [
        formatWithUnit(row.speed, 'speed', units),
        quantityCell(row.slope, 'angle', units, { decimals: 1 }),
        quantityCell(row.height, 'length', units),
        fixedCell(row.missingPower, 0, ' W'),
      ],
    })),
  }));
}
