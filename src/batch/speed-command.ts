/** The command `speed`: level running over a range of speeds as comma-separated values. */

import type { Design } from '../solver/design/document.ts';
import { RANGES } from '../solver/design/ranges.ts';
import type { DragSources } from '../solver/report.ts';
import { PressureWatch } from '../solver/studies/cavitation.ts';
import type { Fix } from '../solver/studies/level-running.ts';
import { type SideRule, type SideTrim, sideTrim } from '../solver/studies/side-trim.ts';
import { type SpeedPoint, speedPoint } from '../solver/studies/speed.ts';
import { makeRunner } from '../solver/studies/speed-study.ts';
import { type OptionKind, Refusal, readNumber, type Words } from './words.ts';

export const SPEED_USAGE =
  'speed FILE --from M_S --to M_S --count N [--fix stance|incidence] [--side strut|roll|HEEL_DEG]';

export const SPEED_WORDS = {
  from: 'value',
  to: 'value',
  count: 'value',
  fix: 'value',
  side: 'value',
} as const satisfies Record<string, OptionKind>;

const MOST_SPEEDS = 1000;
const MOST_HEEL = 60; // degrees

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
  ['boardAngle', (point) => point.boardAngle],
  ['tipDepth', (point) => point.tipDepth],
  ['glideAngle', (point) => point.glideAngle],
  ['power', (point) => point.power],
  ['reachable', (point) => Number(point.isReachable)],
];

const LAST: typeof COLUMNS = [
  ['liftToDrag', (point) => point.liftToDrag],
  ...SOURCES.map((name): [string, (point: SpeedPoint) => number] => [name, (point) => point.drag[name]]),
  ['drag', (point) => point.total],
];

/** With --side, before the drags: how the rig's sideways pull is balanced. */
const SIDE_COLUMNS: ReadonlyArray<[string, (trim: SideTrim) => number]> = [
  ['heel', (trim) => trim.heel],
  ['leeway', (trim) => trim.leeway],
  ['strutForce', (trim) => trim.strutForce],
  ['riderShift', (trim) => trim.riderShift],
];
const SIDE_RESOLUTION = { strips: 20, stabilizerStrips: 10, rows: 1 };

/** One line a speed; a speed that cannot be run has empty cells. */
export function runSpeed(words: Words, open: () => Design): string {
  const { from, to, count, fix } = readSpeeds(words);
  const side = readSide(words);
  const runner = makeRunner(open());
  const watch = new PressureWatch(runner);
  const columns = [COLUMNS, side ? SIDE_COLUMNS : [], LAST];
  const names = [...columns.flatMap((part) => part.map(([name]) => name)), 'cavitationMargin'];
  const lines = Array.from({ length: count }, (_, k) => {
    const speed = count === 1 ? from : from + ((to - from) * k) / (count - 1);
    return [speed, ...cellsAt(speed)]
      .map((value) => (value === null || !Number.isFinite(value) ? '' : value))
      .join(',');
  });
  return `${[['speed', ...names].join(','), ...lines].join('\n')}\n`;

  function cellsAt(speed: number): Array<number | null> {
    try {
      const state = runner.run(speed, fix);
      const point = speedPoint(runner, state);
      const read = (part: typeof COLUMNS) => part.map(([, of]) => of(point));
      return [...read(COLUMNS), ...sideCells(speed), ...read(LAST), watch.worst(state).margin];
    } catch {
      return names.map(() => null);
    }
  }

  function sideCells(speed: number): Array<number | null> {
    if (!side) return [];
    try {
      const trim = sideTrim(runner, speed, side, fix, SIDE_RESOLUTION);
      return SIDE_COLUMNS.map(([, of]) => of(trim));
    } catch {
      return SIDE_COLUMNS.map(() => null);
    }
  }
}

function readSide({ options }: Words): SideRule | null {
  const text = options.get('side')?.[0];
  if (text === undefined) return null;
  if (text === 'strut' || text === 'roll') return { by: text };
  const allowed = `strut, roll or a heel from -${MOST_HEEL} to ${MOST_HEEL} degrees`;
  const heel = readNumber(text, '--side', allowed);
  if (Math.abs(heel) > MOST_HEEL) throw new Refusal(`--side: found ${text}, allowed ${allowed}`);
  return { by: 'heel', heel };
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
