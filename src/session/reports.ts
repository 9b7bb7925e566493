/** The figures of kept designs, each text computed once by the study worker, when first asked for. */
import type { Report } from '../solver/report.ts';
import type { KeptDesign } from './kept.ts';
import type { Studies } from './studies.ts';

type Answer = { report: Report } | { failure: string };
type Kept = Pick<KeptDesign, 'text' | 'reading'>;

export class Reports {
  readonly #answers = new Map<string, Answer | null>(); // by text; null: asked for
  readonly #waiting: Kept[] = [];
  #isBusy = false;

  /** `changed` is told at every answer. */
  constructor(
    private readonly studies: Studies,
    private readonly changed: () => void,
  ) {}

  /** The report; null as long as it is being computed, or where there is none. Asks for it. */
  of(kept: Kept): Report | null {
    const answer = this.#answers.get(kept.text);
    if (answer === undefined && kept.reading.ok) {
      this.#answers.set(kept.text, null);
      this.#waiting.push(kept);
      this.#next();
    }
    return answer && 'report' in answer ? answer.report : null;
  }

  /** Why a design has no figures, or null. */
  failureOf({ text }: Kept): string | null {
    const answer = this.#answers.get(text);
    return answer && 'failure' in answer ? answer.failure : null;
  }

  /** One at a time: other questions get their turn between. */
  #next(): void {
    const kept = this.#isBusy ? undefined : this.#waiting.shift();
    if (!kept?.reading.ok) return;
    this.#isBusy = true;
    const done = (answer: Answer | null) => {
      if (answer) this.#answers.set(kept.text, answer);
      else this.#answers.delete(kept.text);
      this.#isBusy = false;
      this.#next();
      this.changed();
    };
    this.studies.start(
      'report',
      kept.reading.design,
      {},
      {
        progress: () => {},
        done: (report) => done({ report }),
        failed: (failure) => done({ failure }),
        cancelled: () => done(null),
      },
    );
  }
}
