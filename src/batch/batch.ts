/** The batch command: argument words and a way to files in; output, error line and exit code out. */
import { COMMANDS, type Files, LATE_COMMANDS } from './commands.ts';
import { Refusal } from './words.ts';

export type { Files } from './commands.ts';

export interface Outcome {
  code: 0 | 2;
  output: string; // for standard output; empty on bad input
  error: string; // one line for standard error; empty where all went well
}

/** Runs any command, those that answer later included. */
export async function runCommand(words: readonly string[], files: Files): Promise<Outcome> {
  const [name, ...rest] = words;
  if (name === undefined || !Object.hasOwn(LATE_COMMANDS, name)) return runBatch(words, files);
  try {
    return { code: 0, output: await LATE_COMMANDS[name]!.run(rest, files), error: '' };
  } catch (error) {
    return refused(error);
  }
}

/** Runs one command that answers at once. Bad input ends in code 2 and a line of text; anything else that throws is a fault of the program. */
export function runBatch(words: readonly string[], files: Files): Outcome {
  const [name, ...rest] = words;
  try {
    if (name === '--help' || name === 'help') return { code: 0, output: help(), error: '' };
    if (name === undefined || !Object.hasOwn(COMMANDS, name))
      throw new Refusal(
        `found ${name === undefined ? 'no command' : `command "${name}"`}, allowed ${Object.keys(ALL).join(', ')}`,
      );
    return { code: 0, output: COMMANDS[name]!.run(rest, files), error: '' };
  } catch (error) {
    return refused(error);
  }
}

const ALL = { ...COMMANDS, ...LATE_COMMANDS };

function refused(error: unknown): Outcome {
  if (!isForUser(error)) throw error;
  return { code: 2, output: '', error: error.message.replaceAll(/\s*\n\s*/g, ' ') };
}

/** The solver refuses a condition by an Error with a sentence; the engine's own kinds of error are faults. */
function isForUser(error: unknown): error is Error {
  const isFault = [TypeError, RangeError, ReferenceError, SyntaxError].some((kind) => error instanceof kind);
  return error instanceof Error && !isFault;
}

function help(): string {
  const usages = Object.values(ALL).map(({ usage }) => `  npm run -s batch -- ${usage}`);
  return `${usages.join('\n')}\nValues in SI units, angles in degrees. See docs/batch.md.\n`;
}
