/**
 * Units at the edge: everything inside is SI (angles in degrees, temperature in degrees Celsius, shares as
 * fractions); what a person reads and types follows the chosen system. Reading text is in quantity.ts.
 */

import { decimalMark, withMark } from './number-format.ts';

export type UnitSystem = 'workshop' | 'si' | 'imperial';

export type Quantity =
  | 'length'
  | 'fineLength' // heights of roughness
  | 'area'
  | 'speed'
  | 'angle'
  | 'mass'
  | 'force'
  | 'moment'
  | 'temperature'
  | 'share' // a fraction, shown in percent
  | 'ratio' // a plain number
  | 'liftPerSpan'
  | 'circulation'
  | 'density'
  | 'viscosity'
  | 'time'
  | 'modulus' // of a material
  | 'spring' // of a joint, against turning
  | 'frequency'
  | 'cloth'; // dry weight of a layer by area

export const UNIT_SYSTEMS: ReadonlyArray<{ system: UnitSystem; label: string }> = [
  { system: 'workshop', label: 'mm · cm² · kn' },
  { system: 'si', label: 'm · m² · m/s' },
  { system: 'imperial', label: 'in · in² · kn' },
];

interface Unit {
  symbol: string;
  name: string; // as a screen reader should say it, plural
  size: number; // SI value of one unit
  zero?: number; // SI value at which the unit reads zero
  digits: number; // significant digits wanted
  most: number; // decimals never exceeded
  step: number; // one nudge, in this unit
}

const unit = (
  symbol: string,
  name: string,
  size: number,
  digits: number,
  most: number,
  step: number,
): Unit => ({
  symbol,
  name,
  size,
  digits,
  most,
  step,
});

const INCH = 0.0254; // exact by definition
const POUND = 0.45359237; // kg, exact by definition
const POUND_FORCE = POUND * 9.80665; // N, exact by definition
const KNOT = 1852 / 3600; // m/s, exact by definition

const KNOTS = unit('kn', 'knots', KNOT, 3, 1, 0.5);
const DEGREES = unit('°', 'degrees', 1, 3, 2, 0.5);
const KILOGRAMS = unit('kg', 'kilograms', 1, 3, 1, 1);
const NEWTONS = unit('N', 'newtons', 1, 3, 2, 1);
const CELSIUS = unit('°C', 'degrees Celsius', 1, 3, 1, 1);
const FAHRENHEIT: Unit = { ...unit('°F', 'degrees Fahrenheit', 5 / 9, 3, 1, 1), zero: -160 / 9 };

const SI: Record<Quantity, Unit> = {
  length: unit('m', 'metres', 1, 3, 4, 0.001),
  fineLength: unit('µm', 'micrometres', 1e-6, 3, 1, 10),
  area: unit('m²', 'square metres', 1, 4, 5, 0.0005),
  speed: unit('m/s', 'metres per second', 1, 3, 2, 0.25),
  angle: DEGREES,
  mass: KILOGRAMS,
  force: NEWTONS,
  moment: unit('N m', 'newton metres', 1, 3, 2, 1),
  temperature: CELSIUS,
  share: unit('%', 'percent', 0.01, 3, 1, 1),
  ratio: unit('', '', 1, 3, 3, 0.05),
  liftPerSpan: unit('N/m', 'newtons per metre', 1, 3, 1, 10),
  circulation: unit('m²/s', 'square metres per second', 1, 3, 3, 0.01),
  density: unit('kg/m³', 'kilograms per cubic metre', 1, 5, 1, 1),
  viscosity: unit('m²/s', 'square metres per second', 1, 3, 9, 1e-8),
  time: unit('s', 'seconds', 1, 3, 2, 0.1),
  modulus: unit('GPa', 'gigapascals', 1e9, 3, 2, 1),
  spring: unit('N m/rad', 'newton metres a radian', 1, 3, 0, 500),
  frequency: unit('Hz', 'hertz', 1, 3, 1, 1),
  cloth: unit('g/m²', 'grams per square metre', 0.001, 3, 0, 10),
};

const SYSTEMS: Record<UnitSystem, Record<Quantity, Unit>> = {
  si: SI,
  workshop: {
    ...SI,
    length: unit('mm', 'millimetres', 0.001, 3, 1, 1),
    area: unit('cm²', 'square centimetres', 0.0001, 3, 1, 5),
    speed: KNOTS,
  },
  imperial: {
    ...SI,
    length: unit('in', 'inches', INCH, 3, 2, 0.05),
    fineLength: unit('thou', 'thousandths of an inch', INCH / 1000, 3, 2, 0.5),
    area: unit('in²', 'square inches', INCH * INCH, 3, 2, 1),
    speed: KNOTS,
    mass: unit('lb', 'pounds', POUND, 3, 1, 1),
    force: unit('lbf', 'pounds force', POUND_FORCE, 3, 2, 0.5),
    moment: unit('lbf ft', 'pound-force feet', POUND_FORCE * 12 * INCH, 3, 2, 0.5),
    temperature: FAHRENHEIT,
    liftPerSpan: unit('lbf/in', 'pounds force per inch', POUND_FORCE / INCH, 3, 2, 0.1),
  },
};

const MINUS = '\u2212';
const THIN_SPACE = '\u202f'; // narrow, and the line does not break there

/** The symbol shown behind a value; empty for a plain number. */
export function unitOf(quantity: Quantity, system: UnitSystem): string {
  return SYSTEMS[system][quantity].symbol;
}

/** The unit in words, for screen readers: "millimetres". */
export function unitNameOf(quantity: Quantity, system: UnitSystem): string {
  return SYSTEMS[system][quantity].name;
}

/** One nudge of an arrow key, in the shown unit. */
export function stepOf(quantity: Quantity, system: UnitSystem): number {
  return SYSTEMS[system][quantity].step;
}

/** From SI (degrees, degrees Celsius, fraction) to the shown unit. */
export function toDisplay(value: number, quantity: Quantity, system: UnitSystem): number {
  const { size, zero = 0 } = SYSTEMS[system][quantity];
  return (value - zero) / size;
}

/** From the shown unit to SI (degrees, degrees Celsius, fraction). */
export function fromDisplay(shown: number, quantity: Quantity, system: UnitSystem): number {
  const { size, zero = 0 } = SYSTEMS[system][quantity];
  return shown * size + zero;
}

export interface FormatOptions {
  decimals?: number; // instead of the quantity's own choice
  sign?: boolean; // write the plus sign too
}

/** The number alone, with sensible decimals, a true minus sign and thin grouping; an en dash where there is none. */
export function formatValue(
  value: number,
  quantity: Quantity,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  const shown = toDisplay(value, quantity, system);
  if (!Number.isFinite(shown)) return '–';
  const { digits, most } = SYSTEMS[system][quantity];
  const text = Math.abs(shown).toFixed(options.decimals ?? decimalsFor(Math.abs(shown), digits, most));
  const [whole = '', decimals] = text.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THIN_SPACE);
  const isZero = Number(text) === 0;
  const sign = isZero ? '' : shown < 0 ? MINUS : options.sign ? '+' : '';
  return sign + grouped + (decimals === undefined ? '' : decimalMark() + decimals);
}

/** Enough decimals for the wanted digits, judged after rounding so that 99.97 does not read 100.0. */
function decimalsFor(size: number, digits: number, most: number): number {
  if (size === 0) return Math.min(digits - 1, most);
  const rounded = Number(size.toPrecision(digits));
  const magnitude = Math.floor(Math.log10(rounded));
  return Math.max(0, Math.min(most, digits - 1 - magnitude));
}

/** Value and unit, as in "740 mm", "26.0°", "8.2 %". */
export function formatWithUnit(
  value: number,
  quantity: Quantity,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  const text = formatValue(value, quantity, system, options);
  const symbol = unitOf(quantity, system);
  if (symbol === '' || text === '–') return text;
  return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
}

/**
 * What a field shows for editing: no needless zeros, no grouping; up to six significant digits and one decimal more
 * than elsewhere, so that the value read back is the value meant (fewer are enough for one that follows from others).
 */
export function editText(value: number, quantity: Quantity, system: UnitSystem, digits = 6): string {
  const shown = Number(toDisplay(value, quantity, system).toPrecision(digits));
  const text = shown.toFixed(SYSTEMS[system][quantity].most + 1);
  return withMark(trimZeros(text).replace('-', MINUS));
}

function trimZeros(text: string): string {
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' || trimmed === '' ? '0' : trimmed;
}
