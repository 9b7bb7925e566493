/** Argument words to options and the words between them: "--key value", "--key=value", negative values too. */

/** Bad input: one line for the user, exit code 2. */
export class Refusal extends Error {}

/** `value` takes one word, `flag` none, `many` one word each time it is given. */
export type OptionKind = 'value' | 'flag' | 'many';

export interface Words {
  plain: string[]; // words that belong to no option, in order
  options: ReadonlyMap<string, readonly string[]>; // by name, without dashes; a flag has no values
}

/** Sorts the words of a command by the options it knows. Throws Refusal for an unknown, repeated or empty one. */
export function sortWords(words: readonly string[], known: Readonly<Record<string, OptionKind>>): Words {
  const plain: string[] = [];
  const options = new Map<string, string[]>();
  for (let k = 0; k < words.length; k++) {
    const word = words[k]!;
    if (!word.startsWith('-')) {
      plain.push(word);
      continue;
    }
    const [, name = '', given] = /^--([^=]*)(?:=(.*))?$/s.exec(word) ?? [];
    if (!Object.hasOwn(known, name)) throw new Refusal(`found option ${word}, allowed ${listOptions(known)}`);
    const kind = known[name]!;
    const values = options.get(name);
    if (values && kind !== 'many') throw new Refusal(`--${name}: found twice, allowed once`);
    if (kind === 'flag') {
      if (given !== undefined) throw new Refusal(`--${name}: found "${given}", allowed without a value`);
      options.set(name, []);
      continue;
    }
    const value = given ?? words[++k];
    if (value === undefined || value === '' || (given === undefined && value.startsWith('--')))
      throw new Refusal(`--${name}: found no value, allowed --${name} VALUE`);
    options.set(name, [...(values ?? []), value]);
  }
  return { plain, options };
}

function listOptions(known: Readonly<Record<string, OptionKind>>): string {
  return Object.keys(known)
    .map((name) => `--${name}`)
    .join(' ');
}

/** A number written out in decimals. `name` is what the message calls it. Throws Refusal. */
export function readNumber(text: string, name: string, allowed: string): number {
  const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
  if (!Number.isFinite(value)) throw new Refusal(`${name}: found "${text}", allowed ${allowed}`);
  return value;
}
