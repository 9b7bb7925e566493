import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { withMark } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SkinView } from '../../solver/studies/skin-study.ts';
import { answerStyles } from '../answer-styles.ts';
import { take } from '../asked.ts';
import '../choice-field.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import '../number-field.ts';
import { type Look, own, presentLook, stationFields } from '../section/station-fields.ts';
import { faultTable, finishReading, finishTable } from '../skin/costs.ts';
import '../skin/defect-table.ts';
import * as heights from '../skin/heights.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';

type Side = 'upper' | 'lower';

const GRADES = [
  80, 100, 120, 150, 180, 220, 240, 280, 320, 360, 400, 500, 600, 800, 1000, 1200, 1500, 2000, 2500,
];

/** Where the flow turns turbulent, what heights it bears, which grit is enough, and what a finish or a fault costs. */
@customElement('skin-panel')
export class SkinPanel extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    studyStyles,
    css`
      .controls {
        --control-width: 10.5rem;
      }
      .words table :is(th, td):nth-child(-n + 4) {
        text-align: left;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private look: Look = { part: 'wing', eta: 0.2, speed: 'cruise' };
  @state() private fault: { side: Side; at: number } = { side: 'upper', at: 0.15 };

  readonly #view = new StudyController(this, 'skin', () => {
    const { design } = this;
    if (!design) return null;
    const { part, eta, speed } = presentLook(this.look, design);
    return { studies: this.studies, design, options: { part, eta, speed: design.brief.speeds[speed] } };
  });
  readonly #ghost = new GhostStudy(this, 'skin', (design) => {
    const { part, eta, speed } = presentLook(this.look, design);
    return this.#isSamePart(part) ? { part, eta, speed: design.brief.speeds[speed] } : null;
  });
  readonly #faults = new StudyController(this, 'faults', () => {
    const { design } = this;
    if (!design) return null;
    const { part, eta } = presentLook(this.look, design);
    return { studies: this.studies, design, options: { part, eta, ...this.fault } };
  });
  readonly #finish = new StudyController(this, 'finish', () => ({
    studies: this.studies,
    design: this.design,
    options: {},
  }));

  readonly #ghostFinish = new GhostStudy(this, 'finish', () => ({}));
  readonly #ghostFaults = new GhostStudy(this, 'faults', (design) => {
    const { part, eta } = presentLook(this.look, design);
    return this.#isSamePart(part) ? { part, eta, ...this.fault } : null;
  });

  /** A part of the ghost stands beside the same one. */
  #isSamePart(part: Look['part']): boolean {
    return this.design !== null && presentLook(this.look, this.design).part === part;
  }

  protected override render() {
    const { design, units } = this;
    if (!design) return nothing;
    const look = presentLook(this.look, design);
    const view = this.#view.result;
    return html`<div class="controls">
        ${stationFields(look, design, units, (next) => {
          this.look = next;
        })}
      </div>
      ${view && !this.#view.failure ? this.#heights(view) : studyWait(this.#view, 'Solving the layer')}
      <section aria-labelledby="finish">${this.#finishPart(design)}</section>
      <section aria-labelledby="put">
        <h2 id="put">Faults on the surface</h2>
        <defect-table .design=${design} .units=${units} .study=${this.#faultsHere(design)} .look=${look}></defect-table>
      </section>
      <section aria-labelledby="common">${this.#common(look)}</section>`;
  }

  #heights(view: SkinView) {
    const { units } = this;
    const finish = this.#finish.result?.chosen?.height ?? null;
    const isStrut = view.station.part === 'strut';
    const sides: Side[] = isStrut ? ['upper'] : ['upper', 'lower'];
    return html`<section aria-labelledby="turns">
        <h2 id="turns">Where it turns turbulent</h2>
        <p class="say">${heights.turnReading(view, units)}</p>
        ${ghostFigures(view, this.#ghost.result, units, heights.TURN_FIGURES)}
        <div class="pair">
          ${heights.frictionChart(view, this.#ghost.result)}
          <div>${heights.practiceFigures(view, this.#ghost.result, units)}</div>
        </div>
      </section>
      <section aria-labelledby="smooth">
        <h2 id="smooth">How smooth is smooth enough</h2>
        <p class="say">${heights.heightReading(view, units)}</p>
        <div class="charts">${sides.map((side) => heights.heightChart(view, this.#ghost.result, side, finish, units))}</div>
        <div class="pair">${sides.map((side) => heights.heightTable(view, this.#ghost.result, side, units))}</div>
        <p class="note">
          Lone bump: 600 by its height and the speed there (A. L. Braslow and E. C. Knox, NACA TN 4363, 1958; 450 to 600 in
          use). Step: 900 by its height, gap: 15 000 by its width, unswept (J. P. Nenni and G. L. Gluyas, 1966). Spread: u k/ν of
          100 (H. Schlichting). All from memory, to be read as ±20 %. A finish is ${Math.round(100 * view.grade.share)} % as high as the
          median grain of its last abrasive (ISO 6344): an assumption, to be changed below; a measured height is better. Common
          practice: P1000 or finer ahead of mid-chord.
        </p>
      </section>`;
  }

  #finishPart(design: Design) {
    const { units } = this;
    const { grade, roughness, grainShare } = design.finish ?? {};
    const study = this.#finish.result;
    const reading = study && finishReading(study, units);
    return html`<h2 id="finish">The whole foil in one finish</h2>
      <div class="controls">
        <choice-field
          label="Last abrasive"
          path="finish.grade"
          edit-label="finish"
          .value=${grade === undefined ? '' : String(grade)}
          .choices=${gradeChoices(grade)}
          .toChanges=${(value: string) => [{ path: 'finish.grade', value: value === '' ? undefined : Number(value) }]}
        ></choice-field>
        <number-field
          label="Measured height"
          path="finish.roughness"
          edit-label="finish"
          quantity="fineLength"
          .units=${units}
          .value=${roughness ?? null}
          .step=${0.000001}
          placeholder="none"
          optional
        ></number-field>
        <number-field
          label="Height over grain"
          path="finish.grainShare"
          edit-label="finish"
          quantity="share"
          .units=${units}
          .value=${grainShare ?? null}
          .step=${0.05}
          placeholder="20"
          optional
        ></number-field>
      </div>
      ${
        study
          ? html`${reading ? html`<p class="say">${reading}</p>` : nothing} ${finishTable(study, this.#ghostFinish.result, units)}
              <p class="note">
                Drag above a perfect surface, and its share of the foil’s whole drag. Grains trip the layer where a lone bump of
                their height would, and add friction like sand behind transition (J. Nikuradse, 1933). The total drag shown
                elsewhere counts the surface as perfect.
              </p>`
          : studyWait(this.#finish, 'Sanding')
      }`;
  }

  #common(look: Look) {
    const study = this.#faults.result;
    return html`<h2 id="common">What common faults cost</h2>
      <div class="controls">
        <number-field
          label="Place along the chord"
          quantity="share"
          .units=${this.units}
          .value=${this.fault.at}
          .min=${0.005}
          .max=${0.95}
          .step=${0.05}
          .toChanges=${own}
          @design-edit=${take((at) => {
            this.fault = { ...this.fault, at: at as number };
          })}
        ></number-field>
        ${
          look.part === 'strut'
            ? nothing
            : html`<choice-field
                label="Side"
                .value=${this.fault.side}
                .choices=${[{ value: 'upper', label: 'upper' }, { value: 'lower', label: 'lower' }]}
                .toChanges=${own}
                @design-edit=${take((side) => {
                  this.fault = { ...this.fault, side: side as Side };
                })}
              ></choice-field>`
        }
      </div>
      ${study ? html`<div class="words">${faultTable(study, this.#ghostFaults.result, this.units)}</div>` : studyWait(this.#faults, 'Tripping the layer')}
      <p class="note">
        A fault that trips the layer pays for the wedge of turbulent flow behind it (20° wide unless said otherwise: G. B.
        Schubauer and P. S. Klebanoff, NACA Report 1289, 1956) and for its own front. For cavities and scratches no sound limit is
        published: the range runs from unnoticed to tripped. Waves: B. H. Carmichael, to be read as ±40 %. The film is as rough as
        ${withMark('0.1')} mm of sand (M. P. Schultz, 2007). From memory; sizes are common practice.
      </p>`;
  }

  /** The costs, if they belong to the faults on view. */
  #faultsHere(design: Design) {
    return this.#faults.resultDesign?.defects === design.defects ? this.#faults.result : null;
  }
}

function gradeChoices(grade: number | undefined) {
  const listed =
    grade === undefined || GRADES.includes(grade) ? GRADES : [...GRADES, grade].sort((a, b) => a - b);
  return [
    { value: '', label: 'not said' },
    ...listed.map((value) => ({ value: String(value), label: `P${value}` })),
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'skin-panel': SkinPanel;
  }
}
