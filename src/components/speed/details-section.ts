import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import { toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { DepthRow } from '../../solver/studies/depth-heel.ts';
import type { SpeedDetails } from '../../solver/studies/speed-details.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { type Ghost, withGhost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import '../line-chart.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import * as tables from './details-tables.ts';
import { breachReading, detailFigures, takeOffReading, turnsReading } from './readings.ts';
import { sectionStyles } from './section-styles.ts';

/** Take-off, the wedge under the stabilizer, depth, heel and turning. */
@customElement('speed-details')
export class SpeedDetailsPart extends LitElement {
  static override styles = sectionStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  readonly #study = new StudyController(this, 'speedDetails', () => ({
    studies: this.studies,
    design: this.design,
    options: {},
  }));

  readonly #ghost = new GhostStudy(this, 'speedDetails', () => ({}));

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const found = this.#study.result;
    return html`<h2>Take-off and the wedge</h2>
      ${found ? this.#answers(found, design) : studyWait(this.#study, 'Take-off, wedges, depth, heel and turning')}`;
  }

  #answers(found: SpeedDetails, design: Design) {
    const { units } = this;
    const turns = turnsReading(found);
    const { ghost } = this;
    const behind = this.#ghost.result;
    const own = { found, footAt: design.strut?.x ?? 0 };
    const other = ghost && behind && { found: behind, footAt: ghost.design.strut?.x ?? 0 };
    return html`<p class="say">${takeOffReading(found, design, units)}</p>
      ${ghostFigures(found, behind, units, detailFigures(units))}
      <div class="tables">
        ${found.shims.length > 0 ? tables.shimTable(own, other, units) : html`<p class="note">No stabilizer, no wedge.</p>`}
        ${found.depth.length > 0 ? depthChart(found.depth, behind?.depth ?? [], units) : nothing}
      </div>
      <h2>Heel and turning</h2>
      <p class="say">${breachReading(found, design, units)}</p>
      ${turns ? html`<p class="say">${turns}</p>` : nothing}
      <div class="tables wide">
        ${found.heel.length > 0 ? tables.heelTable(found, behind, units) : nothing}
        ${tables.carveTable(found, behind, units)}
        ${found.turns.length > 0 ? tables.turnsTable(found, behind, units) : nothing}
      </div>
      <p class="note">
        A carve is steady and without slip: load 1/cos(heel), radius V²/(g tan(heel)). Its turning pitches the foil, which
        the stabilizer resists: more incidence down, or the feet further aft, answer that. The same hold is the same
        sideways volume of the stabilizer (of a flat one: the same area times arm).
      </p>`;
  }
}

function depthLines(rows: readonly DepthRow[], units: UnitSystem): ChartSeries[] {
  const last = rows.at(-1);
  if (!last) return [];
  const x = rows.map(({ depth }) => toDisplay(depth, 'length', units));
  const share = (name: string, colour: `--${string}`, read: (row: DepthRow) => number): ChartSeries => ({
    name,
    x,
    y: rows.map((row) => (100 * read(row)) / read(last)),
    colour,
  });
  return [
    share('lift at one angle', '--carry', ({ lift }) => lift),
    share('induced drag and waves', '--thrown', ({ inducedDrag }) => inducedDrag),
  ];
}

function depthChart(rows: readonly DepthRow[], ghost: readonly DepthRow[], units: UnitSystem) {
  return html`<line-chart
    heading="Depth at cruise, against the deepest"
    x-name="depth of the wing"
    .xUnit=${unitOf('length', units)}
    .xDecimals=${units === 'workshop' ? 0 : 2}
    y-name="of the deepest"
    y-unit="%"
    .yDecimals=${1}
    .summary=${'Lift at the same angle and induced drag with waves at the same lift, in percent of the deepest, against depth.'}
    .series=${withGhost(depthLines(rows, units), depthLines(ghost, units))}
  ></line-chart>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-details': SpeedDetailsPart;
  }
}
