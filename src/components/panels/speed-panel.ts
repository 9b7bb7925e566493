import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { withMark } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Fix } from '../../solver/studies/level-running.ts';
import type { SpeedStudy } from '../../solver/studies/speed-study.ts';
import '../choice-field.ts';
import { take, toPart } from '../asked.ts';
import { RestedDesign } from '../rested-design.ts';
import '../speed/cavitation-section.ts';
import '../speed/details-section.ts';
import { SERIES_FIGURES, seriesReading, surfaceBand, troubles, waveWarning } from '../speed/readings.ts';
import { dragTable, type NamedCase, type NamedRun, runningTable } from '../speed/running-tables.ts';
import { sectionStyles } from '../speed/section-styles.ts';
import { seriesCharts } from '../speed/series-charts.ts';
import '../speed/side-section.ts';
import '../speed/wave-section.ts';
import type { Ghost } from '../ghost.ts';
import { ghostFigures } from '../ghost-figures.ts';
import { GhostStudy } from '../ghost-study.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';

const COUNT = 60;
const KEPT = [
  { value: 'incidence', label: 'the wedge' },
  { value: 'stance', label: 'the stance' },
];

/**
 * From take-off to top speed: trim, drag by source, best speeds. The series follows a drag; the parts below it (take-off,
 * heel, side pull, waves, cavitation) are asked once the design rests.
 */
@customElement('speed-panel')
export class SpeedPanel extends LitElement {
  static override styles = sectionStyles;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private fix: Fix = 'incidence';

  readonly #rested = new RestedDesign(this);
  readonly #series = new StudyController(this, 'speed', () =>
    this.design
      ? {
          studies: this.studies,
          design: this.design,
          options: { ...range(this.design), count: COUNT, fix: this.fix },
        }
      : null,
  );

  readonly #ghostSeries = new GhostStudy(this, 'speed', () =>
    this.design ? { ...range(this.design), count: COUNT, fix: this.fix } : null,
  );

  protected override render() {
    const { design, units, studies } = this;
    const settled = this.#rested.current;
    if (!design) return nothing;
    const study = this.#series.result;
    return html`<div class="controls">${this.#kept()}</div>
      ${
        study && !this.#series.failure
          ? html`${this.#say(study)} ${seriesCharts({ study, footAt: footOf(design) }, this.fix, units, this.#behind())} ${this.#tables(study, design)}`
          : studyWait(this.#series, 'Running through the speeds')
      }
      <speed-details .design=${settled} .units=${units} .studies=${studies} .ghost=${this.ghost}></speed-details>
      <speed-side
        .design=${settled}
        .units=${units}
        .studies=${studies}
        .fix=${this.fix}
        .ghost=${this.ghost}
      ></speed-side>
      <speed-waves .design=${settled} .units=${units} .studies=${studies} .ghost=${this.ghost}></speed-waves>
      <speed-cavitation .design=${settled} .units=${units} .studies=${studies} .ghost=${this.ghost}></speed-cavitation>`;
  }

  #behind() {
    const { ghost } = this;
    const study = this.#ghostSeries.result;
    return ghost && study ? { study, footAt: footOf(ghost.design) } : null;
  }

  #kept() {
    return html`<choice-field
      label="Kept while the speed changes"
      .value=${this.fix}
      .choices=${KEPT}
      .toChanges=${toPart}
      @design-edit=${take((value) => {
        this.fix = value as Fix;
      })}
    ></choice-field>`;
  }

  #say(study: SpeedStudy) {
    const cases = namedCases(study);
    const notes = [waveWarning(cases), surfaceBand(study, this.units)];
    return html`${seriesReading(study, this.units).map((sentence) => html`<p class="say">${sentence}</p>`)}
      ${ghostFigures(study, this.#ghostSeries.result, this.units, SERIES_FIGURES)}
      ${troubles(cases, study.reach, this.units).map((sentence) => html`<p class="trouble">${sentence}</p>`)}
      ${notes.map((note) => (note ? html`<p class="note">${note}</p>` : nothing))}`;
  }

  #tables(study: SpeedStudy, design: Design) {
    const behind = this.#behind();
    const own = namedRun(study, design);
    const ghost = behind && { cases: namedCases(behind.study), footAt: behind.footAt };
    return html`<div class="tables">
        ${runningTable(own, ghost, this.units)} ${dragTable(own, ghost, this.units)}
      </div>
      ${this.#lineUp(study, design)}
      <p class="note">
        Friction ITTC-1957; form factors, junctions q t²(17 (t/c)² − ${withMark('0.05')}) and spray ${withMark('0.24')} q t² after S. F. Hoerner,
        Fluid-Dynamic Drag, 1965 (from memory); waves after Wu 1953 and Breslin 1957 (from memory). Induced drag counts the
        interference of wing and stabilizer once.
        ${
          study.sections === 'fixed'
            ? withMark(
                'Section drag is 0.008 and the usable lift coefficient 1.2 for every section (common practice).',
              )
            : 'Section drag and usable lift are read from the sections’ own polars at each strip’s lift and Reynolds number.'
        }
      </p>`;
  }

  #lineUp({ lineUp }: SpeedStudy, { wing }: Design) {
    if (lineUp === null) return nothing;
    const angle = (value: number) => formatWithUnit(value, 'angle', this.units, { sign: true });
    return html`<p class="note">
      Wing and stabilizer set ${angle(lineUp)} against the fuselage would line it up with the flow at cruise: wing at
      ${angle(wing.incidence + lineUp)}.
    </p>`;
  }
}

const footOf = ({ strut }: Design): number => strut?.x ?? 0;

function range({ brief: { speeds } }: Design): { from: number; to: number } {
  return { from: Math.max(0.5, 0.8 * speeds.takeOff), to: Math.min(30, 1.1 * speeds.top) };
}

const namedRun = (study: SpeedStudy, design: Design): NamedRun => ({
  cases: namedCases(study),
  footAt: footOf(design),
});

function namedCases({ named }: SpeedStudy): NamedCase[] {
  return [
    ['take-off', named.takeOff],
    ['cruise', named.cruise],
    ['top speed', named.top],
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'speed-panel': SpeedPanel;
  }
}
