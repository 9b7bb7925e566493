/** The command `build`: files for the workshop, their names on standard output. */
import type { Design } from '../solver/design/document.ts';
import { solve } from '../solver/solve.ts';
import { buildFiles, KINDS, PARTS, USUAL_ORDER } from '../workshop/build.ts';
import { PAPERS, type Paper } from '../workshop/paper.ts';
import { type OptionKind, Refusal, type Words } from './words.ts';

export const BUILD_USAGE =
  'build FILE --kind csv|svg|dxf|stl|pdf --out DIR [--part wing|stabilizer|strut|fuselage|mould] [--built] [--paper a4|a3|letter] [--side whole|halves]';

export const BUILD_WORDS = {
  kind: 'value',
  out: 'value',
  part: 'value',
  built: 'flag',
  paper: 'value',
  side: 'value',
} as const satisfies Record<string, OptionKind>;

/** The shape to build so that it flies as drawn. */
export type ToBuilt = (design: Design) => Design;

/** `write` takes a file name inside the folder asked for. */
export async function runBuild(
  words: Words,
  open: () => Design,
  write: (folder: string, name: string, bytes: Uint8Array) => void,
  toBuilt: ToBuilt,
  date: Date,
): Promise<string> {
  const kind = oneOf(words, 'kind', KINDS, null);
  const part = words.options.has('part') ? oneOf(words, 'part', PARTS, null) : null;
  const paper = oneOf(words, 'paper', Object.keys(PAPERS) as Paper[], 'a4');
  const side = oneOf(words, 'side', ['whole', 'halves'] as const, 'whole');
  const folder = words.options.get('out')?.[0];
  if (folder === undefined) throw new Refusal('--out: found none, allowed the folder for the files');
  const design = words.options.has('built') ? toBuilt(open()) : open();
  const report = kind === 'pdf' && part === null ? solve(design) : null;
  const files = await buildFiles(design, { ...USUAL_ORDER, kind, part, paper, side, date, report });
  for (const { name, bytes } of files) write(folder, name, bytes);
  return files.map(({ name }) => `${name}\n`).join('');
}

function oneOf<const T extends string>(
  { options }: Words,
  name: string,
  allowed: readonly T[],
  usual: T | null,
): T {
  const text = options.get(name)?.[0] ?? usual;
  const found = allowed.find((value) => value === text);
  if (found !== undefined) return found;
  throw new Refusal(
    `--${name}: found ${text === null ? 'none' : `"${text}"`}, allowed ${allowed.join(', ')}`,
  );
}
