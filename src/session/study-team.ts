/**
 * Several studies at once, each in a thread of its own: a queue that as many workers as the machine has cores empty. Stopping
 * ends the workers, busy or not.
 */
import type { Design } from '../solver/design/document.ts';
import { Studies, type StudiesParts } from './studies.ts';
import type { StudyName, StudyOptions, StudyResult } from './study-messages.ts';

const MOST_WORKERS = 8;

interface Task {
  start: (studies: Studies, done: () => void) => () => void; // answers how to cancel
}

export class StudyTeam {
  readonly #idle: Studies[];
  readonly #all: Studies[];
  readonly #queue: Task[] = [];
  readonly #cancels = new Set<() => void>();
  #isStopped = false;

  constructor(parts: StudiesParts, cores: number) {
    const count = Math.max(1, Math.min(MOST_WORKERS, Math.floor(cores)));
    this.#all = Array.from({ length: count }, () => new Studies(parts));
    this.#idle = [...this.#all];
  }

  /** Asks one study; `progress` hears the share done. Rejects with one sentence; stays open for ever once stopped. */
  ask<N extends StudyName>(
    name: N,
    design: Design,
    options: StudyOptions<N>,
    progress: (share: number) => void = () => {},
  ): Promise<StudyResult<N>> {
    return new Promise((resolve, reject) => {
      this.#queue.push({
        start: (studies, done) =>
          studies.start(name, design, options, {
            progress,
            done: (result) => {
              done();
              resolve(result);
            },
            failed: (message) => {
              done();
              reject(new Error(message));
            },
            cancelled: done,
          }),
      });
      this.#next();
    });
  }

  stop(): void {
    this.#isStopped = true;
    this.#queue.length = 0;
    for (const cancel of this.#cancels) cancel();
    for (const studies of this.#all) studies.stop();
  }

  #next(): void {
    if (this.#isStopped) return;
    const studies = this.#idle[0];
    const task = this.#queue[0];
    if (!studies || !task) return;
    this.#idle.shift();
    this.#queue.shift();
    let cancel: (() => void) | null = null;
    let isOver = false;
    const done = () => {
      isOver = true;
      if (cancel) this.#cancels.delete(cancel);
      this.#idle.push(studies);
      this.#next();
    };
    cancel = task.start(studies, done);
    if (!isOver) this.#cancels.add(cancel);
    this.#next();
  }
}
