import { describe, expect, it, vi } from 'vitest';
import { type Channel, KeptDesigns, type KeptStore } from '../../src/session/kept.ts';
import type { Notebook } from '../../src/session/storage.ts';
import { readDesign, writeDesign } from '../../src/solver/design/read.ts';
import { eventually } from '../support/eventually.ts';
import { memoryKept } from '../support/kept.ts';
import { memory } from '../support/memory.ts';
import { demo } from './designs.ts';

/** Tabs that hear one another, as the browser's channel does. */
function channels(): () => Channel {
  const listeners: ((event: MessageEvent) => void)[] = [];
  return () => {
    let mine: ((event: MessageEvent) => void) | null = null;
    return {
      postMessage: (data: unknown) => {
        for (const hear of listeners) if (hear !== mine) hear({ data } as MessageEvent);
      },
      addEventListener: (_: string, hear: unknown) => {
        mine = hear as (event: MessageEvent) => void;
        listeners.push(mine);
      },
    } as Channel;
  };
}

function shelf(
  kept: KeptStore = memoryKept(),
  channel: Channel | null = null,
  notebook: Notebook | null = null,
) {
  return new KeptDesigns({ kept, notebook, channel, read: readDesign, write: writeDesign });
}

const names = (of: KeptDesigns) => of.list.map(({ name }) => name);
const quiet = () => new Promise((resolve) => setTimeout(resolve));

describe('the shelf of kept designs', () => {
  it('holds a design with its name, and has it again after a reload', async () => {
    const store = memoryKept();
    const mine = shelf(store);
    const outcome = await mine.keep({ ...demo(), name: 'First' });
    expect(outcome.kind).toBe('kept');
    const again = shelf(store);
    await again.load();
    expect(names(again)).toEqual(['First']);
    expect(again.list[0]!.reading).toMatchObject({ ok: true, design: { name: 'First', wing: demo().wing } });
  });

  it('keeps nothing twice, and gives another design of the same name a number', async () => {
    const mine = shelf();
    const design = { ...demo(), name: 'Twin' };
    await mine.keep(design);
    expect((await mine.keep(design)).kind).toBe('known');
    await mine.keep({ ...design, brief: { ...design.brief, allUpMass: 80 } });
    expect(names(mine).sort()).toEqual(['Twin', 'Twin 2']);
  });

  it('calls it by another name, in the document too', async () => {
    const mine = shelf();
    const { kept } = await mine.keep(demo());
    expect(mine.rename(kept.id, '  ')).toContain('needs a name');
    expect(mine.rename(kept.id, 'x'.repeat(201))).toBe('Found 201 characters, allowed up to 200.');
    await mine.keep({ ...demo(), name: 'Outer bay' });
    expect(mine.rename(kept.id, ' Outer bay ')).toContain('stands on the shelf already');
    expect(mine.rename(kept.id, 'Harbour two')).toBeNull();
    expect(mine.find(kept.id)!.reading).toMatchObject({ ok: true, design: { name: 'Harbour two' } });
    expect(readDesign(mine.fileOf(mine.find(kept.id)!))).toMatchObject({ design: { name: 'Harbour two' } });
  });

  it('keeps marks and notes beside the document, and writes them into the file', async () => {
    const mine = shelf();
    const { kept } = await mine.keep(demo());
    mine.mark(kept.id, 'hold', 4);
    mine.mark(kept.id, 'pump', 2);
    mine.mark(kept.id, 'pump', null);
    mine.annotate(kept.id, 'Steady in chop.');
    const found = mine.find(kept.id)!;
    expect(found.text).toBe(kept.text);
    const file = readDesign(mine.fileOf(found));
    expect(file).toMatchObject({ design: { marks: { hold: 4 }, notes: { ride: 'Steady in chop.' } } });
    const other = shelf();
    const { kept: brought } = await other.keep(file.ok ? file.design : demo());
    expect(brought).toMatchObject({ marks: { hold: 4 }, notes: 'Steady in chop.', text: kept.text });
  });

  it('takes one off the shelf and brings it back', async () => {
    const store = memoryKept();
    const mine = shelf(store);
    const { kept } = await mine.keep(demo());
    mine.remove(kept.id);
    expect(names(mine)).toEqual([]);
    await quiet();
    const again = shelf(store);
    await again.load();
    expect(again.removed.map(({ id }) => id)).toEqual([kept.id]);
    again.bringBack(kept.id);
    expect(again.find(kept.id)!.text).toBe(kept.text);
  });

  it('forgets for good only what is off the shelf', async () => {
    const store = memoryKept();
    const mine = shelf(store);
    const { kept } = await mine.keep(demo());
    await mine.forget(kept.id);
    expect(mine.list).toHaveLength(1);
    mine.remove(kept.id);
    await mine.forget(kept.id);
    expect([mine.removed, await store.all()]).toEqual([[], []]);
  });

  it.each([
    ['text cut short', { name: 'Cut', kept: 1, text: '{"format": "downcurve-design", "ver' }],
    ['no text at all', { name: 'Other', kept: 1, something: [1, 2] }],
    ['no object', 42],
  ])('shows a damaged copy (%s), hands it out as found and never drops it', async (_, value) => {
    const store = memoryKept(new Map([['bad', value]]));
    const mine = shelf(store);
    await mine.load();
    const [bad] = mine.list;
    expect(bad!.reading.ok).toBe(false);
    const found = value instanceof Object && 'text' in value ? value.text : JSON.stringify(value);
    expect(mine.fileOf(bad!)).toBe(found);
    mine.remove('bad');
    await mine.forget('bad');
    expect(mine.removed).toHaveLength(1);
    await quiet();
    const again = shelf(store);
    await again.load();
    expect(again.removed[0]!.text).toBe(found);
  });

  it('lets tabs see one another’s changes and mix them', async () => {
    const store = memoryKept();
    const open = channels();
    const [one, other] = [shelf(store, open()), shelf(store, open())];
    const { kept } = await one.keep(demo());
    await eventually(() => expect(other.list).toHaveLength(1));
    other.mark(kept.id, 'glide', 5);
    one.annotate(kept.id, 'Both of us');
    await eventually(() => {
      for (const tab of [one, other])
        expect(tab.find(kept.id)).toMatchObject({ marks: { glide: 5 }, notes: 'Both of us' });
    });
  });

  it('has the same design object as long as text and name are the same', async () => {
    const store = memoryKept();
    const mine = shelf(store);
    const { kept } = await mine.keep(demo());
    const before = mine.find(kept.id)!.reading;
    mine.annotate(kept.id, 'nothing else');
    await mine.load();
    expect(mine.find(kept.id)!.reading).toBe(before);
  });

  it('says when the browser refuses, holds the design in the page, and stores it once it may', async () => {
    const store = memoryKept();
    let isFull = true;
    const full: KeptStore = {
      ...store,
      change: async (id, change) => {
        if (isFull) throw new DOMException('no room', 'QuotaExceededError');
        await store.change(id, change);
      },
    };
    const mine = shelf(full);
    const outcome = await mine.keep(demo());
    expect(outcome).toMatchObject({ kind: 'unstored', why: expect.stringContaining('storage is full') });
    expect(mine.list).toMatchObject([{ isStored: false }]);
    await mine.load();
    expect(mine.list).toHaveLength(1);
    isFull = false;
    mine.annotate(outcome.kept.id, 'room again');
    await eventually(() => expect(mine.list).toMatchObject([{ isStored: true }]));
    const again = shelf(store);
    await again.load();
    expect(again.list).toMatchObject([{ notes: 'room again', text: outcome.kept.text }]);
  });

  it('says when the browser blocks the database', async () => {
    const blocked: KeptStore = { ...memoryKept(), all: () => Promise.reject(new Error('blocked')) };
    const mine = shelf(blocked);
    await mine.load();
    expect(mine.trouble).toContain('does not let designs be kept');
  });

  it('keeps where the address is without encryption', async () => {
    const { getRandomValues } = crypto;
    vi.stubGlobal('crypto', { getRandomValues: getRandomValues.bind(crypto) });
    expect((await shelf().keep(demo())).kind).toBe('kept');
    vi.unstubAllGlobals();
  });
});

describe('two tabs that do not hear one another', () => {
  /** Both have the same design on their shelves. */
  async function two(store = memoryKept(), refusing: KeptStore = store) {
    const one = shelf(refusing);
    const { kept } = await one.keep(demo());
    const other = shelf(store);
    await other.load();
    return { one, other, id: kept.id };
  }
  async function held(store: KeptStore) {
    const next = shelf(store);
    await next.load();
    return next.list[0];
  }

  it('both give marks', async () => {
    const store = memoryKept();
    const { one, other, id } = await two(store);
    one.mark(id, 'hold', 4);
    one.mark(id, 'pump', 1);
    other.mark(id, 'glide', 5);
    one.mark(id, 'pump', null);
    await quiet();
    expect((await held(store))?.marks).toEqual({ hold: 4, glide: 5 });
  });

  it('both count when a change of one was refused at first', async () => {
    const store = memoryKept();
    let isFull = false;
    const { one, other, id } = await two(store, {
      ...store,
      change: (id, change) => (isFull ? Promise.reject(new Error('full')) : store.change(id, change)),
    });
    isFull = true;
    one.annotate(id, 'mine');
    await quiet();
    isFull = false;
    other.mark(id, 'glide', 5);
    await quiet();
    one.mark(id, 'hold', 4);
    await quiet();
    expect(await held(store)).toMatchObject({ marks: { hold: 4, glide: 5 }, notes: 'mine' });
  });

  it('do not take away for good what the other has brought back', async () => {
    const store = memoryKept();
    const { one, other, id } = await two(store);
    one.remove(id);
    await other.load();
    other.bringBack(id);
    await one.forget(id);
    expect((await held(store))?.id).toBe(id);
    expect(names(one)).toEqual([demo().name]);
  });

  it('leave what a newer version of the page has put in a record', async () => {
    const inside = new Map<string, unknown>();
    const { one, id } = await two(memoryKept(inside));
    const newer = inside.get(id) as { marks: object };
    inside.set(id, { ...newer, photos: [1], marks: { ...newer.marks, noise: 3 } });
    one.annotate(id, 'quiet');
    one.mark(id, 'hold', 4);
    await quiet();
    expect(inside.get(id)).toMatchObject({ photos: [1], marks: { noise: 3, hold: 4 }, notes: 'quiet' });
  });
});

describe('a page that is left before the database has a change', () => {
  const stuck = () => new Promise<never>(() => {});

  it('has kept the design all the same, with what was done to it', async () => {
    const { notebook, noted } = memory();
    const store = memoryKept();
    const left = shelf({ ...store, change: stuck }, null, notebook);
    void left.keep({ ...demo(), name: 'Just kept' });
    const [{ id } = { id: '' }] = left.list;
    left.annotate(id, 'typed as the page went');
    left.mark(id, 'hold', 3);
    left.mark(id, 'pump', 3);
    left.mark(id, 'pump', null);
    const next = shelf(store, null, notebook);
    await next.load();
    const wanted = { id, name: 'Just kept', notes: 'typed as the page went', marks: { hold: 3 } };
    expect(next.list).toMatchObject([wanted]);
    expect(noted.size).toBe(0); // the database has it
    const last = shelf(store);
    await last.load();
    expect(last.list).toMatchObject([wanted]);
  });

  it('leaves nothing behind when the database has it, and takes nothing from a later change', async () => {
    const { notebook, noted } = memory();
    const store = memoryKept();
    const mine = shelf(store, null, notebook);
    const { kept } = await mine.keep(demo());
    const { change } = store;
    let answer = () => {};
    store.change = async (id, make) => {
      await change(id, make);
      await new Promise<void>((resolve) => {
        answer = resolve;
      });
    };
    mine.annotate(kept.id, 'first');
    await quiet();
    store.change = stuck;
    mine.annotate(kept.id, 'second');
    answer();
    await quiet();
    store.change = change;
    const next = shelf(store, null, notebook);
    await next.load();
    expect(next.list).toMatchObject([{ notes: 'second' }]);
    expect(noted.size).toBe(0);
  });

  it('keeps what two pages were doing to one design', async () => {
    const { notebook } = memory();
    const store = memoryKept();
    const { kept } = await shelf(store).keep(demo());
    const pages = [0, 1].map(() => shelf({ ...store, change: stuck }, null, notebook));
    for (const page of pages) await page.load();
    pages[0]!.mark(kept.id, 'hold', 4);
    pages[1]!.annotate(kept.id, 'from the other');
    const next = shelf(store, null, notebook);
    await next.load();
    expect(next.list).toMatchObject([{ marks: { hold: 4 }, notes: 'from the other' }]);
  });

  it('gives the database the later of two notes when both were refused', async () => {
    const { notebook, noted } = memory();
    const store = memoryKept();
    const { kept } = await shelf(store).keep(demo());
    const full: KeptStore = { ...store, change: () => Promise.reject(new Error('full')) };
    vi.useFakeTimers({ toFake: ['Date'] });
    for (const notes of ['first', 'second', 'third']) {
      vi.setSystemTime(Date.now() + 1000);
      const page = shelf(full, null, notebook);
      await page.load();
      page.annotate(kept.id, notes);
    }
    vi.useRealTimers();
    const backwards = new Map([...noted].reverse());
    noted.clear();
    for (const [place, text] of backwards) noted.set(place, text);
    const next = shelf(store, null, notebook);
    await next.load();
    expect(next.list).toMatchObject([{ notes: 'third' }]);
  });

  it('takes nothing back from what another tab has done since to what it kept', async () => {
    const { notebook } = memory();
    const store = memoryKept();
    const untold: KeptStore = { ...store, change: (id, make) => store.change(id, make).then(stuck) };
    void shelf(untold, null, notebook).keep(demo());
    await quiet();
    const other = shelf(store);
    await other.load();
    other.annotate(other.list[0]!.id, 'from the other');
    const next = shelf(store, null, notebook);
    await next.load();
    expect(next.list).toMatchObject([{ notes: 'from the other' }]);
  });

  it('is stood in for by the small storage where the database refuses', async () => {
    const { notebook } = memory();
    const refuse = () => Promise.reject(new DOMException('no', 'QuotaExceededError'));
    const full: KeptStore = { ...memoryKept(), change: refuse };
    expect((await shelf(full, null, notebook).keep(demo())).kind).toBe('kept');
    for (const blocked of [full, { ...full, all: refuse }]) {
      const next = shelf(blocked, null, notebook);
      await next.load();
      expect(names(next)).toEqual([demo().name]);
    }
  });

  it('passes over a damaged note', async () => {
    const { notebook, noted } = memory();
    const store = memoryKept();
    const { kept } = await shelf(store, null, notebook).keep(demo());
    noted.set(`downcurve.kept.${kept.id}.page`, '{ torn');
    noted.set('downcurve.kept.other.page', JSON.stringify({ notes: 'of one that is gone', text: 7 }));
    const next = shelf(store, null, notebook);
    await next.load();
    expect(next.list).toMatchObject([{ id: kept.id, text: kept.text }]);
  });
});
