import { describe, expect, it, vi } from 'vitest';
import { fileNameOf, openDesignFile } from '../../src/session/files.ts';
import type { Trail } from '../../src/session/history.ts';
import { type Notebook, type SaveState, Saving, type Shelf } from '../../src/session/saving.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { demo, readLoosely, readTextLoosely } from './designs.ts';

function memory() {
  const shelved = new Map<string, unknown>();
  const noted = new Map<string, string>();
  const shelf: Shelf = {
    read: async (key) => shelved.get(key),
    write: async (key, value) => {
      shelved.set(key, structuredClone(value));
    },
  };
  const notebook: Notebook = {
    getItem: (key) => noted.get(key) ?? null,
    setItem: (key, value) => {
      noted.set(key, value);
    },
    removeItem: (key) => {
      noted.delete(key);
    },
  };
  return { shelved, noted, shelf, notebook };
}

interface Setting {
  shelf?: Shelf;
  notebook?: Notebook | null;
  design?: Design;
  trail?: Trail<Design>;
}

function savingIn(place: Setting, states: SaveState[] = []) {
  const { shelf = memory().shelf, notebook = null } = place;
  return new Saving({
    shelf,
    notebook,
    read: readTextLoosely,
    readValue: readLoosely,
    write: (design) => JSON.stringify(design),
    present: () => ({ design: place.design ?? demo(), trail: place.trail ?? { past: [], future: [] } }),
    onState: (state) => states.push(state),
    delay: 0,
  });
}

const settled = async (states: SaveState[]) => {
  await vi.waitFor(() => expect(states.at(-1)?.kind).not.toBe('saving'));
  return states.at(-1);
};

describe('saving', () => {
  it('keeps the design and its history', async () => {
    const place: Setting & ReturnType<typeof memory> = memory();
    const states: SaveState[] = [];
    place.trail = { past: [{ label: 'name', state: { ...demo(), name: 'Earlier' } }], future: [] };
    savingIn(place, states).changed();
    expect(states[0]?.kind).toBe('saving');
    expect((await settled(states))?.kind).toBe('saved');
    const found = await savingIn(place).recover();
    expect(found.design).toEqual(demo());
    expect(found.trail?.past[0]?.state.name).toBe('Earlier');
    expect(found.message).toBeNull();
  });

  it('finds nothing where nothing was kept', async () => {
    expect((await savingIn(memory()).recover()).design).toBeNull();
  });

  it('keeps a change that a reload overtakes', async () => {
    const place = memory();
    place.shelf = { read: place.shelf.read, write: () => new Promise(() => {}) }; // never gets done
    const trail = { past: [{ label: 'name', state: demo() }], future: [] };
    const saving = savingIn({ ...place, design: { ...demo(), name: 'Just typed' }, trail });
    saving.changed();
    saving.flush();
    const found = await savingIn(place).recover();
    expect(found.design?.name).toBe('Just typed');
    expect(found.trail).toEqual(trail);
  });

  it('prefers the newer copy, whichever storage it lies in', async () => {
    const place = memory();
    const states: SaveState[] = [];
    const older = savingIn({ ...place, design: { ...demo(), name: 'Older' } }, states);
    older.changed();
    older.flush();
    await settled(states);
    place.noted.set('downcurve.pending', JSON.stringify({ text: JSON.stringify(demo()), time: 1 }));
    expect((await savingIn(place).recover()).design?.name).toBe('Older');
  });

  it('sets an unreadable copy aside, opens the last good one and says so', async () => {
    const place = memory();
    const states: SaveState[] = [];
    savingIn({ ...place, design: { ...demo(), name: 'Good' } }, states).changed();
    await settled(states);
    await savingIn(place).recover(); // a later visit reads it: it is the last good copy
    await vi.waitFor(() => expect(place.shelved.has('last-good')).toBe(true));
    place.shelved.set('design', { text: '{ broken', time: Date.now() + 10 });
    const found = await savingIn(place).recover();
    expect(found.design?.name).toBe('Good');
    expect(found.message).toContain('could not be read (not JSON)');
    expect(found.unreadable).toBe('{ broken');
    await vi.waitFor(() => expect(place.shelved.get('unreadable')).toMatchObject({ text: '{ broken' }));
  });

  it('drops a history that does not read back, not the design', async () => {
    const place = memory();
    const trail = { past: [{ label: 'x', state: {} }], future: [] };
    place.shelved.set('design', { text: JSON.stringify(demo()), time: 5, trail });
    const found = await savingIn(place).recover();
    expect(found.design).toEqual(demo());
    expect(found.trail).toBeNull();
  });

  it('says so when storage is full, and that it is saved once it works again', async () => {
    const place = memory();
    const write = place.shelf.write;
    let isFull = true;
    place.shelf.write = async (key, value) => {
      if (isFull) throw new DOMException('full', 'QuotaExceededError');
      await write(key, value);
    };
    const states: SaveState[] = [];
    const saving = savingIn({ shelf: place.shelf, notebook: null }, states);
    saving.changed();
    expect(await settled(states)).toEqual({
      kind: 'failed',
      message: 'This browser’s storage is full, so the design is not being kept. Save it as a file.',
    });
    isFull = false;
    saving.changed();
    expect((await settled(states))?.kind).toBe('saved');
  });

  it('falls back to the small storage when the database is blocked', async () => {
    const place = memory();
    const blocked = {
      read: () => Promise.reject(new Error('no')),
      write: () => Promise.reject(new Error('no')),
    };
    const states: SaveState[] = [];
    savingIn({ shelf: blocked, notebook: place.notebook }, states).changed();
    expect((await settled(states))?.kind).toBe('saved');
    const found = await savingIn({ shelf: blocked, notebook: place.notebook }).recover();
    expect(found.design).toEqual(demo());
  });
});

describe('design files', () => {
  it('names the file after the design', () => {
    expect(fileNameOf('Harbour sprint 74, curved')).toBe('harbour-sprint-74-curved.json');
    expect(fileNameOf('Flügel Nr. 3')).toBe('flügel-nr-3.json');
    expect(fileNameOf('../ ?')).toBe('design.json');
  });

  it('opens a file, and refuses broken and huge ones by name', async () => {
    const good = await openDesignFile(new File([JSON.stringify(demo())], 'good.json'), readTextLoosely);
    expect(good.ok).toBe(true);
    const broken = await openDesignFile(new File(['{'], 'broken.json'), readTextLoosely);
    expect(broken).toEqual({ ok: false, message: 'broken.json: not JSON' });
    const huge = await openDesignFile(new File(['x'.repeat(2_100_000)], 'huge.json'), readTextLoosely);
    expect(huge.ok ? '' : huge.message).toContain('2.1 MB');
  });
});
