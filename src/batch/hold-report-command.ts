/** The command `hold-report`: how far the closed-form hold index may stand in for the solved figures. */
import { holdReport } from '../solver/studies/hold-report.ts';
import { finish } from '../solver/studies/study.ts';
import { type OptionKind, Refusal, readNumber, type Words } from './words.ts';

export const HOLD_REPORT_USAGE = 'hold-report [--designs N] [--seed N]';

export const HOLD_REPORT_WORDS = {
  designs: 'value',
  seed: 'value',
} as const satisfies Record<string, OptionKind>;

const FEWEST = 10; // below that a rank correlation says nothing
const MOST = 10_000;

export function runHoldReport({ plain, options }: Words): string {
  if (plain.length > 0)
    throw new Refusal(`hold-report: found "${plain[0]}", allowed no FILE: its designs are drawn at random`);
  const whole = (name: string, low: number, high: number, otherwise: number): number => {
    const text = options.get(name)?.[0];
    if (text === undefined) return otherwise;
    const allowed = `a whole number from ${low} to ${high}`;
    const value = readNumber(text, `--${name}`, allowed);
    if (!Number.isInteger(value) || value < low || value > high)
      throw new Refusal(`--${name}: found ${text}, allowed ${allowed}`);
    return value;
  };
  const report = finish(holdReport(whole('seed', 1, 1e9, 1), whole('designs', FEWEST, MOST, 500)));
  const short = (_key: string, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(4)) : value;
  return `${JSON.stringify(report, short, 2)}\n`;
}
