import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { withMark } from '../../session/number-format.ts';
import type { RiddenHold } from '../../session/ridden.ts';
import type { Studies } from '../../session/studies.ts';
import type { StudyName, StudyOptions } from '../../session/study-messages.ts';
import type { UnitSystem } from '../../session/units.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report } from '../../solver/report.ts';
import type { HoldOptions, HoldStudy } from '../../solver/studies/hold-study.ts';
import { answerStyles } from '../answer-styles.ts';
import { take } from '../asked.ts';
import { holdStyles } from '../hold/hold-styles.ts';
import '../choice-field.ts';
import { bandReading, holdScale, scaleStyles } from '../beside/hold-scale.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import * as coupling from '../hold/coupling-tables.ts';
import * as trust from '../hold/index-trust.ts';
import '../hold/inertia-fields.ts';
import * as modes from '../hold/mode-tables.ts';
import '../hold/stabilizer-sizing.ts';
import * as tracks from '../hold/tracks.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';

type Axes = NonNullable<HoldOptions['axes']>;

/**
 * Is it stable, is the stabilizer big enough, what couples slip, roll and turn: the stabilizer sized, the coupling in
 * words and by part, the modes of the untended craft along the droop, and how far the index can be trusted.
 */
@customElement('coupling-panel')
export class CouplingPanel extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    studyStyles,
    holdStyles,
    coupling.couplingStyles,
    modes.modeStyles,
    scaleStyles,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;
  @property({ attribute: false }) report: Report | null = null;
  /** What the rider's marks for hold say of the index. */
  @property({ attribute: false }) ridden: RiddenHold = { points: [], band: null };

  @state() private axes: Axes = 'design';

  readonly #hold = this.#study('hold', () => ({ axes: this.axes }));
  readonly #tracks = this.#study('modeTracks', () => ({}));
  readonly #ghostHold = new GhostStudy(this, 'hold', () => ({ axes: this.axes }));
  readonly #ghostTracks = new GhostStudy(this, 'modeTracks', () => ({}));

  #study<N extends StudyName>(name: N, options: () => StudyOptions<N>): StudyController<N> {
    return new StudyController(this, name, () => ({
      studies: this.studies,
      design: this.design,
      options: options(),
    }));
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const found = this.#hold.result;
    return html`<p class="caution">${CAUTION}</p>
      <section aria-labelledby="sized">
        <h2 id="sized">Is the stabilizer big enough?</h2>
        <stabilizer-sizing
          .design=${design}
          .units=${this.units}
          .studies=${this.studies}
          .ghost=${this.ghost}
        ></stabilizer-sizing>
      </section>
      <section aria-labelledby="coupled">
        <h2 id="coupled">What a slip, a roll and a turn do</h2>
        ${found ? this.#coupling(found, design) : studyWait(this.#hold, 'Slipping, rolling, turning')}
      </section>
      <section aria-labelledby="moves">
        <h2 id="moves">Left alone, after a nudge</h2>
        ${found ? this.#modes(found, design) : nothing} ${this.#masses(found, design)}
      </section>
      <section aria-labelledby="bends">
        <h2 id="bends">As the wing droops further</h2>
        ${this.#along(found)}
      </section>
      <section aria-labelledby="trust">
        <h2 id="trust">How far the hold index can be trusted</h2>
        <p class="say">${trust.trustReading()}</p>
        <div class="short">${trust.trustTable()}</div>
        ${trust.trustNoteOfMethod()} ${this.#ridden()}
      </section>`;
  }

  #ridden() {
    const { ridden, report, ghost } = this;
    if (ridden.points.length === 0) return nothing;
    return html`<h3>What the ridden designs say of it</h3>
      <p class="say">${bandReading(ridden)}</p>
      ${holdScale(ridden, report?.stability.holdIndex ?? null, ghost?.report?.stability.holdIndex ?? null)}`;
  }

  #coupling(found: HoldStudy, design: Design) {
    const { failure } = this.#hold;
    const { ghost, units } = this;
    const behind = this.#ghostHold.result;
    const own = { study: found, balance: design.brief.balance.x };
    const other = ghost && behind && { study: behind, balance: ghost.design.brief.balance.x };
    return html`${failure ? html`<p class="trouble" role="status">${failure}</p>` : nothing}
      ${coupling.couplingReading(found).map((sentence) => html`<p class="say">${sentence}</p>`)}
      ${ghostFigures(found, behind, units, coupling.COUPLING_FIGURES)}
      <div class="pair wide">
        ${coupling.couplingMatrix(found, behind, 'foil', units)} ${coupling.couplingMatrix(found, behind, 'craft', units)}
      </div>
      <div class="controls">
        <choice-field
          label="Along the axes of"
          .value=${this.axes}
          .choices=${[{ value: 'design', label: 'the design' }, { value: 'stream', label: 'the stream' }]}
          .toChanges=${(value: string) => [{ path: '', value }]}
          @design-edit=${take((value) => {
            this.axes = value as Axes;
          })}
        ></choice-field>
      </div>
      <p class="note">
        Below each force and moment stands its coefficient, per radian and per p b/2V and r b/2V, on projected area and span,
        with the method’s own band: the difference between one row of vortices along the chord and four. Port and starboard
        change places for a slip, roll or turn the other way. Strip drag is
        included${found.isProfileAssumed ? withMark(', with an assumed section drag of cd 0.008') : ''}.
      </p>
      <details>
        <summary>What each part adds</summary>
        <div class="pair wide">
          ${coupling.partsTable(found, behind, 'craft')} ${coupling.partsTable(found, behind, 'foil')}
          ${coupling.verticalTable(found, behind)} ${coupling.ratioTable(found, behind)}
          ${coupling.marginTable(own, other, units)}
        </div>
      </details>`;
  }

  #modes(found: HoldStudy, design: Design) {
    const behind = this.#ghostHold.result;
    return html`<p class="say">${modes.fallReading(found, design.brief.balance.height, this.units)}</p>
      ${ghostFigures(found, behind, this.units, modes.FALL_FIGURES)}
      <div class="pair wide">
        ${modes.modeTable(found, behind, 'lateral')} ${modes.modeTable(found, behind, 'vertical')}
      </div>
      <p class="note">
        Small motions about level running at cruise, a rigid rider who does nothing, the strut included, growth with the
        method’s band. Estimates for comparing designs: nobody rides untended.
      </p>`;
  }

  #masses(found: HoldStudy | null, design: Design) {
    return html`<details>
      <summary>Masses behind it, and the water that moves along</summary>
      <inertia-fields .design=${design} .units=${this.units}></inertia-fields>
      ${found ? html`<div class="short">${modes.massTable(found, this.#ghostHold.result, this.units)}</div>` : nothing}
      <p class="note">
        Added mass by strips: rho pi c²/4 a metre along each strip’s normal (H. Lamb, Hydrodynamics, 1932, art. 71); ends,
        thickness and the surface’s share left out.
      </p>
    </details>`;
  }

  #along(found: HoldStudy | null) {
    const study = this.#tracks.result;
    if (!found && this.#hold.failure) return html`<p class="note">No figures: see above.</p>`;
    if (!study || !found) return studyWait(this.#tracks, 'Bending the wing');
    const behind = this.#ghostTracks.result;
    const own = { tracks: study, band: found.band };
    const other = behind && { tracks: behind, band: this.#ghostHold.result?.band ?? null };
    return html`<p class="say">${tracks.tracksReading(study, found)}</p>
      ${tracks.trackCharts(study, behind)}
      <details>
        <summary>Flat against drooped, in figures</summary>
        <div class="pair wide">${tracks.modeMoves(own, other)} ${tracks.derivativeMoves(study, behind)}</div>
        <p class="note">
          The wing bent by its own law, unrolled length kept. Derivatives about the balance point along the design’s axes, strip drag included, on a projected area and a span that
          shrink as the wing bends.
        </p>
      </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'coupling-panel': CouplingPanel;
  }
}
