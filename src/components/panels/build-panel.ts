import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Exporter } from '../../session/exporter.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Build, Design } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import type { Report } from '../../solver/report.ts';
import type { AsBuilt } from '../../solver/studies/as-built.ts';
import type { ExportOrder } from '../../workshop/export.ts';
import type { Overview } from '../../workshop/overview.ts';
import { answerStyles } from '../answer-styles.ts';
import '../measured-table.ts';
import '../number-field.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';

type Wanted = Pick<ExportOrder, 'kind' | 'part'> & { id: string; label: string };

const EXPORTS: readonly Wanted[] = [
  { id: 'csv', label: 'Stations, CSV', kind: 'csv', part: null },
  { id: 'svg', label: 'Drawings, SVG', kind: 'svg', part: null },
  { id: 'dxf', label: 'Drawings, DXF', kind: 'dxf', part: null },
  { id: 'pdf', label: 'Sheet and templates, PDF', kind: 'pdf', part: null },
  { id: 'stl', label: 'Solids, STL', kind: 'stl', part: null },
  { id: 'mould', label: 'Moulds, STL', kind: 'stl', part: 'mould' },
];

/** From the screen to the mould: checks, files, stations, masses, the wing as measured. */
@customElement('build-panel')
export class BuildPanel extends LitElement {
  static override styles = [
    answerStyles,
    css`
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem 0.8rem;
        align-items: center;
        margin: 0.4rem 0;
      }
      .settings {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 18rem), 1fr));
        gap: 0 1.5rem;
      }
      button,
      select,
      textarea {
        font: inherit;
        color: inherit;
        background: var(--raised);
        border: 1px solid var(--edge);
        border-radius: var(--radius);
        padding: 0.3rem 0.6rem;
        min-height: 2rem;
      }
      textarea {
        width: 100%;
        box-sizing: border-box;
        min-height: 4.5rem;
      }
      :is(button, select, textarea, .scroll):focus-visible {
        outline: 2px solid var(--focus);
        outline-offset: 1px;
      }
      .scroll {
        overflow-x: auto;
      }
      table {
        border-collapse: collapse;
        font-variant-numeric: tabular-nums;
        font-size: var(--step--1);
      }
      th,
      td {
        text-align: right;
        padding: 0.15rem 0.6rem;
        border-bottom: 1px solid var(--line);
        white-space: nowrap;
      }
      th {
        font-weight: 600;
        color: var(--soft);
      }
      .caution {
        border-left: 3px solid var(--thrown);
        padding-left: 0.5rem;
        font-size: var(--step--1);
        color: var(--soft);
      }
      [role='alert'] {
        color: var(--bad);
      }
      code {
        font-size: var(--step-0);
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  @property({ attribute: false }) exporter: Exporter | null = null;

  @state() private paper: ExportOrder['paper'] = 'a4';
  @state() private side: ExportOrder['side'] = 'whole';
  @state() private draw: ExportOrder['draw'] = 'fitted';
  @state() private fliesAsDrawn = false;
  @state() private running: { label: string; share: number; cancel: () => void } | null = null;
  @state() private trouble = '';
  @state() private handedOut = '';

  readonly #overview = new StudyController(this, 'workshop', () => ({
    studies: this.studies,
    design: this.design,
    options: { draw: this.draw, date: new Date().toISOString().slice(0, 10) },
  }));

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#cancel();
  }

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const overview = this.#overview.result;
    return html`<p class="note">
        Fingerprint of this design: <code>${overview?.sheet.fingerprint ?? '…'}</code>. It stands on every sheet and file.
      </p>
      ${this.#overview.failure ? html`<p role="alert">${this.#overview.failure}</p>` : nothing}
      ${overview ? this.#findings(overview) : nothing}
      <h2>Files</h2>
      ${this.#choices()} ${this.#exports()}
      <h2>Workshop settings</h2>
      ${this.#settings(design)}
      <h2>Laminate notes</h2>
      <textarea
        aria-label="Laminate notes, printed on the sheet"
        maxlength="4000"
        .value=${design.notes?.laminate ?? ''}
        @change=${this.#onNotes}
      ></textarea>
      ${overview ? this.#answers(overview) : nothing}
      <p class="caution">${overview?.sheet.caution}</p>`;
  }

  #findings({ findings }: Overview) {
    return html`<h2>Before you cut</h2>
      ${
        findings.length === 0
          ? html`<p>Nothing found.</p>`
          : html`<ul>
              ${findings.map(({ part, message }) => html`<li><b>${part}</b>: ${message}</li>`)}
            </ul>`
      }`;
  }

  #choices() {
    const select = <T extends string>(
      label: string,
      value: T,
      options: Array<[T, string]>,
      set: (value: T) => void,
    ) =>
      html`<label
        >${label}
        <select @change=${(event: Event) => set((event.target as HTMLSelectElement).value as T)}>
          ${options.map(([key, text]) => html`<option value=${key} ?selected=${key === value}>${text}</option>`)}
        </select></label
      >`;
    return html`<div class="row">
      ${select(
        'Paper',
        this.paper,
        [
          ['a4', 'A4'],
          ['a3', 'A3'],
          ['letter', 'Letter'],
        ],
        (value) => {
          this.paper = value;
        },
      )}
      ${select(
        'Solids',
        this.side,
        [
          ['whole', 'whole'],
          ['halves', 'halves'],
          ['starboard', 'starboard half'],
          ['port', 'port half'],
        ],
        (value) => {
          this.side = value;
        },
      )}
      ${select(
        'Moulds drawn',
        this.draw,
        [
          ['fitted', 'square to the parting'],
          ['upright', 'straight up'],
        ],
        (value) => {
          this.draw = value;
        },
      )}
      ${select(
        'Shape',
        this.fliesAsDrawn ? 'built' : 'drawn',
        [
          ['drawn', 'as drawn'],
          ['built', 'built to fly as drawn'],
        ],
        (value) => {
          this.fliesAsDrawn = value === 'built';
        },
      )}
    </div>`;
  }

  #exports() {
    const { running } = this;
    return html`<div class="row">
        ${EXPORTS.map(
          (wanted) =>
            html`<button type="button" data-export=${wanted.id} ?disabled=${running !== null} @click=${() => this.#start(wanted)}>
              ${wanted.label}
            </button>`,
        )}
      </div>
      ${
        running
          ? html`<div class="row">
              <progress max="1" .value=${running.share} aria-label="Making ${running.label}"></progress>
              <span>${running.label}</span>
              <button type="button" @click=${this.#cancel}>Cancel</button>
            </div>`
          : nothing
      }
      <p class="note" role="status">${this.handedOut}</p>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}`;
  }

  #start({ label, kind, part }: Wanted): void {
    if (!this.exporter || !this.design) return;
    this.trouble = '';
    this.handedOut = '';
    const { paper, side, draw, fliesAsDrawn } = this;
    const order: ExportOrder = {
      kind,
      part,
      paper,
      side,
      draw,
      fliesAsDrawn,
      date: new Date(),
      report: this.report,
    };
    const cancel = this.exporter.start(this.design, order, (news) => {
      if (news.kind === 'progress') {
        this.running = { label, share: news.share, cancel };
        return;
      }
      this.running = null;
      if (news.kind === 'failed') this.trouble = news.message;
      else this.#handOut(news.file.name, news.file.bytes);
    });
    this.running = { label, share: 0, cancel };
  }

  readonly #cancel = (): void => {
    this.running?.cancel();
    this.running = null;
  };

  #handOut(name: string, bytes: Uint8Array): void {
    const address = URL.createObjectURL(new Blob([bytes as BlobPart]));
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
    this.handedOut = `${name} is ready.`;
  }

  #settings({ build = {} }: Design) {
    const field = (
      label: string,
      key: 'spacing' | 'leastEdge' | 'allowance' | 'tolerance' | 'stock',
      hint: string,
    ) => {
      const { min, max, default: usual } = RANGES[`build.${key}`];
      return html`<number-field
        .label=${label}
        quantity="length"
        .units=${this.units}
        .path="build.${key}"
        .value=${(build as Build)[key] ?? usual}
        .min=${min}
        .max=${max}
        .step=${key === 'tolerance' ? 0.000005 : key === 'spacing' ? 0.005 : 0.0001}
        .hint=${hint}
      ></number-field>`;
    };
    return html`<div class="settings">
      ${field('Station spacing', 'spacing', 'along the curve')}
      ${field('Least trailing edge', 'leastEdge', '0: as the section draws it')}
      ${field('Laminate allowance', 'allowance', 'taken off the ribs all round')}
      ${field('Tolerance of solids', 'tolerance', 'triangles off the skin')}
      ${field('Core stock', 'stock', 'bent over the jig')} ${this.#slot(build)}
    </div>`;
  }

  #slot({ slot }: Build) {
    const value = { at: 0.35, width: 0.01, height: 0.004, ...slot };
    const field = (label: string, key: keyof typeof value, quantity: 'share' | 'length') => {
      const { min, max } = RANGES[`build.slot.${key}`];
      return html`<number-field
        .label=${label}
        .quantity=${quantity}
        .units=${this.units}
        .path="build.slot.${key}"
        .value=${slot ? value[key] : null}
        .min=${min}
        .max=${max}
        placeholder="none"
        .toChanges=${(next: number) => [{ path: 'build.slot', value: { ...value, [key]: next } }]}
      ></number-field>`;
    };
    return html`${field('Spar slot at', 'at', 'share')} ${field('Slot width', 'width', 'length')}
    ${field('Slot height', 'height', 'length')}`;
  }

  readonly #onNotes = (event: Event): void => {
    const text = (event.target as HTMLTextAreaElement).value;
    sendEdit(this, {
      changes: [{ path: 'notes.laminate', value: text === '' ? undefined : text }],
      label: 'laminate notes',
      phase: 'settled',
    });
  };

  #answers({ sheet, plies, asBuilt }: Overview) {
    const length = (value: number) => formatWithUnit(value, 'length', this.units);
    return html`${sheet.tables.map(
      ({ title, head, rows }) =>
        html`<h2>${title}</h2>
          <div class="scroll" tabindex="0" role="region" aria-label=${title}>
            <table>
              <thead>
                <tr>${head.map((text) => html`<th scope="col">${text}</th>`)}</tr>
              </thead>
              <tbody>
                ${rows.map((cells) => html`<tr>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`)}
              </tbody>
            </table>
          </div>`,
    )}
      <h2>Mass and material, estimated</h2>
      <p>${sheet.masses.map(([label, value]) => html`${label} ${value}. `)}</p>
      ${plies.map(
        ({ part, count, cloth, fibre, bareEdge }) =>
          html`<p class="note">
            ${part}: ${count} plies a side at most, ${formatWithUnit(cloth, 'area', this.units)} of cloth
            (${(1000 * fibre).toFixed(0)} g).
            ${bareEdge === null ? '' : `No ply reaches the last ${length(bareEdge)} at the trailing edge: resin alone.`}
          </p>`,
      )}
      <h2>As built</h2>
      <measured-table .design=${this.design} .units=${this.units}></measured-table>
      ${typeof asBuilt === 'string' ? html`<p role="alert">${asBuilt}</p>` : this.#asBuilt(asBuilt)}`;
  }

  #asBuilt({
    isMeasured,
    roll,
    byTwist,
    byChord,
    byHeight,
    shim,
    packing,
    lean,
    compared,
    stations,
  }: AsBuilt) {
    const moment = (value: number) => formatWithUnit(value, 'moment', this.units, { sign: true });
    return html`${
      isMeasured
        ? html`<p>
              At cruise the difference between the sides rolls the foil by <b>${moment(roll)}</b> (starboard down
              positive): twist ${moment(byTwist)}, chord ${moment(byChord)}, height ${moment(byHeight)}.
              ${
                shim === null || packing === null
                  ? ''
                  : `Turning the starboard half by ${shim.toFixed(2)}° and the port half as much the other way cancels it: ${(1000 * Math.abs(packing)).toFixed(2)} mm over the root chord.`
              }
              Standing ${(1000 * Math.abs(lean)).toFixed(1)} mm to ${lean >= 0 ? 'starboard' : 'port'} carries it too.
            </p>
            <table>
              <thead>
                <tr><th scope="col">figure</th><th scope="col">drawn</th><th scope="col">built</th></tr>
              </thead>
              <tbody>
                ${compared.map(
                  ({ name, unit, drawn, built }) =>
                    html`<tr>
                      <th scope="row">${name}</th>
                      <td>${formatWithUnit(drawn, unit, this.units)}</td>
                      <td>${formatWithUnit(built, unit, this.units)}</td>
                    </tr>`,
                )}
              </tbody>
            </table>`
        : html`<p class="note">Type what you measured; empty fields count as drawn.</p>`
    }
      <p class="note">
        Difference in twist between the sides that makes 1 N m:
        ${stations.map(({ distance, tolerance }) => `${formatWithUnit(distance, 'length', this.units)} out ${tolerance === null ? 'any' : `${tolerance.toFixed(2)}°`}`).join(', ')}.
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'build-panel': BuildPanel;
  }
}
