/** The command `propose`: the proposed document to a file, the table of start against proposal as JSON. */
import type { Design } from '../solver/design/document.ts';
import { readDesign, writeDesign } from '../solver/design/read.ts';
import type { Clash } from '../solver/studies/propose/explain.ts';
import { FIGURES } from '../solver/studies/propose/figures.ts';
import { type Proposal, propose } from '../solver/studies/propose/proposal.ts';
import { finish } from '../solver/studies/study.ts';
import { type OptionKind, Refusal, readNumber, type Words } from './words.ts';

export const PROPOSE_USAGE = 'propose FILE [--seed N] [--out FILE]';

export const PROPOSE_WORDS = { seed: 'value', out: 'value' } as const satisfies Record<string, OptionKind>;

const LARGEST_SEED = 1_000_000;

export function runPropose(words: Words, open: () => Design, write: (text: string) => void): string {
  const seed = readSeed(words);
  const proposal = finish(propose(open(), { seed }));
  if (proposal.outcome !== 'found') throw new Refusal(whyNone(proposal));
  const { design, variant: _variant, ...answer } = proposal;
  const text = writeDesign(design);
  const reading = readDesign(text);
  if (!reading.ok) throw new TypeError(`a proposal that cannot be read: ${reading.message}`);
  write(text);
  return `${JSON.stringify(answer, null, 2)}\n`;
}

function readSeed({ options }: Words): number {
  const text = options.get('seed')?.[0];
  if (text === undefined) return 1;
  const allowed = `a whole number from 0 to ${LARGEST_SEED}`;
  const seed = readNumber(text, '--seed', allowed);
  if (!Number.isInteger(seed) || seed < 0 || seed > LARGEST_SEED)
    throw new Refusal(`--seed: found ${text}, allowed ${allowed}`);
  return seed;
}

function whyNone(proposal: Exclude<Proposal, { outcome: 'found' }>): string {
  if (proposal.outcome === 'nowhere')
    return 'wanted.free: found ranges in which nothing can be drawn and run, allowed wider ones';
  return `wanted.limits: found ${listOf(proposal.clash)} at once, allowed limits and ranges that one wing can hold`;
}

/** "holdIndex at least 40, span at most 0.7 m with stabilizerArea at its most" */
function listOf({ limits, isBalance, ranges }: Clash): string {
  const held = limits.map(({ figure, side, value }) => {
    const { unit } = FIGURES[figure];
    return `${figure} at ${side} ${Number(value.toPrecision(6))}${unit && ` ${unit}`}`;
  });
  if (isBalance) held.push('the drawn stance balanced at cruise');
  const ends = ranges.map(({ name, end }) => `${name} at its ${end}`);
  return [held.join(', '), ...(ends.length > 0 ? [ends.join(', ')] : [])].join(' with ');
}
