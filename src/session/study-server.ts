/**
 * Runs studies where they are asked for: in the study worker, or on a page whose worker does not start. Each runs in
 * slices with a pause between, so that several take turns and a cancel is heard within a slice.
 */
import type { Design } from '../solver/design/document.ts';
import { pause } from './pause.ts';
import type { StudyName, StudyNews, StudyOrder } from './study-messages.ts';

/** The registry as the server sees it. */
export type AnyStudies = Record<string, (design: Design, options: never) => unknown>;

export interface StudyServerOptions {
  slice?: number; // ms of work between pauses; default 25
  /** Makes ahead, in slices, what a design's sections will be asked for at some speeds (m/s). */
  prepare?: (design: Design, speeds: readonly number[]) => Generator<number, void, void>;
}

const PROGRESS_EVERY = 50; // ms
const BEHIND = 10; // ms between looks whether the others are done

export class StudyServer {
  readonly #running = new Map<number, { isBehind: boolean }>();

  constructor(
    private readonly studies: AnyStudies,
    private readonly tell: (news: StudyNews) => void,
    private readonly options: StudyServerOptions = {},
  ) {}

  receive(order: StudyOrder): void {
    if (order.study === 'start') void this.#run(order);
    else this.#running.delete(order.id);
  }

  async #run(order: Extract<StudyOrder, { study: 'start' }>): Promise<void> {
    const { id, isBehind = false } = order;
    this.#running.set(id, { isBehind });
    try {
      const isWanted = !isBehind || (await this.#rest(id));
      const result = isWanted ? await this.#drive(id, this.#work(order)) : null;
      if (result?.done) this.tell({ study: 'done', id, result: result.value });
      else this.tell({ study: 'cancelled', id });
    } catch (error) {
      this.tell({ study: 'failed', id, message: error instanceof Error ? error.message : String(error) });
    }
    this.#running.delete(id);
  }

  /** The sections made ahead, then the study itself. */
  *#work({
    name,
    design,
    options,
  }: Extract<StudyOrder, { study: 'start' }>): Generator<number, unknown, void> {
    const study = this.studies[name];
    if (!study) throw new Error(`study: found "${name}", allowed ${Object.keys(this.studies).join(', ')}`);
    yield* this.#ahead(design, SPEEDS.has(name) ? speedsOf(design) : [design.brief.speeds.cruise]);
    const work = study(design, options as never);
    return isGenerator(work) ? yield* work : work;
  }

  /** What cannot be made ahead is left to the study to refuse. */
  *#ahead(design: Design, speeds: readonly number[]): Generator<number, void, void> {
    try {
      if (this.options.prepare) yield* this.options.prepare(design, speeds);
    } catch {}
  }

  /** Works in slices until the study is done or no longer wanted. */
  async #drive(
    id: number,
    work: Generator<number, unknown, void>,
  ): Promise<{ done: boolean; value: unknown }> {
    let rested = performance.now();
    let told = rested;
    for (;;) {
      const step = work.next();
      if (step.done) return { done: true, value: step.value };
      const now = performance.now();
      if (now - rested < (this.options.slice ?? 25)) continue;
      if (now - told >= PROGRESS_EVERY) {
        this.tell({ study: 'progress', id, share: step.value });
        told = now;
      }
      if (!(await this.#rest(id))) return { done: false, value: null };
      rested = performance.now();
    }
  }

  /** Lets the others have their turn, one that stands behind all of it. Says whether the study is still wanted. */
  async #rest(id: number): Promise<boolean> {
    await pause();
    while (this.#running.get(id)?.isBehind && [...this.#running.values()].some(({ isBehind }) => !isBehind))
      await pause(BEHIND);
    return this.#running.has(id);
  }
}

/** Studies that run at more speeds than cruise. */
const SPEEDS: ReadonlySet<string> = new Set<StudyName>([
  'speed',
  'speedDetails',
  'sections',
  'stall',
  'sidePull',
  'cavitation',
  'thin',
  'ride',
  'finish',
  'faults',
  'proposalStart',
]);

const speedsOf = ({ brief: { speeds } }: Design): number[] => [speeds.cruise, speeds.takeOff, speeds.top];

function isGenerator(work: unknown): work is Generator<number, unknown, void> {
  return typeof work === 'object' && work !== null && 'next' in work && typeof work.next === 'function';
}
