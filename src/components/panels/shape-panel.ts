import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { lengthAs, lengthFor, surfaceFor } from '../../session/planform-edits.ts';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Design, Length, Planform } from '../../solver/design/document.ts';
import '../choice-field.ts';
import type { Choice } from '../choice-field.ts';
import { withoutPath } from '../draft.ts';
import type { Change } from '../events.ts';
import '../law-editor.ts';
import { fuselageLength, fuselageLengthChanges, newPart, type Part } from '../../session/parts.ts';
import { InSight } from '../in-sight.ts';
import { panelStyles } from '../panel-styles.ts';
import { sectionFields } from '../section-fields.ts';
import { sendEdit } from '../send-edit.ts';
import { type FieldOptions, partField } from '../shape/part-field.ts';
import { strutFields } from '../shape/strut-fields.ts';

const LENGTHS: readonly Choice[] = [
  { value: 'unrolled', label: 'unrolled' },
  { value: 'tipToTip', label: 'tip to tip' },
];

/** The shape: wing, stabilizer, fuselage and strut, every key of the document. */
@customElement('shape-panel')
export class ShapePanel extends InSight {
  static override styles = panelStyles;

  protected override readonly rest = 250; // a drag changes its numbers faster than they are read

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';

  readonly #isWide = !window.matchMedia('(max-width: 48rem)').matches; // on a phone the lesser parts start folded
  #removed = new Map<Part, unknown>(); // put back as they were, when added again

  protected override render() {
    if (!this.design) return nothing;
    const { wing, stabilizer, fuselage, strut } = this.design;
    return html`<details open>
        <summary><h2>Wing</h2></summary>
        ${this.#planform(wing, 'wing')}
      </details>
      ${stabilizer ? this.#stabilizer(this.design) : this.#absent('stabilizer', 'Stabilizer')}
      ${fuselage ? this.#fuselage(this.design) : this.#absent('fuselage', 'Fuselage')}
      ${strut ? this.#strut(this.design) : this.#absent('strut', 'Strut')}`;
  }

  #field(
    owner: string,
    label: string,
    path: string,
    quantity: Quantity,
    value: number | null,
    options: FieldOptions = {},
  ) {
    return partField(this.units, owner, label, path, quantity, value, options);
  }

  #planform(planform: Planform, path: 'wing' | 'stabilizer') {
    const law = (name: string) => html`<div class="group">
      <law-editor .law=${name} .planform=${planform} .path=${path} .units=${this.units}></law-editor>
    </div>`;
    return html`${this.#length(planform, path)} ${law('chord')} ${law('sweep')} ${law('droop')} ${law('twist')}
      ${this.#field(path, 'Incidence', `${path}.incidence`, 'angle', planform.incidence, {
        step: 0.1,
        hint: 'to the fuselage line, nose up',
      })}
      <div class="group">${sectionFields(planform, path)}</div>`;
  }

  /** Both lengths can be set; one of them is what the design keeps while the droop changes. */
  #length(planform: Planform, path: 'wing' | 'stabilizer') {
    const surface = surfaceFor(planform);
    const { kind, value } = planform.length;
    const values = {
      unrolled: kind === 'unrolled' ? value : (surface?.unrolledLength ?? null),
      tipToTip: kind === 'tipToTip' ? value : (surface?.span ?? null),
    };
    const field = (measure: Length['kind'], label: string) =>
      this.#field(path, label, `${path}.length.value`, 'length', values[measure], {
        derived: measure !== kind,
        toChanges: (length) => attempt(`${path}.length`, () => lengthFor(planform, measure, length)),
      });
    return html`${field('unrolled', 'Unrolled length')} ${field('tipToTip', 'Span, tip to tip')}
      <choice-field
        label="Length kept in a bend"
        edit-label="${path} fixed length"
        .value=${kind}
        .choices=${LENGTHS}
        .toChanges=${(chosen: string) => attempt(`${path}.length`, () => lengthAs(planform, chosen as Length['kind']))}
      ></choice-field>`;
  }

  #stabilizer(design: Design) {
    const { stabilizer } = design;
    if (!stabilizer) return nothing;
    return html`<details ?open=${this.#isWide}>
      <summary><h2>Stabilizer</h2></summary>
      ${this.#field('stabilizer', 'Arm', 'stabilizer.arm', 'length', stabilizer.arm, {
        step: 0.005,
        hint: 'quarter chord of the wing to that of the stabilizer',
      })}
      ${this.#field('stabilizer', 'Height', 'stabilizer.height', 'length', stabilizer.height, {
        hint: 'above the wing’s root',
      })}
      ${this.#planform(stabilizer, 'stabilizer')} ${this.#removeButton('stabilizer')}
    </details>`;
  }

  #fuselage(design: Design) {
    const { fuselage } = design;
    if (!fuselage) return nothing;
    const length = fuselageLength(design);
    return html`<details ?open=${this.#isWide}>
      <summary><h2>Fuselage</h2></summary>
      ${
        length === null
          ? nothing
          : this.#field('fuselage', 'Length', '', 'length', length, {
              derived: true,
              step: 0.005,
              hint: 'nose to the stabilizer’s trailing edge; sets the arm',
              toChanges: (wanted) => fuselageLengthChanges(design, wanted, this.units),
            })
      }
      ${this.#field('fuselage', 'Nose ahead of the wing', 'fuselage.nose', 'length', fuselage.nose, {
        step: 0.005,
        hint: 'nose tip to the wing’s quarter chord',
      })}
      ${this.#field('fuselage', 'Diameter', 'fuselage.diameter', 'length', fuselage.diameter)}
      ${this.#removeButton('fuselage')}
    </details>`;
  }

  #strut(design: Design) {
    if (!design.strut) return nothing;
    return html`<details ?open=${this.#isWide}>
      <summary><h2>Strut</h2></summary>
      ${strutFields(design.strut, design, this.units)} ${this.#removeButton('strut')}
    </details>`;
  }

  #removeButton(part: Part) {
    return html`<p><button type="button" @click=${() => this.#remove(part)}>Take the ${part} away</button></p>`;
  }

  #absent(part: Part, title: string) {
    return html`<h2>${title}</h2>
      <p class="note">This design has none.</p>
      <button type="button" @click=${() => this.#add(part)}>Add a ${part}</button>`;
  }

  #remove(part: Part): void {
    this.#removed.set(part, this.design?.[part]);
    sendEdit(this, {
      changes: [{ path: part, value: null }],
      label: `take the ${part} away`,
      phase: 'settled',
    });
  }

  #add(part: Part): void {
    const value = this.#removed.get(part) ?? newPart(part, this.design!);
    sendEdit(this, { changes: [{ path: part, value }], label: `add a ${part}`, phase: 'settled' });
  }
}

function attempt(path: string, work: () => unknown): Change[] | string {
  try {
    return [{ path, value: work() }];
  } catch (error) {
    return withoutPath(error instanceof Error ? error.message : String(error)) ?? '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'shape-panel': ShapePanel;
  }
}
