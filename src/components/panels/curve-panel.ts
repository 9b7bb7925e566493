import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { bendChanges } from '../../session/curve-edits.ts';
import { withMark } from '../../session/number-format.ts';
import type { RiddenHold } from '../../session/ridden.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Kept } from '../../solver/geometry/bend.ts';
import type { CurveStudy } from '../../solver/studies/curve-study.ts';
import { answerStyles } from '../answer-styles.ts';
import { take, toPart } from '../asked.ts';
import '../choice-field.ts';
import '../curve/droop-map.ts';
import type { PlaceChosenEvent } from '../curve/plot-model.ts';
import * as say from '../curve/readings.ts';
import '../curve/section-choices.ts';
import { bandReading } from '../beside/hold-scale.ts';
import { loadingPart, type ShownStudy, studyGrid } from '../curve/study-parts.ts';
import { priceCells, sweepCells } from '../curve/sweep-cells.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import '../number-field.ts';
import { recall, remember } from '../preferences.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';

const KEPT: ReadonlyArray<{ value: Kept; label: string }> = [
  { value: 'unrolled', label: say.KEPT_NAMES.unrolled },
  { value: 'tipToTip', label: say.KEPT_NAMES.tipToTip },
  { value: 'projectedArea', label: say.KEPT_NAMES.projectedArea },
];

/** What droop costs and buys, at the same lift: the sweep, the price of hold, loading. A click bends the wing. */
@customElement('curve-panel')
export class CurvePanel extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    studyStyles,
    css`
      .controls {
        --control-width: 11rem;
      }
      .half {
        max-width: 42rem;
      }
      .say {
        max-width: 62rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private chosen: Kept | null = null;
  @state() private to: number | null = null;
  @state() private prices = recall('holdPrices', { point: 0.01, degree: 0.001 });
  @state() private refusal: string | null = null;

  /** What the rider's marks for hold say of the index. */
  @property({ attribute: false }) ridden: RiddenHold = { points: [], band: null };

  readonly #curve = new StudyController(this, 'curve', () => this.#question({}));
  readonly #band = new StudyController(this, 'priceBand', () => {
    const sweep = this.#curve.result?.sweep;
    return sweep && this.#curve.isCurrent ? this.#question({ to: sweep.columns.amplitude.at(-1)! }) : null;
  });

  readonly #ghost = new GhostStudy(this, 'curve', () => this.#question({})?.options ?? null);

  /** What is kept: the user's choice, or the length that the document gives. */
  get #kept(): Kept {
    return this.chosen ?? this.design?.wing.length.kind ?? 'unrolled';
  }

  #question(more: { to?: number }) {
    const { design, studies, prices } = this;
    if (!design) return null;
    const to = this.to === null ? {} : { to: this.to };
    const price = { perPoint: prices.point, perDegree: prices.degree };
    return { studies, design, options: { kept: this.#kept, ...to, ...more, ...price } };
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const found = this.#curve.result;
    return html`<div class="controls">${this.#controls(found)}</div>
      ${found && this.#curve.failure ? html`<p class="trouble" role="status">${this.#curve.failure}</p>` : nothing}
      ${this.refusal ? html`<p class="trouble" role="alert">${this.refusal}</p>` : nothing}
      ${
        found
          ? html`<div @place-chosen=${this.#onPlace}>${this.#answers(found, design)}</div>`
          : studyWait(this.#curve, 'Bending the wing')
      }`;
  }

  #controls(found: CurveStudy | null) {
    const largest = found?.sweep.largest ?? 90;
    const ends =
      found?.sweep.largestBy === 'lift' ? 'beyond it no section carries the lift' : 'all that can be drawn';
    return html`<choice-field
        label="Kept while the wing bends"
        .value=${this.#kept}
        .choices=${KEPT}
        .toChanges=${toPart}
        @design-edit=${take((value) => {
          this.chosen = value as Kept;
        })}
      ></choice-field>
      <number-field
        label="Bent up to"
        quantity="angle"
        .units=${this.units}
        .value=${found?.sweep.columns.amplitude.at(-1) ?? null}
        .min=${5}
        .max=${largest}
        .step=${5}
        .hint=${`at most ${say.angle(largest, 0)}: ${ends}`}
        .toChanges=${toPart}
        @design-edit=${take((value) => {
          this.to = value as number;
        })}
      ></number-field>`;
  }

  readonly #onPlace = (event: PlaceChosenEvent): void => {
    const { design } = this;
    if (!design) return;
    try {
      const changes = bendChanges(design.wing, this.#kept, event.detail);
      this.refusal = sendEdit(this, { changes, label: 'wing droop', phase: 'settled' });
    } catch (error) {
      this.refusal = error instanceof Error ? error.message : String(error);
    }
  };

  #answers(found: CurveStudy, design: Design) {
    const isArc = ['flat', 'arc'].includes(design.wing.droop.kind);
    return html`<section aria-labelledby="sweep">${this.#sweep(found)}</section>
      <section aria-labelledby="price">${this.#price(found)}</section>
      <section aria-labelledby="loading">${loadingPart(this.#shown(found), isArc)}</section>
      <section aria-labelledby="sections">
        <h2 id="sections">What that means for a section</h2>
        <section-choices
          .design=${design}
          .units=${this.units}
          .studies=${this.studies}
          .ghost=${this.ghost}
        ></section-choices>
      </section>
      <section aria-labelledby="map">
        <h2 id="map">Droop against stabilizer</h2>
        <droop-map
          .design=${design}
          .units=${this.units}
          .studies=${this.studies}
          .kept=${this.#kept}
          .ghost=${this.ghost}
        ></droop-map>
      </section>`;
  }

  #shown(found: CurveStudy): ShownStudy {
    return { found, behind: this.#ghost.result, units: this.units, ridden: this.ridden };
  }

  #sweep(found: CurveStudy) {
    const { sweep } = found;
    const { units } = this;
    const weight = formatWithUnit(sweep.lift, 'force', units);
    const speed = formatWithUnit(sweep.speed, 'speed', units);
    return html`<h2 id="sweep">What a degree costs and buys <small>${weight} carried at ${speed}, stabilizer as drawn</small></h2>
      ${say.paymentReading(sweep, units).map((sentence) => html`<p class="say">${sentence}</p>`)}
      <p class="say">${say.lostLiftReading(sweep, units)}</p>
      ${ghostFigures(found, this.#ghost.result, units, say.SWEEP_FIGURES)}
      ${studyGrid(this.#shown(found), 'What a degree costs and buys', (of) => sweepCells(of.sweep, units))}
      ${this.ridden.points.length > 0 ? html`<p class="say">${bandReading(this.ridden)}</p>` : nothing}
      <p class="note">
        Against droop, in degrees of the law’s own tip angle. Lost lift is against this wing unrolled, at the same angle;
        every extra is against the flat wing, at the same lift. The dark line is the wing as it is; a click on any curve
        bends the wing there.
        ${sweep.isProfileAssumed ? withMark('Section drag is 0.008 for every section (common practice).') : nothing}
      </p>`;
  }

  #price(found: CurveStudy) {
    const { price, sweep } = found;
    const { units } = this;
    const band = this.#band.result;
    const saved = say.savedReading(found, units);
    const byPoint = price.goods === 'holdPoint';
    return html`<h2 id="price">The price of hold</h2>
      <p class="note">
        What you are looking at: how many newtons of drag, or what share of all of it, the next bit of hold costs at each
        droop; where that passes what you would pay is the place to stop.
      </p>
      <p class="say">${say.cornerReading(sweep)}</p>
      <p class="say" data-reading="place">${say.placeReading(found, band, units)}</p>
      <p class="say">${say.neutralReading(found, band)}</p>
      ${saved ? html`<p class="say">${saved}</p>` : nothing}
      ${ghostFigures(found, this.#ghost.result, units, say.PRICE_FIGURES)}
      <div class="controls">
        <number-field
          .label=${byPoint ? 'Most you would pay for a point of hold' : 'Most you would pay for a degree'}
          quantity="share"
          .units=${units}
          .value=${price.limit}
          .min=${0.0001}
          .max=${0.5}
          .step=${byPoint ? 0.001 : 0.0001}
          hint="of all drag"
          .toChanges=${toPart}
          @design-edit=${take((value) => {
            this.prices = { ...this.prices, [byPoint ? 'point' : 'degree']: value as number };
            remember('holdPrices', this.prices);
          })}
        ></number-field>
      </div>
      ${studyGrid(this.#shown(found), 'The price of hold', (of) => priceCells(of, units))}
      <p class="note">
        Prices are slopes of a polynomial laid through the sweep (it leaves ${formatWithUnit(price.scatter, 'force', units, { decimals: 3 })}
        over). Past the neutral droop a step towards it goes back, and what it saves is negative. The method’s own band is the difference between one row of vortices and four, a line and a surface.
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'curve-panel': CurvePanel;
  }
}
