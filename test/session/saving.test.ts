import { describe, expect, it } from 'vitest';
import { History, type Trail } from '../../src/session/history.ts';
import { pause } from '../../src/session/pause.ts';
import { type Recovery, recover } from '../../src/session/recovery.ts';
import { type SaveState, Saving } from '../../src/session/saving.ts';
import { loneTab } from '../../src/session/tabs.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { eventually } from '../support/eventually.ts';
import { type Memory, memory } from '../support/memory.ts';
import { demo, readTextLoosely } from './designs.ts';

const named = (name: string): Design => ({ ...demo(), name });

/** A tab with a history of its own, kept in these storages; edits are names. */
class Desk {
  readonly states: SaveState[] = [];
  readonly #saving: Saving;
  #history: History<Design>;
  #design: Design;

  constructor({ shelf, notebook }: Memory, found: Partial<Recovery> = {}) {
    this.#design = found.design ?? demo();
    this.#history = new History((found.trail ?? undefined) as Trail<Design> | undefined);
    this.#saving = new Saving({
      shelf,
      notebook,
      id: found.id ?? 'first',
      time: found.time ?? 0,
      base: found.base ?? null,
      write: (design) => JSON.stringify(design),
      present: () => ({ design: this.#design, trail: this.trail, line: 'Demo' }),
      onState: (state) => this.states.push(state),
      delay: 0,
      retry: 1,
    });
  }

  get trail(): Trail<Design> {
    return this.#history.trail(this.#design);
  }

  edit(name: string): void {
    this.#history.begin(`to ${name}`, this.#design);
    this.#design = named(name);
    this.#history.end(this.#design);
    this.#saving.settled();
  }

  drag(name: string): void {
    this.#history.begin('drag', this.#design);
    this.#design = named(name);
    this.#saving.changed();
  }

  undo(): void {
    this.#design = this.#history.undo(this.#design) ?? this.#design;
    this.#saving.settled();
  }

  hide(): void {
    this.#saving.flush();
  }

  async rest(): Promise<SaveState | undefined> {
    await eventually(() => expect(this.states.at(-1)?.kind).not.toBe('saving'));
    return this.states.at(-1);
  }
}

/** A tab whose first edit the database has. */
async function keptOne(): Promise<{ place: Memory; desk: Desk }> {
  const place = memory();
  const desk = new Desk(place);
  desk.edit('One');
  await desk.rest();
  return { place, desk };
}

const find = ({ shelf, notebook }: Memory, patience = 3000) =>
  recover({
    shelf,
    notebook,
    tabs: loneTab(),
    read: readTextLoosely,
    patience,
  });

const labels = ({ trail }: Recovery) => [
  trail?.past.map(({ label }) => label),
  trail?.future.map(({ label }) => label),
];
const stuck = () => new Promise<never>(() => {});
const refuse = (name: string) => () => Promise.reject(new DOMException('no', name));

describe('saving', () => {
  it('keeps the design and its history', async () => {
    const place = memory();
    const desk = new Desk(place);
    for (const name of ['One', 'Two', 'Three']) desk.edit(name);
    desk.undo();
    expect(desk.states[0]?.kind).toBe('saving');
    expect((await desk.rest())?.kind).toBe('saved');
    expect(place.noted.size).toBe(0); // the database has it
    const found = await find(place);
    expect(found.design?.name).toBe('Two');
    expect(labels(found)).toEqual([['to One', 'to Two'], ['to Three']]);
    expect(found.trail?.past[1]?.state).toMatchObject({ name: 'One' });
    expect(found.message).toBeNull();
  });

  it('finds nothing where nothing was kept', async () => {
    expect(await find(memory())).toMatchObject({ design: null, message: null, left: [] });
  });

  it('keeps each settled edit with its step though the page dies before the database has it', async () => {
    const { place, desk } = await keptOne();
    place.shelf.write = stuck;
    desk.edit('Two');
    expect(place.noted.get('downcurve.pending')).not.toContain('to One'); // which the database has
    desk.edit('Three');
    desk.undo();
    const found = await find(place);
    expect(found.design?.name).toBe('Two');
    expect(labels(found)).toEqual([['to One', 'to Two'], ['to Three']]);
  });

  it('keeps every step though the page dies when a write is done but has not been told of', async () => {
    const { place, desk } = await keptOne();
    const { write } = place.shelf;
    place.shelf.write = async (key, value) => {
      await write(key, value);
      return stuck();
    };
    desk.edit('Two');
    desk.edit('Three');
    desk.edit('Four');
    desk.undo();
    expect(place.shelved.get('design')).toMatchObject({ trail: { past: [{}, { label: 'to Two' }] } });
    const found = await find(place);
    expect(found.design?.name).toBe('Three');
    expect(labels(found)).toEqual([['to One', 'to Two', 'to Three'], ['to Four']]);
    expect(found.trail?.future[0]?.state).toMatchObject({ name: 'Four' });
  });

  it('keeps what was noted while a write was on its way that the database then refused', async () => {
    const place = memory();
    const desk = new Desk(place);
    let refuseIt = (_why: Error) => {};
    place.shelf.write = () =>
      new Promise((_, reject) => {
        refuseIt = reject;
      });
    desk.edit('One');
    desk.edit('Two');
    place.shelf.write = stuck;
    refuseIt(new DOMException('no', 'UnknownError'));
    await pause();
    const found = await find(place);
    expect(found.design?.name).toBe('Two');
    expect(labels(found)).toEqual([['to One', 'to Two'], []]);
  });

  it('keeps a drag whose write is on its way when the page hides', async () => {
    const { place, desk } = await keptOne();
    place.shelf.write = stuck;
    desk.drag('Half way');
    await pause(5);
    desk.hide();
    const found = await find(place);
    expect(found.design?.name).toBe('Half way');
    expect(labels(found)).toEqual([['to One', 'drag'], []]);
  });

  it('goes on from such a note: a later one builds on what the database holds', async () => {
    const place = memory();
    const first = new Desk(place);
    first.edit('One');
    await first.rest();
    const write = place.shelf.write;
    place.shelf.write = stuck;
    first.edit('Two');
    const second = new Desk(place, await find(place));
    second.edit('Three');
    const found = await find(place);
    expect(found.design?.name).toBe('Three');
    expect(labels(found)).toEqual([['to One', 'to Two', 'to Three'], []]);
    place.shelf.write = write;
  });

  it('takes a note that builds on an older copy as one step from the copy there is', async () => {
    const { place, desk } = await keptOne();
    place.shelf.write = stuck;
    desk.edit('Two');
    const copy = place.shelved.get('design') as { time: number };
    copy.time += 0.5; // as if the page had died between the write and the next note
    const found = await find(place);
    expect(found.design?.name).toBe('Two');
    expect(labels(found)).toEqual([['to One', 'to Two'], []]);
    expect(found.trail?.past[1]?.state).toMatchObject({ name: 'One' });
  });

  it('keeps the newest sixty steps, across notes and copies', async () => {
    const place = memory();
    const desk = new Desk(place);
    for (let k = 1; k <= 70; k++) desk.edit(`${k}`);
    await desk.rest();
    place.shelf.write = stuck;
    desk.edit('71');
    const found = await find(place);
    expect(found.trail?.past).toHaveLength(60);
    expect(found.trail?.past[0]?.label).toBe('to 12');
    expect(found.trail?.past[59]).toMatchObject({ label: 'to 71', state: { name: '70' } });
    expect(place.noted.get('downcurve.pending')!.length).toBeLessThan(3 * JSON.stringify(demo()).length);
  });

  it('keeps a drag under way as the step it would be', async () => {
    const place = memory();
    const desk = new Desk(place);
    desk.edit('One');
    desk.drag('Half way');
    await desk.rest();
    const found = await find(place);
    expect(found.design?.name).toBe('Half way');
    expect(labels(found)).toEqual([['to One', 'drag'], []]);
    expect(found.trail?.past[1]?.state).toMatchObject({ name: 'One' });
  });

  it('waits for the database through a time in which the machine stood still', async () => {
    const { place } = await keptOne();
    const { keys } = place.shelf;
    place.shelf.keys = async () => {
      await pause(30);
      return keys();
    };
    const finding = find(place, 20);
    await pause();
    for (const end = performance.now() + 60; performance.now() < end; );
    expect(await finding).toMatchObject({ design: { name: 'One' }, message: null });
  });

  it('prefers the newer copy, whichever storage it lies in', async () => {
    const place = memory();
    const desk = new Desk(place);
    desk.edit('Newer');
    await desk.rest();
    place.noted.set('downcurve.pending', JSON.stringify({ text: JSON.stringify(demo()), time: 1 }));
    expect((await find(place)).design?.name).toBe('Newer');
  });
});

describe('what cannot be read', () => {
  async function keepTwice(place: Memory): Promise<void> {
    const desk = new Desk(place);
    desk.edit('Good');
    await desk.rest();
    await find(place); // a later visit reads it: it is the last good copy
    await eventually(() => expect(place.shelved.has('last-good')).toBe(true));
  }

  it.each<[string, string | { text?: string; time: number }, string]>([
    ['a broken document', { text: '{ broken', time: 9e15 }, 'not JSON'],
    ['no copy at all', 'nonsense', 'it is no copy of a design'],
    ['a copy without a text', { time: 9e15 }, 'it is no copy of a design'],
    [
      'a version that is none',
      { version: 'x', text: '{}', time: 9e15 } as { time: number },
      'its version is no number',
    ],
    [
      'a newer record',
      { version: 3, text: '{}', time: 9e15, line: '' } as { time: number },
      'a newer Downcurve kept it (record 3, allowed up to 2)',
    ],
  ])('opens the last good copy for %s, says so, and leaves the other', async (_what, value, reason) => {
    const place = memory();
    await keepTwice(place);
    place.shelved.set('design', value);
    const found = await find(place);
    expect(found.design?.name).toBe('Good');
    expect(found.message).toBe(
      `The copy saved last could not be read (${reason}). It has been set aside and the copy before it is open.`,
    );
    expect(found.unreadable).toContain(typeof value === 'string' || !value.text ? '' : value.text);
    const desk = new Desk(place, found);
    desk.edit('Next');
    await desk.rest();
    expect(place.shelved.get('design')).toEqual(value);
  });

  it('sets a broken note aside under a key of its own and opens the copy', async () => {
    const place = memory();
    await keepTwice(place);
    place.noted.set('downcurve.pending', '{ broken');
    const found = await find(place);
    expect(found).toMatchObject({ id: 'first', design: { name: 'Good' }, unreadable: '{ broken' });
    const kept = [...place.shelved].find(([key]) => key.startsWith('unreadable.'));
    expect(kept?.[1]).toBe('{ broken');
  });

  it('leaves it where it is when it cannot be set aside, and writes elsewhere', async () => {
    const place = memory();
    await keepTwice(place);
    place.noted.set('downcurve.pending', '{ broken');
    const { write } = place.shelf;
    place.shelf.write = async (key, value) => {
      if (key.startsWith('unreadable.')) throw new DOMException('full', 'QuotaExceededError');
      await write(key, value);
    };
    const found = await find(place);
    expect(found).toMatchObject({ design: { name: 'Good' }, unreadable: '{ broken' });
    const desk = new Desk(place, found);
    desk.edit('Next');
    await desk.rest();
    expect(place.noted.get('downcurve.pending')).toBe('{ broken');
    expect((await find(place)).left.map(({ design }) => design.name)).toEqual(['Next']); // and is there as well
  });

  it('drops a history that is none, not the design', async () => {
    const place = memory();
    const trail = { past: [{ label: 'x', state: 7 }], future: [] };
    place.shelved.set('design', { text: JSON.stringify(demo()), time: 5, trail });
    const found = await find(place);
    expect(found.design).toEqual(demo());
    expect(found.trail).toBeNull();
  });

  it.each([
    ['refuses', refuse('UnknownError')],
    ['does not answer', stuck],
  ])('says so where the database %s, and never writes over what may lie there', async (_what, keys) => {
    const place = memory();
    await keepTwice(place);
    const before = structuredClone(place.shelved.get('design'));
    const found = await find({ ...place, shelf: { ...place.shelf, keys } }, 20);
    expect(found.design).toBeNull();
    expect(found.message).toContain('storage is blocked or damaged');
    const desk = new Desk(place, found);
    desk.edit('Meanwhile');
    await desk.rest();
    expect(place.shelved.get('design')).toEqual(before);
  });
});

describe('a storage that refuses', () => {
  it.each([
    [
      'full',
      'QuotaExceededError',
      'This browser’s storage is full, so the design is not being saved. Save it as a file.',
    ],
    ['blocked', 'InvalidStateError', 'This browser does not let the design be saved. Save it as a file.'],
  ])('is said when it is %s, and tried again until it works', async (_what, name, message) => {
    const place = memory();
    const write = place.shelf.write;
    place.shelf.write = refuse(name);
    place.notebook.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    const desk = new Desk(place);
    desk.edit('Kept later');
    expect(await desk.rest()).toEqual({ kind: 'failed', message });
    place.shelf.write = write;
    await eventually(() => expect(desk.states.at(-1)?.kind).toBe('saved')); // nothing more was done
    expect((await find(place)).design?.name).toBe('Kept later');
  });

  it('is stood in for by the small one, history and all', async () => {
    const place = memory();
    const blocked = { ...place.shelf, keys: refuse('UnknownError'), write: refuse('UnknownError') };
    const desk = new Desk({ ...place, shelf: blocked });
    desk.edit('One');
    desk.edit('Two');
    expect((await desk.rest())?.kind).toBe('saved');
    const found = await find({ ...place, shelf: blocked });
    expect(found).toMatchObject({ id: 'first', design: { name: 'Two' }, message: null });
    expect(labels(found)).toEqual([['to One', 'to Two'], []]);
  });

  it('is stood in for by the design alone where there is no room for its history', async () => {
    const { place, desk } = await keptOne();
    const { setItem } = place.notebook;
    place.notebook.setItem = (key, value) => {
      if (!value.includes('"since":null')) throw new DOMException('full', 'QuotaExceededError');
      setItem(key, value);
    };
    place.shelf.write = stuck;
    desk.edit('Two');
    const found = await find(place);
    expect(found.design?.name).toBe('Two');
    expect(labels(found)).toEqual([['to One', 'latest changes'], []]);
  });

  it('is told that it keeps the design alone, and tried again until it has the history', async () => {
    const place = memory();
    const { setItem } = place.notebook;
    const { write } = place.shelf;
    place.notebook.setItem = (key, value) => {
      if (!value.includes('"since":null')) throw new DOMException('full', 'QuotaExceededError');
      setItem(key, value);
    };
    place.shelf.write = refuse('QuotaExceededError');
    const desk = new Desk(place);
    desk.edit('One');
    desk.edit('Two');
    expect(await desk.rest()).toEqual({
      kind: 'failed',
      message: 'This browser’s storage is full: the design is kept, the steps that led to it are not.',
    });
    expect((await find(place)).design?.name).toBe('Two');
    place.shelf.write = write;
    await eventually(() => expect(desk.states.at(-1)?.kind).toBe('saved')); // nothing more was done
    expect(labels(await find(place))).toEqual([['to One', 'to Two'], []]);
  });
});
