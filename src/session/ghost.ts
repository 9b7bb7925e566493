/**
 * The second design that stays behind every curve and beside every figure: a kept one, until it is let go, also across
 * a reload. While a proposal is being looked for, or shown, the proposal stands in its place.
 */
import type { Design } from '../solver/design/document.ts';
import type { Report } from '../solver/report.ts';
import type { KeptDesigns } from './kept.ts';
import type { Proposals } from './proposals.ts';
import type { Reports } from './reports.ts';
import type { Notebook } from './storage.ts';
import { type Studies, StudyLine } from './studies.ts';

export interface Ghost {
  design: Design;
  report: Report | null; // null until it is computed
}

export interface ShownGhost extends Ghost {
  name: string;
  id: string | null; // of the kept design; null: a proposal
}

export interface GhostParts {
  kept: KeptDesigns;
  proposals: Proposals;
  studies: Studies;
  reports: Reports;
  notebook: Pick<Notebook, 'getItem' | 'setItem' | 'removeItem'> | null;
  changed: () => void;
}

const CHOSEN = 'downcurve.ghost';

const isSame = (a: ShownGhost | null, b: ShownGhost | null): boolean =>
  a?.design === b?.design && a?.id === b?.id && a?.report === b?.report && a?.name === b?.name;

export class Ghosts {
  /** The one to draw, the same object as long as it is the same; null without one. */
  current: ShownGhost | null = null;

  #chosen: string | null; // id of a kept design
  readonly #proposed: StudyLine<'report'>; // figures of the proposal
  #lastKept: ShownGhost | null = null;

  constructor(private readonly parts: GhostParts) {
    this.#chosen = this.#recall();
    this.#proposed = new StudyLine(parts.studies, 'report', () => this.look());
    parts.kept.subscribe(() => this.look());
    parts.proposals.subscribe(() => this.look());
  }

  /** The kept design that is chosen, also while a proposal stands in its place. */
  get chosen(): string | null {
    return this.#chosen;
  }

  /** It itself, the same object as long as it is the same; null without one. */
  get kept(): ShownGhost | null {
    const kept = this.#kept();
    if (!isSame(kept, this.#lastKept)) this.#lastKept = kept;
    return this.#lastKept;
  }

  choose(id: string): void {
    this.#remember(id);
    this.parts.proposals.show(false);
    this.look();
  }

  /** Lets go of the one that is drawn. */
  letGo(): void {
    if (this.current?.id === null) this.parts.proposals.show(false);
    else this.#remember(null);
    this.look();
  }

  /** Finds out what is to be drawn now; tells when it is another. */
  look(): void {
    this.#forgetRemoved();
    const wanted = this.#proposal() ?? this.kept;
    if (isSame(wanted, this.current)) return;
    this.current = wanted;
    this.parts.changed();
  }

  /** Its figures come once the search rests: the best so far changes too often. */
  #proposal(): ShownGhost | null {
    const { preview: design, activity } = this.parts.proposals;
    if (!design) return null;
    if (activity === 'idle') this.#proposed.ask(design, {});
    const { result, resultDesign } = this.#proposed;
    return { design, report: resultDesign === design ? result : null, name: 'the proposal', id: null };
  }

  #kept(): ShownGhost | null {
    const kept = this.#chosen === null ? null : this.parts.kept.find(this.#chosen);
    if (!kept?.reading.ok) return null;
    const { reading, name, id } = kept;
    return { design: reading.design, report: this.parts.reports.of(kept), name, id };
  }

  /** One that has been taken off the shelf is no ghost any more. */
  #forgetRemoved(): void {
    const { kept } = this.parts;
    if (this.#chosen !== null && kept.removed.some(({ id }) => id === this.#chosen)) this.#remember(null);
  }

  #recall(): string | null {
    try {
      return this.parts.notebook?.getItem(CHOSEN) ?? null;
    } catch {
      return null;
    }
  }

  #remember(id: string | null): void {
    this.#chosen = id;
    try {
      if (id === null) this.parts.notebook?.removeItem(CHOSEN);
      else this.parts.notebook?.setItem(CHOSEN, id);
    } catch {
      // full or blocked: it stays until the page is left
    }
  }
}
