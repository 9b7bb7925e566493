/**
 * Undo and redo by whole-document snapshots; documents share what they have in common, so a step is small.
 * A gesture (a drag, a held arrow key) sets a mark where it begins and becomes one step when it ends; undo and redo
 * are refused while one is open. Only a step clears what could be redone.
 */

export interface Step<T> {
  label: string; // what was done: "tip drop"
  state: T; // the document before the step (past) or after it (future)
}

export interface Trail<T> {
  past: Step<T>[]; // oldest first
  future: Step<T>[]; // the next one to redo is last
}

const MOST_STEPS = 200;

export class History<T> {
  #past: Step<T>[];
  #future: Step<T>[];
  #mark: Step<T> | null = null;

  constructor(trail: Trail<T> = { past: [], future: [] }) {
    this.#past = [...trail.past];
    this.#future = [...trail.future];
  }

  /** The step that undo would take back, or null. */
  get undoLabel(): string | null {
    return this.#mark ? null : (this.#past.at(-1)?.label ?? null);
  }

  get redoLabel(): string | null {
    return this.#mark ? null : (this.#future.at(-1)?.label ?? null);
  }

  /** The gesture under way, or null. */
  get openLabel(): string | null {
    return this.#mark?.label ?? null;
  }

  /** Begins a gesture from this state; a gesture already open keeps its own beginning. */
  begin(label: string, state: T): void {
    this.#mark ??= { label, state };
  }

  /** Ends the gesture; one step if the state has changed since it began. */
  end(state: T): void {
    const mark = this.#mark;
    this.#mark = null;
    if (mark && !isSame(mark.state, state)) this.#push(mark);
  }

  /** Gives the gesture up; the state it began from, or null when none was open. */
  abandon(): T | null {
    const mark = this.#mark;
    this.#mark = null;
    return mark ? mark.state : null;
  }

  /** The state before the newest step, or null when there is none or a gesture is open. */
  undo(present: T): T | null {
    return this.#mark ? null : move(this.#past, this.#future, present);
  }

  redo(present: T): T | null {
    return this.#mark ? null : move(this.#future, this.#past, present);
  }

  /** The state that undo or redo would lead to, or null. */
  peek(way: 'undo' | 'redo'): T | null {
    return this.#mark ? null : ((way === 'undo' ? this.#past : this.#future).at(-1)?.state ?? null);
  }

  /** Takes that step out of the history. */
  drop(way: 'undo' | 'redo'): void {
    (way === 'undo' ? this.#past : this.#future).pop();
  }

  /** The newest steps, for keeping across a reload; a gesture under way counts as the step it would be now. */
  trail(present: T, most = MOST_STEPS): Trail<T> {
    const isMoved = this.#mark !== null && this.#mark.state !== present;
    const past = isMoved ? [...this.#past, this.#mark!] : this.#past;
    return { past: past.slice(-most), future: isMoved ? [] : this.#future.slice(-most) };
  }

  #push(step: Step<T>): void {
    this.#past.push(step);
    if (this.#past.length > MOST_STEPS) this.#past.shift();
    this.#future = [];
  }
}

function move<T>(from: Step<T>[], to: Step<T>[], present: T): T | null {
  const step = from.pop();
  if (!step) return null;
  to.push({ label: step.label, state: present });
  return step.state;
}

function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}
