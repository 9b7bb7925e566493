/** The batch command: argument words and a way to files in; output, error line and exit code out. */
import { COMMANDS, type Files } from './commands.ts';
import { Refusal } from './words.ts';

export type { Files } from './commands.ts';

export interface Outcome {
  code: 0 | 2;
  output: string; // for standard output; empty on bad input
  error: string; // one line for standard error; empty where all went well
}

/** Runs one command. Bad input ends in code 2 and a line of text; anything else that throws is a fault of the program. */
export function runBatch(words: readonly string[], files: Files): Outcome {
  const [name, ...rest] = words;
  try {
    if (name === '--help' || name === 'help') return { code: 0, output: help(), error: '' };
    if (name === undefined || !Object.hasOwn(COMMANDS, name))
      throw new Refusal(
        `found ${name === undefined ? 'no command' : `command "${name}"`}, allowed ${Object.keys(COMMANDS).join(', ')}`,
      );
    return { code: 0, output: COMMANDS[name]!.run(rest, files), error: '' };
  } catch (error) {
    if (!isForUser(error)) throw error;
    return { code: 2, output: '', error: error.message.replaceAll(/\s*\n\s*/g, ' ') };
  }
}

/** The solver refuses a condition by an Error with a sentence; the engine's own kinds of error are faults. */
function isForUser(error: unknown): error is Error {
  const isFault = [TypeError, RangeError, ReferenceError, SyntaxError].some((kind) => error instanceof kind);
  return error instanceof Error && !isFault;
}

function help(): string {
  const usages = Object.values(COMMANDS).map(({ usage }) => `  npm run -s batch -- ${usage}`);
  return `${usages.join('\n')}\nValues in SI units, angles in degrees. See docs/batch.md.\n`;
}
