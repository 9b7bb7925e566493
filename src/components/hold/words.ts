/** How the figures of hold are called on screen, and what each says to a rider. */
import { withMark, writeFixed } from '../../session/number-format.ts';
import { formatValue } from '../../session/units.ts';
import type { Derivatives } from '../../solver/report.ts';
import type { HoldFigure } from '../../solver/studies/hold-report.ts';
import type { LateralKind, VerticalKind } from '../../solver/studies/mode-kinds.ts';
import type { VerticalDerivatives } from '../../solver/studies/vertical-slopes.ts';
import { type FigureCell, figureCell, signBefore } from '../table-cells.ts';

export type ModeKind = LateralKind | VerticalKind;
export type LateralKey = keyof Derivatives;
export type VerticalKey = keyof VerticalDerivatives;

export const LATERAL_NAMES: Record<LateralKey, string> = {
  CYbeta: 'side force from slip, CYβ',
  Clbeta: 'roll from slip, Clβ',
  Cnbeta: 'yaw from slip, Cnβ',
  CYp: 'side force from roll, CYp',
  Clp: 'roll damping, Clp',
  Cnp: 'yaw from roll, Cnp',
  CYr: 'side force from yaw, CYr',
  Clr: 'roll from yaw, Clr',
  Cnr: 'yaw damping, Cnr',
};

export const LATERAL_KEYS = Object.keys(LATERAL_NAMES) as LateralKey[];

export const VERTICAL_NAMES: Record<VerticalKey, string> = {
  CLalpha: 'lift from angle, CLα',
  Cmalpha: 'pitch from angle, Cmα',
  CLq: 'lift from pitch rate, CLq',
  Cmq: 'pitch damping, Cmq',
  CLdepth: 'lift from depth, a mean chord',
  Cmdepth: 'pitch from depth, a mean chord',
};

export const VERTICAL_KEYS = Object.keys(VERTICAL_NAMES) as VerticalKey[];

export const MODE_NAMES: Record<ModeKind, string> = {
  fall: 'falls over',
  righting: 'comes upright',
  heading: 'heading',
  rollDamping: 'roll dies out',
  swing: 'swings to and fro',
  secondSwing: 'swings, second',
  pitchFall: 'pitches over',
  speed: 'speed',
  porpoise: 'porpoises',
  secondPorpoise: 'porpoises, second',
  pitchRighting: 'pitch comes back',
  depthRighting: 'depth comes back',
  sinkDamping: 'sinking dies out',
};

export const FIGURE_NAMES: Record<HoldFigure, string> = {
  rollFromYaw: 'roll from yaw',
  yawStiffness: 'yaw from slip',
  yawDamping: 'yaw damping',
  slowMode: 'how fast the heading settles',
};

/** Three significant digits, never an exponent. */
export function coefficient(value: number, sign = false): string {
  return formatValue(value, 'ratio', 'si', { decimals: decimalsOf(Math.abs(value)), sign });
}

export const coefficientCell = (value: number | null | undefined, why?: string): FigureCell =>
  figureCell(value, coefficient, why);

/** With the method's own band, where it is known. */
export const bandCell = (value: number, band: number | undefined): FigureCell =>
  figureCell(value, (of, isDifference) =>
    isDifference || band === undefined ? coefficient(of, isDifference) : withBand(of, band),
  );

/** A time; a difference with its sign. */
export const secondsCell = (value: number | null, why?: string): FigureCell =>
  figureCell(value, (of, isDifference) => signBefore(of, seconds(Math.abs(of)), isDifference), why);

function decimalsOf(size: number): number {
  return size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : size >= 0.1 ? 3 : 4;
}

/** Value and method band to the same decimals: "−0.224 ± 0.005". */
export function withBand(value: number, band: number): string {
  const decimals = decimalsOf(Math.max(Math.abs(value), Math.abs(band)));
  const least = 10 ** -decimals;
  const own = band < 0.5 * least ? `below ${writeFixed(least, decimals)}` : writeFixed(band, decimals);
  return `${formatValue(value, 'ratio', 'si', { decimals })} ± ${own}`;
}

export function seconds(value: number): string {
  return `${withMark(Number(value.toPrecision(2)).toLocaleString('en', { useGrouping: false }))}\u00a0s`;
}
