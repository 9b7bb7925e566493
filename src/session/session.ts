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
import { Ghosts } from './ghost.ts';
import { type Incoming, readIncoming } from './incoming.ts';
import { Keeping, type KeepingParts } from './keeping.ts';
import { type KeptDesign, KeptDesigns, type KeptParts } from './kept.ts';
import { Proposals } from './proposals.ts';
import type { Recovery } from './recovery.ts';
import { Reports } from './reports.ts';
import { type RiddenHold, riddenHold } from './ridden.ts';
import { type RunnerOptions, SolveRunner } from './runner.ts';
import { readLink } from './share-link.ts';
import { DesignStore, type StoreChange } from './store.ts';
import { Studies, type StudiesParts } from './studies.ts';

export interface Notice {
  kind: 'trouble' | 'news';
  message: string;
  unreadable?: string; // text the user may want as a file
  offer?: { label: string; take: () => void }; // what can be done about it
}

export interface SessionParts extends KeepingParts {
  readValue: (value: unknown) => Reading;
  kept: KeptParts['kept'];
  channel: KeptParts['channel'];
  demo: Design; // opened when nothing was kept
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
  /** The shelf of kept designs, and which of them stands behind the open one. */
  readonly kept: KeptDesigns;
  readonly ghosts: Ghosts;
  /** Figures of kept designs. */
  readonly reports: Reports;
  /** The newest figures; null before the first answer. While dragging they may be one step behind the design. */
  report: Report | null = null;
  /** The design revision that the figures belong to. */
  reportRevision = -1;
  /** The complete answer (with the neutral droop) is still to come. */
  isPending = true;
  /** The figures are first ones by thin-airfoil theory: sections met for the first time are being worked out. */
  isFirst = false;
  /** Why the present design has no figures, or null. */
  failure: string | null = null;
  notice: Notice | null = null;
  /** The next load of the page brings a newer version of it. */
  isNewerReady = false;
  /** How the design is kept in this browser, and what other tabs have made of it. */
  readonly keeping: Keeping;

  readonly #runner: SolveRunner;
  readonly #listeners = new Set<() => void>();
  #asked: Design | null = null; // whose figures were asked for last
  #askedRevision = -1;

  private constructor(
    private readonly parts: SessionParts,
    recovery: Recovery,
  ) {
    this.store = new DesignStore(recovery.design ?? parts.demo, parts.readValue, recovery.trail ?? undefined);
    this.studies = new Studies(parts);
    this.exporter = new Exporter(parts);
    this.proposals = new Proposals(parts);
    this.kept = new KeptDesigns(parts);
    const { kept, proposals, studies } = this;
    this.reports = new Reports(studies, () => {
      this.ghosts.look();
      this.#tell();
    });
    const { reports } = this;
    this.ghosts = new Ghosts({ ...parts, kept, proposals, studies, reports, changed: () => this.#tell() });
    this.kept.subscribe(() => this.#tell());
    void this.kept.load();
    const open = () => ({ design: this.design, trail: this.store.trail(), label: this.store.undoLabel });
    this.keeping = new Keeping(parts, recovery, open, () => this.#tell());
    this.#runner = new SolveRunner({
      makeWorker: parts.makeWorker,
      loadSolve: parts.loadSolve,
      onAnswer: ({ revision, report, isComplete, isFirst }) => {
        this.report = report;
        this.reportRevision = revision;
        this.isPending = !isComplete;
        this.isFirst = isFirst;
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
    return new Session(parts, await Keeping.find(parts));
  }

  get design(): Design {
    return this.store.design;
  }

  /** Whether the figures on screen are those of the design on screen. */
  get isCurrent(): boolean {
    return this.reportRevision === this.#askedRevision;
  }

  /** What the rider's marks for hold say of the hold index. */
  get ridden(): RiddenHold {
    return riddenHold(this.kept.list, this.reports);
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
    this.keeping.line = design.name;
    this.#replace(design, label);
  }

  /** Puts what another tab has made of the design in place of it. */
  takeElsewhere(): void {
    const { elsewhere } = this.keeping;
    if (!elsewhere) return;
    const reading = this.parts.readValue(elsewhere.document);
    if (reading.ok) this.#replace(reading.design, 'take the other tab’s version');
    else
      this.say({ kind: 'trouble', message: `The other tab’s version cannot be opened: ${reading.message}.` });
  }

  /** Opens what a closed tab has left. */
  openLeft(): void {
    const design = this.keeping.takeLeft();
    if (design) this.openDesign(design, 'open what another tab left');
  }

  #replace(design: Design, label: string): void {
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

  /** Puts a design on the shelf; where the browser refuses it, says so and offers a file. */
  async keep(design: Design = this.design, name = design.name): Promise<void> {
    const outcome = await this.kept.keep(design, name);
    const { kept } = outcome;
    if (outcome.kind === 'unstored') {
      const offer = { label: 'Save it as a file', take: () => this.saveKept(kept) };
      this.say({ kind: 'trouble', message: outcome.why, offer });
    } else {
      const is = outcome.kind === 'kept' ? 'is kept' : 'was kept already';
      this.say({ kind: 'news', message: `“${kept.name}” ${is}: see Beside.` });
    }
  }

  /** A kept design becomes the open one, as a step that can be undone; its marks stay on the shelf. */
  openKept({ reading, name }: KeptDesign): void {
    if (reading.ok) this.openDesign(reading.design, `open kept ${name}`);
  }

  saveKept(kept: KeptDesign): void {
    saveTextFile(this.kept.fileOf(kept), fileNameOf(kept.name));
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

  newerReady(): void {
    this.isNewerReady = true;
    this.#tell();
  }

  /** The first figures are there, or there are none to be had. */
  settle(): Promise<void> {
    return new Promise((resolve) => {
      const leave = this.subscribe(() => {
        if (this.isPending && this.failure === null) return;
        leave();
        resolve();
      });
    });
  }

  /** The page hides or closes: keep what is not kept yet. */
  flush(): void {
    this.keeping.flush();
  }

  #open(reading: Reading, label: string): void {
    if (reading.ok) this.openDesign(reading.design, label);
    else this.say({ kind: 'trouble', message: reading.message });
  }

  #onChange(change: StoreChange): void {
    if (change === 'unreadable') {
      const message =
        'That step could not be read again. It is left out; the steps before it are still there.';
      this.notice = { kind: 'trouble', message };
    }
    this.keeping.changed(change !== 'live');
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
