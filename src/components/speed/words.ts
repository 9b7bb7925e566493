/** Words and signs that several parts of Speed write. */
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { Place } from '../../solver/studies/cavitation.ts';

/** Forward and aft are named, since a sign says nothing on the beach. */
export function footPlace(aft: number, from: number, units: UnitSystem): string {
  const shift = aft - from;
  const size = formatWithUnit(Math.abs(shift), 'length', units);
  return Math.abs(shift) < 5e-4 ? 'at the strut' : `${size} ${shift > 0 ? 'aft' : 'forward'}`;
}

export function signed(value: number, quantity: Quantity, units: UnitSystem, decimals?: number): string {
  return formatWithUnit(value, quantity, units, { sign: true, ...(decimals !== undefined && { decimals }) });
}

/** A margin, or that nobody knows it. */
export function margin(value: number | null, units: UnitSystem): string {
  return value === null ? 'not known' : formatWithUnit(value, 'ratio', units, { decimals: 2 });
}

export const PLACE_NAMES: Record<Place, string> = {
  wing: 'wing',
  stabilizer: 'stabilizer',
  strut: 'strut',
  'wing junction': 'junction of wing and strut',
  'strut junction': 'foot of the strut',
};
