import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Channel } from '../../src/session/neighbours.ts';
import { Session } from '../../src/session/session.ts';
import type { Tabs } from '../../src/session/tabs.ts';
import type { Design } from '../../src/solver/design/document.ts';
import { writeDesign } from '../../src/solver/design/read.ts';
import { eventually } from '../support/eventually.ts';
import { memoryKept } from '../support/kept.ts';
import { memory } from '../support/memory.ts';
import { demo, readLoosely, readTextLoosely } from './designs.ts';

const none = () => {
  throw new Error('none here');
};

/** One browser: its storages, its tabs' locks, and the channel between them. */
class Browser {
  readonly place = memory();
  readonly #held = new Set<string>();
  readonly #listeners = new Map<Tab, (message: unknown) => void>();

  /** Opens a tab; with the name it had before it was reloaded, or its original's where it is a duplicate. */
  async open(before: string | null = null): Promise<Tab> {
    const tab = new Tab(this);
    const hold = (id: string) => {
      if (this.#held.has(id)) return false;
      this.#held.add(id);
      tab.id = id;
      return true;
    };
    const tabs: Tabs = {
      own: async () => (before === null ? null : { id: before, isHeld: hold(before) }),
      take: async (id) => hold(id),
      whileFree: async (id, work) => {
        if (this.#held.has(id)) return;
        this.#held.add(id);
        await work().finally(() => this.#held.delete(id));
      },
      held: async () => new Set(this.#held),
    };
    const channel: Channel = {
      post: (message) => {
        for (const [other, listener] of this.#listeners)
          if (other !== tab) listener(structuredClone(message));
      },
      listen: (listener) => this.#listeners.set(tab, listener),
    };
    tab.session = await Session.open({
      ...this.place,
      demo: { ...demo(), name: 'Demo' },
      read: readTextLoosely,
      readValue: readLoosely,
      write: writeDesign,
      tabs,
      tabChannel: channel,
      kept: memoryKept(),
      channel: null,
      makeWorker: none,
      makeExportWorker: none,
      loadSolve: () => new Promise(() => {}),
      loadStudies: none,
      loadExport: none,
    });
    return tab;
  }

  close(tab: Tab): void {
    this.#held.delete(tab.id);
    this.#listeners.delete(tab);
  }
}

class Tab {
  id = '';
  session!: Session;
  constructor(readonly browser: Browser) {}

  /** A new span, so that the design changes and its name does not. */
  async edit(length: number, label?: string): Promise<void> {
    this.change(length, label);
    await this.rest();
  }

  change(length: number, label = `length ${length}`): void {
    const refusal = this.session.edit({
      changes: [{ path: 'wing.length.value', value: length }],
      label,
      phase: 'settled',
    });
    expect(refusal).toBeNull();
  }

  async rest(): Promise<void> {
    while (this.session.keeping.state.kind !== 'saved') await new Promise((resolve) => setTimeout(resolve));
  }
  get length(): number {
    return this.session.design.wing.length.value;
  }
  get offered(): number | undefined {
    return (this.session.keeping.elsewhere?.document as Design | undefined)?.wing.length.value;
  }
  get left(): number[] {
    return this.session.keeping.left.map(({ design }) => design.wing.length.value);
  }
  /** Everything that undo and redo can bring back, and what is on screen. */
  get reachable(): number[] {
    const { past, future } = this.session.store.trail();
    return [...past, ...future].map(({ state }) => state.wing.length.value).concat(this.length);
  }
}

describe('two tabs with the same design', () => {
  it('notice each other’s edits and keep their own', async () => {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    await one.edit(0.8);
    expect(two.offered).toBe(0.8);
    expect(two.session.keeping.elsewhere?.label).toBe('length 0.8');
    expect(two.length).toBe(demo().wing.length.value);
    await two.edit(0.9);
    expect(one.offered).toBe(0.9);
    expect([one.length, two.length]).toEqual([0.8, 0.9]);
  });

  it('can take the other’s version as one step that undo takes back', async () => {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    await one.edit(0.8);
    await two.edit(0.9);
    one.session.takeElsewhere();
    expect(one.length).toBe(0.9);
    expect([one.offered, two.offered]).toEqual([undefined, undefined]); // both are the same now
    expect(one.session.store.undoLabel).toBe('take the other tab’s version');
    one.session.store.undo();
    expect(one.length).toBe(0.8);
    expect(two.offered).toBe(0.8);
  });

  it('can go on with their own, and are not asked again until both were the same', async () => {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    await one.edit(0.8);
    two.session.keeping.declineElsewhere();
    await one.edit(0.85);
    expect(two.offered).toBeUndefined();
    one.session.store.undo();
    one.session.store.undo(); // back where the other is
    await one.edit(0.7);
    expect(two.offered).toBe(0.7);
  });

  it('withdraw the offer when the edit is undone, or made here as well', async () => {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    await one.edit(0.8);
    one.session.store.undo();
    expect(two.offered).toBeUndefined();
    one.session.store.redo();
    await two.edit(0.8);
    expect(two.offered).toBeUndefined();
  });

  it('say nothing of a design that is another one', async () => {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    one.session.openDesign({ ...demo(), name: 'Another' }, 'open a file');
    await one.edit(0.8);
    expect(two.offered).toBeUndefined();
    two.session.openDesign({ ...demo(), name: 'Another' }, 'open a file');
    await one.edit(0.81);
    expect(two.offered).toBe(0.81);
  });

  it('pass over what is no message of theirs', async () => {
    const browser = new Browser();
    const tab = await browser.open();
    const strange = [null, 'x', {}, { version: 2, kind: 'tell' }, { version: 1, kind: 'tell', tab: 'x' }];
    let hear: (message: unknown) => void = () => {};
    const { Neighbours } = await import('../../src/session/neighbours.ts');
    const heard: unknown[] = [];
    new Neighbours({
      channel: {
        post: () => {},
        listen: (listener) => {
          hear = listener;
        },
      },
      tab: 'own',
      present: () => ({ design: tab.session.design, line: 'Demo', label: null }),
      onChange: () => heard.push(1),
    });
    for (const message of strange) hear(message);
    hear({ version: 1, kind: 'tell', tab: 'x', line: 'Demo', label: null, document: 'x' });
    hear({ version: 1, kind: 'tell', tab: 'own', line: 'Demo', label: null, document: demo() });
    expect(heard).toEqual([]);
  });
});

describe('a tab that is opened', () => {
  it('shows the newest design, with its history, and writes a copy of its own', async () => {
    const browser = new Browser();
    const one = await browser.open();
    await one.edit(0.8);
    const two = await browser.open();
    expect(two.length).toBe(0.8);
    expect(two.session.store.undoLabel).toBe('length 0.8');
    await two.edit(0.9);
    await one.edit(0.7);
    browser.close(one);
    browser.close(two);
    expect((await browser.open(one.id)).length).toBe(0.7); // each reloaded
    expect((await browser.open(two.id)).length).toBe(0.9);
  });

  it('as a duplicate shows its original’s design though another tab’s is newer', async () => {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    await one.edit(0.8);
    await two.edit(0.9);
    const copy = await browser.open(one.id);
    expect(copy.id).not.toBe(one.id);
    expect(copy.length).toBe(0.8);
    await copy.edit(0.85);
    browser.close(one);
    expect((await browser.open(one.id)).length).toBe(0.8);
  });

  it('takes up the copy of a closed tab and leaves none behind', async () => {
    const browser = new Browser();
    for (const length of [0.8, 0.81, 0.82]) {
      const tab = await browser.open();
      await tab.edit(length);
      browser.close(tab);
    }
    const copies = [...browser.place.shelved.keys()].filter((key) => key.startsWith('design'));
    expect(copies).toHaveLength(1);
    expect((await browser.open()).left).toEqual([]);
  });

  it('is offered what other closed tabs have left, and opens it as a step', async () => {
    const browser = new Browser();
    const [one, two, three] = [await browser.open(), await browser.open(), await browser.open()];
    await one.edit(0.8);
    await two.edit(0.9);
    await three.edit(0.7);
    for (const tab of [one, two, three]) browser.close(tab);
    const later = await browser.open();
    expect(later.length).toBe(0.7);
    expect(later.left).toEqual([0.9, 0.8]);
    later.session.keeping.hideLeft(); // not now: still there at the next visit
    browser.close(later);
    const next = await browser.open();
    expect(next.left).toEqual([0.9, 0.8]);
    next.session.openLeft();
    expect(next.length).toBe(0.9);
    expect(next.session.store.undoLabel).toBe('open what another tab left');
    await next.rest();
    browser.close(next);
    const last = await browser.open();
    expect(last.left).toEqual([0.8]);
    expect(last.reachable).toContain(0.7);
  });
});

describe('what a closed tab has left', () => {
  /** A browser whose second tab made a step of its own, took the first one's design and was closed; then the first. */
  async function twoClosed() {
    const browser = new Browser();
    const [one, two] = [await browser.open(), await browser.open()];
    await two.edit(0.9);
    await one.edit(0.8);
    two.session.takeElsewhere();
    await two.rest();
    await one.edit(0.7);
    browser.close(two);
    browser.close(one);
    return { browser, two };
  }
  const copyOf = (browser: Browser, id: string) => browser.place.shelved.get(`design.${id}`);

  it('is taken up with its steps', async () => {
    const { browser, two } = await twoClosed();
    const later = await browser.open();
    await later.rest();
    await eventually(() => expect(copyOf(browser, two.id)).toBeUndefined());
    expect(later.reachable).toContain(0.9);
  });

  it('stays while the small storage alone has taken the design', async () => {
    const { browser, two } = await twoClosed();
    const { shelf, notebook } = browser.place;
    shelf.write = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
    const { setItem } = notebook;
    notebook.setItem = (key, value) => {
      if (!value.includes('"since":null')) throw new DOMException('full', 'QuotaExceededError');
      setItem(key, value);
    };
    const later = await browser.open();
    await eventually(() => expect(later.session.keeping.state.kind).not.toBe('saving'));
    expect(copyOf(browser, two.id)).toBeDefined();
  });

  it('stays where part of it cannot be read', async () => {
    const { browser, two } = await twoClosed();
    const newer = JSON.stringify({ version: 99, text: '{}', time: 9e15, line: '' });
    browser.place.noted.set(`downcurve.pending.${two.id}`, newer);
    const later = await browser.open();
    await later.edit(0.6);
    expect(browser.place.noted.get(`downcurve.pending.${two.id}`)).toBe(newer);
    expect(copyOf(browser, two.id)).toBeDefined();
  });

  it('stays when its tab has come back before it was forgotten', async () => {
    const { browser, two } = await twoClosed();
    const { shelf } = browser.place;
    const { write } = shelf;
    let go = () => {};
    const slow = new Promise<void>((resolve) => {
      go = resolve;
    });
    shelf.write = (key, value) => slow.then(() => write(key, value));
    const later = await browser.open();
    shelf.write = write;
    const back = await browser.open(two.id);
    expect(back.id).toBe(two.id);
    await back.edit(0.65);
    browser.close(back);
    go();
    await later.rest();
    browser.close(later);
    expect((await browser.open(two.id)).length).toBe(0.65);
  });

  it('is opened with all its steps when its tab saved and noted while it was being looked at', async () => {
    const browser = new Browser();
    const one = await browser.open();
    await one.edit(0.8);
    const { shelf } = browser.place;
    const { read, write } = shelf;
    shelf.read = async (key) => {
      const found = await read(key);
      shelf.read = read;
      await one.edit(0.9);
      shelf.write = () => new Promise(() => {});
      one.change(0.95);
      browser.close(one);
      shelf.write = write;
      return found;
    };
    const later = await browser.open();
    expect(later.length).toBe(0.95);
    expect(later.reachable).toContain(0.9);
  });

  it('is opened as it is when its tab went while it was being looked at', async () => {
    const browser = new Browser();
    const one = await browser.open();
    await one.edit(0.8);
    const { shelf } = browser.place;
    const { read } = shelf;
    shelf.read = async (key) => {
      const found = await read(key);
      shelf.read = read;
      await one.edit(0.9);
      browser.close(one);
      return found;
    };
    const later = await browser.open();
    expect(later.length).toBe(0.9);
    await later.edit(0.7);
    expect(later.reachable).toContain(0.9);
  });
});

it('no edit is ever lost, whatever tabs do', async () => {
  const act = fc.record({
    what: fc.constantFrom(
      'open',
      'edit',
      'edit',
      'edit',
      'close',
      'reload',
      'duplicate',
      'take',
      'decline',
      'left',
    ),
    tab: fc.nat(3),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 5, maxLength: 30 }), async (acts) => {
      const browser = new Browser();
      const open: Tab[] = [await browser.open()];
      const made: number[] = [];
      for (const { what, tab: k } of acts) {
        const tab = open[k % Math.max(open.length, 1)];
        if (what === 'open' || !tab) open.push(await browser.open());
        else if (what === 'edit') {
          made.push((500 + made.length) / 1000);
          await tab.edit(made.at(-1)!);
        } else if (what === 'take') tab.session.takeElsewhere();
        else if (what === 'left') tab.session.openLeft();
        else if (what === 'decline') tab.session.keeping.declineElsewhere();
        else if (what === 'duplicate') open.push(await browser.open(tab.id));
        else {
          browser.close(tab);
          open.splice(open.indexOf(tab), 1);
          if (what === 'reload') open.push(await browser.open(tab.id));
        }
        await tab?.rest();
      }
      for (const tab of open) browser.close(tab);
      // Open what was left, one after the other; the visit after that has taken its steps up.
      let last = await browser.open();
      while (last.left.length > 0) {
        last.session.openLeft();
        await last.rest();
      }
      browser.close(last);
      last = await browser.open();
      expect(last.left).toEqual([]);
      for (const length of made) expect(last.reachable).toContain(length);
    }),
    { seed: 77, numRuns: 60 },
  );
}, 60_000);
