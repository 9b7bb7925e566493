import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session } from '../session/session.ts';
import type { UnitSystem } from '../session/units.ts';
import { headlinesOf } from './headline-figures.ts';

const PAUSE = 900; // ms without a change before anything is said

/** Says the headline figures to screen readers once an edit has settled and its complete answer has come. */
export class Announcer implements ReactiveController {
  /** What the live region holds. */
  text = '';
  #said = -1;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  hostDisconnected(): void {
    clearTimeout(this.#timer);
  }

  /** Called at every change; speaks only when it has been quiet. The first figures are not announced. */
  consider(session: Session, units: UnitSystem): void {
    clearTimeout(this.#timer);
    const { report, reportRevision, isPending, store, failure } = session;
    if (!report || isPending || store.isMoving || failure || reportRevision === this.#said) return;
    if (this.#said === -1) {
      this.#said = reportRevision;
      return;
    }
    this.#timer = setTimeout(() => {
      this.#said = reportRevision;
      this.text = headlinesOf(report, units)
        .slice(0, 3)
        .map(({ name, value }) => `${name} ${value}.`)
        .join(' ');
      this.host.requestUpdate();
    }, PAUSE);
  }
}
