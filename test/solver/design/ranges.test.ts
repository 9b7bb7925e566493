import { describe, expect, it } from 'vitest';
import { describeRange, RANGES, type Range, rangeOf } from '../../../src/solver/design/ranges.ts';
import { readDesignValue } from '../../../src/solver/design/read.ts';
import { BLOCKS } from '../../designs/blocks.ts';
import { changed, goodDocument, type PlainDocument } from '../../designs/change.ts';

/** Documents that between them hold every number a document can hold. */
const documents: PlainDocument[] = [
  ...['curved-race', 'downwind', 'gull-lake', 'flat-race'].map((name) => goodDocument(name)),
  changed(goodDocument(), {
    ...BLOCKS,
    'wing.sweep': {
      kind: 'points',
      at: [
        [0, 0],
        [1, 0.03],
      ],
    },
    'wing.droop': {
      kind: 'points',
      at: [
        [0, 0],
        [1, 20],
      ],
    },
    'wing.section.root': {
      kind: 'coordinates',
      name: 'mine',
      points: Array.from({ length: 21 }, (_, k) => [Math.abs(1 - k / 10), k < 10 ? 0.05 : -0.05]),
    },
  }),
];

/** Every number of a document by dotted path. */
function numbersOf(value: unknown, path = ''): Array<[string, number]> {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, path ? `${path}.${key}` : key));
}

const cases = documents.flatMap((document) =>
  numbersOf(document)
    .filter(([path]) => path !== 'version')
    .map(([path]) => [path, document] as const),
);

describe('ranges', () => {
  it('are known for every number of a document', () => {
    for (const [path] of cases) expect(rangeOf(path), path).toBeDefined();
    expect(rangeOf('notes.mine')).toBeUndefined();
  });

  it('are all put to use by some number of these documents', () => {
    const found = new Set(cases.map(([path]) => rangeOf(path)));
    for (const [key, range] of Object.entries<Range>(RANGES)) expect(found.has(range), key).toBe(true);
  });

  it('refuse what lies outside them, by path, with the range in the message', () => {
    for (const [path, document] of cases) {
      const range = rangeOf(path)!;
      const beyond = 0.001 + 1e-6 * range.max;
      for (const value of [range.min - beyond, range.max + beyond, ...(range.open ? [range.min] : [])]) {
        const reading = readDesignValue(changed(document, { [path]: value }));
        const message = `${path}: found ${value}, allowed ${describeRange(range)}`;
        expect(reading).toMatchObject({ ok: false, message: expect.stringContaining(message) });
      }
    }
  });

  it('let their own ends pass the schema', () => {
    // What another rule then says of such a document names another value or another reason.
    for (const [path, document] of cases) {
      const range = rangeOf(path)!;
      for (const value of [range.open ? range.max : range.min, range.max]) {
        const reading = readDesignValue(changed(document, { [path]: value }));
        if (!reading.ok) expect(reading.message).not.toContain(`allowed ${describeRange(range)}`);
      }
    }
  });

  it('stand in a sentence', () => {
    expect(describeRange(RANGES['*.chord.root'])).toBe('above 0 to 1 m');
    expect(describeRange(RANGES['brief.upwardPull'])).toBe('0 to 0.9');
  });
});
