/** A browser whose tabs can die at any moment: between what the database is asked, what it does and what it answers. */
import type { KeepingParts } from '../../src/session/keeping.ts';
import type { Channel } from '../../src/session/neighbours.ts';
import { Session } from '../../src/session/session.ts';
import type { Tabs } from '../../src/session/tabs.ts';
import { writeDesign } from '../../src/solver/design/read.ts';
import { memoryKept } from '../support/kept.ts';
import { memory } from '../support/memory.ts';
import { demo, readLoosely, readTextLoosely } from './designs.ts';

const turn = () => new Promise<void>((resolve) => setImmediate(resolve));
const never = () => new Promise<never>(() => {});
const none = () => {
  throw new Error('none here');
};

/** Something a tab has asked of the database: done in turn, answered later. */
interface Request {
  tab: Tab;
  run: () => Promise<unknown>;
  answer: (() => void) | null; // once it is done
  resolve: (value: unknown) => void;
  reject: (why: unknown) => void;
  isWrite: boolean;
}

export class Browser {
  readonly place = memory();
  readonly held = new Map<string, Tab>();
  readonly hearing = new Map<Tab, (message: unknown) => void>();
  readonly asked: Request[] = [];
  refuses = false;

  constructor(readonly roll: () => number) {}

  pick<T>(from: readonly T[]): T | undefined {
    return from[Math.floor(this.roll() * from.length)];
  }

  /** The database does something, or an answer of it comes in. */
  async go(times: number): Promise<void> {
    for (let k = 0; k < times; k++) {
      const next = this.asked.find(({ answer }) => answer === null);
      const waiting = this.asked.filter(({ answer }) => answer !== null);
      if (next && (waiting.length === 0 || this.roll() < 0.5)) await this.#do(next);
      else this.#answer(this.pick(waiting)?.tab);
      await turn();
    }
  }

  async rest(): Promise<void> {
    do await this.go(5);
    while (this.asked.length > 0);
  }

  /** What a tab that is gone had asked for may be done or not. */
  async #do(request: Request): Promise<void> {
    if (!request.tab.isAlive && this.roll() < 0.5) {
      this.asked.splice(this.asked.indexOf(request), 1);
    } else if (this.refuses && request.isWrite && this.roll() < 0.6) {
      request.answer = () => request.reject(new DOMException('full', 'QuotaExceededError'));
    } else {
      const value = await request.run();
      request.answer = () => request.resolve(value);
    }
  }

  #answer(tab: Tab | undefined): void {
    const first = this.asked.findIndex((each) => each.tab === tab && each.answer !== null);
    if (first < 0) return;
    const [request] = this.asked.splice(first, 1);
    if (request!.tab.isAlive) request!.answer!();
  }
}

export class Tab {
  id = '';
  isAlive = true;
  hasChanged = false;
  session: Session | null = null;

  /** With the name it had before it was reloaded, or its original's. */
  constructor(
    readonly browser: Browser,
    before: string | null = null,
  ) {
    const keeping: KeepingParts & { delay: number; retry: number } = {
      ...this.#storages(),
      read: readTextLoosely,
      write: writeDesign,
      tabs: this.#tabs(before),
      tabChannel: this.#channel(),
      patience: 1e6,
      delay: 0,
      retry: 1,
    };
    void Session.open({
      ...keeping,
      demo: demo(),
      readValue: readLoosely,
      kept: memoryKept(),
      channel: null,
      makeWorker: none,
      makeExportWorker: none,
      loadSolve: never,
      loadStudies: none,
      loadExport: none,
    }).then((session) => {
      this.session = session;
    });
  }

  get length(): number {
    return this.session!.design.wing.length.value;
  }

  /** Undo, redo and what is on screen, by length. */
  get history(): { past: string[]; future: string[]; now: number } {
    const { past, future } = this.session!.store.trail();
    const told = (steps: typeof past) =>
      steps.map(({ label, state }) => `${label} from ${state.wing.length.value}`);
    return { past: told(past), future: told(future), now: this.length };
  }

  get reachable(): number[] {
    const { past, future } = this.session!.store.trail();
    return [...past, ...future].map(({ state }) => state.wing.length.value).concat(this.length);
  }

  edit(value: number, phase: 'live' | 'settled'): void {
    const changes = [{ path: 'wing.length.value', value }];
    this.hasChanged = true;
    this.session!.edit({ changes, label: phase === 'live' ? 'drag' : `to ${value}`, phase });
  }

  /** As a tab that is closed, where the page may save once more; or one that crashes. */
  die(how: 'close' | 'crash'): void {
    if (how === 'close') this.session?.flush();
    this.isAlive = false;
    const { held, hearing } = this.browser;
    for (const [id, tab] of [...held]) if (tab === this) held.delete(id);
    hearing.delete(this);
  }

  async opened(): Promise<this> {
    while (!this.session) await this.browser.go(1);
    return this;
  }

  #storages(): Pick<KeepingParts, 'shelf' | 'notebook'> {
    const { asked, place } = this.browser;
    const { shelf, notebook } = place;
    const ask = <T>(run: () => Promise<T>, isWrite = false): Promise<T> =>
      new Promise<T>((resolve, reject) => {
        const request = {
          tab: this,
          run,
          answer: null,
          resolve: resolve as Request['resolve'],
          reject,
          isWrite,
        };
        if (this.isAlive) asked.push(request);
      });
    return {
      shelf: {
        keys: () => ask(shelf.keys),
        read: (key) => ask(() => shelf.read(key)),
        write: (key, value) => {
          const copy = structuredClone(value);
          return ask(() => shelf.write(key, copy), true);
        },
        remove: (key) => ask(() => shelf.remove(key)),
      },
      notebook: {
        get length() {
          return notebook.length;
        },
        key: notebook.key,
        getItem: notebook.getItem,
        setItem: (key, text) => this.isAlive && notebook.setItem(key, text),
        removeItem: (key) => this.isAlive && notebook.removeItem(key),
      },
    };
  }

  #tabs(before: string | null): Tabs {
    const { held, roll } = this.browser;
    const later = async <T>(find: () => T): Promise<T> => {
      await turn();
      if (roll() < 0.3) await turn();
      return this.isAlive ? find() : never();
    };
    const hold = (id: string) => !held.has(id) && held.set(id, this).has(id);
    const mine = (id: string) => {
      const isHeld = hold(id);
      if (isHeld) this.id = id;
      return isHeld;
    };
    return {
      own: () => later(() => (before === null ? null : { id: before, isHeld: mine(before) })),
      take: (id) => later(() => mine(id)),
      held: () => later(() => new Set(held.keys())),
      whileFree: async (id, work) => {
        if (!(await later(() => hold(id)))) return;
        await work().finally(() => this.isAlive && held.delete(id));
      },
    };
  }

  #channel(): Channel {
    const { hearing } = this.browser;
    return {
      post: (message) => {
        for (const [other, hear] of hearing) if (other !== this && this.isAlive) hear(message);
      },
      listen: (hear) => hearing.set(this, hear),
    };
  }
}
