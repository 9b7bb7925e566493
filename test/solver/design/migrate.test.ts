import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../../src/solver/design/document.ts';
import { migrate, STEPS } from '../../../src/solver/design/migrate.ts';
import { migrationChain, type Step } from '../../../src/solver/design/migration-chain.ts';
import { readDesign } from '../../../src/solver/design/read.ts';
import { goodDocument } from '../../designs/change.ts';
import { type UpgradeCase, unexercised } from '../../support/upgrades.ts';

/** A made-up history: version 2 renamed a key, version 3 turned a number into an object. */
const steps: Step[] = [
  { to: 2, change: ({ title = '', ...rest }) => ({ ...rest, name: title }) },
  { to: 3, change: ({ depth = null, ...rest }) => ({ ...rest, depths: { cruise: depth } }) },
];

describe('the migration chain', () => {
  const chain = migrationChain(steps, 3);

  it('runs every step from the document’s own version on', () => {
    expect(chain({ version: 1, title: 'old', depth: 0.5 }, 1)).toEqual({
      version: 3,
      name: 'old',
      depths: { cruise: 0.5 },
    });
    expect(chain({ version: 2, name: 'newer', depth: 0.4 }, 2)).toEqual({
      version: 3,
      name: 'newer',
      depths: { cruise: 0.4 },
    });
    expect(chain({ version: 3, name: 'new' }, 3)).toEqual({ version: 3, name: 'new' });
  });

  it('keeps unknown keys and leaves the document it was given alone', () => {
    const old = { version: 1, title: 'old', depth: 1, mine: [1, 2] };
    expect(chain(old, 1)).toMatchObject({ mine: [1, 2] });
    expect(old).toEqual({ version: 1, title: 'old', depth: 1, mine: [1, 2] });
  });

  it.each<[string, Step[]]>([
    ['a gap', [steps[1]!]],
    ['a step missing at the end', [steps[0]!]],
    ['steps out of order', [steps[1]!, steps[0]!]],
    ['a step twice', [steps[0]!, steps[0]!, steps[1]!]],
    ['a step too many', [...steps, { to: 4, change: (document) => document }]],
  ])('is refused at start for %s', (_what, wrong) => {
    expect(() => migrationChain(wrong, 3)).toThrow(/^migration steps: found versions .*, allowed 2, 3$/);
  });
});

/** One case for each step of this program: what was stored, and what it becomes. None while version 1 is the present. */
const CASES: readonly UpgradeCase[] = [];

/** The document of that version as it was stored then; the file is never changed. */
const stored = (version: number): string =>
  readFileSync(new URL(`../../designs/versions/${version}.json`, import.meta.url), 'utf8');

const VERSIONS = Array.from({ length: VERSION }, (_, k) => k + 1);

describe('a step without a case', () => {
  const CASE: UpgradeCase = { to: 2, before: { title: 'old' }, after: { name: 'old' } };

  it('is found, wherever it stands', () => {
    expect(unexercised(steps, [])).toEqual([2, 3]);
    expect(unexercised(steps, [CASE])).toEqual([3]);
    expect(unexercised(steps, [CASE, { ...CASE, to: 3 }])).toEqual([]);
  });
});

describe('the chain of this program', () => {
  it('has a case for every step', () => {
    expect(unexercised(STEPS, CASES)).toEqual([]);
    expect(STEPS).toHaveLength(VERSION - 1);
  });

  it('makes of each case what it should', () => {
    for (const { to, before, after } of CASES)
      expect(STEPS.find((step) => step.to === to)!.change(before)).toEqual(after);
  });

  it.each(VERSIONS)('opens the document stored by version %i, with the keys it did not know', (version) => {
    const reading = readDesign(stored(version));
    expect(reading).toMatchObject({ ok: true, design: { version: VERSION } });
    const { remarks } = JSON.parse(stored(version));
    expect(reading.ok && reading.design).toMatchObject({ name: `Stored by version ${version}`, remarks });
  });

  it('brings a document of every version to the present one', () => {
    for (let version = 1; version <= VERSION; version++)
      expect(migrate({ version }, version)).toMatchObject({ version: VERSION });
  });

  it('leaves a document of the present version as it is', () => {
    const document = goodDocument() as Parameters<typeof migrate>[0];
    expect(migrate(document, VERSION)).toEqual(goodDocument());
  });
});
