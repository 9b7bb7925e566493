import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Defect, Design } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import type { FaultStudy } from '../../solver/studies/fault-study.ts';
import '../choice-field.ts';
import { tableStyles } from '../figure-table.ts';
import '../number-field.ts';
import { panelStyles } from '../panel-styles.ts';
import type { Look } from '../section/station-fields.ts';
import { sendEdit } from '../send-edit.ts';
import { layerWords, rangeWords } from './costs.ts';

const KINDS = [
  { value: 'bump', label: 'bump' },
  { value: 'step', label: 'step across' },
  { value: 'cavity', label: 'cavity' },
];
const SIDES = [
  { value: 'upper', label: 'upper' },
  { value: 'lower', label: 'lower' },
];
/** What is put on first; sizes as met in workshops (common practice). */
const FRESH: Record<Defect['kind'], Pick<Defect, 'height' | 'width'>> = {
  bump: { height: 0.0003, width: 0.002 },
  step: { height: 0.0001, width: 0.06 },
  cavity: { height: 0.001, width: 0.001 },
};

/** Faults the user has put on the surface: where, how high, how wide a wedge; and what each costs. */
@customElement('defect-table')
export class DefectTable extends LitElement {
  static override styles = [
    panelStyles,
    tableStyles,
    css`
      .defects {
        overflow-x: auto;
      }
      td,
      th {
        text-align: left !important;
        min-width: 5.6rem;
        vertical-align: middle;
      }
      td.drag {
        min-width: 9rem;
        font-weight: 600;
        color: var(--ink);
      }
      :is(th, td):last-child {
        min-width: 0;
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        margin: 0.5rem 0;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) study: FaultStudy | null = null;
  /** Where a new fault goes. */
  @property({ attribute: false }) look: Pick<Look, 'part' | 'eta'> = { part: 'wing', eta: 0 };

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    const list = design.defects ?? [];
    return html`${list.length > 0 ? this.#table(list, design) : html`<p class="note">None so far: the surface counts as perfect.</p>`}
      <div class="tools">
        ${KINDS.map(
          ({ value, label }) =>
            html`<button type="button" @click=${() => this.#add(value as Defect['kind'])}>Put on a ${label}</button>`,
        )}
      </div>`;
  }

  #table(list: readonly Defect[], design: Design) {
    const heads = [
      'fault',
      'on',
      'out or up',
      'side',
      'chord',
      'height',
      'width',
      'wedge',
      'at cruise',
      'at top speed',
      'the layer',
      '',
    ];
    return html`<div class="defects" role="region" tabindex="0" aria-label="Faults on the surface">
      <table>
        <thead>
          <tr>
            ${heads.map((head) => (head ? html`<th scope="col">${head}</th>` : html`<td></td>`))}
          </tr>
        </thead>
        <tbody>
          ${list.map((defect, k) => this.#row(defect, k, design))}
        </tbody>
      </table>
    </div>`;
  }

  #row(defect: Defect, k: number, design: Design) {
    const { study, units } = this;
    const found = study?.defects.length === design.defects?.length ? (study?.defects[k] ?? null) : null;
    const parts = (['wing', 'stabilizer', 'strut'] as const).filter((part) => design[part]);
    const drag = (speed: 'cruise' | 'top') =>
      found ? rangeWords(found[speed], study?.total[speed] ?? null, units) : '…';
    return html`<tr>
      <td>${this.#choice('kind', k, defect.kind, KINDS)}</td>
      <td>${this.#choice(
        'on',
        k,
        defect.on,
        parts.map((value) => ({ value, label: value })),
      )}</td>
      <td>${this.#number('out or up', 'eta', k, 'share', defect.eta, 0.05)}</td>
      <td>${defect.on === 'strut' ? 'either' : this.#choice('side', k, defect.side ?? 'upper', SIDES)}</td>
      <td>${this.#number('place along the chord', 'at', k, 'share', defect.at, 0.01)}</td>
      <td>${this.#number(defect.kind === 'cavity' ? 'depth' : 'height', 'height', k, 'fineLength', defect.height, 0.00001)}</td>
      <td>${this.#number('width', 'width', k, 'length', defect.width, 0.001)}</td>
      <td>
        ${this.#number('wedge', 'wedge', k, 'angle', defect.wedge ?? RANGES['defects.*.wedge'].default, 1)}
      </td>
      <td class="drag">${drag('cruise')}</td>
      <td class="drag">${drag('top')}</td>
      <td>${found ? layerWords(found) : ''}</td>
      <td><button type="button" aria-label=${`Take away fault ${k + 1}`} @click=${() => this.#remove(k)}>✕</button></td>
    </tr>`;
  }

  #number(label: string, key: string, k: number, quantity: Quantity, value: number, step: number) {
    return html`<number-field
      bare
      .label=${`${label}, fault ${k + 1}`}
      edit-label="fault of the skin"
      .path=${`defects.${k}.${key}`}
      .quantity=${quantity}
      .units=${this.units}
      .value=${value}
      .step=${step}
    ></number-field>`;
  }

  #choice(key: string, k: number, value: string, choices: ReadonlyArray<{ value: string; label: string }>) {
    return html`<choice-field
      bare
      .label=${`${key}, fault ${k + 1}`}
      edit-label="fault of the skin"
      .path=${`defects.${k}.${key}`}
      .value=${value}
      .choices=${choices}
    ></choice-field>`;
  }

  #add(kind: Defect['kind']): void {
    const { part, eta } = this.look;
    const fresh: Defect = {
      kind,
      on: part,
      eta,
      ...(part !== 'strut' && { side: 'upper' as const }),
      at: 0.15,
      ...FRESH[kind],
    };
    this.#send([...(this.design?.defects ?? []), fresh], 'put a fault on the skin');
  }

  #remove(k: number): void {
    const left = (this.design?.defects ?? []).filter((_, i) => i !== k);
    this.#send(left.length > 0 ? left : undefined, 'take a fault away');
  }

  #send(value: readonly Defect[] | undefined, label: string): void {
    sendEdit(this, { changes: [{ path: 'defects', value }], label, phase: 'settled' });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'defect-table': DefectTable;
  }
}
