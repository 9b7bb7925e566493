/**
 * Asks for studies: numbered orders to the study worker, answers kept with the design they belong to. Designs are never
 * changed in place, so an answer serves as long as its design is in use: undo finds it again.
 */
import type { Design } from '../solver/design/document.ts';
import type { StudyName, StudyNews, StudyOptions, StudyOrder, StudyResult } from './study-messages.ts';
import { type AnyStudies, StudyServer } from './study-server.ts';

export interface StudiesParts {
  makeWorker: () => Worker; // may throw
  loadStudies: () => Promise<AnyStudies>; // for a page whose worker does not start
}

/** What the asker hears; after `done`, `failed` or `cancelled` nothing more. */
export interface StudyListener<Result> {
  progress: (share: number) => void;
  done: (result: Result) => void;
  failed: (message: string) => void;
  cancelled: () => void;
}

interface Pending {
  order: Extract<StudyOrder, { study: 'start' }>;
  key: string;
  listener: StudyListener<unknown>;
}

const PATIENCE = 80; // ms a cancelled study may keep the worker before the worker is replaced

export class Studies {
  readonly #pending = new Map<number, Pending>();
  readonly #answers = new WeakMap<Design, Map<string, unknown>>();
  #number = 0;
  #worker: Worker | null = null;
  #hasStarted = false;
  #server: Promise<StudyServer> | null = null;

  constructor(private readonly parts: StudiesParts) {}

  /** The answer already known for this design, or undefined. */
  known<N extends StudyName>(name: N, design: Design, options: StudyOptions<N>): StudyResult<N> | undefined {
    return this.#answers.get(design)?.get(keyOf(name, options)) as StudyResult<N> | undefined;
  }

  /** Starts a study; the answer to the call cancels it. One that stands behind waits while any other is at work. */
  start<N extends StudyName>(
    name: N,
    design: Design,
    options: StudyOptions<N>,
    listener: StudyListener<StudyResult<N>>,
    isBehind = false,
  ): () => void {
    const id = ++this.#number;
    const order = { study: 'start', id, name, design, options, isBehind } as const;
    const pending = { order, key: keyOf(name, options), listener: listener as StudyListener<unknown> };
    this.#pending.set(id, pending);
    this.#send(order);
    return () => this.#cancel(id);
  }

  stop(): void {
    this.#pending.clear();
    this.#worker?.terminate();
    this.#worker = null;
  }

  #send(order: StudyOrder): void {
    if (!this.#hasStarted) this.#begin();
    if (this.#worker) this.#worker.postMessage(order);
    else void this.#serveHere(order);
  }

  #begin(): void {
    this.#hasStarted = true;
    try {
      this.#worker = this.parts.makeWorker();
    } catch {
      return; // the page works by itself
    }
    this.#worker.addEventListener('message', ({ data }: MessageEvent<StudyNews>) => this.#hear(data));
    this.#worker.addEventListener('error', () => this.#doWithoutWorker());
    this.#worker.addEventListener('messageerror', () => this.#doWithoutWorker());
  }

  #hear(news: StudyNews): void {
    const pending = this.#pending.get(news.id);
    if (!pending) return;
    const { listener, order, key } = pending;
    if (news.study === 'progress') {
      listener.progress(news.share);
      return;
    }
    this.#pending.delete(news.id);
    if (news.study === 'done') {
      this.#keep(order.design, key, news.result);
      listener.done(news.result);
    } else if (news.study === 'failed') listener.failed(news.message);
    else listener.cancelled();
  }

  #keep(design: Design, key: string, result: unknown): void {
    const answers = this.#answers.get(design) ?? new Map<string, unknown>();
    answers.set(key, result);
    this.#answers.set(design, answers);
  }

  #cancel(id: number): void {
    const pending = this.#pending.get(id);
    if (!pending) return;
    this.#send({ study: 'cancel', id });
    setTimeout(() => {
      if (this.#pending.delete(id)) {
        pending.listener.cancelled();
        this.#replaceWorker();
      }
    }, PATIENCE);
  }

  /** A study that does not listen holds the worker: a new worker takes the others on. */
  #replaceWorker(): void {
    if (!this.#worker) return;
    this.#worker.terminate();
    this.#begin();
    for (const { order } of this.#pending.values()) this.#send(order);
  }

  #doWithoutWorker(): void {
    this.#worker?.terminate();
    this.#worker = null;
    for (const { order } of this.#pending.values()) void this.#serveHere(order);
  }

  async #serveHere(order: StudyOrder): Promise<void> {
    try {
      this.#server ??= this.parts
        .loadStudies()
        .then((studies) => new StudyServer(studies, (news) => this.#hear(news), { slice: 8 }));
      (await this.#server).receive(order);
    } catch {
      this.#server = null;
      const message = 'The solver could not be loaded. Reload the page.';
      this.#hear({ study: 'failed', id: order.id, message });
    }
  }
}

function keyOf(name: string, options: unknown): string {
  return `${name} ${JSON.stringify(options)}`;
}

/**
 * One question asked again and again as the design moves: at most one study runs and one waits, the newest. A running
 * study may finish, so that something is seen during a drag, unless it is slow: then it makes way.
 */
export class StudyLine<N extends StudyName> {
  result: StudyResult<N> | null = null; // the newest answer
  resultDesign: Design | null = null; // what it belongs to
  share: number | null = null; // of the running study; null when none runs or it has said nothing yet
  failure: string | null = null;

  #running: { design: Design; options: StudyOptions<N>; since: number; cancel: () => void } | null = null;
  #waiting: { design: Design; options: StudyOptions<N> } | null = null;
  #wanted: { design: Design; key: string } | null = null;
  #isHalted = false; // the user has cancelled what is wanted now

  constructor(
    private readonly studies: Studies,
    private readonly name: N,
    private readonly changed: () => void,
    private readonly isBehind = false,
  ) {}

  get isRunning(): boolean {
    return this.#running !== null;
  }

  /** Whether the answer belongs to what was asked for last. */
  get isCurrent(): boolean {
    return this.result !== null && !this.#running && !this.#waiting && !this.#isHalted;
  }

  get isHalted(): boolean {
    return this.#isHalted;
  }

  /** Asks; the same design and options again do nothing. */
  ask(design: Design, options: StudyOptions<N>): void {
    const key = JSON.stringify(options);
    if (this.#wanted?.design === design && this.#wanted.key === key) return;
    this.#wanted = { design, key };
    this.#isHalted = false;
    this.#waiting = { design, options };
    if (!this.#running) this.#next();
    else if (performance.now() - this.#running.since > SLOW) this.#running.cancel();
  }

  /** The user has enough: stops what runs and asks for nothing until something changes. */
  halt(): void {
    this.#waiting = null;
    this.#isHalted = true;
    this.#running?.cancel();
    this.changed();
  }

  /** Runs what was halted after all. */
  resume(): void {
    const wanted = this.#wanted;
    if (!wanted || !this.#isHalted) return;
    this.#wanted = null;
    this.ask(wanted.design, JSON.parse(wanted.key) as StudyOptions<N>);
    this.changed();
  }

  /** Nobody looks any more. */
  leave(): void {
    this.#waiting = null;
    this.#wanted = null;
    this.#running?.cancel();
  }

  #next(): void {
    const task = this.#waiting;
    this.#waiting = null;
    if (!task) return;
    const known = this.studies.known(this.name, task.design, task.options);
    if (known !== undefined) {
      this.#settle(known, task.design);
      return;
    }
    this.share = null;
    const listener: StudyListener<StudyResult<N>> = {
      progress: (share) => {
        this.share = share;
        this.changed();
      },
      done: (result) => this.#end(() => this.#settle(result, task.design)),
      failed: (message) =>
        this.#end(() => {
          this.failure = message;
        }),
      cancelled: () => this.#end(() => {}),
    };
    const cancel = this.studies.start(this.name, task.design, task.options, listener, this.isBehind);
    this.#running = { ...task, since: performance.now(), cancel };
  }

  #settle(result: StudyResult<N>, design: Design): void {
    this.result = result;
    this.resultDesign = design;
    this.failure = null;
  }

  #end(settle: () => void): void {
    this.#running = null;
    this.share = null;
    settle();
    this.#next();
    this.changed();
  }
}

const SLOW = 400; // ms
