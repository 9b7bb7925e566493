import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Session } from '../session/session.ts';

/** Ties a component to the session: it renders again whenever the session has something new. */
export class SessionController implements ReactiveController {
  #session: Session | null = null;
  #leave: (() => void) | null = null;

  constructor(private readonly host: ReactiveControllerHost) {
    host.addController(this);
  }

  get session(): Session | null {
    return this.#session;
  }

  set session(session: Session | null) {
    if (session === this.#session) return;
    this.hostDisconnected();
    this.#session = session;
    this.hostConnected();
    this.host.requestUpdate();
  }

  hostConnected(): void {
    this.#leave ??= this.#session?.subscribe(() => this.host.requestUpdate()) ?? null;
  }

  hostDisconnected(): void {
    this.#leave?.();
    this.#leave = null;
  }
}
