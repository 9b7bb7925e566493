/** The open design's whole life in this browser: found at start, kept at every change, shared with other tabs. */
import type { Design } from '../solver/design/document.ts';
import type { Trail } from './history.ts';
import type { LeftOver, TakenUp } from './left-over.ts';
import { type Channel, type Elsewhere, Neighbours } from './neighbours.ts';
import { newestOf, type RecoverySources } from './opening.ts';
import { type Recovery, recover } from './recovery.ts';
import { type SaveState, Saving } from './saving.ts';
import { findAll, forget } from './storage.ts';
import { loneTab, type Tabs } from './tabs.ts';

export interface KeepingParts extends Omit<RecoverySources, 'tabs'> {
  write: (design: Design) => string;
  tabs?: Tabs; // none: this is the only tab
  tabChannel?: Channel; // the way to the others
}

/** The open design, as it is asked for when it is kept. */
export interface Open {
  design: Design;
  trail: Trail<Design>;
  label: string | null; // the last step
}

const SILENT: Channel = { post: () => {}, listen: () => {} };

export class Keeping {
  state: SaveState = { kind: 'saved' };
  /** The name under which the design was opened: what tabs know it by. */
  line: string;
  /** What closed tabs have left, newest first. */
  left: LeftOver[];

  #taken: TakenUp[];
  readonly #saving: Saving;
  readonly #neighbours: Neighbours;

  constructor(
    private readonly parts: KeepingParts,
    { id, time, base, line, left, taken, mustSave }: Recovery,
    open: () => Open,
    private readonly onChange: () => void,
  ) {
    this.line = line ?? open().design.name;
    this.left = left;
    this.#taken = taken;
    this.#saving = new Saving({
      ...parts,
      id,
      time,
      base,
      present: () => ({ ...open(), line: this.line }),
      onState: (state) => this.#onState(state),
    });
    this.#neighbours = new Neighbours({
      channel: parts.tabChannel ?? SILENT,
      tab: id,
      present: () => ({ ...open(), line: this.line }),
      onChange,
    });
    if (mustSave) this.#saving.settled(); // into the database now
  }

  static find(parts: KeepingParts): Promise<Recovery> {
    return recover({ ...parts, tabs: parts.tabs ?? loneTab() });
  }

  /** What another tab has made of the design and nothing has been decided on, or null. */
  get elsewhere(): Elsewhere | null {
    return this.#neighbours.elsewhere;
  }

  /** The design has changed; `isSettled` once the edit is complete. */
  changed(isSettled: boolean): void {
    if (isSettled) {
      this.#saving.settled();
      this.#neighbours.tell();
    } else this.#saving.changed();
  }

  flush(): void {
    this.#saving.flush();
  }

  declineElsewhere(): void {
    this.#neighbours.decline();
    this.onChange();
  }

  /** Gives the newest left design out for opening; its copy goes at the next start, when the history has it. */
  takeLeft(): Design | null {
    const [first, ...others] = this.left;
    if (!first) return null;
    this.left = others;
    return first.design;
  }

  /** They stay where they are and are offered at the next visit. */
  hideLeft(): void {
    this.left = [];
    this.onChange();
  }

  #onState(state: SaveState): void {
    const hasChanged = state.kind !== this.state.kind || state.kind === 'failed';
    this.state = state;
    if (state.kind === 'saved' && this.#saving.isStored) this.#forgetTaken();
    if (hasChanged) this.onChange();
  }

  #forgetTaken(): void {
    const { tabs = loneTab() } = this.parts;
    for (const taken of this.#taken) void tabs.whileFree(taken.id, () => this.#forget(taken)).catch(() => {}); // it is taken up again at the next start
    this.#taken = [];
  }

  /** Unless its tab has come back and written there since. */
  async #forget({ id, time }: TakenUp): Promise<void> {
    const { shelf, notebook } = this.parts;
    const [found] = await findAll(shelf, notebook, id);
    if (found && newestOf(found) === time) await forget(shelf, notebook, id);
  }
}
