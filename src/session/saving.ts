/**
 * Keeps the open design in the browser. Saves are debounced and flushed when the page hides; a synchronous copy
 * covers a reload that comes before the slower storage has finished. What cannot be read is set aside, never
 * overwritten, and the last copy that could be read is opened instead.
 */
import type { Design } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import type { Trail } from './history.ts';

/** The browser's database, asynchronous. */
export interface Shelf {
  read(key: string): Promise<unknown>;
  write(key: string, value: unknown): Promise<void>;
}

/** The browser's small synchronous storage. */
export type Notebook = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

export type SaveState = { kind: 'saved' } | { kind: 'saving' } | { kind: 'failed'; message: string };

export interface Recovery {
  design: Design | null; // null: nothing was kept
  trail: Trail<Design> | null;
  message: string | null; // what the user should know
  unreadable: string | null; // text that could not be read, to be saved as a file
}

export interface SavingOptions {
  shelf: Shelf;
  notebook: Notebook | null; // null where the browser blocks it
  read: (text: string) => Reading;
  readValue: (value: unknown) => Reading;
  write: (design: Design) => string;
  present: () => { design: Design; trail: Trail<Design> };
  onState: (state: SaveState) => void;
  delay?: number; // ms; default 300
  now?: () => number;
}

interface Copy {
  text: string;
  time: number; // ms, strictly rising from save to save
  trail?: Trail<Design>;
}

const PATIENCE = 1500; // ms; a database that does not open by then must not keep the page empty
const NEWEST = 'design';
const LAST_GOOD = 'last-good';
const SET_ASIDE = 'unreadable';
const PENDING = 'downcurve.pending';
const KEPT_STEPS = 60;

export class Saving {
  #time = 0;
  #isDirty = false;
  #isWriting = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly options: SavingOptions) {}

  /** The design that was open last, as far as it can be read. */
  async recover(): Promise<Recovery> {
    const copies = [this.#pendingCopy(), await this.#shelfCopy(NEWEST)].filter((copy) => copy !== null);
    copies.sort((one, other) => other.time - one.time);
    this.#time = copies[0]?.time ?? 0;
    let trouble: { message: string; text: string } | null = null;
    for (const copy of copies) {
      const found = this.#open(copy);
      if (found) {
        void this.#try(() => this.options.shelf.write(LAST_GOOD, { text: copy.text, time: copy.time }));
        return { ...found, ...explain(trouble) };
      }
      trouble ??= { message: this.#reasonOf(copy), text: copy.text };
      void this.#try(() => this.options.shelf.write(SET_ASIDE, { text: copy.text, time: copy.time }));
    }
    const good = await this.#shelfCopy(LAST_GOOD);
    const found = good ? this.#open(good) : null;
    return { design: null, trail: null, ...found, ...explain(trouble) };
  }

  /** Something changed: save within the delay. */
  changed(): void {
    this.#isDirty = true;
    this.options.onState({ kind: 'saving' });
    this.#timer ??= setTimeout(() => void this.#save(), this.options.delay ?? 300);
  }

  /** The page hides: keep a synchronous copy at once and start the real save. */
  flush(): void {
    if (!this.#isDirty) return;
    this.#keepPending(this.#copy());
    void this.#save();
  }

  #copy(): Copy {
    const { design, trail } = this.options.present();
    this.#time = Math.max(this.#time + 1, (this.options.now ?? Date.now)());
    return {
      text: this.options.write(design),
      time: this.#time,
      trail: { past: trail.past.slice(-KEPT_STEPS), future: trail.future.slice(-KEPT_STEPS) },
    };
  }

  async #save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#isWriting) return; // the write under way looks for newer changes when it ends
    this.#isWriting = true;
    while (this.#isDirty) {
      this.#isDirty = false;
      const copy = this.#copy();
      const trouble = await this.#try(() => this.options.shelf.write(NEWEST, copy));
      if (trouble === null) this.#dropPending(copy.time);
      else if (!this.#keepPending(copy)) {
        this.#isWriting = false;
        this.#isDirty = true;
        return this.options.onState({ kind: 'failed', message: storageMessage(trouble) });
      }
    }
    this.#isWriting = false;
    this.options.onState({ kind: 'saved' });
  }

  #open(copy: Copy): { design: Design; trail: Trail<Design> | null } | null {
    const reading = this.options.read(copy.text);
    if (!reading.ok) return null;
    const { trail } = copy;
    const isSound =
      trail && [...trail.past, ...trail.future].every(({ state }) => this.options.readValue(state).ok);
    return { design: reading.design, trail: isSound ? trail : null };
  }

  #reasonOf(copy: Copy): string {
    const reading = this.options.read(copy.text);
    return reading.ok ? '' : reading.message;
  }

  async #shelfCopy(key: string): Promise<Copy | null> {
    let value: unknown = null;
    await this.#try(async () => {
      value = await Promise.race([this.options.shelf.read(key), pause(PATIENCE)]);
    });
    return isCopy(value) ? value : null;
  }

  #pendingCopy(): Copy | null {
    try {
      const value: unknown = JSON.parse(this.options.notebook?.getItem(PENDING) ?? 'null');
      return isCopy(value) ? value : null;
    } catch {
      return null;
    }
  }

  /** With the history where there is room for it, else the design alone. */
  #keepPending({ text, time, trail }: Copy): boolean {
    return this.#note({ text, time, trail }) || this.#note({ text, time });
  }

  #note(copy: object): boolean {
    try {
      if (!this.options.notebook) return false;
      this.options.notebook.setItem(PENDING, JSON.stringify(copy));
      return true;
    } catch {
      return false; // full or blocked
    }
  }

  #dropPending(time: number): void {
    const pending = this.#pendingCopy();
    if (pending && pending.time <= time) this.options.notebook?.removeItem(PENDING);
  }

  async #try(task: () => Promise<void>): Promise<unknown> {
    try {
      await task();
      return null;
    } catch (error) {
      return error ?? new Error('unknown');
    }
  }
}

const pause = (time: number) => new Promise<null>((resolve) => setTimeout(() => resolve(null), time));

function isCopy(value: unknown): value is Copy {
  if (typeof value !== 'object' || value === null) return false;
  const { text, time } = value as Partial<Copy>;
  return typeof text === 'string' && typeof time === 'number';
}

function explain(
  trouble: { message: string; text: string } | null,
): Pick<Recovery, 'message' | 'unreadable'> {
  if (!trouble) return { message: null, unreadable: null };
  return {
    message: `The copy saved last could not be read (${trouble.message}). It has been set aside and the copy before it is open.`,
    unreadable: trouble.text,
  };
}

function storageMessage(trouble: unknown): string {
  const isFull = trouble instanceof DOMException && trouble.name === 'QuotaExceededError';
  return isFull
    ? 'This browser’s storage is full, so the design is not being kept. Save it as a file.'
    : 'This browser does not let the design be kept. Save it as a file.';
}
