import type { ReactiveControllerHost } from 'lit';
import type { Ghost } from '../session/ghost.ts';
import type { Studies } from '../session/studies.ts';
import type { StudyName, StudyOptions, StudyResult } from '../session/study-messages.ts';
import type { Design } from '../solver/design/document.ts';
import { StudyController } from './study-controller.ts';

interface Host extends ReactiveControllerHost {
  studies: Studies | null;
  ghost: Ghost | null;
}

/** A component's study asked of the ghost as well, with the same options, once the studies of the open design are done. */
export class GhostStudy<N extends StudyName> {
  readonly #host: Host;
  readonly #study: StudyController<N>;

  /** `options` null: the ghost has no answer to this. */
  constructor(host: Host, name: N, options: (design: Design) => StudyOptions<N> | null) {
    this.#host = host;
    const question = () => {
      const { studies, ghost } = host;
      const asked = ghost && options(ghost.design);
      return asked && { studies, design: ghost.design, options: asked };
    };
    this.#study = new StudyController(host, name, question, true);
  }

  /** Null without a ghost, and as long as the answer is another's. */
  get result(): StudyResult<N> | null {
    const { ghost } = this.#host;
    const { result, resultDesign, isCurrent } = this.#study;
    return ghost && isCurrent && resultDesign === ghost.design ? result : null;
  }
}
