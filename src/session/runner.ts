/**
 * Keeps the figures up with the design. Requests are numbered; one runs and at most one waits, and a newer one
 * takes the place of the one that waits, so a drag never queues up and never starves; work on sections met for the first
 * time, which has given first figures, makes way at once. Each design is solved quickly
 * first (without the neutral droop, which costs about ten solves) and, once nothing newer has come for a moment,
 * completely. Without a working worker the page itself solves.
 */
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';
import { answer, type Solve, type SolveReply, type SolveRequest } from './messages.ts';
import { pause } from './pause.ts';

export interface Answer {
  revision: number;
  report: Report;
  isComplete: boolean; // false: the quick answer, a complete one follows
  isFirst: boolean; // by thin-airfoil theory: the sections' own figures follow
}

export interface RunnerOptions {
  makeWorker: () => Worker; // may throw
  loadSolve: () => Promise<Solve>; // for a page whose worker does not start
  onAnswer: (answer: Answer) => void;
  onFailure: (message: string, revision: number) => void;
  quietTime?: number; // ms without a newer design before the complete solve; default 120
}

interface Task {
  design: Design;
  revision: number;
  isComplete: boolean;
}

export class SolveRunner {
  #running: { id: number; task: Task; hasFirst?: true } | null = null;
  #waiting: Task | null = null;
  #number = 0;
  #oldest = 0; // answers to earlier requests are dropped
  #timer: ReturnType<typeof setTimeout> | undefined;
  #worker: Worker | null = null;
  #hasStarted = false;

  constructor(private readonly options: RunnerOptions) {}

  /** Asks for the figures of this design; replaces any design still waiting. */
  ask(design: Design, revision: number): void {
    clearTimeout(this.#timer);
    this.#waiting = { design, revision, isComplete: false };
    if (!this.#running || this.#running.hasFirst) this.#next(); // what works on sections hears of a newer request
  }

  /** Drops the answer that is under way: another design has been opened. */
  forget(): void {
    clearTimeout(this.#timer);
    this.#waiting = null;
    this.#oldest = this.#number + 1;
  }

  stop(): void {
    this.forget();
    this.#worker?.terminate();
    this.#worker = null;
  }

  #next(): void {
    const task = this.#waiting;
    this.#waiting = null;
    if (!task) return;
    this.#running = { id: ++this.#number, task };
    this.#send({
      id: this.#number,
      design: task.design,
      options: task.isComplete ? {} : { neutralDroop: false },
    });
  }

  #receive(reply: SolveReply): void {
    const running = this.#running;
    if (!running || reply.id !== running.id) return;
    const { task } = running;
    if (reply.ok && reply.isFirst) {
      running.hasFirst = true;
      if (reply.id >= this.#oldest) this.#report(reply, task);
      if (this.#waiting) this.#next();
      return;
    }
    this.#running = null;
    if (reply.id >= this.#oldest) this.#report(reply, task);
    if (this.#waiting) this.#next();
    else if (reply.ok && !task.isComplete && reply.id >= this.#oldest) this.#completeLater(task);
  }

  #report(reply: SolveReply, { revision, isComplete }: Task): void {
    if (reply.ok)
      this.options.onAnswer({
        revision,
        report: reply.report,
        isComplete: isComplete && !reply.isFirst,
        isFirst: reply.isFirst ?? false,
      });
    else this.options.onFailure(reply.message, revision);
  }

  #completeLater(task: Task): void {
    this.#timer = setTimeout(() => {
      this.#waiting = { ...task, isComplete: true };
      if (!this.#running) this.#next();
    }, this.options.quietTime ?? 120);
  }

  #send(request: SolveRequest): void {
    if (!this.#hasStarted) this.#start();
    if (this.#worker) this.#worker.postMessage(request);
    else void this.#solveHere(request);
  }

  #start(): void {
    this.#hasStarted = true;
    try {
      this.#worker = this.options.makeWorker();
    } catch {
      return; // the page solves by itself
    }
    this.#worker.addEventListener('message', ({ data }: MessageEvent<SolveReply>) => this.#receive(data));
    this.#worker.addEventListener('error', () => this.#doWithoutWorker());
    this.#worker.addEventListener('messageerror', () => this.#doWithoutWorker());
  }

  #doWithoutWorker(): void {
    this.#worker?.terminate();
    this.#worker = null;
    if (!this.#running) return;
    const { id, task } = this.#running;
    void this.#solveHere({
      id,
      design: task.design,
      options: task.isComplete ? {} : { neutralDroop: false },
    });
  }

  async #solveHere(request: SolveRequest): Promise<void> {
    try {
      const solve = await this.options.loadSolve();
      await pause(); // lets the page paint first
      this.#receive(answer(solve, request));
    } catch {
      this.#receive({
        id: request.id,
        ok: false,
        message: 'The solver could not be loaded. Reload the page.',
      });
    }
  }
}
