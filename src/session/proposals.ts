/**
 * The search for a proposal as the page sees it: started, followed on all cores, cancelled with what it found, explained;
 * the front likewise. What was found is kept with the design it was found for until the next search.
 */
import type { Design } from '../solver/design/document.ts';
import type { Front } from '../solver/studies/propose/front.ts';
import type { Proposal } from '../solver/studies/propose/proposal.ts';
import type { Found } from '../solver/studies/propose/search.ts';
import type { StudiesParts } from './studies.ts';
import { StudyTeam } from './study-team.ts';

export type Activity = 'idle' | 'searching' | 'settling' | 'fronting';

export class Proposals {
  activity: Activity = 'idle';
  /** Of what runs, 0 to 1. */
  share = 0;
  /** Why the last search or front came to nothing, or null. */
  failure: string | null = null;
  /** The design that was searched for, and the seed. */
  asked: { design: Design; seed: number } | null = null;
  proposal: Proposal | null = null;
  front: Front | null = null;
  frontDesign: Design | null = null;
  /** Whether what was found is drawn behind the design. */
  isShown = true;

  readonly #listeners = new Set<() => void>();
  #founds: Found[] = [];
  #team: StudyTeam | null = null;
  #run = 0;

  constructor(
    private readonly parts: StudiesParts,
    private readonly cores: number = globalThis.navigator?.hardwareConcurrency ?? 2,
  ) {}

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** The best so far: the proposal, or the lightest start that holds every limit. */
  get best(): Design | null {
    if (this.proposal?.outcome === 'found') return this.proposal.design;
    return this.#bestFound?.design ?? null;
  }

  /** Weighted drag (N) of the best start that holds every limit. */
  get bestDrag(): number | null {
    return this.#bestFound?.drag ?? null;
  }

  /** What to draw behind the open design; null where nothing is found or wanted. */
  get preview(): Design | null {
    return this.isShown ? this.best : null;
  }

  /** Cancelled with something in hand that is not explained yet. */
  get isUnfinished(): boolean {
    return this.activity === 'idle' && this.proposal === null && this.#founds.length > 0;
  }

  get #bestFound(): Found | null {
    return this.#founds.reduce<Found | null>(
      (best, found) => (found.isHeld && (!best || found.drag < best.drag) ? found : best),
      null,
    );
  }

  show(isShown: boolean): void {
    this.isShown = isShown;
    this.#tell();
  }

  /** Looks for a proposal for a design; the answer to the last search goes. */
  async search(design: Design, seed: number): Promise<void> {
    this.#founds = [];
    this.proposal = null;
    this.isShown = true;
    this.asked = { design, seed };
    await this.#work('searching', async (team, isWanted) => {
      const { starts, problem } = await team.ask('proposalPlan', design, {});
      if (problem) throw new Error(problem);
      const shares = new Array<number>(starts + 1).fill(0);
      const told = (k: number) => (share: number) => {
        shares[k] = share;
        this.#progress(shares.reduce((sum, value) => sum + value, 0) / shares.length);
      };
      await Promise.all(
        Array.from({ length: starts }, async (_, start) => {
          const found = await team.ask('proposalStart', design, { seed, start }, told(start));
          if (!isWanted()) return;
          if (found) this.#founds.push(found);
          told(start)(1);
        }),
      );
      this.activity = 'settling';
      this.proposal = await team.ask('proposal', design, { seed, founds: this.#founds }, told(starts));
    });
  }

  /** Explains what a cancelled search had found. */
  async finish(): Promise<void> {
    const { asked } = this;
    if (!asked || !this.isUnfinished) return;
    const founds = this.#founds;
    await this.#work('settling', async (team) => {
      const { design, seed } = asked;
      this.proposal = await team.ask('proposal', design, { seed, founds }, (share) => this.#progress(share));
    });
  }

  /** Draws the front for a design, from the proposal for it where there is one. */
  async drawFront(design: Design): Promise<void> {
    this.front = null;
    this.frontDesign = design;
    const known = this.proposal?.outcome === 'found' && this.asked?.design === design ? this.proposal : null;
    await this.#work('fronting', async (team) => {
      const from = { near: known?.design ?? design, variant: known?.variant ?? 0 };
      const ends = await team.ask('frontEnds', design, from, (share) => this.#progress(share / 3));
      if (!ends)
        throw new Error('No wing within the ranges holds the other limits: there is no front to draw.');
      const shares = ends.chains.map(() => 0);
      const chains = await Promise.all(
        ends.chains.map((chain, k) =>
          team.ask('frontChain', design, chain, (share) => {
            shares[k] = share;
            const sum = shares.reduce((total, value) => total + value, 0);
            this.#progress(1 / 3 + (2 / 3) * (sum / shares.length));
          }),
        ),
      );
      this.front = await team.ask('front', design, { ends, chains });
    });
  }

  /** Ends what runs; what it found stays. */
  cancel(): void {
    this.#run++;
    this.#team?.stop();
    this.#team = null;
    this.activity = 'idle';
    this.#tell();
  }

  /** One piece of work at a time; a newer one ends it. Threads are held only while it runs. */
  async #work(
    activity: Activity,
    work: (team: StudyTeam, isWanted: () => boolean) => Promise<void>,
  ): Promise<void> {
    this.#team?.stop();
    const run = ++this.#run;
    const team = new StudyTeam(this.parts, this.cores);
    this.#team = team;
    this.activity = activity;
    this.share = 0;
    this.failure = null;
    this.#tell();
    let failure: string | null = null;
    try {
      await work(team, () => run === this.#run);
    } catch (error) {
      failure = error instanceof Error ? error.message : String(error);
    }
    if (run !== this.#run) return;
    team.stop();
    this.#team = null;
    this.activity = 'idle';
    this.failure = failure;
    this.#tell();
  }

  #progress(share: number): void {
    this.share = share;
    this.#tell();
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}
