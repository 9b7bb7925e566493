import { describe, expect, it } from 'vitest';
import { VERSION } from '../../../src/solver/design/document.ts';
import { migrate, migrationChain, type Step } from '../../../src/solver/design/migrate.ts';
import { goodDocument } from '../../designs/change.ts';

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

describe('the chain of this program', () => {
  it('brings a document of every version to the present one', () => {
    for (let version = 1; version <= VERSION; version++)
      expect(migrate({ version }, version)).toMatchObject({ version: VERSION });
  });

  it('leaves a document of the present version as it is', () => {
    const document = goodDocument() as Parameters<typeof migrate>[0];
    expect(migrate(document, VERSION)).toEqual(goodDocument());
  });
});
