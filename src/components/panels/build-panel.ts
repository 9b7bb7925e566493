import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exporter } from '../../session/exporter.ts';
import { withMark } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import type { UnitSystem } from '../../session/units.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Finding } from '../../solver/studies/build-checks.ts';
import type { Overview } from '../../workshop/overview.ts';
import { answerStyles } from '../answer-styles.ts';
import { asBuiltAnswer } from '../build/as-built.ts';
import '../build/build-files.ts';
import { choiceFields, type FileChoices, USUAL_CHOICES } from '../build/choices.ts';
import { material } from '../build/material.ts';
import '../build/measured-table.ts';
import '../build/notes-field.ts';
import '../build/print-sheet.ts';
import { buildSettings } from '../build/settings.ts';
import { stationTables } from '../build/stations.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { StudyController } from '../study-controller.ts';

/** From the screen to the mould: checks, files, the printed sheet, stations, masses, the wing as measured. */
@customElement('build-panel')
export class BuildPanel extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    css`
      .settings {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 19rem), 1fr));
        gap: 0 1.5rem;
        --control-width: 10rem;
      }
      .say {
        font-size: var(--step-1);
        line-height: 1.45;
        margin: 0.2rem 0;
      }
      .narrow {
        max-width: 46rem;
      }
      .findings {
        margin: 0.2rem 0;
        padding-left: 1.1rem;
      }
      .table:focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: 1px;
      }
      .caution,
      .trouble {
        border-left: 3px solid var(--thrown);
        padding-left: 0.5rem;
        margin: 0.4rem 0;
        font-size: var(--step--1);
        color: var(--soft);
      }
      .trouble {
        border-color: var(--bad);
        color: var(--ink);
      }
      @media print {
        .on-screen {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  @property({ attribute: false }) exporter: Exporter | null = null;
  /** Its stations and masses stand beside these; files and sheet are of the open design alone. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private choices: FileChoices = USUAL_CHOICES;

  readonly #overview = new StudyController(this, 'workshop', () => ({
    studies: this.studies,
    design: this.design,
    options: this.#options,
  }));
  readonly #ghost = new GhostStudy(this, 'workshop', () => this.#options);

  get #options() {
    const { draw, fliesAsDrawn } = this.choices;
    return { draw, fliesAsDrawn, date: new Date().toISOString().slice(0, 10) };
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const { result: overview, failure } = this.#overview;
    return html`<div class="on-screen">
        <p class="caution">${CAUTION}</p>
        ${failure ? html`<p class="trouble" role="status">${failure}</p>` : nothing}
        ${overview ? this.#findings(overview) : html`<p class="note">Measuring …</p>`} ${this.#files(design, overview)}
        <section aria-labelledby="settings">
          <h2 id="settings">Workshop settings</h2>
          ${buildSettings(design, this.units)}
        </section>
        <section>
          <notes-field
            label="Laminate notes"
            hint="printed on the sheet"
            path="notes.laminate"
            .value=${design.notes?.laminate ?? ''}
          ></notes-field>
        </section>
        ${overview ? this.#answers(design, overview) : nothing}
      </div>
      <print-sheet .sheet=${overview?.sheet ?? null}></print-sheet>`;
  }

  #findings({ findings }: Overview) {
    const item = ({ part, message }: Finding) => html`<li><b>${part}</b>: ${withMark(message)}</li>`;
    return html`<section aria-labelledby="before">
      <h2 id="before">Before you cut</h2>
      ${
        findings.length === 0
          ? html`<p>Nothing stands in the way: edges, tips, bends, outlines and undercuts were looked at.</p>`
          : html`<ul class="findings">${findings.map(item)}</ul>`
      }
    </section>`;
  }

  #files(design: Design, overview: Overview | null) {
    return html`<section aria-labelledby="files">
      <h2 id="files">Files and sheet</h2>
      ${choiceFields(this.choices, (choices) => {
        this.choices = choices;
      })}
      <build-files .design=${design} .exporter=${this.exporter} .choices=${this.choices}></build-files>
      <p class="note">
        Fingerprint of this design: <b>${overview?.sheet.fingerprint ?? '…'}</b>. It stands on every sheet, drawing and solid, so that
        one found in the workshop can be matched to its design. Drawings and solids are in millimetres.
      </p>
    </section>`;
  }

  #answers(design: Design, overview: Overview) {
    const { asBuilt, stations } = overview;
    const behind = this.#ghost.result;
    const other = behind && typeof behind.asBuilt !== 'string' ? behind.asBuilt : null;
    return html`<section aria-labelledby="stations">
        <h2 id="stations">Stations</h2>
        ${stationTables(stations, behind?.stations ?? null, this.units)}
      </section>
      <section aria-labelledby="material">
        <h2 id="material">Mass and material</h2>
        <div class="narrow">${material(overview, behind, this.units)}</div>
      </section>
      <section aria-labelledby="built">
        <h2 id="built">As built</h2>
        <measured-table .design=${design} .stations=${stations[0]!.rows} .units=${this.units}></measured-table>
        ${
          typeof asBuilt === 'string'
            ? html`<p class="trouble" role="status">${asBuilt}</p>`
            : html`<div class="narrow">${asBuiltAnswer(asBuilt, other, this.units)}</div>`
        }
      </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'build-panel': BuildPanel;
  }
}
