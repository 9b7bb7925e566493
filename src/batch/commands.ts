/** What the batch command can do: each command takes its words and answers with text for standard output. */
import type { Design } from '../solver/design/document.ts';
import { readDesign } from '../solver/design/read.ts';
import { solve } from '../solver/solve.ts';
import { modesAt } from '../solver/studies/hold-study.ts';
import { rootsOf } from '../solver/studies/modes.ts';
import { stiffnessFigures } from '../solver/studies/stiffness.ts';
import { type SweepTable, sweep, type Variation } from '../solver/sweep.ts';
import { BUILD_USAGE, BUILD_WORDS, runBuild } from './build-command.ts';
import { CONDITION_WORDS, readCondition } from './condition-words.ts';
import { HOLD_REPORT_USAGE, HOLD_REPORT_WORDS, runHoldReport } from './hold-report-command.ts';
import { PROPOSE_USAGE, PROPOSE_WORDS, runPropose } from './propose-command.ts';
import { runSection, SECTION_USAGE, SECTION_WORDS } from './section-command.ts';
import { runSpeed, SPEED_USAGE, SPEED_WORDS } from './speed-command.ts';
import { runStall, STALL_USAGE, STALL_WORDS } from './stall-command.ts';
import { type OptionKind, Refusal, readNumber, sortWords } from './words.ts';

/** The disk as the command sees it; relative paths are against the caller's folder. Both throw where they fail. */
export interface Files {
  read(path: string): string;
  write(path: string, text: string): void;
  /** Makes the folder too where there is none; absent where only text is written. */
  writeBytes?(path: string, bytes: Uint8Array): void;
}

export interface Command {
  usage: string;
  run(words: readonly string[], files: Files): string;
}

const CONDITION_USAGE =
  '[--speed M_S] [--alpha DEG | --lift N] [--depth M | --deep] [--strips N] [--stabilizer-strips N] [--rows M] [--sections thin|real]';

const MOST_CASES = 100_000;

export const COMMANDS: Readonly<Record<string, Command>> = {
  solve: { usage: `solve FILE ${CONDITION_USAGE}`, run: runSolve },
  sweep: {
    usage: `sweep FILE --vary PATH=FROM:TO:COUNT [--vary ...] [--out CSV] ${CONDITION_USAGE}`,
    run: runSweep,
  },
  speed: {
    usage: SPEED_USAGE,
    run: (words, files) => {
      const sorted = sortWords(words, SPEED_WORDS);
      return runSpeed(sorted, () => openDesign(sorted.plain, files, 'speed'));
    },
  },
  section: {
    usage: SECTION_USAGE,
    run: (words, files) => runSection(sortWords(words, SECTION_WORDS), (path) => textOf(path, files)),
  },
  stall: {
    usage: STALL_USAGE,
    run: (words, files) => {
      const sorted = sortWords(words, STALL_WORDS);
      return runStall(sorted, () => openDesign(sorted.plain, files, 'stall'));
    },
  },
  modes: { usage: 'modes FILE [--speed M_S]', run: runModes },
  'hold-report': {
    usage: HOLD_REPORT_USAGE,
    run: (words) => runHoldReport(sortWords(words, HOLD_REPORT_WORDS)),
  },
  stiffness: { usage: 'stiffness FILE [--speed M_S]', run: runStiffness },
  propose: {
    usage: PROPOSE_USAGE,
    run: (words, files) => {
      const sorted = sortWords(words, PROPOSE_WORDS);
      const out = sorted.options.get('out')?.[0];
      const write = (text: string) => {
        if (out !== undefined) writeOut(out, text, files);
      };
      return runPropose(sorted, () => openDesign(sorted.plain, files, 'propose'), write);
    },
  },
};

export interface LateCommand {
  usage: string;
  run(words: readonly string[], files: Files): Promise<string>;
}

/** Commands that answer later. */
export const LATE_COMMANDS: Readonly<Record<string, LateCommand>> = {
  build: {
    usage: BUILD_USAGE,
    run: (words, files) => {
      const sorted = sortWords(words, BUILD_WORDS);
      const write = (folder: string, name: string, bytes: Uint8Array) => {
        try {
          files.writeBytes?.(`${folder}/${name}`, bytes);
        } catch (error) {
          throw new Refusal(`--out: found "${folder}", which cannot be written (${reasonOf(error)})`);
        }
      };
      return runBuild(sorted, () => openDesign(sorted.plain, files, 'build'), write, new Date());
    },
  },
};

function runSolve(words: readonly string[], files: Files): string {
  const sorted = sortWords(words, CONDITION_WORDS);
  const options = readCondition(sorted);
  const design = openDesign(sorted.plain, files, 'solve');
  return `${JSON.stringify(solve(design, options), null, 2)}\n`;
}

/** Every eigenvalue of the craft's lateral and vertical motion, both of a pair, 1/s. */
function runModes(words: readonly string[], files: Files): string {
  const sorted = sortWords(words, { speed: 'value' });
  const options = readCondition(sorted);
  const design = openDesign(sorted.plain, files, 'modes');
  return `${JSON.stringify(rootsOf(modesAt(design, options)), null, 2)}\n`;
}

/** How far the foil gives, and where: estimates for comparing, with the caution that goes with them. */
function runStiffness(words: readonly string[], files: Files): string {
  const sorted = sortWords(words, { speed: 'value' });
  const condition = readCondition(sorted);
  const design = openDesign(sorted.plain, files, 'stiffness');
  return `${JSON.stringify(stiffnessFigures(design, { condition }), null, 2)}\n`;
}

function runSweep(words: readonly string[], files: Files): string {
  const known: Record<string, OptionKind> = { vary: 'many', out: 'value', ...CONDITION_WORDS };
  const sorted = sortWords(words, known);
  const options = readCondition(sorted);
  const variations = readVariations(sorted.options.get('vary') ?? []);
  const design = openDesign(sorted.plain, files, 'sweep');
  const text = toCsv(sweep(design, variations, options));
  const out = sorted.options.get('out')?.[0];
  if (out === undefined) return text;
  writeOut(out, text, files);
  return '';
}

function writeOut(out: string, text: string, files: Files): void {
  try {
    files.write(out, text);
  } catch (error) {
    throw new Refusal(`--out: found "${out}", which cannot be written (${reasonOf(error)})`);
  }
}

function openDesign(plain: readonly string[], files: Files, command: string): Design {
  const [file, extra] = plain;
  if (file === undefined)
    throw new Refusal(
      `${command}: found no FILE, allowed ${(COMMANDS[command] ?? LATE_COMMANDS[command])!.usage}`,
    );
  if (extra !== undefined) throw new Refusal(`${command}: found "${extra}" after the FILE, allowed one FILE`);
  const reading = readDesign(textOf(file, files));
  if (!reading.ok) throw new Refusal(`${file}: ${reading.message}`);
  return reading.design;
}

function textOf(path: string, files: Files): string {
  try {
    return files.read(path);
  } catch (error) {
    throw new Refusal(`${path}: cannot be read (${reasonOf(error)})`);
  }
}

function readVariations(texts: readonly string[]): Variation[] {
  if (texts.length === 0)
    throw new Refusal('--vary: found none, allowed one or more --vary PATH=FROM:TO:COUNT');
  const variations = texts.map(readVariation);
  const twice = variations.find(({ path }, k) => variations.findIndex((other) => other.path === path) < k);
  if (twice) throw new Refusal(`--vary: found ${twice.path} twice, allowed once`);
  const cases = variations.reduce((product, { count }) => product * count, 1);
  if (cases > MOST_CASES) throw new Refusal(`--vary: found ${cases} cases, allowed up to ${MOST_CASES}`);
  return variations;
}

/** "wing.droop.tipAngle=0:40:41" */
function readVariation(text: string): Variation {
  const parts = /^([^=]+)=([^:]*):([^:]*):([^:]*)$/.exec(text);
  if (!parts) throw new Refusal(`--vary: found "${text}", allowed PATH=FROM:TO:COUNT`);
  const [, path = '', from = '', to = '', count = ''] = parts;
  const variation = {
    path,
    from: readNumber(from, `--vary ${path}`, 'a number as FROM'),
    to: readNumber(to, `--vary ${path}`, 'a number as TO'),
    count: readNumber(count, `--vary ${path}`, 'a whole number as COUNT'),
  };
  if (!Number.isInteger(variation.count) || variation.count < 1)
    throw new Refusal(`--vary ${path}: found "${count}", allowed a whole number above 0 as COUNT`);
  return variation;
}

/** A header line, then a line a case; a figure that does not exist in a case is an empty cell. */
function toCsv({ columns, rows }: SweepTable): string {
  const cell = (value: number | null) => (value !== null && Number.isFinite(value) ? String(value) : '');
  const head = columns.map((name) => (/[",\n]/.test(name) ? `"${name.replaceAll('"', '""')}"` : name));
  return `${[head.join(','), ...rows.map((row) => row.map(cell).join(','))].join('\n')}\n`;
}

function reasonOf(error: unknown): string {
  const REASONS: Record<string, string> = {
    ENOENT: 'no such file or folder',
    EISDIR: 'it is a folder',
    EACCES: 'not permitted',
    EEXIST: 'a file stands there',
    ENOTDIR: 'a file stands in the way',
  };
  const { code, message } = error as { code?: string; message?: string };
  return REASONS[code ?? ''] ?? message ?? 'unknown reason';
}
