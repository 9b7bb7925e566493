import { describe, expect, it } from 'vitest';
import { describeRange, RANGES, type Range, rangeOf } from '../../../src/solver/design/ranges.ts';
import { readDesignValue } from '../../../src/solver/design/read.ts';
import { changed, goodDocument, type PlainDocument } from '../../designs/change.ts';

/** Documents that between them hold every number a document can hold. */
const documents: PlainDocument[] = [
  ...['curved-race', 'downwind', 'gull-lake', 'flat-race'].map((name) => goodDocument(name)),
  changed(goodDocument(), {
    'brief.depths': { takeOff: 0.3, cruise: 0.5, top: 0.6 },
    'brief.sidePull': { share: 0.1, height: 2 },
    'brief.boardAngle': 1,
    'strut.x': 0.1,
    inertia: {
      boardMass: 5,
      boardLength: 1.3,
      boardWidth: 0.5,
      foilMass: 4,
      riderRoll: 0.4,
      riderPitch: 0.4,
      riderYaw: 0.2,
    },
    build: {
      spacing: 0.04,
      leastEdge: 0.0005,
      allowance: 0.001,
      slot: { at: 0.3, width: 0.008, height: 0.003 },
      tolerance: 0.00002,
      stock: 0.006,
    },
    asBuilt: {
      wing: {
        at: [{ eta: 0.5, port: { twist: -0.5, chord: 0.09 }, starboard: { twist: -0.7, chord: 0.091 } }],
        tipDrop: { port: 0.07, starboard: 0.072 },
      },
    },
    notes: { laminate: 'two layers of 200 g twill' },
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
      for (const value of [range.min - 0.001, range.max + 0.001, ...(range.open ? [range.min] : [])]) {
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
