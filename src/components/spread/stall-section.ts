import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { StallStudy } from '../../solver/studies/stall.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { NearScreen } from '../near-screen.ts';
import { RestedDesign } from '../rested-design.ts';
import { sectionStyles } from '../speed/section-styles.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { liftChart, spanChart } from './stall-charts.ts';
import { stallFigures } from './stall-figures.ts';
import { spreadTable } from './stall-table.ts';
import * as say from './stall-words.ts';

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

  readonly #rested = new RestedDesign(this);
  readonly #sight = new NearScreen(this);
  readonly #study = new StudyController(this, 'stall', () =>
    this.#sight.isSeen ? { studies: this.studies, design: this.#rested.current, options: {} } : null,
  );

  readonly #ghost = new GhostStudy(this, 'stall', () => (this.#sight.isSeen ? {} : null));

  protected override render() {
    if (!this.design) return nothing;
    const found = this.#study.failure ? null : this.#study.result;
    return html`<h2>Stall: where first, and at what speed?</h2>
      ${found ? this.#answers(found, this.#study.resultDesign ?? this.design) : studyWait(this.#study, 'Following the sections to stall')}`;
  }

  #answers(found: StallStudy, { brief }: Design) {
    const { units } = this;
    const behind = this.#ghost.result;
    const { takeOff } = brief.speeds;
    const trouble = say.stallTrouble(found, takeOff, units);
    return html`${say.stallSentences(found, takeOff, units).map((line) => html`<p class="say">${line}</p>`)}
      ${trouble ? html`<p class="trouble">${trouble}</p>` : nothing}
      <div class="figures">${stallFigures(found, behind, units)}</div>
      <div class="tables">${spanChart(found, behind, units)} ${liftChart(found, behind)}</div>
      ${spreadTable(found, behind, units)}
      <p class="note">${say.settledNote(found)}</p>
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
