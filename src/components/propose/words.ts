/** How the figures and quantities of a proposal are called and written. */
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { FigureName } from '../../solver/studies/propose/figures.ts';
import type { QuantityName } from '../../solver/studies/propose/quantities.ts';

export interface Words {
  label: string;
  quantity: Quantity;
}

export const FIGURE_WORDS: Readonly<Record<FigureName, Words>> = {
  holdIndex: { label: 'Hold index', quantity: 'ratio' },
  rollFromYaw: { label: 'Roll from yaw', quantity: 'ratio' },
  staticMargin: { label: 'Static margin, in mean chords', quantity: 'ratio' },
  span: { label: 'Span, tip to tip', quantity: 'length' },
  tipChord: { label: 'Tip chord', quantity: 'length' },
  thickness: { label: 'Thinnest place of the wing', quantity: 'length' },
  strutDeflection: { label: 'Strut deflection under 100 N', quantity: 'length' },
  takeOffSpeed: { label: 'Take-off speed', quantity: 'speed' },
  stallMargin: { label: 'Stall margin at take-off', quantity: 'ratio' },
  stallMarginOnStance: { label: 'Stall margin, stance kept', quantity: 'ratio' },
  turnOnStance: { label: 'Turn of the stabilizer that keeps the stance', quantity: 'angle' },
  cavitationMargin: { label: 'Cavitation margin at top speed', quantity: 'ratio' },
  cavitationMarginOnStance: { label: 'Cavitation margin, stance kept', quantity: 'ratio' },
  tipDepth: { label: 'Depth of the tips', quantity: 'length' },
  rootMoment: { label: 'Bending moment at the root', quantity: 'moment' },
  stanceShift: { label: 'Shift of the stance', quantity: 'length' },
};

export const QUANTITY_WORDS: Readonly<Record<QuantityName, Words>> = {
  length: { label: 'Wing length', quantity: 'length' },
  droop: { label: 'Wing droop', quantity: 'angle' },
  droopFrom: { label: 'Where the droop begins', quantity: 'ratio' },
  chords: { label: 'Chords at the points', quantity: 'length' },
  taper: { label: 'Tip chord over root chord', quantity: 'ratio' },
  fullness: { label: 'Fullness of the chords', quantity: 'ratio' },
  area: { label: 'Wing area', quantity: 'area' },
  sweep: { label: 'Sweep', quantity: 'angle' },
  rake: { label: 'Rake of the tips', quantity: 'length' },
  twist: { label: 'Twist', quantity: 'angle' },
  stabilizerLength: { label: 'Stabilizer length', quantity: 'length' },
  stabilizerDroop: { label: 'Stabilizer droop', quantity: 'angle' },
  stabilizerArea: { label: 'Stabilizer area', quantity: 'area' },
  arm: { label: 'Arm', quantity: 'length' },
  stabilizerIncidence: { label: 'Stabilizer incidence', quantity: 'angle' },
  strutThickness: { label: 'Strut thickness', quantity: 'length' },
};

export function writeFigure(value: number | null, name: FigureName, units: UnitSystem): string {
  return value === null ? '–' : formatWithUnit(value, FIGURE_WORDS[name].quantity, units);
}

export function writeQuantity(values: readonly number[], name: QuantityName, units: UnitSystem): string {
  return values.map((value) => formatWithUnit(value, QUANTITY_WORDS[name].quantity, units)).join(', ') || '–';
}

/** "hold index", in the middle of a sentence. */
export function inSentence({ label }: Words): string {
  return label.charAt(0).toLowerCase() + label.slice(1);
}
