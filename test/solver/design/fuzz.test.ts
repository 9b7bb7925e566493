import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { jsonProblem } from '../../../src/solver/design/json-text.ts';
import { readDesign, readDesignValue, writeDesign } from '../../../src/solver/design/read.ts';
import { solve } from '../../../src/solver/solve.ts';
import { goodDocument, type PlainDocument } from '../../designs/change.ts';

vi.setConfig({ testTimeout: 60_000 });

const documents = ['curved-race', 'downwind', 'flat-race', 'formula-deep', 'gull-lake'].map((name) =>
  goodDocument(name),
);
const SENTENCE = /^[^\n]+: found [^\n]+$/;

/** Every branch and leaf of a document by path. */
function pathsOf(value: unknown, path: string[] = []): string[][] {
  const here = path.length > 0 ? [path] : [];
  if (typeof value !== 'object' || value === null) return here;
  return [...here, ...Object.entries(value).flatMap(([key, inner]) => pathsOf(inner, [...path, key]))];
}

function replaced(document: PlainDocument, path: string[], value: unknown): PlainDocument {
  const copy = structuredClone(document);
  const holder = path.slice(0, -1).reduce((branch, key) => branch[key] as PlainDocument, copy);
  holder[path.at(-1)!] = value;
  return copy;
}

const anything = fc.oneof(
  fc.anything({
    withBigInt: true,
    withDate: true,
    withMap: true,
    withNullPrototype: true,
    withSparseArray: true,
    withTypedArray: true,
  }),
  fc.double(),
  fc.constantFrom<unknown>('points', 'formula', 'flat', null, [], {}, 0, -1, 1e308, Number.NaN, '2412', [
    [0, 1],
    [1, 1],
  ]),
);

describe('the reader, given anything', () => {
  it('answers with one sentence and never throws', () => {
    fc.assert(
      fc.property(anything, (value) => {
        const reading = readDesignValue(value);
        expect(reading).toMatchObject({ ok: false, message: expect.stringMatching(SENTENCE) });
      }),
      { numRuns: 2000 },
    );
  });

  it('takes or refuses a document with one thing changed; what it takes is written and read back the same', () => {
    const changes = fc
      .constantFrom(...documents)
      .chain((document) => fc.tuple(fc.constant(document), fc.constantFrom(...pathsOf(document)), anything));
    fc.assert(
      fc.property(changes, ([document, path, value]) => {
        const reading = readDesignValue(replaced(document, path, value));
        if (reading.ok) expect(readDesign(writeDesign(reading.design))).toEqual(reading);
        else expect(reading.message).toMatch(SENTENCE);
      }),
      { numRuns: 1500 },
    );
  });

  it('takes no document that the solver then breaks on', () => {
    const changes = fc.constantFrom(...documents).chain((document) => {
      const numbers = pathsOf(document).filter(
        (path) => typeof at(document, path) === 'number' && path[0] !== 'version',
      );
      return fc.tuple(
        fc.constant(document),
        fc.constantFrom(...numbers),
        fc.double({ min: -2, max: 3, noNaN: true }),
      );
    });
    fc.assert(
      fc.property(changes, ([document, path, factor]) => {
        const value = factor * (at(document, path) as number);
        const reading = readDesignValue(replaced(document, path, value));
        if (!reading.ok) return;
        const report = solve(reading.design, { alpha: 2, neutralDroop: false, strips: 8, sections: 'thin' });
        expect(Number.isFinite(report.lift.total), `${path.join('.')} = ${value}`).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  const at = (document: PlainDocument, path: string[]) =>
    path.reduce<unknown>((branch, key) => (branch as PlainDocument)[key], document);
});

describe('the reader of text', () => {
  const texts = documents.map((document) => JSON.stringify(document, null, 1));

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        expect(readDesign(text)).toMatchObject({ ok: false, message: expect.stringMatching(SENTENCE) });
      }),
      { numRuns: 1000 },
    );
  });

  it('agrees with the engine’s own parser on what is JSON', () => {
    const edits = fc.tuple(
      fc.constantFrom(...texts, '[1, -0.5e-7, "a\\u00e9\\n", true, null, {"b": []}]'),
      fc.array(
        fc.tuple(
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.nat(3),
          fc.constantFrom(
            '',
            '"',
            '{',
            '}',
            ',',
            ':',
            '1',
            '\\',
            '-',
            '.',
            'e',
            ' ',
            '\t',
            '\n',
            'null',
            '0',
          ),
        ),
        { maxLength: 3 },
      ),
    );
    fc.assert(
      fc.property(edits, ([text, changes]) => {
        const edited = changes.reduce((now, [where, cut, put]) => {
          const place = Math.floor(where * now.length);
          return now.slice(0, place) + put + now.slice(place + cut);
        }, text);
        const problem = jsonProblem(edited);
        if (problem?.includes('a second time')) return;
        expect(problem === null, `${problem}`).toBe(isJson(edited));
      }),
      { numRuns: 3000 },
    );
  });

  const isJson = (text: string): boolean => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };

  it('refuses long and hostile text, and comes to an end with it', () => {
    const long = 900_000;
    for (const text of [
      `"${'x'.repeat(long)}`,
      `"${'\\n'.repeat(long / 2)}`,
      ' '.repeat(long),
      '1'.repeat(long),
      `[${'1,'.repeat(long / 2)}`,
      `{${Array.from({ length: 60_000 }, (_, k) => `"${k}":1`).join()}}`,
      '[{"a":'.repeat(long / 6),
    ]) {
      expect(readDesign(text).ok, text.slice(0, 20)).toBe(false);
    }
  });
});
