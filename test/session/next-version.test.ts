/**
 * The day version 2 comes: the program with a made-up step opens what version 1 has left anywhere, and what a still
 * newer one has left it refuses by name. In version 1 the name was called title, in this fiction.
 */
import * as v from 'valibot';
import { describe, expect, it, vi } from 'vitest';
import { unpackCopy } from '../../src/session/copies.ts';
import { makeLink, readLink } from '../../src/session/share-link.ts';
import { DesignStore } from '../../src/session/store.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { readDesign, readDesignValue, writeDesign } from '../../src/solver/design/read.ts';
import { demo } from './designs.ts';

vi.mock('../../src/solver/design/document.ts', async (load) => {
  const present = await load<typeof import('../../src/solver/design/document.ts')>();
  const next = v.pipe(
    v.looseObject({ version: v.literal(2) }),
    v.transform((document) => ({ ...document, version: 1 })),
  );
  return {
    ...present,
    VERSION: 2,
    DesignSchema: v.pipe(
      next,
      present.DesignSchema,
      v.transform((document) => ({ ...document, version: 2 })),
    ),
  };
});
vi.mock('../../src/solver/design/migrate.ts', async () => {
  const { migrationChain } = await import('../../src/solver/design/migration-chain.ts');
  return {
    migrate: migrationChain([{ to: 2, change: ({ title = '', ...rest }) => ({ ...rest, name: title }) }], 2),
  };
});

/** A document of version 1, as this fiction has it. */
function old(title: string): Design {
  const { name: _, ...rest } = demo();
  return { ...rest, title, remarks: [1, 2] } as unknown as Design;
}

const BROUGHT_UP = { version: 2, name: 'Old', remarks: [1, 2] };

describe('what version 1 has left', () => {
  it('opens as a file', () => {
    const reading = readDesign(JSON.stringify(old('Old')));
    expect(reading).toMatchObject({ ok: true, design: BROUGHT_UP });
    expect(reading.ok && 'title' in reading.design).toBe(false);
  });

  it('opens from a link', () => {
    const made = makeLink(old('Old'), 'https://foils.example/');
    expect(readLink(made.ok ? made.link : '', readDesign)).toMatchObject({ ok: true, design: BROUGHT_UP });
  });

  it('opens from the browser’s storage, and its history goes back step by step', () => {
    const trail = { past: [{ label: 'title', state: old('Older') }], future: [] };
    const found = unpackCopy({ text: JSON.stringify(old('Old')), time: 1, trail });
    if (!found.ok) throw new Error(found.reason);
    const reading = readDesign(found.copy.text);
    if (!reading.ok) throw new Error(reading.message);
    const store = new DesignStore(reading.design, readDesignValue, found.copy.trail!);
    store.undo();
    expect(store.design).toMatchObject({ ...BROUGHT_UP, name: 'Older' });
    store.redo();
    expect(store.design).toMatchObject(BROUGHT_UP);
  });

  it('is saved as version 2, and read again', () => {
    const reading = readDesign(JSON.stringify(old('Old')));
    const text = reading.ok ? writeDesign(reading.design) : '';
    expect(JSON.parse(text)).toMatchObject(BROUGHT_UP);
    expect(readDesign(text)).toEqual(reading);
  });
});

describe('what version 3 has left', () => {
  const newer = { ...old('New'), version: 3 } as unknown as Design;
  const reason = 'version: found 3, allowed up to 2; a newer Downcurve made this document';

  it('is refused by name, from wherever it comes', () => {
    expect(readDesign(JSON.stringify(newer))).toEqual({ ok: false, message: reason });
    const made = makeLink(newer, 'https://foils.example/');
    expect(readLink(made.ok ? made.link : '', readDesign)).toEqual({
      ok: false,
      message: `The link cannot be opened: ${reason}.`,
    });
  });
});
