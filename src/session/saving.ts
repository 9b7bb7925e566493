/**
 * Keeps the open design in the browser. An edit that has settled is noted at once in the synchronous storage and then
 * written to the database with its history; what still moves is written within a moment. A storage that refuses is a
 * state, tried again until it takes what there is.
 */
import type { Design } from '../solver/design/document.ts';
import { type Copy, type Note, packCopy, trailSince } from './copies.ts';
import type { Trail } from './history.ts';
import { dropNote, type Notebook, type Shelf, writeCopy, writeNote } from './storage.ts';

export type SaveState = { kind: 'saved' } | { kind: 'saving' } | { kind: 'failed'; message: string };

export interface SavingOptions {
  shelf: Shelf;
  notebook: Notebook | null; // null where the browser blocks it
  id: string; // this tab's copy, that no other tab writes
  time: number; // of the newest copy there is
  base: { time: number; trail: Trail<unknown> } | null; // what the database is known to hold of this tab
  write: (design: Design) => string;
  present: () => { design: Design; trail: Trail<Design>; line: string };
  onState: (state: SaveState) => void;
  delay?: number; // ms; default 300
  retry?: number; // ms; default 4000
  now?: () => number;
}

const KEPT_STEPS = 60;

/** What the small storage took. */
type Noted = 'whole' | 'design' | 'nothing';

export class Saving {
  #time: number;
  #base: SavingOptions['base'];
  #isDirty = false;
  #isWriting = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly options: SavingOptions) {
    this.#time = options.time;
    this.#base = options.base;
  }

  /** The database has told that it holds what was saved last; a note alone may be without the history. */
  get isStored(): boolean {
    return this.#base !== null;
  }

  /** Something still moves: save within the delay. */
  changed(): void {
    this.#isDirty = true;
    this.options.onState({ kind: 'saving' });
    this.#timer ??= setTimeout(() => void this.#save(), this.options.delay ?? 300);
  }

  /** An edit is complete: note it before anything else can happen. */
  settled(): void {
    this.#isDirty = true;
    this.options.onState({ kind: 'saving' });
    this.#note(this.#copy());
    void this.#save();
  }

  /** The page hides: as if it had settled. */
  flush(): void {
    if (this.#isDirty || this.#isWriting) this.settled(); // a write on its way ends with the page
  }

  #copy(): Copy & { trail: Trail<Design> } {
    const { design, trail, line } = this.options.present();
    this.#time = Math.max(this.#time + 1, (this.options.now ?? Date.now)());
    return {
      text: this.options.write(design),
      time: this.#time,
      line,
      trail: { past: trail.past.slice(-KEPT_STEPS), future: trail.future.slice(-KEPT_STEPS) },
    };
  }

  async #save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#isWriting) return; // the write under way looks for newer changes when it ends
    this.#isWriting = true;
    let message: string | null = null;
    while (this.#isDirty && message === null) message = await this.#write(this.#copy());
    this.#isWriting = false;
    if (message === null) return this.options.onState({ kind: 'saved' });
    this.#isDirty = true;
    this.#timer ??= setTimeout(() => void this.#save(), this.options.retry ?? 4000);
    this.options.onState({ kind: 'failed', message });
  }

  /** Null when one of the storages has it with its history, else what to say. */
  async #write(copy: Copy & { trail: Trail<Design> }): Promise<string | null> {
    const { shelf, notebook, id } = this.options;
    this.#isDirty = false;
    this.#base = null; // the database may have this copy or the one before: until it tells, a note has to be whole
    try {
      await writeCopy(shelf, id, packCopy(copy));
      this.#base = copy;
      if (this.#isDirty) this.#note(this.#copy());
      else dropNote(notebook, id);
      return null;
    } catch (trouble) {
      const noted = this.#note(this.#copy()); // what is open now: it may have been noted meanwhile
      return noted === 'whole' ? null : storageMessage(trouble, noted);
    }
  }

  /** With the history where there is room for it, else the design alone. */
  #note({ text, time, line, trail }: Copy & { trail: Trail<Design> }): Noted {
    const { notebook, id } = this.options;
    const note: Note = { text, time, line, since: trailSince(this.#base, trail) };
    if (writeNote(notebook, id, packCopy(note))) return 'whole';
    return writeNote(notebook, id, packCopy({ ...note, since: null })) ? 'design' : 'nothing';
  }
}

function storageMessage(trouble: unknown, noted: Noted): string {
  const isFull = trouble instanceof DOMException && trouble.name === 'QuotaExceededError';
  if (noted === 'design')
    return isFull
      ? 'This browser’s storage is full: the design is kept, the steps that led to it are not.'
      : 'This browser keeps the design, but not the steps that led to it.';
  return isFull
    ? 'This browser’s storage is full, so the design is not being saved. Save it as a file.'
    : 'This browser does not let the design be saved. Save it as a file.';
}
