/** What every working is made of, and how its numbers are written so that they can be put into its formula. */
import { writeFixed } from '../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem, unitOf } from '../session/units.ts';
import type { BandName } from '../solver/bands.ts';
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';

export interface Working {
  formula: string; // one or more equations, parted by semicolons; angles in degrees
  numbers: ReadonlyArray<readonly [name: string, value: string]>; // a name begins with its symbol, then a comma
  source: string;
  trust: string;
  band?: BandName; // how wide it stands, when that is known
}

/** What a figure of the report is worked out from. */
export interface Given {
  design: Design;
  report: Report;
  units: UnitSystem;
}

export const plain = writeFixed;

/**
 * A value for a formula in which units meet: as the reader has it, and in the unit that the formula takes where that is
 * another one, as in "17.5 kn = 9.003 m/s".
 */
export function coherent(value: number, quantity: Quantity, units: UnitSystem): string {
  const shown = formatWithUnit(value, quantity, units);
  if (unitOf(quantity, units) === unitOf(quantity, 'si')) return shown;
  const decimals = Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value) || 1)));
  return `${shown} = ${formatWithUnit(value, quantity, 'si', { decimals })}`;
}
