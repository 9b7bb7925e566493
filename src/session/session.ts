/**
 * The whole of what the page shows: the open design with its history, the figures that belong to it, whether it is
 * kept, and what the user should know. Components read it and call its few actions; it tells them when to look again.
 */

import type { Design } from '../solver/design/document.ts';
import type { Reading } from '../solver/design/read.ts';
import type { Report } from '../solver/report.ts';
import type { EditDetail } from './edits.ts';
import { Exporter, type ExporterParts } from './exporter.ts';
import { fileNameOf, openDesignFile, saveTextFile } from './files.ts';
import { type Incoming, readIncoming } from './incoming.ts';
import { Proposals } from './proposals.ts';
import { type RunnerOptions, SolveRunner } from './runner.ts';
import { type Recovery, type SaveState, Saving, type SavingOptions } from './saving.ts';
import { readLink } from './share-link.ts';
import { DesignStore, type StoreChange } from './store.ts';
import { Studies, type StudiesParts } from './studies.ts';

export interface Notice {
  kind: 'trouble' | 'news';
  message: string;
  unreadable?: string; // text the user may want as a file
}

export interface SessionParts {
  demo: Design; // opened when nothing was kept
  read: (text: string) => Reading;
  readValue: (value: unknown) => Reading;
  write: (design: Design) => string;
  shelf: SavingOptions['shelf'];
  notebook: SavingOptions['notebook'];
  makeWorker: RunnerOptions['makeWorker'];
  loadSolve: RunnerOptions['loadSolve'];
  loadStudies: StudiesParts['loadStudies'];
  makeExportWorker: ExporterParts['makeExportWorker'];
  loadExport: ExporterParts['loadExport'];
}

export class Session {
  readonly store: DesignStore;
  /** Questions that take longer than a solve; a thread of their own. */
  readonly studies: Studies;
  readonly exporter: Exporter;
  /** The search for a better wing; threads of its own while it runs. */
  readonly proposals: Proposals;
  /** The newest figures; null before the first answer. While dragging they may be one step behind the design. */
  report: Report | null = null;
  /** The design revision that the figures belong to. */
  reportRevision = -1;
  /** The complete answer (with the neutral droop) is still to come. */
  isPending = true;
  /** Why the present design has no figures, or null. */
  failure: string | null = null;
  saveState: SaveState = { kind: 'saved' };
  notice: Notice | null = null;

  readonly #saving: Saving;
  readonly #runner: SolveRunner;
  readonly #listeners = new Set<() => void>();
  #asked: Design | null = null; // whose figures were asked for last
  #askedRevision = -1;

  private constructor(
    private readonly parts: SessionParts,
    saving: (session: Session) => Saving,
    recovery: Recovery,
  ) {
    this.store = new DesignStore(recovery.design ?? parts.demo, parts.readValue, recovery.trail ?? undefined);
    this.studies = new Studies(parts);
    this.exporter = new Exporter(parts);
    this.proposals = new Proposals(parts);
    this.#watchPreview();
    this.#saving = saving(this);
    this.#runner = new SolveRunner({
      makeWorker: parts.makeWorker,
      loadSolve: parts.loadSolve,
      onAnswer: ({ revision, report, isComplete }) => {
        this.report = report;
        this.reportRevision = revision;
        this.isPending = !isComplete;
        this.failure = null;
        this.#tell();
      },
      onFailure: (message, revision) => {
        if (revision === this.#askedRevision) this.failure = message;
        this.#tell();
      },
    });
    if (recovery.message) {
      this.notice = { kind: 'trouble', message: recovery.message };
      if (recovery.unreadable !== null) this.notice.unreadable = recovery.unreadable;
    }
    this.store.subscribe((change) => this.#onChange(change));
    this.#solve();
  }

  /** Opens the session with the design kept last, or the demo. */
  static async open(parts: SessionParts): Promise<Session> {
    let session: Session | null = null;
    const saving = new Saving({
      ...parts,
      present: () => ({ design: session!.store.design, trail: session!.store.trail() }),
      onState: (state) => {
        if (session) session.#onSaveState(state);
      },
    });
    const recovery = await saving.recover();
    session = new Session(parts, () => saving, recovery);
    return session;
  }

  get design(): Design {
    return this.store.design;
  }

  /** Whether the figures on screen are those of the design on screen. */
  get isCurrent(): boolean {
    return this.reportRevision === this.#askedRevision;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Applies an edit; null when it counts, else why not. */
  edit(detail: EditDetail): string | null {
    return this.store.edit(detail);
  }

  /** Puts a design in place of the open one, as a step that can be undone. */
  openDesign(design: Design, label: string): void {
    this.notice = {
      kind: 'news',
      message: `“${design.name}” is open. Undo brings the design before it back.`,
    };
    this.store.replace(design, label);
  }

  /** Opens a design file; one that cannot be read leaves everything as it was and says why. */
  async openFile(file: File): Promise<void> {
    this.#open(await openDesignFile(file, this.parts.read), `open ${file.name}`);
  }

  /** Opens the share link in the text, on the same terms. */
  openLink(text: string): void {
    this.#open(readLink(text, this.parts.read), 'open a link');
  }

  /** Opens a document or a share link given as text, on the same terms. */
  openText(text: string, how: Incoming): void {
    this.#open(readIncoming(text, how, this.parts.read), `open a ${how} design`);
  }

  saveFile(): void {
    saveTextFile(this.parts.write(this.design), fileNameOf(this.design.name));
  }

  /** Hands out the text that could not be read at start. */
  saveUnreadable(): void {
    if (this.notice?.unreadable !== undefined) saveTextFile(this.notice.unreadable, 'set-aside.json');
  }

  say(notice: Notice | null): void {
    this.notice = notice;
    this.#tell();
  }

  /** The page hides or closes: keep what is not kept yet. */
  flush(): void {
    this.#saving.flush();
  }

  /** What is drawn behind the design has changed: the views look again. */
  #watchPreview(): void {
    let shown: Design | null = null;
    this.proposals.subscribe(() => {
      const { preview } = this.proposals;
      if (preview === shown) return;
      shown = preview;
      this.#tell();
    });
  }

  #open(reading: Reading, label: string): void {
    if (reading.ok) this.openDesign(reading.design, label);
    else this.say({ kind: 'trouble', message: reading.message });
  }

  #onChange(change: StoreChange): void {
    this.#saving.changed();
    if (change === 'replaced') this.#runner.forget();
    this.#solve();
    this.#tell();
  }

  /** Asks for figures unless only the name has changed. */
  #solve(): void {
    const { design, revision } = this.store;
    if (this.#asked && isSameShape(this.#asked, design)) return;
    this.#asked = design;
    this.#askedRevision = revision;
    this.isPending = true;
    this.#runner.ask(design, revision);
  }

  #onSaveState(state: SaveState): void {
    if (state.kind === this.saveState.kind && state.kind !== 'failed') return;
    this.saveState = state;
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Whether nothing but the name differs. */
function isSameShape(one: Design, other: Design): boolean {
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]) as Set<keyof Design>;
  keys.delete('name');
  return [...keys].every((key) => one[key] === other[key]);
}
