/** docs/design-document.md against the schema: every range it prints, every document and every law it shows. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { describeRange, RANGES, type Range } from '../../../src/solver/design/ranges.ts';
import { readDesign, readDesignValue } from '../../../src/solver/design/read.ts';
import { changed, goodDocument } from '../../designs/change.ts';

const page = readFileSync(new URL('../../../docs/design-document.md', import.meta.url), 'utf8');

/** First and second cell of every table row whose first cell is a key. */
const rows = new Map(
  [...page.matchAll(/^\| `([\w.*]+)` \| ([^|]+?) \|/gm)].map(([, key, cell]) => [key, cell]),
);

describe('the page about the design document', () => {
  it('prints every range as the schema has it', () => {
    for (const [key, range] of Object.entries<Range>(RANGES))
      expect(rows.get(key), key).toBe(describeRange(range));
  });

  it('prints no key with a number that the schema does not know', () => {
    const numbered = [...rows].filter(([, cell]) => /^(?:above )?-?\d+(?:\.\d+)? to /.test(cell ?? ''));
    expect(numbered.map(([key]) => key).filter((key) => !Object.hasOwn(RANGES, key!))).toEqual([]);
  });

  it('shows documents that load', () => {
    const shown = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map(([, text]) => readDesign(text!));
    expect(shown).toEqual([expect.objectContaining({ ok: true })]);
  });

  it('shows a points law and a formula that load', () => {
    const laws = [...page.matchAll(/`(\{ "kind": "(?:points|formula)".*?\})`/g)].map(([, text]) =>
      JSON.parse(text!),
    );
    expect(laws.map(({ kind }) => kind)).toEqual(['points', 'formula']);
    for (const law of laws)
      expect(readDesignValue(changed(goodDocument(), { 'wing.chord': law })).ok).toBe(true);
  });

  it('shows the messages a user meets', () => {
    const messageOf = (changes: Record<string, unknown>) => {
      const reading = readDesignValue(changed(goodDocument(), changes));
      return reading.ok ? '' : reading.message;
    };
    const points = [
      [0, 0.1],
      [0.6, 0.09],
      [0.5, 0.08],
      [1, 0.03],
    ];
    expect(page).toContain(messageOf({ 'wing.chord': { kind: 'taper', root: 0.1, tip: -0.02 } }));
    expect(page).toContain(messageOf({ 'wing.droop': { kind: 'points', at: points } }));
    expect(page).toContain(messageOf({ 'brief.depth': 1.2 }));
  });
});
