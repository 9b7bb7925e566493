import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { BRIEFS, type NamedBrief } from '../../session/briefs.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { DragSources } from '../../solver/studies/level-drag.ts';
import type { Fix } from '../../solver/studies/level-running.ts';
import type { SideRule } from '../../solver/studies/side-trim.ts';
import type { SpeedCase, SpeedPoint } from '../../solver/studies/speed.ts';
import type { SpeedStudy } from '../../solver/studies/speed-study.ts';
import { answerStyles } from '../answer-styles.ts';
import type { ChartSeries } from '../chart-columns.ts';
import '../choice-field.ts';
import type { DesignEditEvent } from '../events.ts';
import { tableStyles } from '../figure-table.ts';
import '../line-chart.ts';
import '../number-field.ts';
import { recall, remember } from '../preferences.ts';
import {
  breachReading,
  pumpingReading,
  seriesReading,
  sideReading,
  takeOffReading,
  troubles,
  waveWarning,
} from '../speed/readings.ts';
import * as tables from '../speed/tables.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';

const COUNT = 60;
const COLOURS: Record<keyof DragSources, `--${string}`> = {
  wingInduced: '--carry',
  stabilizerInduced: '--tail',
  wingProfile: '--surface',
  stabilizerProfile: '--focus',
  strutProfile: '--thrown',
  fuselage: '--lean',
  junctions: '--ghost',
  spray: '--soft',
  wave: '--ink',
};

/** From take-off to top speed: trim, drag by source, take-off, heel, waves, cavitation. */
@customElement('speed-panel')
export class SpeedPanel extends LitElement {
  static override styles = [
    answerStyles,
    studyStyles,
    tableStyles,
    css`
      .charts {
        row-gap: 1rem;
      }
      .tables {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 26rem), 1fr));
        gap: 1rem 1.5rem;
        margin-top: 1rem;
        align-items: start;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;

  @state() private fix: Fix = 'incidence';
  @state() private waves = { height: 0.6, period: 4, heading: 20 };
  @state() private pumpFrequency = 1.5;
  @state() private side: SideRule = { by: 'strut' };
  @state() private own: NamedBrief[] = recall('briefs', []);

  readonly #series = new StudyController(this, 'speed', () =>
    this.design
      ? {
          studies: this.studies,
          design: this.design,
          options: { ...range(this.design), count: COUNT, fix: this.fix },
        }
      : null,
  );
  readonly #details = new StudyController(this, 'speedDetails', () =>
    this.design
      ? {
          studies: this.studies,
          design: this.design,
          options: { waves: this.waves, pumpFrequency: this.pumpFrequency, side: this.side },
        }
      : null,
  );

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const study = this.#series.result;
    return html`<div class="controls">${this.#controls()}</div>
      ${
        this.#series.failure
          ? html`<p class="trouble" role="status">${this.#series.failure}</p>`
          : study
            ? html`${this.#say(study)} ${this.#charts(study)} ${this.#tables(study, design)}`
            : html`<p class="note">Running through the speeds …</p>`
      }
      ${this.#more(design)}`;
  }

  #controls() {
    const briefs = [...BRIEFS, ...this.own];
    return html`<choice-field
        label="Kept while the speed changes"
        .value=${this.fix}
        .choices=${[{ value: 'incidence', label: 'the wedge' }, { value: 'stance', label: 'the stance' }]}
        .toChanges=${(value: string) => [{ path: '', value }]}
        @design-edit=${this.#take((value) => {
          this.fix = value as Fix;
        })}
      ></choice-field>
      <choice-field
        label="Take over a brief"
        value=""
        edit-label="brief"
        .choices=${[{ value: '', label: 'choose …' }, ...briefs.map(({ name }) => ({ value: name, label: name }))]}
        .toChanges=${(name: string) => {
          const found = briefs.find((each) => each.name === name);
          return found ? [{ path: 'brief', value: structuredClone(found.brief) }] : [];
        }}
      ></choice-field>
      <button type="button" @click=${this.#keepBrief}>Keep this brief for later</button>`;
  }

  /** Fields of this panel set how the question is asked, not the design: their edits stop here. */
  #take(set: (value: unknown) => void) {
    return (event: DesignEditEvent) => {
      event.stopPropagation();
      set(event.detail.changes[0]?.value);
    };
  }

  readonly #keepBrief = (): void => {
    if (!this.design) return;
    const name = `of ${this.design.name}`;
    this.own = [...this.own.filter((each) => each.name !== name), { name, brief: this.design.brief }];
    remember('briefs', this.own);
  };

  #say(study: SpeedStudy) {
    const cases = namedCases(study);
    const waves = waveWarning(cases);
    return html`${seriesReading(study, this.units).map((sentence) => html`<p class="say">${sentence}</p>`)}
      ${troubles(cases, study.reach, this.units).map((sentence) => html`<p class="trouble">${sentence}</p>`)}
      ${waves ? html`<p class="note">${waves}</p>` : nothing}`;
  }

  #charts(study: SpeedStudy) {
    const { units } = this;
    const common = { xUnit: unitOf('speed', units), xDecimals: 1 };
    const points = study.series.flatMap(({ point }) =>
      point && (point.stallMargin ?? 0) >= 0 ? [point] : [],
    );
    const x = points.map(({ speed }) => toDisplay(speed, 'speed', units));
    const line = (name: string, colour: `--${string}`, read: (point: SpeedPoint) => number): ChartSeries => ({
      name,
      x,
      y: points.map(read),
      colour,
    });
    const feet = this.fix === 'incidence';
    return html`<div class="charts">
      <line-chart
        heading="Drag by source"
        stacked
        x-name="speed"
        .xUnit=${common.xUnit}
        .xDecimals=${common.xDecimals}
        y-name="drag"
        .yUnit=${unitOf('force', units)}
        .yDecimals=${1}
        .summary=${'Drag by source against speed, each source standing on the one before.'}
        .series=${(Object.keys(COLOURS) as Array<keyof DragSources>).map((source) => ({
          ...line(tables.DRAG_NAMES[source], COLOURS[source], ({ drag }) =>
            toDisplay(drag[source], 'force', units),
          ),
          width: 1,
        }))}
      ></line-chart>
      <line-chart
        heading="Lift to drag"
        x-name="speed"
        .xUnit=${common.xUnit}
        .xDecimals=${common.xDecimals}
        y-name="weight carried / drag"
        .yDecimals=${1}
        .summary=${'Lift to drag against speed.'}
        .series=${[line('lift to drag', '--carry', ({ liftToDrag }) => liftToDrag)]}
      ></line-chart>
      <line-chart
        heading=${feet ? 'Where the feet stand' : 'Stabilizer incidence that trims'}
        x-name="speed"
        .xUnit=${common.xUnit}
        .xDecimals=${common.xDecimals}
        y-name=${feet ? 'aft of the strut' : 'incidence'}
        .yUnit=${unitOf(feet ? 'length' : 'angle', units)}
        .yDecimals=${feet ? 0 : 2}
        .summary=${feet ? 'Place of the feet against speed.' : 'Stabilizer incidence against speed.'}
        .series=${[
          feet
            ? line('feet of an upright rider', '--tail', (point) =>
                toDisplay(point.feet - this.#strut, 'length', units),
              )
            : line('incidence', '--tail', ({ incidence }) => incidence),
        ]}
      ></line-chart>
    </div>`;
  }

  get #strut(): number {
    return this.design?.strut?.x ?? 0;
  }

  #tables(study: SpeedStudy, design: Design) {
    const cases = namedCases(study);
    const lineUp = study.lineUp;
    return html`<div class="tables">
      ${tables.runningTable(cases, this.#strut, this.units)} ${tables.dragTable(cases, this.units)}
      <div>
        ${
          lineUp === null
            ? nothing
            : html`<p class="note">
                Wing and stabilizer set ${formatWithUnit(lineUp, 'angle', this.units, { sign: true })} against the
                fuselage would line it up with the flow at cruise: wing at
                ${formatWithUnit(design.wing.incidence + lineUp, 'angle', this.units, { sign: true })}.
              </p>`
        }
        <p class="note">
          Friction ITTC-1957; form factors, junctions q t²(17 (t/c)² − 0.05) and spray 0.24 q t² after S. F. Hoerner,
          Fluid-Dynamic Drag, 1965 (from memory); waves after Wu 1953 and Breslin 1957 (from memory). Induced drag counts
          the interference of wing and stabilizer once.
          ${
            study.sections === 'fixed'
              ? 'Section drag is 0.008 and the usable lift coefficient 1.2 for every section (common practice).'
              : nothing
          }
        </p>
      </div>
    </div>`;
  }

  #more(design: Design) {
    const details = this.#details.result;
    if (!details)
      return html`<p class="note" role="status">
        ${this.#details.failure ?? `Take-off, wedges, heel, waves and cavitation … ${Math.round(100 * (this.#details.share ?? 0))} %`}
      </p>`;
    const { units } = this;
    const side = sideReading(details, units);
    return html`<h2>Take-off and the wedge</h2>
      <p class="say">${takeOffReading(details, design, units)}</p>
      <div class="tables">
        ${details.shims.length > 0 ? tables.shimRows(details, this.#strut, units) : html`<p class="note">No stabilizer, no wedge.</p>`}
        ${details.depth.length > 0 ? this.#depthChart(details.depth) : nothing}
      </div>
      <h2>Heel and turning</h2>
      <p class="say">${breachReading(details, design, units)}</p>
      ${side ? html`<p class="say">${side}</p>${this.#sideChoice()}` : nothing}
      <div class="tables">${details.heel.length > 0 ? tables.heelTable(details, units) : nothing} ${tables.carveTable(details, units)}</div>
      <h2>Waves and downwind</h2>
      <div class="controls">${this.#waveFields()}</div>
      <p class="say">${pumpingReading(details, units)}</p>
      <div class="tables">${tables.waveTable(details, units)} ${tables.downwindRows(details, units)}</div>
      <h2>Cavitation and air</h2>
      <div class="tables">${tables.inceptionTable(details, units)} ${tables.pressureTable(details, units)}</div>
      <p class="note">
        Lowest pressures are inviscid, at each strip’s own lift; at the junction the speed-up of strut and wing is added.
        Against the air below 0, air is drawn down where a way opens: along a slipping strut, from a tip that breaks the
        surface, down the strut to the junction. Published strut tests cover depth Froude numbers to 2.5: at foiling
        speed this is <em>outside the tested range</em>, so no angle is given. Tip vortices may boil earlier.
      </p>
      <p class="caution">
        Cavitation and trim figures compare designs. They are estimates, no approval of strength or safety: a foil that
        lets go at speed can injure. Wear protection, follow local rules, and have a qualified person check what carries a
        rider.
      </p>`;
  }

  #depthChart(rows: ReadonlyArray<{ depth: number; lift: number; inducedDrag: number }>) {
    const { units } = this;
    const x = rows.map(({ depth }) => toDisplay(depth, 'length', units));
    const last = rows.at(-1)!;
    const share = (
      name: string,
      colour: `--${string}`,
      read: (row: (typeof rows)[number]) => number,
    ): ChartSeries => ({
      name,
      x,
      y: rows.map((row) => (100 * read(row)) / read(last)),
      colour,
    });
    return html`<line-chart
      heading="Depth at cruise, against the deepest"
      x-name="depth of the wing"
      .xUnit=${unitOf('length', units)}
      .xDecimals=${units === 'workshop' ? 0 : 2}
      y-name="of the deepest"
      y-unit="%"
      .yDecimals=${1}
      .summary=${'Lift at the same angle and induced drag with waves at the same lift, in percent of the deepest, against depth.'}
      .series=${[
        share('lift at one angle', '--carry', ({ lift }) => lift),
        share('induced drag and waves', '--thrown', ({ inducedDrag }) => inducedDrag),
      ]}
    ></line-chart>`;
  }

  #sideChoice() {
    return html`<div class="controls">
      <choice-field
        label="The balance is found by"
        .value=${this.side.by}
        .choices=${[
          { value: 'strut', label: 'unloading the strut' },
          { value: 'roll', label: 'heel and leeway' },
          { value: 'heel', label: 'staying upright' },
        ]}
        .toChanges=${(value: string) => [{ path: '', value }]}
        @design-edit=${this.#take((value) => {
          this.side = value === 'heel' ? { by: 'heel', heel: 0 } : { by: value as 'strut' | 'roll' };
        })}
      ></choice-field>
    </div>`;
  }

  #waveFields() {
    const field = (
      label: string,
      value: number,
      quantity: 'length' | 'time' | 'angle' | 'ratio',
      [min, max]: [number, number],
      set: (value: number) => void,
    ) =>
      html`<number-field
        .label=${label}
        .value=${value}
        .quantity=${quantity}
        .units=${this.units}
        .min=${min}
        .max=${max}
        .toChanges=${(found: number) => [{ path: '', value: found }]}
        @design-edit=${this.#take((found) => set(found as number))}
      ></number-field>`;
    const wave = (key: keyof typeof this.waves) => (value: number) => {
      this.waves = { ...this.waves, [key]: value };
    };
    return [
      field('Wave height', this.waves.height, 'length', [0, 5], wave('height')),
      field('Period', this.waves.period, 'time', [1, 20], wave('period')),
      field('Course to the waves', this.waves.heading, 'angle', [0, 180], wave('heading')),
      field('Pumps a second', this.pumpFrequency, 'ratio', [0.3, 4], (value) => {
        this.pumpFrequency = value;
      }),
    ];
  }
}

function range({ brief: { speeds } }: Design): { from: number; to: number } {
  return { from: Math.max(0.5, 0.8 * speeds.takeOff), to: Math.min(30, 1.1 * speeds.top) };
}

function namedCases({ named }: SpeedStudy): Array<[string, SpeedCase]> {
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
