import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { fileNameOf, saveTextFile } from '../../session/files.ts';
import type { Proposals } from '../../session/proposals.ts';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { FrontPlace } from '../../solver/studies/propose/front.ts';
import type { Plan } from '../../solver/studies/propose/plan.ts';
import type { StandingOptions } from '../../solver/studies/propose/standing.ts';
import { answerStyles } from '../answer-styles.ts';
import { type Change, DesignKeepEvent } from '../events.ts';
import { tableStyles } from '../figure-table.ts';
import { firstButton } from '../first-button.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { foundPart } from '../propose/found-part.ts';
import * as front from '../propose/front-chart.ts';
import '../propose/guided-start.ts';
import type { GuidedEvent } from '../propose/guided-start.ts';
import { progressOf } from '../propose/progress.ts';
import { proposeStyles } from '../propose/propose-styles.ts';
import '../propose/wanted-fields.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';

/**
 * From the brief to a wing and stabilizer with the least drag that holds the limits: what may move and what must hold, the
 * search with the best so far drawn behind the wing, the answer explained, the front, and a guided start.
 */
@customElement('propose-panel')
export class ProposePanel extends LitElement {
  static override styles = [answerStyles, studyStyles, tableStyles, firstButton, proposeStyles];

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
        ${progressOf(proposals, ['searching', 'settling'], this.units)} ${this.#found(proposals, design)}
      </section>
      <section aria-labelledby="front">
        <h2 id="front">Hold against drag</h2>
        ${progressOf(proposals, ['fronting'], this.units)} ${this.#front(proposals, design)}
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

  #found(proposals: Proposals, design: Design) {
    const { units } = this;
    return foundPart({
      ...{ proposals, design, units, ghost: this.#ghostAnswer.result },
      take: (proposed) => this.#take(proposed),
      keep: (proposed) => this.#keep(proposed),
    });
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

declare global {
  interface HTMLElementTagNameMap {
    'propose-panel': ProposePanel;
  }
}
