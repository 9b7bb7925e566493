/**
 * Answers requests to solve where the solver runs. Sections met for the first time are worked out in slices before that: a
 * newer request heard in between takes the place of the one under way, and one that waits long gets first figures by
 * thin-airfoil theory meanwhile; the very first one gets them at once, for a page that has none yet. What follows the
 * first complete answer is practice: a browser compiles well only what has run often, and the first drag is not to wait
 * for that.
 */
import type { Design } from '../solver/design/document.ts';
import { answer, type Solve, type SolveReply, type SolveRequest } from './messages.ts';
import { pause } from './pause.ts';

export interface SolveServerParts {
  solve: Solve;
  /** Makes ahead what a solve of this design will ask for. */
  prepare: (design: Design) => Generator<number, void, void>;
  tell: (reply: SolveReply) => void;
  slice?: number; // ms of work between pauses; default 20
  patience?: number; // ms after which first figures are given; default 100
  practice?: number; // solves that nobody asked for, while nobody asks; default 100
}

export class SolveServer {
  #newest = 0;
  #isPreparing = false;
  #hasTold = false;
  #practised = 0;

  constructor(private readonly parts: SolveServerParts) {}

  async receive(request: SolveRequest): Promise<void> {
    this.#newest = request.id;
    // Sections that change again before they are made, as under a drag: first figures at once.
    const { patience = 100 } = this.parts;
    if (request.options.sections !== 'thin') await this.#prepare(request, this.#isPreparing ? 0 : patience);
    if (request.id !== this.#newest) return;
    const reply = answer(this.parts.solve, request);
    this.#tell(reply);
    if (reply.ok && request.options.neutralDroop !== false) await this.#practise(request);
  }

  /** Solves as under a drag until it has done so often enough or something is asked. */
  async #practise({ id, design, options }: SolveRequest): Promise<void> {
    const { solve, slice = 20, practice = 100 } = this.parts;
    for (let rested = -Infinity; this.#practised < practice; this.#practised++) {
      if (performance.now() - rested >= slice) {
        await pause();
        if (id !== this.#newest) return;
        rested = performance.now();
      }
      const copy = structuredClone(design); // what is remembered of a design solved before would be no practice
      answer(solve, { id, design: copy, options: { ...options, neutralDroop: false } });
    }
  }

  /** Until all is made or the request is no longer wanted. `patience`: ms to the first figures. */
  async #prepare(request: SolveRequest, patience: number): Promise<void> {
    const { prepare, slice = 20 } = this.parts;
    const start = performance.now();
    const work = prepare(request.design);
    let hasTold = false;
    let rested = start;
    for (;;) {
      if (isDone(work)) {
        this.#isPreparing = false;
        return;
      }
      if (!this.#hasTold) {
        this.#tellFirst(request);
        hasTold = true;
      }
      const now = performance.now();
      if (now - rested < slice) continue;
      this.#isPreparing = true;
      await pause();
      if (request.id !== this.#newest) return;
      if (!hasTold && now - start > patience) {
        this.#tellFirst(request);
        hasTold = true;
      }
      rested = performance.now();
    }
  }

  #tellFirst({ id, design, options }: SolveRequest): void {
    const thin = { ...options, sections: 'thin', neutralDroop: false } as const;
    const reply = answer(this.parts.solve, { id, design, options: thin });
    if (reply.ok) this.#tell({ ...reply, isFirst: true });
  }

  #tell(reply: SolveReply): void {
    this.#hasTold = true;
    this.parts.tell(reply);
  }
}

/** What cannot be made is left to the solver to refuse. */
function isDone(work: Generator<number, void, void>): boolean {
  try {
    return work.next().done === true;
  } catch {
    return true;
  }
}
