/** The command `build`: files for the workshop, their names on standard output. */
import type { Design } from '../solver/design/document.ts';
import { DRAWS } from '../solver/geometry/parting.ts';
import { buildFiles } from '../workshop/build.ts';
import { KINDS, PARTS, USUAL_ORDER } from '../workshop/order.ts';
import { PAPERS, type Paper } from '../workshop/paper.ts';
import { type OptionKind, Refusal, type Words } from './words.ts';

export const BUILD_USAGE =
  'build FILE --kind csv|svg|dxf|stl|pdf --out DIR [--part wing|stabilizer|strut|fuselage|mould] [--built] [--paper a4|a3|letter] [--side whole|halves|starboard|port] [--parting fitted|upright|edges]';

export const BUILD_WORDS = {
  kind: 'value',
  out: 'value',
  part: 'value',
  built: 'flag',
  paper: 'value',
  side: 'value',
  parting: 'value',
} as const satisfies Record<string, OptionKind>;

/** `write` takes a file name inside the folder asked for. */
export async function runBuild(
  words: Words,
  open: () => Design,
  write: (folder: string, name: string, bytes: Uint8Array) => void,
  date: Date,
): Promise<string> {
  const kind = oneOf(words, 'kind', KINDS, null);
  const part = words.options.has('part') ? oneOf(words, 'part', PARTS, null) : null;
  const paper = oneOf(words, 'paper', Object.keys(PAPERS) as Paper[], 'a4');
  const side = oneOf(words, 'side', ['whole', 'halves', 'starboard', 'port'] as const, 'whole');
  const draw = oneOf(words, 'parting', DRAWS, 'fitted');
  const folder = words.options.get('out')?.[0];
  if (folder === undefined) throw new Refusal('--out: found none, allowed the folder for the files');
  const design = open();
  const fliesAsDrawn = words.options.has('built');
  const files = await buildFiles(design, {
    ...USUAL_ORDER,
    kind,
    part,
    fliesAsDrawn,
    paper,
    side,
    draw,
    date,
  });
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
