/**
 * The designs that were kept: each the text of a document with a name, notes and the rider's marks beside it. The text
 * never changes once kept and is read like a file; one that cannot be read stays and is handed out as it is. What is
 * taken off can be brought back. Every tab of the page sees what the others do.
 */
import { type Design, LONGEST_NAME } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import { dropNote, noteChange, placeOf, readNote, takeUpNotes } from './kept-notes.ts';
import {
  asStored,
  bothChanges,
  type Change,
  changed,
  type MarkName,
  type StoredDesign,
  wholeMarks,
} from './kept-record.ts';
import type { Notebook } from './storage.ts';
import { newTab } from './tabs.ts';

/** The database's part in keeping designs. */
export interface KeptStore {
  all(): Promise<{ id: string; value: unknown }[]>;
  /** Replaces what is kept under the id by what `change` makes of it, in one transaction; undefined is nothing. */
  change(id: string, change: (present: unknown) => unknown): Promise<void>;
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
  notebook: Notebook | null; // null where the browser blocks it
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
  readonly #page = newTab();
  readonly #owed = new Map<string, Change>(); // what the database has not got yet, by id
  readonly #unsafe = new Set<string>(); // ids of which neither storage has what is owed
  #isTakenUp = false; // what earlier pages owed
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

  /** Reads the shelf; what the database has not got yet stays in sight. */
  async load(): Promise<void> {
    try {
      if (!this.#isTakenUp) await this.#takeUp();
      const stored = await this.parts.kept.all();
      this.trouble = null;
      this.#show(stored);
    } catch (error) {
      this.trouble = storeTrouble(error);
      this.#show(this.#all.map((kept) => ({ id: kept.id, value: kept })));
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
    const id = newId();
    this.#set([this.#made(id, stored), ...this.#all]);
    const why = await this.#store(id, { made: stored });
    const kept = this.find(id) ?? this.#made(id, stored);
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
    this.#change(id, { marks: { [mark]: value } });
  }

  remove(id: string): void {
    this.#change(id, { removed: Date.now() });
  }

  bringBack(id: string): void {
    this.#change(id, { removed: null });
  }

  /** Takes one that is off the shelf away for good, unless another tab has brought it back; never one that cannot be read. */
  async forget(id: string): Promise<void> {
    const gone = this.#all.find((each) => each.id === id);
    if (!gone || gone.removed === null || !gone.reading.ok) return;
    this.#set(this.#all.filter((each) => each !== gone));
    const { kept, notebook, channel } = this.parts;
    const owed = this.#owed.get(id) ?? {};
    const place = placeOf(id, this.#page);
    try {
      await kept.change(id, (present) =>
        present === undefined || changed(present, owed).removed !== null ? undefined : present,
      );
      this.#owed.delete(id);
      dropNote(notebook, place, readNote(notebook, place)?.text ?? null);
      channel?.postMessage(id);
      await this.load();
    } catch (error) {
      this.trouble = storeTrouble(error);
      this.#set([...this.#all, gone]);
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

  async #takeUp(): Promise<void> {
    this.#isTakenUp = true;
    const { kept, notebook } = this.parts;
    for (const [id, change] of await takeUpNotes(kept, notebook)) this.#owed.set(id, change);
  }

  #change(id: string, change: Change): void {
    const place = this.#all.findIndex((kept) => kept.id === id);
    const kept = this.#all[place];
    if (!kept) return;
    this.#set(this.#all.with(place, this.#made(id, changed(kept, change))));
    void this.#store(id, change);
  }

  /** Writes a change, and what else is owed, over what the database holds now: another tab's change to the rest stays. */
  async #store(id: string, change: Change): Promise<string | null> {
    const { kept, notebook, channel } = this.parts;
    const mine = asStored(this.#all.find((each) => each.id === id));
    const owed = bothChanges(this.#owed.get(id), change);
    this.#owed.set(id, owed);
    const note = placeOf(id, this.#page);
    const noted = noteChange(notebook, note, owed);
    let why: string | null = null;
    try {
      await kept.change(id, (present) => changed(present ?? mine, owed));
      if (this.#owed.get(id) === owed) this.#owed.delete(id);
      dropNote(notebook, note, noted);
      channel?.postMessage(id);
    } catch (error) {
      if (noted === null) why = storeTrouble(error);
    }
    if (why === null) this.#unsafe.delete(id);
    else this.#unsafe.add(id);
    this.trouble = why ?? this.trouble;
    const place = this.#all.findIndex((each) => each.id === id);
    if (place >= 0) this.#set(this.#all.with(place, this.#made(id, this.#all[place]!)));
    return why;
  }

  /** What is stored, with what is owed to it. */
  #show(stored: { id: string; value: unknown }[]): void {
    const all = new Map(stored.map(({ id, value }) => [id, asStored(value)]));
    for (const [id, owed] of this.#owed) {
      const base = all.get(id) ?? this.#all.find((each) => each.id === id);
      if (base || owed.made) all.set(id, changed(base, owed));
    }
    this.#set([...all].map(([id, each]) => this.#made(id, each)));
  }

  #made(id: string, stored: StoredDesign): KeptDesign {
    const plain = asStored(stored);
    return { ...plain, id, isStored: !this.#unsafe.has(id), reading: this.#read(plain) };
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

/** Where the address is without encryption browsers make no such ids themselves. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function storeTrouble(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  const here = 'what is kept now is here only until the page is left.';
  if (name === 'QuotaExceededError') return `This browser’s storage is full: ${here}`;
  if (name === 'VersionError')
    return `A newer version of this page is in use. Reload this one; until then ${here}`;
  return `This browser does not let designs be kept: ${here}`;
}
