import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { withMark, writeFixed } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SectionOptions, SectionView } from '../../solver/studies/section-view.ts';
import { answerStyles } from '../answer-styles.ts';
import { take } from '../asked.ts';
import '../choice-field.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import '../number-field.ts';
import { type AlongShown, alongChart, layerTable, polarCharts } from '../section/charts.ts';
import { flowFigures, type Seen, shapeFigures } from '../section/figures.ts';
import { flowDrawing, flowStyles, flowWords } from '../section/flow-drawing.ts';
import { outlineFields } from '../section/outline-fields.ts';
import '../section/section-import.ts';
import { type Look, own, presentLook, stationFields } from '../section/station-fields.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';

/** One section of the foil: its outline and its own, pressure and boundary layer where it flies, and its polars. */
@customElement('section-panel')
export class SectionPanel extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    studyStyles,
    flowStyles,
    css`
      .controls {
        --control-width: 10.5rem;
      }
      .ends {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 16rem), 22rem));
        gap: 0 2.5rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private look: Look = { part: 'wing', eta: 0, speed: 'cruise' };
  @state() private cl: number | null = null;
  @state() private shown: AlongShown = 'pressure';

  readonly #view = new StudyController(this, 'section', () =>
    this.design
      ? { studies: this.studies, design: this.design, options: { ...this.#place(this.design), cl: this.cl } }
      : null,
  );
  readonly #polars = new StudyController(this, 'sectionPolars', () =>
    this.design ? { studies: this.studies, design: this.design, options: this.#place(this.design) } : null,
  );

  readonly #ghostView = new GhostStudy(this, 'section', (design) => {
    const place = this.#ghostPlace(design);
    return place && { ...place, cl: this.cl };
  });
  readonly #ghostPolars = new GhostStudy(this, 'sectionPolars', (design) => this.#ghostPlace(design));

  /** The same part of the ghost, where it has one. */
  #ghostPlace(ghost: Design): Omit<SectionOptions, 'cl'> | null {
    const place = this.#place(ghost);
    return this.design && place.part === this.#place(this.design).part ? place : null;
  }

  #place(design: Design): Omit<SectionOptions, 'cl'> {
    const { part, eta, speed } = presentLook(this.look, design);
    return { part, eta, speed: design.brief.speeds[speed] };
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const look = presentLook(this.look, design);
    const view = this.#view.result;
    return html`<div class="controls">
        ${stationFields(look, design, this.units, (next) => {
          this.look = next;
        })}
        ${this.#liftField(view)}
      </div>
      ${this.#view.failure ? html`<p class="trouble" role="status">${this.#view.failure}</p>` : nothing}
      ${view && !this.#view.failure ? this.#answers(view) : view ? nothing : html`<p class="note">Solving the flow …</p>`}
      <section aria-labelledby="outline">
        <h2 id="outline">The outline</h2>
        ${this.#outline(design, look)}
      </section>
      ${view ? html`<section aria-labelledby="polars">${this.#polarPart(view)}</section>` : nothing}`;
  }

  #liftField(view: SectionView | null) {
    return html`<number-field
      label="Lift coefficient"
      optional
      .units=${this.units}
      .value=${this.cl}
      .min=${-2}
      .max=${2.5}
      .step=${0.05}
      .placeholder=${view && this.cl === null ? `${writeFixed(view.station.cl, 2)}, as flown` : 'as flown'}
      .toChanges=${own}
      @design-edit=${take((cl) => {
        this.cl = (cl as number | undefined) ?? null;
      })}
    ></number-field>`;
  }

  #answers(view: SectionView) {
    const { station, flow, problem } = view;
    const behind = this.#ghostView.result;
    const layers = (side: 'upper' | 'lower') =>
      layerTable(
        { side: flow![side], chord: station.chord },
        behind?.flow ? { side: behind.flow[side], chord: behind.station.chord } : null,
        side,
      );
    const where =
      station.part === 'strut'
        ? station.flow.tripUpper === undefined
          ? 'strut'
          : 'strut, kept turbulent by spray and waves'
        : `${station.part} at ${Math.round(100 * station.eta)} % of the half`;
    return html`<section aria-labelledby="flow">
      <h2 id="flow">
        The flow <small>${where}, ${formatWithUnit(station.speed, 'speed', this.units)}, chord ${formatWithUnit(station.chord, 'length', this.units)}</small>
      </h2>
      ${problem ? html`<p class="trouble" role="status">${problem}</p>` : nothing}
      ${flow ? html`<p class="say">${flowWords(flow.upper, flow.lower)}</p>` : nothing} ${flowDrawing(view, this.#ghostView.result)}
      <div class="pair">
        ${
          flow
            ? html`<div>
                ${alongChart(flow, this.#ghostView.result?.flow ?? null, this.shown, station.sigma)}
                <choice-field
                  label="Show"
                  .value=${this.shown}
                  .choices=${[{ value: 'pressure', label: 'pressure' }, { value: 'speed', label: 'speed' }]}
                  .toChanges=${own}
                  @design-edit=${take((value) => {
                    this.shown = value as AlongShown;
                  })}
                ></choice-field>
              </div>`
            : nothing
        }
        <div>${flowFigures(view, this.#ghostView.result, this.units)}</div>
      </div>
      ${
        flow
          ? html`<details>
              <summary>The boundary layer, place by place</summary>
              <div class="pair">
                ${layers('upper')} ${layers('lower')}
              </div>
            </details>`
          : nothing
      }
    </section>`;
  }

  #outline(design: Design, { part }: Look) {
    const view = this.#view.result;
    const planform = part === 'strut' ? null : design[part];
    return html`${view ? html`<div class="figures">${shapeFigures({ view, polars: this.#polarsHere() }, this.#ghostSeen, this.units)}</div>` : nothing}
      ${
        planform && part !== 'strut'
          ? html`<div class="ends">${outlineFields(planform, part, this.units)}</div>
              <p class="note">Between root and tip thickness and camber blend evenly along the unrolled half.</p>`
          : html`<p class="note">The strut has a symmetric four-digit section of its chord and thickness.</p>`
      }
      <section-import .design=${design}></section-import>`;
  }

  get #ghostSeen(): Seen | null {
    const view = this.#ghostView.result;
    return view && { view, polars: this.#ghostPolars.result };
  }

  /** The polars, if they belong to the station on view. */
  #polarsHere() {
    const { result } = this.#polars;
    const station = this.#view.result?.station;
    return result && station && result.part === station.part && result.reynolds === station.reynolds
      ? result
      : null;
  }

  #polarPart(view: SectionView) {
    const { result } = this.#polars;
    if (!result) return studyWait(this.#polars, 'Running through the angles');
    const lost = result.series.reduce((sum, series) => sum + series.lost, 0);
    return html`<h2 id="polars">
        Polars <small>at Re ${Math.round(result.reynolds / 1000)} 000</small>
      </h2>
      ${polarCharts(result, this.#ghostPolars.result, view, this.units)}
      <p class="note">
        ${lost === 0 ? 'Every angle settled.' : `${lost} angles did not settle and are left out.`} Water counts as clean,
        coastal or silty by the growth its waves may have before they break (n 9, ${withMark('4.8, 2.6')} by L. M. Mack, 1977, for
        turbulence of ${withMark('0.07, 0.4')} and 1 %); that these levels fit natural water is an assumption.
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'section-panel': SectionPanel;
  }
}
