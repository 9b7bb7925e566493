/** The command `section`: a section's polar at one Reynolds number as comma-separated values. */
import type { Outline } from '../solver/design/document.ts';
import { FOUR_DIGIT_CODE } from '../solver/design/ranges.ts';
import { readOutline } from '../solver/geometry/read-outline.ts';
import { type PolarPoint, sectionPolar } from '../solver/section/polar.ts';
import { type Clarity, CRITICAL_N } from '../solver/section/transition.ts';
import { type OptionKind, Refusal, readNumber, type Words } from './words.ts';

export const SECTION_USAGE =
  'section CODE_OR_FILE --reynolds RE --alpha FROM:TO:COUNT [--clarity clean|coastal|silty] [--trip X]';

export const SECTION_WORDS = {
  reynolds: 'value',
  alpha: 'value',
  clarity: 'value',
  trip: 'value',
} as const satisfies Record<string, OptionKind>;

const [LEAST_REYNOLDS, MOST_REYNOLDS] = [1e4, 1e8];
const [STEEPEST, MOST_ANGLES] = [30, 1000];
const RADIANS = Math.PI / 180;

/** One line an angle; an angle without a settled flow has empty cells and says why. `read` gives a file's text. */
export function runSection(words: Words, read: (path: string) => string): string {
  const { options } = words;
  const reynolds = inRange(options, 'reynolds', LEAST_REYNOLDS, MOST_REYNOLDS);
  if (reynolds === undefined)
    throw new Refusal(`--reynolds: found none, allowed ${LEAST_REYNOLDS} to ${MOST_REYNOLDS}`);
  const angles = readAngles(options.get('alpha')?.[0]);
  const clarity = readClarity(options.get('clarity')?.[0]);
  const trip = inRange(options, 'trip', 0, 1);
  const { points } = sectionPolar(readSection(words.plain, read), {
    reynolds,
    clarity,
    alphas: angles.map((angle) => angle * RADIANS),
    ...(trip !== undefined && { tripUpper: trip, tripLower: trip }),
  });
  const lines = points.map((point, k) => [angles[k], ...cellsOf(point), point.state].join(','));
  return `${['alpha,cl,cd,cm,cpMin,transitionUpper,transitionLower,state', ...lines].join('\n')}\n`;
}

function cellsOf({ figures }: PolarPoint): Array<number | ''> {
  if (!figures) return ['', '', '', '', '', ''];
  const { cl, cd, cm, cpMin, upper, lower } = figures;
  return [cl, cd, cm, cpMin, upper.transition, lower.transition];
}

function readSection([name, extra]: readonly string[], read: (path: string) => string): Outline {
  if (name === undefined) throw new Refusal(`section: found no CODE_OR_FILE, allowed ${SECTION_USAGE}`);
  if (extra !== undefined)
    throw new Refusal(`section: found "${extra}" after the section, allowed one CODE_OR_FILE`);
  if (/^\d{4}$/.test(name)) {
    if (FOUR_DIGIT_CODE.test(name)) return { kind: 'naca4', code: name };
    throw new Refusal(`section: found "${name}", allowed four digits such as 2412 or a file of coordinates`);
  }
  const reading = readOutline(read(name), name);
  if (!reading.ok) throw new Refusal(`${name}: ${reading.message}`);
  return reading.outline;
}

/** "-4:12:17", in degrees. */
function readAngles(text: string | undefined): number[] {
  const allowed = `FROM:TO:COUNT in degrees, such as -4:12:17, from -${STEEPEST} to ${STEEPEST}`;
  if (text === undefined) throw new Refusal(`--alpha: found none, allowed ${allowed}`);
  const parts = text.split(':');
  if (parts.length !== 3) throw new Refusal(`--alpha: found "${text}", allowed ${allowed}`);
  const [from, to, count] = parts.map((part) => readNumber(part, '--alpha', allowed)) as [
    number,
    number,
    number,
  ];
  if (Math.max(Math.abs(from), Math.abs(to)) > STEEPEST)
    throw new Refusal(`--alpha: found "${text}", allowed ${allowed}`);
  if (!Number.isInteger(count) || count < 1 || count > MOST_ANGLES)
    throw new Refusal(`--alpha: found ${parts[2]} as COUNT, allowed a whole number from 1 to ${MOST_ANGLES}`);
  return Array.from({ length: count }, (_, k) =>
    count === 1 ? from : from + ((to - from) * k) / (count - 1),
  );
}

function readClarity(text = 'clean'): Clarity {
  if (Object.hasOwn(CRITICAL_N, text)) return text as Clarity;
  throw new Refusal(`--clarity: found "${text}", allowed ${Object.keys(CRITICAL_N).join(', ')}`);
}

function inRange(options: Words['options'], name: string, low: number, high: number): number | undefined {
  const text = options.get(name)?.[0];
  if (text === undefined) return undefined;
  const allowed = `${low} to ${high}`;
  const value = readNumber(text, `--${name}`, allowed);
  if (value < low || value > high) throw new Refusal(`--${name}: found ${text}, allowed ${allowed}`);
  return value;
}
