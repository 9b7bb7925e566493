/** The options that set the condition of a solve, shared by every command that solves. */
import { describeRange, isWithin, RANGES, type Range } from '../solver/design/ranges.ts';
import type { ConditionOptions } from '../solver/report.ts';
import { type OptionKind, Refusal, readNumber, type Words } from './words.ts';

export const CONDITION_WORDS = {
  speed: 'value',
  alpha: 'value',
  lift: 'value',
  depth: 'value',
  deep: 'flag',
  strips: 'value',
  'stabilizer-strips': 'value',
  rows: 'value',
  sections: 'value',
} as const satisfies Record<string, OptionKind>;

interface Limits {
  min: number;
  max: number;
  unit?: string;
}

const ALPHA: Limits = { min: -45, max: 45, unit: 'deg' };
const LIFT: Limits = { min: -100_000, max: 100_000, unit: 'N' };
const STRIPS: Limits = { min: 2, max: 400 };
const ROWS: Limits = { min: 1, max: 32 };
const MOST_PANELS = 1600; // strips times rows on one half of the wing: minutes of work, memory of a desk computer

/** The condition these words ask for. Throws Refusal for a value out of range or two that exclude one another. */
export function readCondition({ options }: Words): ConditionOptions {
  excludeBoth(options, 'alpha', 'lift');
  excludeBoth(options, 'depth', 'deep');
  const ranged = (name: string, limits: Limits | Range) => within(options, name, limits, false);
  const whole = (name: string, limits: Limits) => within(options, name, limits, true);
  const strips = whole('strips', STRIPS);
  const rows = whole('rows', ROWS);
  if ((strips ?? 40) * (rows ?? 1) > MOST_PANELS)
    throw new Refusal(
      `--rows: found ${rows} with ${strips} strips, allowed a product of up to ${MOST_PANELS}`,
    );
  const found: { [K in keyof ConditionOptions]: ConditionOptions[K] | undefined } = {
    speed: ranged('speed', RANGES['brief.speeds.*']),
    alpha: ranged('alpha', ALPHA),
    lift: ranged('lift', LIFT),
    depth: options.has('deep') ? null : ranged('depth', RANGES['brief.depth']),
    strips,
    stabilizerStrips: whole('stabilizer-strips', STRIPS),
    rows,
    sections: sectionsOf(options),
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined));
}

type Options = Words['options'];

function excludeBoth(options: Options, one: string, other: string): void {
  if (options.has(one) && options.has(other))
    throw new Refusal(`--${one} and --${other}: found both, allowed one of the two`);
}

function within(
  options: Options,
  name: string,
  limits: Limits | Range,
  isWhole: boolean,
): number | undefined {
  const text = options.get(name)?.[0];
  if (text === undefined) return undefined;
  const range: Range = { unit: '', ...limits } as Range;
  const allowed = `${isWhole ? 'a whole number from ' : ''}${describeRange(range)}`;
  const value = readNumber(text, `--${name}`, allowed);
  if (!isWithin(range, value) || (isWhole && !Number.isInteger(value)))
    throw new Refusal(`--${name}: found ${text}, allowed ${allowed}`);
  return value;
}

function sectionsOf(options: Options): ConditionOptions['sections'] {
  const text = options.get('sections')?.[0];
  if (text === undefined || text === 'thin' || text === 'real') return text;
  throw new Refusal(`--sections: found "${text}", allowed thin or real`);
}
