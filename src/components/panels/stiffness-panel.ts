import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { writeFixed } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import type { StudyName, StudyOptions } from '../../session/study-messages.ts';
import type { UnitSystem } from '../../session/units.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SideRule } from '../../solver/studies/side-trim.ts';
import type { Stiffness } from '../../solver/studies/stiffness.ts';
import { answerStyles } from '../answer-styles.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import '../number-field.ts';
import * as account from '../stiffness/account.ts';
import '../stiffness/bench-table.ts';
import * as flying from '../stiffness/flying.ts';
import '../stiffness/makeup-fields.ts';
import * as ride from '../stiffness/ride.ts';
import * as strains from '../stiffness/strains.ts';
import * as swings from '../stiffness/swings.ts';
import * as thin from '../stiffness/thin.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';

/**
 * Which part gives most, how thin can the strut be, how much droop is left under load; what softness does to the ride;
 * frequencies, strains, and the bench test that makes it all true. Every figure is an estimate: the caution stands first.
 */
@customElement('stiffness-panel')
export class StiffnessPanel extends LitElement {
  static override styles = [answerStyles, studyStyles, tableStyles, account.accountStyles];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private side: SideRule = { by: 'heel', heel: 0 };

  readonly #quick = new StudyController(this, 'stiffness', () => ({
    studies: this.studies,
    design: this.design,
    options: { side: this.side },
  }));
  readonly #ghostQuick = new GhostStudy(this, 'stiffness', () => ({ side: this.side }));
  readonly #ghostRemedies = new GhostStudy(this, 'remedies', () => ({}));
  readonly #ghostThin = new GhostStudy(this, 'thin', () => ({}));
  readonly #ghostToBuild = new GhostStudy(this, 'toBuild', () => ({}));
  readonly #ghostRide = new GhostStudy(this, 'ride', () => ({}));
  readonly #ghostFrequencies = new GhostStudy(this, 'frequencies', () => ({}));
  readonly #ghostWhistle = new GhostStudy(this, 'whistle', () => ({}));
  readonly #remedies = this.#study('remedies', {});
  readonly #thin = this.#study('thin', {});
  readonly #toBuild = this.#study('toBuild', {});
  readonly #ride = this.#study('ride', {});
  readonly #frequencies = this.#study('frequencies', {});
  readonly #whistle = this.#study('whistle', {});

  #study<N extends StudyName>(name: N, options: StudyOptions<N>): StudyController<N> {
    return new StudyController(this, name, () => ({ studies: this.studies, design: this.design, options }));
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const found = this.#quick.result;
    return html`<p class="caution">${CAUTION}</p>
      ${this.#quick.failure ? html`<p class="trouble" role="status">${this.#quick.failure}</p>` : nothing}
      ${found ? this.#answers(found, design) : html`<p class="note">Bending …</p>`}`;
  }

  #answers(found: Stiffness, design: Design) {
    return html`<section aria-labelledby="gives">${this.#account(found)}</section>
      <section aria-labelledby="made">
        <h2 id="made">What it is made of</h2>
        <makeup-fields .design=${design} .units=${this.units} .given=${found}></makeup-fields>
      </section>
      <section aria-labelledby="thin">${this.#howThin(design)}</section>
      <section aria-labelledby="flies">${this.#flying(found)}</section>
      <section aria-labelledby="ride">${this.#softRide()}</section>
      <section aria-labelledby="strains">${this.#strains(found, design)}</section>
      <section aria-labelledby="swings">${this.#swings(design)}</section>
      <section aria-labelledby="bench">
        <h2 id="bench">On the bench</h2>
        <bench-table .design=${design} .units=${this.units} .fit=${found.bench}></bench-table>
      </section>`;
  }

  #account({ account: compliance }: Stiffness) {
    const list = this.#remedies.result;
    const best = list?.[0];
    const behind = this.#ghostQuick.result?.account ?? null;
    return html`<h2 id="gives">What gives</h2>
      ${account.shareBars(compliance, behind, this.units)} ${account.accountTable(compliance, behind, this.units)}
      ${
        best
          ? html`<p class="say">What stiffens most: ${best.label}, ${Math.round(100 * (1 - best.left))} % less give over all.</p>
              ${account.remedyTable(list, this.#ghostRemedies.result)}`
          : studyWait(this.#remedies, 'Trying changes')
      }`;
  }

  #howThin(design: Design) {
    const study = this.#thin.result;
    const part = (name: thin.ThinPart) => {
      const series = study?.[name];
      return series
        ? thin.thinPart(
            name,
            series,
            this.#ghostThin.result?.[name] ?? null,
            design.laminate?.limits,
            this.units,
          )
        : nothing;
    };
    return html`<h2 id="thin">How thin</h2>
      ${study ? html`${part('strut')} ${part('fuselage')}` : studyWait(this.#thin, 'Trying thicknesses')}
      <p class="note">
        Lines marked yours and your mark are the drawn size and the mark you set (13 mm for a strut is common practice). The
        strut’s section is a symmetric four-digit form of its thickness. Inception is inviscid; along the fuselage the water
        counts as past a spheroid.
      </p>`;
  }

  #flying({ flying: shape, problem }: Stiffness) {
    const built = this.#toBuild.result;
    const behind = this.#ghostQuick.result?.flying ?? null;
    return html`<h2 id="flies">Built droop, flying droop</h2>
      ${
        shape
          ? html`<p class="say">${flying.flyingReading(shape, this.units)}</p>
              ${
                built
                  ? html`<p class="say">${flying.buildReading(built, this.units)}</p>
                      ${ghostFigures(built, this.#ghostToBuild.result, this.units, flying.BUILT_FIGURES)}`
                  : studyWait(this.#toBuild, 'Finding the shape to build')
              }
              <div class="pair">${flying.flyingTable(shape, behind, this.units)} ${flying.droopChart(shape, behind, this.units)}</div>
              ${flying.flyingNote(shape, this.units)}`
          : html`<p class="trouble" role="status">${problem}</p>`
      }`;
  }

  #softRide() {
    const study = this.#ride.result;
    const behind = this.#ghostRide.result;
    return html`<h2 id="ride">What softness does to the ride</h2>
      ${
        study
          ? html`<div class="pair">${ride.rideChart(study, behind, this.units)} ${ride.rideTable(study, behind)}</div>
              <div class="pair">${ride.rideShares(study, behind)} ${ride.modeTable(study, behind)}</div>
              ${study.problem ? html`<p class="trouble">${study.problem}</p>` : nothing}
              <p class="note">
                Each cause is answered by the foil as it flies with everything giving, the board held; vortex part, along the
                design’s axes, about the balance point, the last line of the foil alone about the origin. A ratio to a figure
                near nothing, or of another sign, is not resolved. The rider and the rig do nothing here.
              </p>`
          : studyWait(this.#ride, 'Running through the speeds')
      }`;
  }

  #strains({ strut }: Stiffness, design: Design) {
    const behind = this.#ghostQuick.result?.strut ?? null;
    return html`<h2 id="strains">Strain</h2>
      <div class="controls">
        <number-field
          label="Safety factor"
          path="laminate.safety"
          .units=${this.units}
          .value=${design.laminate?.safety ?? strut.safety}
          .step=${0.5}
        ></number-field>
      </div>
      ${strains.pullField(design, strut, this.side, this.units, (side) => {
        this.side = side;
      })}
      <div class="pair">
        <div>${strains.strainTable(strut, behind, this.units)}</div>
        <div>${strut.EI ? strains.strutTable(strut, behind, this.units) : nothing}</div>
      </div>`;
  }

  #swings(design: Design) {
    const study = this.#frequencies.result;
    const edges = this.#whistle.result;
    const behind = this.#ghostFrequencies.result;
    return html`<h2 id="swings">Swings, divergence, whistle</h2>
      ${
        study
          ? html`${swings
              .divergenceReadings(study, design.brief.speeds.top, this.units)
              .map((sentence) => html`<p class="say">${sentence}</p>`)}
              ${ghostFigures(study, behind, this.units, swings.swingFigures(study))}
              <div class="pair">${swings.swingTable(study, behind)} ${swings.wholeTable(study, behind)}</div>
              <p class="note">
                Water moved with the foil: ${writeFixed(study.masses.water, 1)} kg against ${writeFixed(study.masses.own, 1)} kg of its
                own. Static and quasi-steady; the board is held.
              </p>
              <div class="charts">
                ${swings.spacingChart(study, behind, 'strut', this.units)}
                ${swings.spacingChart(study, behind, 'wing', this.units)}
              </div>
              ${swings.flutterCaution(study, this.units)}`
          : studyWait(this.#frequencies, 'Listening to the foil')
      }
      ${
        edges
          ? html`${swings.swingsMet(edges) ? html`<p class="say">${swings.swingsMet(edges)}</p>` : nothing}
              ${swings.whistleTable(edges, this.#ghostWhistle.result, this.units)}`
          : nothing
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'stiffness-panel': StiffnessPanel;
  }
}
