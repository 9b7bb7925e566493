/**
 * The designs that were kept: each the text of a document with a name, notes and the rider's marks beside it. The text
 * never changes once kept and is read like a file; one that cannot be read stays and is handed out as it is. What is
 * taken off can be brought back. Every tab of the page sees what the others do.
 */
import { type Design, LONGEST_NAME } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import { asStored, type MarkName, type StoredDesign, wholeMarks } from './kept-record.ts';

/** The database's part in keeping designs. */
export interface KeptStore {
  all(): Promise<{ id: string; value: unknown }[]>;
  /** Replaces what is kept under the id by what `change` makes of it, in one transaction. */
  change(id: string, change: (present: unknown) => unknown): Promise<void>;
  drop(id: string): Promise<void>;
}

/** How tabs tell one another that something has changed. */
export type Channel = Pick<BroadcastChannel, 'postMessage' | 'addEventListener'>;

export interface KeptDesign extends StoredDesign {
  id: string;
  /** The design under its present name, or why its text cannot be read. */
  reading: Reading;
  isStored: boolean; // false: only in this page, as the browser refused it
}

export interface KeptParts {
  kept: KeptStore;
  channel: Channel | null; // null where the browser has none
  read: (text: string) => Reading;
  write: (design: Design) => string;
}

export type KeepOutcome =
  | { kind: 'kept' | 'known'; kept: KeptDesign }
  | { kind: 'unstored'; kept: KeptDesign; why: string };

export class KeptDesigns {
  /** Why the shelf could not be read, or null. */
  trouble: string | null = null;
  isLoaded = false;

  #all: readonly KeptDesign[] = [];
  readonly #readings = new Map<string, Reading>(); // by name and text: the same text is the same design object
  readonly #writing = new Map<string, number>(); // writes under way, by id
  #isBehind = false; // something was not taken over from the database, as it was being written
  readonly #listeners = new Set<() => void>();

  constructor(private readonly parts: KeptParts) {
    parts.channel?.addEventListener('message', () => void this.load());
  }

  /** On the shelf, the newest first. */
  get list(): readonly KeptDesign[] {
    return this.#all.filter(({ removed }) => removed === null);
  }

  /** Taken off, the last one first. */
  get removed(): readonly KeptDesign[] {
    const taken = this.#all.filter(({ removed }) => removed !== null);
    return taken.sort((one, other) => other.removed! - one.removed!);
  }

  find(id: string): KeptDesign | null {
    return this.list.find((kept) => kept.id === id) ?? null;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Reads the shelf; what this page could not store stays in sight. */
  async load(): Promise<void> {
    try {
      const stored = await this.parts.kept.all();
      const mine = this.#all.filter(({ id, isStored }) => !isStored || this.#writing.has(id));
      const others = stored.filter(({ id }) => !mine.some((each) => each.id === id));
      this.#isBehind = others.length < stored.length;
      this.trouble = null;
      this.#set([...mine, ...others.map(({ id, value }) => this.#made(id, asStored(value), true))]);
    } catch (error) {
      this.trouble = storeTrouble(error);
      this.isLoaded = true;
      this.#tell();
    }
  }

  /** Puts a design on the shelf, with the marks and the notes on the ride that its document brings along. */
  async keep(design: Design, name = design.name): Promise<KeepOutcome> {
    const { marks = {}, notes, ...rest } = design;
    const { ride = '', ...others } = notes ?? {};
    const plain = Object.keys(others).length > 0 ? { ...rest, notes: others } : rest;
    const text = this.parts.write(plain);
    const known = this.list.find((kept) => kept.text === text && kept.name === name);
    if (known) return { kind: 'known', kept: known };
    const stored: StoredDesign = {
      name: this.#freeName(name.trim() || 'Design'),
      kept: Date.now(),
      notes: ride,
      marks: wholeMarks(marks),
      removed: null,
      text,
    };
    const id = crypto.randomUUID();
    this.#set([this.#made(id, stored, true), ...this.#all]);
    const why = await this.#store(id, {});
    const kept = this.find(id) ?? this.#made(id, stored, why === null);
    return why === null ? { kind: 'kept', kept } : { kind: 'unstored', kept, why };
  }

  /** Why it cannot be called so, or null. */
  refusalOf(id: string, name: string): string | null {
    const wanted = name.trim();
    if (wanted === '') return 'A kept design needs a name.';
    if (wanted.length > LONGEST_NAME)
      return `Found ${wanted.length} characters, allowed up to ${LONGEST_NAME}.`;
    const isTaken = this.list.some((kept) => kept.id !== id && kept.name === wanted);
    return isTaken ? `“${wanted}” stands on the shelf already: a name of its own is needed.` : null;
  }

  /** Answers why it cannot be called so, or null. */
  rename(id: string, name: string): string | null {
    const refusal = this.refusalOf(id, name);
    if (refusal === null) this.#change(id, { name: name.trim() });
    return refusal;
  }

  annotate(id: string, notes: string): void {
    this.#change(id, { notes });
  }

  /** Marks 1 to 5; null takes the mark back. */
  mark(id: string, mark: MarkName, value: number | null): void {
    const kept = this.find(id);
    if (!kept) return;
    const { [mark]: _, ...others } = kept.marks;
    this.#change(id, { marks: value === null ? others : { ...others, [mark]: value } });
  }

  remove(id: string): void {
    this.#change(id, { removed: Date.now() });
  }

  bringBack(id: string): void {
    this.#change(id, { removed: null });
  }

  /** Takes one that is off the shelf away for good; never one that cannot be read. */
  async forget(id: string): Promise<void> {
    const kept = this.#all.find((each) => each.id === id);
    if (!kept || kept.removed === null || !kept.reading.ok) return;
    this.#set(this.#all.filter((each) => each !== kept));
    try {
      await this.parts.kept.drop(id);
      this.parts.channel?.postMessage(id);
    } catch (error) {
      this.trouble = storeTrouble(error);
      this.#set([...this.#all, kept]);
    }
  }

  /** The document as a file: marks and notes go along; a damaged text is handed out as it was found. */
  fileOf({ reading, text, marks, notes }: KeptDesign): string {
    if (!reading.ok) return text;
    const { design } = reading;
    const isMarked = Object.keys(marks).length > 0;
    return this.parts.write({
      ...design,
      ...(isMarked && { marks }),
      ...(notes !== '' && { notes: { ...design.notes, ride: notes } }),
    });
  }

  #change(id: string, change: Partial<StoredDesign>): void {
    const place = this.#all.findIndex((kept) => kept.id === id);
    const kept = this.#all[place];
    if (!kept) return;
    this.#set(this.#all.with(place, this.#made(id, { ...kept, ...change }, kept.isStored)));
    void this.#store(id, change);
  }

  /** Writes a change over what the database holds now, so that another tab's change to the rest stays. */
  async #store(id: string, change: Partial<StoredDesign>): Promise<string | null> {
    const mine = this.#all.find((kept) => kept.id === id)!;
    this.#writing.set(id, (this.#writing.get(id) ?? 0) + 1);
    let why: string | null = null;
    try {
      await this.parts.kept.change(id, (present) => {
        const base = present === undefined || !mine.isStored ? plainOf(mine) : asStored(present);
        return { ...base, ...change };
      });
      this.parts.channel?.postMessage(id);
    } catch (error) {
      why = storeTrouble(error);
      this.trouble = why;
    }
    const left = this.#writing.get(id)! - 1;
    if (left > 0) this.#writing.set(id, left);
    else this.#writing.delete(id);
    const place = this.#all.findIndex((kept) => kept.id === id);
    if (place >= 0) this.#set(this.#all.with(place, { ...this.#all[place]!, isStored: why === null }));
    if (this.#isBehind && this.#writing.size === 0) await this.load();
    return why;
  }

  #made(id: string, stored: StoredDesign, isStored: boolean): KeptDesign {
    return { ...plainOf(stored), id, isStored, reading: this.#read(stored) };
  }

  #read({ name, text }: StoredDesign): Reading {
    const key = `${name}\n${text}`;
    const known = this.#readings.get(key);
    if (known) return known;
    const found = this.parts.read(text);
    const reading: Reading = found.ok ? { ok: true, design: { ...found.design, name } } : found;
    this.#readings.set(key, reading);
    return reading;
  }

  #freeName(name: string): string {
    const taken = new Set(this.list.map((kept) => kept.name));
    if (!taken.has(name)) return name;
    let number = 2;
    while (taken.has(`${name} ${number}`)) number++;
    return `${name} ${number}`;
  }

  #set(all: readonly KeptDesign[]): void {
    this.isLoaded = true;
    this.#all = [...all].sort((one, other) => other.kept - one.kept);
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

function plainOf({ name, kept, notes, marks, removed, text }: StoredDesign): StoredDesign {
  return { name, kept, notes, marks, removed, text };
}

function storeTrouble(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  const here = 'what is kept now is here only until the page is left.';
  if (name === 'QuotaExceededError') return `This browser’s storage is full: ${here}`;
  if (name === 'VersionError')
    return `A newer version of this page is in use. Reload this one; until then ${here}`;
  return `This browser does not let designs be kept: ${here}`;
}
