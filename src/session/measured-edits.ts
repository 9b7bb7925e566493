/** Edits of what was measured on a finished surface: a value put in or taken out, nothing empty left behind. */
import type { Measured } from '../solver/design/document.ts';

export type SideName = 'port' | 'starboard';
export type MeasuredKey = 'twist' | 'chord';

export interface MeasuredPlace {
  eta: number;
  side: SideName;
  key: MeasuredKey;
}

export function measuredAt(measured: Measured, { eta, side, key }: MeasuredPlace): number | null {
  return measured.at.find((station) => station.eta === eta)?.[side]?.[key] ?? null;
}

/** The measurements with this one; null takes it out. Null where no measurement is left. */
export function withMeasurement(
  measured: Measured,
  place: MeasuredPlace,
  value: number | null,
): Measured | null {
  const { eta, side, key } = place;
  const station = { ...measured.at.find((each) => each.eta === eta), eta };
  const sides = withKey({ ...station[side] }, key, value);
  const changed = withKey(station, side, isEmpty(sides) ? null : sides);
  const others = measured.at.filter((each) => each.eta !== eta);
  const at = Object.keys(changed).length > 1 ? [...others, changed] : others;
  return orNull({ ...measured, at: at.sort((a, b) => a.eta - b.eta) } as Measured);
}

/** The measurements with this tip drop; null takes it out. Null where no measurement is left. */
export function withTipDrop(measured: Measured, side: SideName, value: number | null): Measured | null {
  const drops = withKey({ ...measured.tipDrop }, side, value);
  return orNull(withKey({ ...measured }, 'tipDrop', isEmpty(drops) ? null : drops));
}

function withKey<T extends object, K extends keyof T>(from: T, key: K, value: T[K] | null): T {
  const { [key]: _old, ...rest } = from;
  return (value === null ? rest : { ...rest, [key]: value }) as T;
}

const isEmpty = (value: object) => Object.keys(value).length === 0;

function orNull(measured: Measured): Measured | null {
  return measured.at.length === 0 && Object.keys(measured).length === 1 ? null : measured;
}
