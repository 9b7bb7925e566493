/** What the sizing of the stabilizer says, in sentences. */
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { StabilizerChange, StabilizerChanges } from '../../solver/studies/stabilizer-changes.ts';
import type { Sizing, SizingChoice, SizingGoal } from '../../solver/studies/stabilizer-sizing.ts';
import type { TriedStabilizer } from '../../solver/studies/stabilizer-trials.ts';

export const percent = (share: number): string => `${Math.round(100 * share)} %`.replace('-', '\u2212');

export const foundOf = (sizing: Sizing, goal: SizingGoal): TriedStabilizer | null =>
  sizing.choices.find((choice) => choice.goal === goal)?.found ?? null;

/** Whether it is big enough for the margin asked for, and what would be. */
export function sizeReading(sizing: Sizing, units: UnitSystem): string {
  const area = (value: number) => formatWithUnit(value, 'area', units, { decimals: units === 'si' ? 4 : 0 });
  const present = foundOf(sizing, 'present');
  const wanted = foundOf(sizing, 'marginByArea');
  const { staticMargin } = sizing.wanted;
  const asked =
    staticMargin === 0
      ? 'the neutral point level with the balance point'
      : `a static margin of ${percent(staticMargin)}`;
  if (!present) return 'As drawn it cannot be balanced at cruise.';
  if (!wanted)
    return present.staticMargin > staticMargin
      ? `For ${asked} it is more than big enough: it has ${area(present.area)}, and a far smaller one would still do.`
      : `For ${asked} it is not big enough, and no size of this shape is at the arm asked for.`;
  const ratio = wanted.area / present.area;
  const has = `it has ${area(present.area)}, and that takes ${area(wanted.area)} at an arm of ${formatWithUnit(wanted.arm, 'length', units)}`;
  if (ratio > 1.005) return `For ${asked} it is not big enough: ${has}, ${percent(ratio - 1)} more.`;
  return `For ${asked} it is big enough: ${has}${ratio < 0.995 ? `, ${percent(1 - ratio)} less` : ''}.`;
}

/** Millimetres first: where the foil balances. */
export function balanceReading(found: TriedStabilizer, stance: number, units: UnitSystem): string {
  const apart = found.neutralPoint - stance;
  const length = formatWithUnit(Math.abs(apart), 'length', units);
  const where = apart >= 0 ? 'behind' : 'ahead of';
  const say =
    apart >= 0
      ? 'a wave that lifts the foil also drops its nose'
      : 'a wave that lifts the foil also raises its nose, and the feet must answer';
  return `The neutral point lies ${length} ${where} the balance point (${percent(found.staticMargin)} of the mean chord): ${say}.`;
}

export function liftReading(found: TriedStabilizer, units: UnitSystem): string {
  const force = formatWithUnit(Math.abs(found.lift), 'force', units);
  const wing = formatWithUnit(found.wingLift, 'force', units);
  return found.lift < 0
    ? `Balanced at cruise the stabilizer pushes down with ${force}, and the wing has to lift ${wing} for it.`
    : `Balanced at cruise the stabilizer carries ${force} and leaves ${wing} to the wing.`;
}

const GOALS: Record<SizingGoal, string> = {
  present: 'as drawn, balanced',
  marginByArea: 'margin, by area',
  marginByArm: 'margin, by arm',
  holdByArea: 'hold, by area',
  holdByArm: 'hold, by arm',
};

export const goalName = ({ goal }: SizingChoice): string => GOALS[goal];

export function changeName(change: StabilizerChange, given: StabilizerChanges, units: UnitSystem): string {
  const shim = formatWithUnit(given.shim, 'angle', units);
  const length = formatWithUnit(given.length, 'length', units);
  const names: Record<StabilizerChange, string> = {
    present: 'as drawn',
    noseUp: `shim, stabilizer nose up ${shim}`,
    noseDown: `shim, stabilizer nose down ${shim}`,
    longer: `fuselage ${length} longer`,
    shorter: `fuselage ${length} shorter`,
    larger: `stabilizer ${percent(given.share)} larger`,
    smaller: `stabilizer ${percent(given.share)} smaller`,
  };
  return names[change];
}

/** "12 mm aft". */
export function shiftOf(length: number, units: UnitSystem): string {
  const text = formatWithUnit(Math.abs(length), 'length', units);
  if (/^[0.]+\D*$/.test(text)) return '–';
  return `${text} ${length > 0 ? 'aft' : 'forward'}`;
}

export function changesReading(given: StabilizerChanges, units: UnitSystem): string | null {
  const of = (name: StabilizerChange) => given.trials.find(({ change }) => change === name)?.found ?? null;
  const [present, shim, longer] = [of('present'), of('noseUp'), of('longer')];
  if (!present || !shim || !longer) return null;
  const moved = (found: TriedStabilizer) => shiftOf(found.stance - present.stance, units);
  return `A shim of ${formatWithUnit(given.shim, 'angle', units)} that raises the stabilizer’s nose moves the rider ${moved(shim)}. A fuselage ${formatWithUnit(given.length, 'length', units)} longer moves the rider ${moved(longer)} and the neutral point ${shiftOf(longer.neutralPoint - present.neutralPoint, units)}.`;
}
