/**
 * Tabs with the same design open hear of one another's edits. Each keeps working on its own copy; what another has
 * made is offered, never put in place. Versions of a design are the same design while they share its line.
 */
import type { Design } from '../solver/design/document.ts';
import { canonical } from './canonical.ts';

/** What another tab has made of the design. */
export interface Elsewhere {
  tab: string;
  document: unknown; // read when it is taken
  label: string | null; // its last step
}

/** The way to the other tabs of this browser. */
export interface Channel {
  post(message: unknown): void;
  listen(listener: (message: unknown) => void): void;
}

export interface NeighboursParts {
  channel: Channel;
  tab: string;
  present: () => { design: Design; line: string; label: string | null };
  onChange: () => void;
}

const VERSION = 1;

interface Message {
  version: typeof VERSION;
  kind: 'ask' | 'tell';
  tab: string;
  line: string;
  document: unknown;
  label: string | null;
}

export class Neighbours {
  /** The other version that has not been decided on, or null. */
  elsewhere: Elsewhere | null = null;
  readonly #declined = new Set<string>(); // tabs whose version is not wanted

  constructor(private readonly parts: NeighboursParts) {
    parts.channel.listen((message) => this.#hear(message));
    this.#send('ask');
  }

  /** The design has settled: the others may want it. */
  tell(): void {
    const { elsewhere } = this;
    if (elsewhere && this.#isMine(elsewhere.document)) this.elsewhere = null;
    this.#send('tell');
  }

  /** Goes on with this tab's version: the other tab is not offered again until both are the same. */
  decline(): void {
    if (this.elsewhere) this.#declined.add(this.elsewhere.tab);
    this.elsewhere = null;
  }

  #hear(message: unknown): void {
    if (!isMessage(message) || message.tab === this.parts.tab) return;
    if (message.kind === 'ask') this.#send('tell');
    const before = this.elsewhere;
    this.#weigh(message);
    if (this.elsewhere !== before) this.parts.onChange();
  }

  #weigh({ tab, line, document, label }: Message): void {
    if (line !== this.parts.present().line || this.#isMine(document)) {
      this.#declined.delete(tab);
      if (this.elsewhere?.tab === tab) this.elsewhere = null;
    } else if (!this.#declined.has(tab)) this.elsewhere = { tab, document, label };
  }

  #isMine(document: unknown): boolean {
    return canonical(document) === canonical(this.parts.present().design);
  }

  #send(kind: Message['kind']): void {
    const { channel, tab, present } = this.parts;
    const { design, line, label } = present();
    channel.post({ version: VERSION, kind, tab, line, document: design, label } satisfies Message);
  }
}

/** A message of another version of the page is passed over. */
function isMessage(value: unknown): value is Message {
  if (typeof value !== 'object' || value === null) return false;
  const { version, kind, tab, line, document, label } = value as Partial<Message>;
  return (
    version === VERSION &&
    (kind === 'ask' || kind === 'tell') &&
    typeof tab === 'string' &&
    typeof line === 'string' &&
    typeof document === 'object' &&
    (label === null || typeof label === 'string')
  );
}

/** The browser's own channel; where there is none the tab hears of no other. */
export function browserChannel(): Channel {
  if (typeof BroadcastChannel === 'undefined') return { post: () => {}, listen: () => {} };
  const channel = new BroadcastChannel('downcurve');
  return {
    post: (message) => channel.postMessage(message),
    listen: (listener) => channel.addEventListener('message', ({ data }) => listener(data)),
  };
}
