import { html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { StallStudy } from '../../solver/studies/stall.ts';
import { InSight } from '../curve/in-sight.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { sectionStyles } from '../speed/section-styles.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import * as readings from './stall-readings.ts';

const AT_REST = 200; // ms without a change

/**
 * Where along the span the wing stalls first, at what angle and speed, and how that spreads: the line follows the sections
 * past the straight part of their lift curves. Asked for once it comes into sight and the design rests.
 */
@customElement('spread-stall')
export class SpreadStall extends LitElement {
  static override styles = sectionStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private settled: Design | null = null;

  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #sight = new InSight(this);
  readonly #study = new StudyController(this, 'stall', () =>
    this.#sight.isSeen ? { studies: this.studies, design: this.settled, options: {} } : null,
  );

  readonly #ghost = new GhostStudy(this, 'stall', () => (this.#sight.isSeen ? {} : null));

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#rest);
  }

  protected override updated(changed: PropertyValues): void {
    if (!changed.has('design')) return;
    clearTimeout(this.#rest);
    this.#rest = setTimeout(
      () => {
        this.settled = this.design;
      },
      this.settled ? AT_REST : 0,
    );
  }

  protected override render() {
    if (!this.design) return nothing;
    const found = this.#study.failure ? null : this.#study.result;
    return html`<h2>Stall: where first, and at what speed?</h2>
      ${found ? this.#answers(found, this.#study.resultDesign ?? this.design) : studyWait(this.#study, 'Following the sections to stall')}`;
  }

  #answers(found: StallStudy, { brief }: Design) {
    const { units } = this;
    const { takeOff } = brief.speeds;
    const trouble = readings.stallTrouble(found, takeOff, units);
    return html`${readings.stallSentences(found, takeOff, units).map((line) => html`<p class="say">${line}</p>`)}
      ${trouble ? html`<p class="trouble">${trouble}</p>` : nothing}
      <div class="figures">${readings.stallFigures(found, units)}</div>
      <div class="tables">${readings.spanChart(found, units)} ${readings.liftChart(found, this.#ghost.result)}</div>
      ${readings.spreadTable(found, units)}
      <p class="note">${readings.settledNote(found)}</p>
      <p class="note">
        Stabilizer as drawn, no pitch trim, at the depth of take-off${found.depth === null ? ' (deep water)' : ''}. Sections
        by their own polars at the Reynolds numbers of the speed that the greatest lift carries. Nine tenths of a section’s
        greatest lift count as usable (common practice).
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'spread-stall': SpreadStall;
  }
}
