/** Words and signs that several parts of Speed write. */
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { Place } from '../../solver/studies/cavitation.ts';
import { type FigureCell, figureCell, quantityCell } from '../table-cells.ts';

/** Forward and aft are named, since a sign says nothing on the beach. */
export function wayCell(aft: number, units: UnitSystem): FigureCell {
  return figureCell(
    aft,
    (value) => `${formatWithUnit(Math.abs(value), 'length', units)} ${value > 0 ? 'aft' : 'forward'}`,
  );
}

/** A place on the board, from the strut. */
export function footPlace(aft: number, from: number, units: UnitSystem): FigureCell {
  const way = wayCell(aft - from, units);
  return figureCell(way.value, (value, isDifference) =>
    !isDifference && Math.abs(value) < 5e-4 ? 'at the strut' : way.write(value, isDifference),
  );
}

export function signed(
  value: number | null,
  quantity: Quantity,
  units: UnitSystem,
  decimals?: number,
): FigureCell {
  const looks = { sign: true, why: '', ...(decimals !== undefined && { decimals }) };
  return quantityCell(value, quantity, units, looks);
}

/** A margin, or that nobody knows it. */
export function margin(value: number | null, units: UnitSystem): FigureCell {
  return quantityCell(value, 'ratio', units, { decimals: 2, why: 'not known' });
}

/** A value with a unit that no unit system turns into another. */
export function fixedCell(
  value: number | null | undefined,
  decimals: number,
  unit = '',
  why = '',
): FigureCell {
  return figureCell(value, (of, sign) => formatWithUnit(of, 'ratio', 'si', { decimals, sign }) + unit, why);
}

/** Pa against the air, in kPa with its sign. */
export function pressureCell(pressure: number | null, decimals = 0): FigureCell {
  return figureCell(
    pressure,
    (value) => `${formatWithUnit(value / 1000, 'ratio', 'si', { sign: true, decimals })} kPa`,
    '',
  );
}

export const PLACE_NAMES: Record<Place, string> = {
  wing: 'wing',
  stabilizer: 'stabilizer',
  strut: 'strut',
  'wing junction': 'junction of wing and strut',
  'strut junction': 'foot of the strut',
};
