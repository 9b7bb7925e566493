/**
 * The open design: one immutable document, its revision and its history. Every edit is validated as a whole
 * document before it counts; a refused edit leaves the design as it was and answers with the reason.
 */

import type { Design } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import type { EditDetail } from './edits.ts';
import { History, type Trail } from './history.ts';
import { withValueAt } from './paths.ts';

/** What happened to the design: still moving, settled by an edit, another one put in its place; or a step that is lost. */
export type StoreChange = 'live' | 'settled' | 'replaced' | 'unreadable';

export class DesignStore {
  #design: Design;
  #revision = 0;
  #history: History<Design>;
  #listeners = new Set<(change: StoreChange) => void>();
  readonly #unread = new WeakSet<object>(); // states kept from an earlier visit

  constructor(
    design: Design,
    private readonly read: (value: unknown) => Reading,
    trail: Trail<unknown> = { past: [], future: [] },
  ) {
    this.#design = design;
    this.#history = new History(trail as Trail<Design>);
    for (const { state } of [...trail.past, ...trail.future]) this.#unread.add(state as object);
  }

  get design(): Design {
    return this.#design;
  }

  /** Grows with every change of the design; the same revision means the same design. */
  get revision(): number {
    return this.#revision;
  }

  get undoLabel(): string | null {
    return this.#history.undoLabel;
  }

  get redoLabel(): string | null {
    return this.#history.redoLabel;
  }

  get isMoving(): boolean {
    return this.#history.openLabel !== null;
  }

  trail(most?: number): Trail<Design> {
    return this.#history.trail(this.#design, most);
  }

  subscribe(listener: (change: StoreChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Applies an edit; null when it counts, else the sentence that says why not. */
  edit({ changes, label, phase }: EditDetail): string | null {
    if (phase === 'cancelled') {
      const start = this.#history.abandon();
      if (start) this.#set(start, 'settled');
      return null;
    }
    if (this.#history.openLabel !== null && this.#history.openLabel !== label)
      this.#history.end(this.#design);
    const edited = changes.reduce(
      (design, { path, value }) => withValueAt(design, path, value),
      this.#design,
    );
    const refusal = this.#check(edited);
    if (refusal === null) this.#history.begin(label, this.#design); // what is refused begins no gesture
    const next = refusal === null ? edited : this.#design;
    if (phase === 'settled') this.#history.end(next);
    if (next !== this.#design || phase === 'settled') this.#set(next, phase);
    return refusal;
  }

  /** Puts another design in place of this one, as a step that can be undone. */
  replace(design: Design, label: string): void {
    this.#history.end(this.#design);
    this.#history.begin(label, this.#design);
    this.#history.end(design);
    this.#set(design, 'replaced');
  }

  undo(): void {
    this.#travel('undo');
  }

  redo(): void {
    this.#travel('redo');
  }

  #travel(way: 'undo' | 'redo'): void {
    const state = this.#history.peek(way);
    if (!state) return;
    const reading: Reading = this.#unread.has(state) ? this.read(state) : { ok: true, design: state };
    if (reading.ok) {
      this.#history[way](this.#design);
      this.#set(reading.design, 'replaced');
    } else {
      this.#history.drop(way);
      this.#set(this.#design, 'unreadable');
    }
  }

  #check(edited: Design): string | null {
    if (edited === this.#design) return null;
    const reading = this.read(edited);
    return reading.ok ? null : reading.message;
  }

  #set(design: Design, change: StoreChange): void {
    if (design !== this.#design) this.#revision++;
    this.#design = design;
    for (const listener of this.#listeners) listener(change);
  }
}
