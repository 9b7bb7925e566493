import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { withMark } from '../session/number-format.ts';
import { type Studies, StudyLine } from '../session/studies.ts';
import type { StudyName, StudyOptions, StudyResult } from '../session/study-messages.ts';
import type { Design } from '../solver/design/document.ts';

/** What a component asks for at each update; null: nothing. */
export interface StudyQuestion<N extends StudyName> {
  studies: Studies | null;
  design: Design | null;
  options: StudyOptions<N>;
}

/**
 * Keeps one study of a component up with its design: asked at each update of the host, newest wins, the host drawn again
 * at every bit of news. The last answer stays until a newer one comes. One that stands behind waits for all the others.
 */
export class StudyController<N extends StudyName> implements ReactiveController {
  #line: StudyLine<N> | null = null;
  #studies: Studies | null = null;

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly name: N,
    private readonly question: () => StudyQuestion<N> | null,
    private readonly isBehind = false,
  ) {
    host.addController(this);
  }

  get result(): StudyResult<N> | null {
    return this.#line?.result ?? null;
  }

  /** The design that the result belongs to. */
  get resultDesign(): Design | null {
    return this.#line?.resultDesign ?? null;
  }

  get failure(): string | null {
    const failure = this.#line?.failure;
    return failure ? withMark(failure) : null;
  }

  get isRunning(): boolean {
    return this.#line?.isRunning ?? false;
  }

  get isCurrent(): boolean {
    return this.#line?.isCurrent ?? false;
  }

  get isHalted(): boolean {
    return this.#line?.isHalted ?? false;
  }

  /** Share done of what runs, 0 to 1; null before the first news of it. */
  get share(): number | null {
    return this.#line?.share ?? null;
  }

  readonly cancel = (): void => this.#line?.halt();

  readonly resume = (): void => this.#line?.resume();

  hostUpdate(): void {
    const asked = this.question();
    if (!asked?.studies || !asked.design) return;
    if (asked.studies !== this.#studies) {
      this.#line?.leave();
      this.#studies = asked.studies;
      this.#line = new StudyLine(asked.studies, this.name, () => this.host.requestUpdate(), this.isBehind);
    }
    this.#line?.ask(asked.design, asked.options);
  }

  hostDisconnected(): void {
    this.#line?.leave();
  }

  hostConnected(): void {
    this.host.requestUpdate();
  }
}
