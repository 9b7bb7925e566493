/** The command `speed`: level running over a range of speeds as comma-separated values. */

import type { Design } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import { PressureWatch } from '../solver/studies/cavitation.ts';
import type { DragSources } from '../solver/studies/level-drag.ts';
import type { Fix } from '../solver/studies/level-running.ts';
import { type SpeedPoint, speedPoint } from '../solver/studies/speed.ts';
import { makeRunner } from '../solver/studies/speed-study.ts';
import { type OptionKind, Refusal, readNumber, type Words } from './words.ts';

export const SPEED_USAGE = 'speed FILE --from M_S --to M_S --count N [--fix stance|incidence]';

export const SPEED_WORDS = {
  from: 'value',
  to: 'value',
  count: 'value',
  fix: 'value',
} as const satisfies Record<string, OptionKind>;

const MOST_SPEEDS = 1000;

const SOURCES: ReadonlyArray<keyof DragSources> = [
  'wingInduced',
  'stabilizerInduced',
  'wingProfile',
  'stabilizerProfile',
  'strutProfile',
  'fuselage',
  'junctions',
  'spray',
  'wave',
];

const COLUMNS: ReadonlyArray<[string, (point: SpeedPoint) => number | null]> = [
  ['alpha', (point) => point.alpha],
  ['incidence', (point) => point.incidence],
  ['stance', (point) => point.stance],
  ['CLwing', (point) => point.CLwing],
  ['stallMargin', (point) => point.stallMargin],
  ['depth', (point) => point.depth],
  ['CLstabilizer', (point) => point.CLstabilizer],
  ['feet', (point) => point.feet],
  ['power', (point) => point.power],
  ['liftToDrag', (point) => point.liftToDrag],
  ...SOURCES.map((name): [string, (point: SpeedPoint) => number] => [name, (point) => point.drag[name]]),
  ['drag', (point) => point.total],
];

/** One line a speed; a speed that cannot be run has empty cells. */
export function runSpeed(words: Words, open: () => Design): string {
  const { from, to, count, fix } = readSpeeds(words);
  const runner = makeRunner(open());
  const watch = new PressureWatch(runner);
  const lines = Array.from({ length: count }, (_, k) => {
    const speed = count === 1 ? from : from + ((to - from) * k) / (count - 1);
    const cells = cellsAt(speed);
    return [speed, ...cells]
      .map((value) => (value === null || !Number.isFinite(value) ? '' : value))
      .join(',');
  });
  const head = ['speed', ...COLUMNS.map(([name]) => name), 'cavitationMargin'].join(',');
  return `${[head, ...lines].join('\n')}\n`;

  function cellsAt(speed: number): Array<number | null> {
    try {
      const state = runner.run(speed, fix);
      const point = speedPoint(runner, state);
      return [...COLUMNS.map(([, read]) => read(point)), watch.worst(state).margin];
    } catch {
      return [...COLUMNS.map(() => null), null];
    }
  }
}

function readSpeeds({ options }: Words): { from: number; to: number; count: number; fix: Fix } {
  const { min, max } = RANGES['brief.speeds.*'];
  const speed = (name: string) => {
    const text = options.get(name)?.[0];
    const allowed = `${min} to ${max} m/s`;
    if (text === undefined) throw new Refusal(`--${name}: found none, allowed ${allowed}`);
    const value = readNumber(text, `--${name}`, allowed);
    if (value < min || value > max) throw new Refusal(`--${name}: found ${text}, allowed ${allowed}`);
    return value;
  };
  const from = speed('from');
  const to = speed('to');
  const text = options.get('count')?.[0] ?? '';
  const allowed = `a whole number from 1 to ${MOST_SPEEDS}`;
  const count = readNumber(text, '--count', allowed);
  if (!Number.isInteger(count) || count < 1 || count > MOST_SPEEDS)
    throw new Refusal(`--count: found ${text}, allowed ${allowed}`);
  const fix = options.get('fix')?.[0] ?? 'stance';
  if (fix !== 'stance' && fix !== 'incidence')
    throw new Refusal(`--fix: found "${fix}", allowed stance or incidence`);
  return { from, to, count, fix };
}
