import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { fileNameOf, saveTextFile } from '../../session/files.ts';
import type { Activity, Proposals } from '../../session/proposals.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { writeDesign } from '../../solver/design/read.ts';
import type { FrontPlace } from '../../solver/studies/propose/front.ts';
import type { Plan } from '../../solver/studies/propose/plan.ts';
import type { Proposal } from '../../solver/studies/propose/proposal.ts';
import type { StandingOptions } from '../../solver/studies/propose/standing.ts';
import { answerStyles } from '../answer-styles.ts';
import { type Change, DesignKeepEvent } from '../events.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import * as answer from '../propose/answer.ts';
import * as front from '../propose/front-chart.ts';
import '../propose/guided-start.ts';
import type { GuidedEvent } from '../propose/guided-start.ts';
import '../propose/wanted-fields.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';

const DOING: Readonly<Record<Exclude<Activity, 'idle'>, string>> = {
  searching: 'Trying wings',
  settling: 'Settling the best one',
  fronting: 'Drawing the front',
};

/**
 * From the brief to a wing and stabilizer with the least drag that holds the limits: what may move and what must hold, the
 * search with the best so far drawn behind the wing, the answer explained, the front, and a guided start.
 */
@customElement('propose-panel')
export class ProposePanel extends LitElement {
  static override styles = [
    answerStyles,
    studyStyles,
    tableStyles,
    css`
      section + section {
        border-top: 1px solid var(--line);
        margin-top: 0.9rem;
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem 0.8rem;
        align-items: center;
        margin: 0.5rem 0;
      }
      button.first {
        background: var(--carry);
        border-color: var(--carry);
        color: var(--paper);
        font-weight: 600;
        padding: 0.35rem 0.9rem;
      }
      button:disabled {
        opacity: 0.5;
        cursor: default;
      }
      .row label {
        display: inline-flex;
        align-items: center;
        gap: 0.4rem;
        font-size: var(--step--1);
      }
      .row input[type='number'] {
        width: 5rem;
        font: inherit;
        color: inherit;
        background: var(--raised);
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 0.15rem 0.3rem;
      }
      input:focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: 1px;
      }
      .list {
        margin: 0.2rem 0 0.4rem;
        padding-left: 1.2rem;
      }
      .say {
        text-wrap: pretty;
      }
      .next {
        max-width: 40rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  @property({ attribute: false }) proposals: Proposals | null = null;

  /** The kept design chosen as the ghost, also while the proposal stands behind the wing in its place. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private seed = 1;

  readonly #plan = new StudyController(this, 'proposalPlan', () => ({
    studies: this.studies,
    design: this.design,
    options: {},
  }));
  readonly #ghostAnswer = new GhostStudy(this, 'standing', () => {
    const { proposal, asked } = this.proposals ?? {};
    return proposal?.outcome === 'found' && asked ? standingIn(asked.design, []) : null;
  });
  readonly #ghostFront = new GhostStudy(this, 'standing', () => {
    const { front: drawn, frontDesign } = this.proposals ?? {};
    return drawn && frontDesign ? standingIn(frontDesign, drawn.points) : null;
  });
  #leave: (() => void) | null = null;
  #isBeginning = false; // a guided start is on its way

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#leave?.();
    this.#leave = null;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (this.#isBeginning && changed.has('design') && this.design) {
      this.#isBeginning = false;
      void this.proposals?.search(this.design, this.seed);
    }
    if (this.#leave && !changed.has('proposals')) return;
    this.#leave?.();
    this.#leave = this.proposals?.subscribe(() => this.requestUpdate()) ?? null;
  }

  protected override render() {
    const { design, proposals } = this;
    if (!design || !proposals) return nothing;
    const plan = this.#plan.result;
    return html`<section aria-labelledby="guided">
        <h2 id="guided">Begin with a brief</h2>
        <guided-start .units=${this.units} @guided=${this.#onGuided}></guided-start>
      </section>
      <section aria-labelledby="wanted">
        <h2 id="wanted">What is wanted</h2>
        ${this.#plan.failure ? html`<p class="trouble" role="status">${this.#plan.failure}</p>` : nothing}
        ${plan ? this.#wanted(plan, design) : html`<p class="note">Reading the design …</p>`}
      </section>
      <section aria-labelledby="found">
        <h2 id="found">What was found</h2>
        ${this.#progress(proposals, ['searching', 'settling'])} ${this.#found(proposals, design)}
      </section>
      <section aria-labelledby="front">
        <h2 id="front">Hold against drag</h2>
        ${this.#progress(proposals, ['fronting'])} ${this.#front(proposals, design)}
      </section>`;
  }

  #wanted(plan: Plan, design: Design) {
    const { proposals } = this;
    const isBusy = proposals?.activity !== 'idle';
    const keeps = design.wanted?.limits
      ? ''
      : 'As nothing is said yet, the answer keeps what the drawn wing holds; the ticks show it.';
    return html`<p class="note">
        Least drag over the three speeds of the brief. ${keeps} A quantity that is not ticked stays as drawn. With the
        stabilizer’s incidence free, the drawn stance balances at cruise.
      </p>
      <wanted-fields .plan=${plan} .design=${design} .units=${this.units}></wanted-fields>
      ${plan.problem ? html`<p class="trouble" role="status">${plan.problem}</p>` : nothing}
      <div class="row">
        <button
          type="button"
          class="first"
          ?disabled=${isBusy || plan.problem !== null}
          @click=${() => void proposals?.search(design, this.seed)}
        >
          Look for a wing
        </button>
        <label>
          Seed
          <input
            type="number"
            min="0"
            max="1000000"
            step="1"
            .value=${String(this.seed)}
            @change=${this.#onSeed}
          />
        </label>
        <span class="note">the same seed gives the same answer</span>
      </div>`;
  }

  #progress({ activity, share, bestDrag }: Proposals, mine: readonly Activity[]) {
    if (activity === 'idle' || !mine.includes(activity)) return nothing;
    const what = DOING[activity];
    const best =
      bestDrag === null || activity === 'fronting'
        ? ''
        : ` best so far ${formatWithUnit(bestDrag, 'force', this.units, { decimals: 1 })}, drawn behind the wing`;
    return html`<div class="wait">
      <span role="status">${what} …${best}</span>
      <progress max="1" .value=${share} aria-label=${what}></progress>
      <button type="button" @click=${() => this.proposals?.cancel()}>Cancel</button>
    </div>`;
  }

  #found(proposals: Proposals, design: Design) {
    const { proposal, activity, failure, asked, isUnfinished } = proposals;
    if (failure && !proposals.frontDesign) return html`<p class="trouble" role="status">${failure}</p>`;
    if (isUnfinished)
      return html`<p class="say">Stopped. What was found so far is kept.</p>
        <div class="row">
          <button type="button" class="first" @click=${() => void proposals.finish()}>
            Finish with the best so far
          </button>
          ${this.#shown(proposals)}
        </div>`;
    if (!proposal) return activity === 'idle' ? html`<p class="note">Nothing yet.</p>` : nothing;
    const other =
      asked && asked.design !== design && !isTaken(design, proposal)
        ? html`<p class="note">This was found for the design as it stood then; it has changed since.</p>`
        : nothing;
    switch (proposal.outcome) {
      case 'clash':
        return html`${other}${answer.clashText(proposal.clash, this.units)}`;
      case 'nowhere':
        return html`${other}<p class="trouble" role="status">
            Nothing within these ranges can be drawn and run. Widen them, or start from a wing that flies.
          </p>`;
      case 'found':
        return html`${other}${this.#answer(proposals, proposal, design)}`;
    }
  }

  #answer(proposals: Proposals, proposal: answer.FoundProposal, design: Design) {
    const taken = isTaken(design, proposal);
    const behind = this.#ghostAnswer.result;
    return html`<p class="say" role="status">${answer.summary(proposal, this.units)}</p>
      <div class="row">
        <button type="button" class="first" ?disabled=${taken} @click=${() => this.#take(proposal.design)}>
          ${taken ? 'Taken' : 'Take it'}
        </button>
        <button
          type="button"
          @click=${() => saveTextFile(writeDesign(proposal.design), fileNameOf(`${proposal.design.name} proposal`))}
        >
          Save it as a file
        </button>
        <button type="button" @click=${() => this.#keep(proposal.design)}>Keep beside</button>
        ${this.#shown(proposals)}
      </div>
      <div class="next">${answer.costs(proposal, this.units)} ${answer.nextChanges(proposal, this.units)}</div>
      <div class="pair">${answer.comparison(proposal, behind, this.units)} ${answer.movedTable(proposal, behind, this.units)}</div>
      <p class="note">
        Drags with the stabilizer’s incidence as drawn, the rider’s stance following. ${proposal.evaluations} wings tried.
        Figures compare designs: no approval of strength or safety.
      </p>`;
  }

  #shown(proposals: Proposals) {
    return html`<label>
      <input
        type="checkbox"
        .checked=${proposals.isShown}
        @change=${(event: Event) => proposals.show((event.target as HTMLInputElement).checked)}
      />
      Draw it behind the wing
    </label>`;
  }

  #front(proposals: Proposals, design: Design) {
    const { front: drawn, activity, failure, frontDesign } = proposals;
    const isBusy = activity !== 'idle';
    return html`<div class="row">
        <button type="button" ?disabled=${isBusy} @click=${() => void proposals.drawFront(design)}>
          Draw the front
        </button>
        <span class="note">the least drag for each hold index, everything else as wanted</span>
      </div>
      ${failure && frontDesign ? html`<p class="trouble" role="status">${failure}</p>` : nothing}
      ${drawn ? this.#drawnFront(proposals, design) : nothing}`;
  }

  #drawnFront({ front: drawn, frontDesign }: Proposals, design: Design) {
    if (!drawn) return nothing;
    const behind = this.#ghostFront.result;
    const reading = front.ghostReading(behind, this.units);
    const name = (ending: string) => fileNameOf(`${frontDesign?.name ?? 'design'} front`, ending);
    return html`<p class="say">${front.frontReading(drawn, this.units)}</p>
      ${
        frontDesign === design
          ? nothing
          : html`<p class="note">The front is of the design as it stood then; it has changed since.</p>`
      }
      ${reading ? html`<p class="say">${reading}</p>` : nothing} ${front.frontChart(drawn, behind, this.units)}
      <div class="row">
        <button type="button" @click=${() => saveTextFile(front.frontCsv(drawn), name('csv'), 'text/csv')}>
          Save as CSV
        </button>
        <button type="button" @click=${() => this.#savePicture(name('png'))}>Save as a picture</button>
      </div>`;
  }

  #savePicture(name: string): void {
    const chart = this.renderRoot.querySelector('line-chart');
    if (chart) void front.savePicture(chart, name);
  }

  #take(proposed: Design): void {
    const changes: Change[] = [
      { path: 'wing', value: proposed.wing },
      { path: 'stabilizer', value: proposed.stabilizer },
      { path: 'strut', value: proposed.strut },
    ];
    const refusal = sendEdit(this, { changes, label: 'the proposal', phase: 'settled' });
    if (refusal === null) this.proposals?.show(false);
  }

  #keep(proposed: Design): void {
    this.dispatchEvent(new DesignKeepEvent(proposed, `${proposed.name}, proposal`));
  }

  readonly #onSeed = (event: Event): void => {
    const field = event.target as HTMLInputElement;
    const seed = Number(field.value);
    if (Number.isInteger(seed) && seed >= 0 && seed <= 1_000_000) this.seed = seed;
    else field.value = String(this.seed);
  };

  /** The guided start's brief is taken over as one step; the search begins when the page hands the design back down. */
  readonly #onGuided = ({ detail }: GuidedEvent): void => {
    const { design: begun, label } = detail;
    const paths = ['name', 'brief', 'wing', 'stabilizer', 'fuselage', 'strut', 'wanted'] as const;
    const changes = paths.map((path): Change => ({ path, value: begun[path] }));
    this.#isBeginning = sendEdit(this, { changes, label, phase: 'settled' }) === null;
  };
}

/** What the ghost is measured by: the brief of a design, and the front drawn for it. */
function standingIn({ brief, wanted }: Design, points: readonly FrontPlace[]): StandingOptions {
  const front = points.map(({ holdIndex, drag }) => ({ holdIndex, drag }));
  return { brief, weights: wanted?.weights ?? null, front };
}

/** Whether the open design is the proposal. */
function isTaken(design: Design, proposal: Proposal): boolean {
  if (proposal.outcome !== 'found') return false;
  return design.wing === proposal.design.wing && design.stabilizer === proposal.design.stabilizer;
}

declare global {
  interface HTMLElementTagNameMap {
    'propose-panel': ProposePanel;
  }
}
