/** What a beach card says: settings, figures and their differences, in the user's units. Words only; no page needed. */
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { BeachSetting } from '../../solver/design/beach-setting.ts';
import type { Design } from '../../solver/design/document.ts';
import type { BeachAnswer, BeachFigures, BeachRow } from '../../solver/studies/beach.ts';
import type { Kind } from './marks.ts';

export interface CardFigure {
  name: string;
  value: string; // the change, or the figure where that says more
  was: string;
  kind: Kind;
  how: string; // how it comes about
}

const STILL = 0.0005; // m, less is no move of the feet
const NOT_FOUND = 'none';

export function shiftWords(shift: number, units: UnitSystem): string {
  const size = formatWithUnit(Math.abs(shift), 'length', units, units === 'workshop' ? { decimals: 0 } : {});
  return Math.abs(shift) < STILL
    ? `${size.replace(/^[\d.,]+/, '0')}`
    : `${size} ${shift > 0 ? 'aft' : 'forward'}`;
}

/** A setting's value as its stepper shows it. */
export function settingWords(
  key: keyof BeachSetting,
  setting: BeachSetting,
  design: Design,
  units: UnitSystem,
): string {
  const value = setting[key];
  const write = (amount: number, quantity: Quantity, decimals: number) =>
    formatWithUnit(amount, quantity, units, { sign: true, decimals });
  if (key === 'temperature')
    return formatWithUnit(setting.temperature, 'temperature', units, { decimals: 0 });
  if (key === 'water') return value === 'sea' ? 'sea' : 'fresh';
  if (value === 0) return 'as drawn';
  if (key === 'shim') return `${write(setting.shim, 'angle', 1)} nose ${setting.shim > 0 ? 'up' : 'down'}`;
  if (key === 'strut') return shiftWords(setting.strut, units);
  const all = formatWithUnit(design.brief.allUpMass + setting.mass, 'mass', units, { decimals: 0 });
  return `${write(setting.mass, 'mass', 0)}, ${all} in all`;
}

/** The three that matter most while stepping. */
export function headlines(answer: BeachAnswer, design: Design, units: UnitSystem): CardFigure[] {
  return [feet(answer, design, units), takeOff(answer, units), drag(answer, design, units)];
}

export function otherFigures(answer: BeachAnswer, design: Design, units: UnitSystem): CardFigure[] {
  return [
    balance(answer, units),
    trim(answer, units),
    margin(answer),
    hold(answer),
    topDrag(answer, design, units),
  ];
}

function feet({ setting, drawn, set }: BeachAnswer, design: Design, units: UnitSystem): CardFigure {
  const [from, to] = [drawn.cruise, set.cruise];
  const strut = (design.strut?.x ?? 0) + setting.strut;
  return {
    name: 'Feet move',
    value: from && to ? shiftWords(to.feet - from.feet, units) : NOT_FOUND,
    was: to ? (to.isReachable ? `now ${ofStrut(to.feet - strut, units)}` : 'out of reach on a board') : '',
    kind: 'solved',
    how: 'Along the board, where an upright rider balances the foil at cruise with every drag at its own depth. Less the weight of board and foil, which stay behind: with them the feet move up to a tenth further.',
  };
}

const ofStrut = (x: number, units: UnitSystem): string =>
  Math.abs(x) < STILL ? 'over the strut' : `${shiftWords(x, units)} of the strut`;

function balance({ drawn, set }: BeachAnswer, units: UnitSystem): CardFigure {
  const [from, to] = [drawn.cruise, set.cruise];
  return {
    name: 'Balance point on the foil',
    value: from && to ? shiftWords(to.balance - from.balance, units) : NOT_FOUND,
    was: to ? `now ${shiftWords(to.balance, units)} of the wing root’s quarter chord` : '',
    kind: 'solved',
    how: 'Along the foil itself, at cruise. The feet differ from it by the move of the strut and by the pitch of the craft.',
  };
}

function takeOff({ drawn, set }: BeachAnswer, units: UnitSystem): CardFigure {
  return {
    name: 'Takes off at',
    ...speeds(drawn.takeOff, set.takeOff, units),
    kind: 'estimated',
    how: 'Lowest speed of level running near the surface with every section of the wing below nine tenths of its own greatest lift.',
  };
}

function trim({ drawn, set }: BeachAnswer, units: UnitSystem): CardFigure {
  return {
    name: 'Balances at, feet left alone',
    ...speeds(drawn.trimSpeed, set.trimSpeed, units),
    kind: 'solved',
    how: 'The speed nearest to cruise at which it balances with the feet left on the board where they balance at cruise as drawn. None: no speed from half of take-off to twice top speed does.',
  };
}

function speeds(from: number | null, to: number | null, units: UnitSystem): { value: string; was: string } {
  const write = (speed: number) => formatWithUnit(speed, 'speed', units, { decimals: 1 });
  const was = from === null ? NOT_FOUND : write(from);
  return { value: to === null ? NOT_FOUND : write(to), was: `was ${was}` };
}

function drag(answer: BeachAnswer, design: Design, units: UnitSystem): CardFigure {
  const { drawn, set } = answer;
  return dragAt(drawn.cruise?.drag ?? null, set.cruise?.drag ?? null, design.brief.speeds.cruise, units);
}

function topDrag({ drawn, set }: BeachAnswer, design: Design, units: UnitSystem): CardFigure {
  return dragAt(drawn.topDrag, set.topDrag, design.brief.speeds.top, units);
}

function dragAt(from: number | null, to: number | null, speed: number, units: UnitSystem): CardFigure {
  const write = (force: number) => formatWithUnit(force, 'force', units, { decimals: 1 });
  return {
    name: `Drag, ${formatWithUnit(speed, 'speed', units, { decimals: 0 })}`,
    value: share(from, to),
    was: to === null ? '' : write(to),
    kind: 'estimated',
    how: 'All drag of the foil in level running: induced drag and waves solved, friction from the sections’ own polars, spray and junctions by formula.',
  };
}

function share(from: number | null, to: number | null): string {
  if (from === null || to === null) return NOT_FOUND;
  if (from === 0) return to === 0 ? '0\u00a0%' : NOT_FOUND;
  return formatWithUnit((to - from) / Math.abs(from), 'share', 'workshop', { sign: true, decimals: 1 });
}

function margin({ drawn, set }: BeachAnswer): CardFigure {
  const write = ({ cruise }: BeachFigures) =>
    cruise ? formatWithUnit(cruise.staticMargin, 'share', 'workshop', { decimals: 0 }) : NOT_FOUND;
  return {
    name: 'Static margin',
    value: write(set),
    was: `was ${write(drawn)}, of the mean chord`,
    kind: 'solved',
    how: 'How far the neutral point lies behind the balance point at cruise. Vortex forces alone: drag at its depth takes part in the balance, not in this figure.',
  };
}

function hold({ drawn, set }: BeachAnswer): CardFigure {
  const write = ({ cruise }: BeachFigures) =>
    cruise?.holdIndex == null ? NOT_FOUND : writeFixed(cruise.holdIndex, 2);
  return {
    name: 'Hold',
    value: share(drawn.cruise?.holdIndex ?? null, set.cruise?.holdIndex ?? null),
    was: `index ${write(set)}, was ${write(drawn)}`,
    kind: 'estimated',
    how: 'The hold index, a closed formula of droop, lift coefficient and sideways stabilizer volume: a wing loaded harder holds less.',
  };
}

export const TABLE_HEAD = ['step', 'feet', 'takes off', 'drag', 'balances at', 'static margin'] as const;

const NAMES: Record<keyof BeachSetting, string> = {
  shim: 'Shim',
  strut: 'Strut',
  mass: 'Rider',
  water: 'Water',
  temperature: 'Water',
};

/** A row of the printed table, each change by itself. */
export function tableRow(
  { setting, changes, figures }: BeachRow,
  drawn: BeachFigures,
  design: Design,
  units: UnitSystem,
): string[] {
  const answer: BeachAnswer = { setting, drawn, set: figures, breachHeel: null };
  const words = changes && settingWords(changes, setting, design, units).replace(/, .*/, '');
  const name = changes ? `${NAMES[changes]} ${words}` : 'As drawn';
  return [
    name,
    feet(answer, design, units).value,
    takeOff(answer, units).value,
    drag(answer, design, units).value,
    trim(answer, units).value,
    margin(answer).value,
  ];
}

/** Said by a screen reader once the figures have settled. */
export function spoken(answer: BeachAnswer, design: Design, units: UnitSystem): string {
  return headlines(answer, design, units)
    .map(({ name, value }) => `${name} ${value}.`)
    .join(' ');
}
