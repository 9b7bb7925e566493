import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { withMark } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import type { Design } from '../../solver/design/document.ts';
import type { CavitationStudy } from '../../solver/studies/cavitation-study.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { inceptionTable, pressureTable, stripChart } from './cavitation-tables.ts';
import { sectionStyles } from './section-styles.ts';

/** Where and when the water first boils, and where air could come down. */
@customElement('speed-cavitation')
export class SpeedCavitation extends LitElement {
  static override styles = sectionStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  readonly #study = new StudyController(this, 'cavitation', () => ({
    studies: this.studies,
    design: this.design,
    options: {},
  }));

  readonly #ghost = new GhostStudy(this, 'cavitation', () => ({}));

  protected override render() {
    if (!this.design) return nothing;
    const found = this.#study.result;
    return html`<h2>Cavitation and air</h2>
      ${found ? this.#answers(found, this.design) : studyWait(this.#study, 'Pressures along every strip')}
      <p class="caution">${CAUTION}</p>`;
  }

  #answers(found: CavitationStudy, design: Design) {
    const { units } = this;
    return html`<div class="tables">
        ${stripChart(found, this.#ghost.result, design.brief.speeds.top, units)}
        <div>
          ${inceptionTable(found, this.#ghost.result, units)} ${pressureTable(found, this.#ghost.result, units)}
        </div>
      </div>
      <p class="note">
        Cavitation number (p atmosphere + ρ g h − p vapour) / (ρ V²/2) at each strip’s depth, against the lowest pressure of
        its section: inviscid, at the strip’s own lift, so the speeds err low. At the junction the speed-up of strut and wing
        is added. The take-off pull lifts one and a half times the weight (common practice). Tip vortices may boil earlier.
      </p>
      <p class="note">
        Against the air below 0, air is drawn down where a way opens: along a slipping strut, from a tip that breaks the
        surface, down the strut to the junction. Published strut tests cover depth Froude numbers to ${withMark('2.5')}: at foiling speed
        this is <em>outside the tested range</em>, so no angle is given.
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-cavitation': SpeedCavitation;
  }
}
