import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDesign, readDesignValue, writeDesign } from '../../../src/solver/design/read.ts';
import { solve } from '../../../src/solver/solve.ts';
import { BROKEN, BROKEN_VALUES, type BrokenDocument } from '../../designs/broken.ts';
import { changed, goodDocument, type PlainDocument } from '../../designs/change.ts';

const GOOD = new URL('../../designs/good/', import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, GOOD), 'utf8');
const goodNames = readdirSync(GOOD);

/** The design in a reading that must succeed. */
function opened(value: unknown) {
  const reading = readDesignValue(value);
  if (!reading.ok) throw new Error(reading.message);
  return reading.design;
}

describe('good documents', () => {
  it.each(goodNames)('%s loads, solves and comes back as it was', (name) => {
    const reading = readDesign(textOf(name));
    if (!reading.ok) throw new Error(reading.message);
    expect(reading.design).toEqual(JSON.parse(textOf(name)));
    expect(solve(reading.design, { neutralDroop: false }).lift.total).toBeGreaterThan(0);
  });

  it('use every kind of law there is', () => {
    const kinds = new Set<unknown>();
    const note = (key: string, value: unknown) => {
      if (key === 'kind') kinds.add(value);
      return value;
    };
    for (const name of goodNames) JSON.parse(textOf(name), note);
    for (const kind of [
      'taper',
      'superelliptic',
      'straight',
      'rake',
      'flat',
      'vee',
      'arc',
      'late',
      'gull',
      'linear',
      'points',
      'formula',
    ])
      expect(kinds).toContain(kind);
  });

  it('may be written with a byte order mark, any spacing and any order of keys', () => {
    const document = goodDocument();
    const reversed = Object.fromEntries(Object.entries(document).reverse());
    expect(readDesign(`\uFEFF \n${JSON.stringify(reversed)}\r\n`)).toEqual({ ok: true, design: document });
  });

  it.each<[string, Record<string, unknown>]>([
    [
      'the optional keys',
      {
        'brief.depths': { takeOff: 0.25, cruise: 0.5, top: 0.6 },
        'brief.sidePull': { share: 0.1, height: 2.2 },
        'brief.boardAngle': 2,
        'strut.x': 0.12,
      },
    ],
    ['one depth of three', { 'brief.depths': { top: 0.6 } }],
    ['no parts but the wing', { stabilizer: null, fuselage: null, strut: null }],
    ['a pointed tip', { 'wing.chord': { kind: 'taper', root: 0.1, tip: 0 } }],
    ['an elliptic chord', { 'wing.chord': { kind: 'elliptic', root: 0.1 } }],
    [
      'a formula that ends in a point',
      { 'wing.chord': { kind: 'formula', expression: '0.12 * sqrt(1 - eta^2)' } },
    ],
    ['a drop in place of an angle', { 'wing.droop': { kind: 'late', tipDrop: 0.05, from: 0.4, power: 1.5 } }],
    ['a wing that rises', { 'wing.droop': { kind: 'vee', tipAngle: -20 } }],
    ['the largest droop', { 'stabilizer.droop': { kind: 'arc', tipAngle: 90 } }],
    [
      'an imported section',
      {
        'wing.section.root': {
          kind: 'coordinates',
          name: 'mine',
          points: [
            [1, 0.002],
            [0.7, 0.04],
            [0.4, 0.06],
            [0.1, 0.04],
            [0.02, 0.02],
            [0, 0],
            [0.02, -0.015],
            [0.1, -0.03],
            [0.4, -0.03],
            [0.7, -0.02],
            [1, -0.002],
          ],
        },
      },
    ],
    ['a depth as long as the strut', { 'brief.depth': 1 }],
  ])('load with %s', (_what, changes) => {
    const document = changed(goodDocument(), changes);
    expect(opened(document)).toEqual(document);
  });
});

describe('broken documents', () => {
  const check = ({ message }: BrokenDocument, reading: ReturnType<typeof readDesign>) => {
    if (reading.ok) throw new Error('it was not refused');
    if (typeof message === 'string') expect(reading.message).toContain(message);
    else expect(reading.message).toMatch(message);
    expect(reading.message).toMatch(/^[^\n]+: found [^\n]+, allowed [^\n]+$|a newer Downcurve/);
    expect(reading.message.length).toBeLessThan(260);
  };

  it.each(BROKEN.map((broken) => [broken.what, broken] as const))('%s', (_what, broken) => {
    const text = broken.text ?? JSON.stringify(changed(goodDocument(), broken.change ?? {}));
    check(broken, readDesign(text));
  });

  it.each(BROKEN_VALUES.map((broken) => [broken.what, broken] as const))('%s', (_what, broken) => {
    check(broken, readDesignValue(changedInMemory(broken.change ?? {})));
  });

  /** As `changed`, for values that no structured clone can hold. */
  function changedInMemory(changes: Record<string, unknown>): PlainDocument {
    const document = goodDocument();
    for (const [path, value] of Object.entries(changes)) {
      const [key, inner, last] = path.split('.');
      if (!inner) document[key!] = value;
      else if (!last) (document[key!] as PlainDocument)[inner] = value;
      else ((document[key!] as PlainDocument)[inner] as PlainDocument)[last] = value;
    }
    return document;
  }

  it('are refused for their first problem, in the order of the document', () => {
    const reading = readDesignValue(
      changed(goodDocument(), { 'strut.length': -1, 'brief.depth': -1, 'wing.incidence': 99 }),
    );
    expect(reading).toMatchObject({ message: expect.stringContaining('brief.depth') });
  });

  it('that run in a circle are refused', () => {
    const document = goodDocument();
    document.self = document;
    expect(readDesignValue(document)).toMatchObject({ ok: false, message: expect.stringContaining('deep') });
  });

  it('that throw when they are looked at are refused', () => {
    const document = Object.defineProperty(goodDocument(), 'trap', {
      enumerable: true,
      get: () => {
        throw new Error('no');
      },
    });
    expect(readDesignValue(document)).toMatchObject({
      ok: false,
      message: expect.stringContaining('cannot be read'),
    });
  });
});

describe('what is read', () => {
  it('shares nothing with what it was read from, which stays as it was', () => {
    const document = goodDocument('downwind');
    const before = structuredClone(document);
    const design = opened(document);
    design.brief.speeds.cruise = 1;
    if (design.wing.chord.kind === 'points') design.wing.chord.at[0]![1] = 1;
    expect(document).toEqual(before);
  });

  it('keeps unknown keys at every level', () => {
    const withNotes = (value: unknown): unknown =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? {
            ...Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withNotes(inner)])),
            myNote: ['kept', { deep: 1 }],
          }
        : value;
    for (const name of goodNames) {
      const document = withNotes(JSON.parse(textOf(name)));
      const design = opened(document);
      expect(design).toEqual(document);
      expect(JSON.parse(writeDesign(design))).toEqual(document);
    }
  });

  it('takes a key without a value for a key left out, and -0 for 0', () => {
    const design = opened({ ...goodDocument(), remarks: undefined, offset: -0 });
    expect('remarks' in design).toBe(false);
    expect(Object.is((design as unknown as PlainDocument).offset, 0)).toBe(true);
  });
});

describe('what is written', () => {
  it.each(goodNames)('%s reads back the same and writes the same text again', (name) => {
    const design = opened(JSON.parse(textOf(name)));
    const text = writeDesign(design);
    const again = readDesign(text);
    expect(again).toEqual({ ok: true, design });
    if (again.ok) expect(writeDesign(again.design)).toBe(text);
  });

  it('puts each pair on a line and leaves texts alone', () => {
    const document = { ...goodDocument('downwind'), remarks: 'a list: [\n  1,\n  2\n]' };
    const text = writeDesign(opened(document));
    expect(text).toContain('[0.4, 0.112]');
    expect(JSON.parse(text)).toEqual(document);
    expect(text.endsWith('}\n')).toBe(true);
  });
});
