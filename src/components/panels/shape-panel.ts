import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { lengthAs, lengthFor, surfaceFor, tidy } from '../../session/planform-edits.ts';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Design, Length, Planform, Strut } from '../../solver/design/document.ts';
import '../choice-field.ts';
import type { Choice } from '../choice-field.ts';
import { withoutPath } from '../draft.ts';
import type { Change } from '../events.ts';
import '../law-editor.ts';
import '../number-field.ts';
import {
  describeThickness,
  fuselageLength,
  fuselageLengthChanges,
  newPart,
  type Part,
} from '../../session/parts.ts';
import { panelStyles } from '../panel-styles.ts';
import { sectionFields } from '../section-fields.ts';
import { sendEdit } from '../send-edit.ts';

const LENGTHS: readonly Choice[] = [
  { value: 'unrolled', label: 'unrolled' },
  { value: 'tipToTip', label: 'tip to tip' },
];

interface FieldOptions {
  step?: number;
  hint?: string;
  derived?: boolean;
  toChanges?: (value: number) => Change[] | string;
}

/** The shape: wing, stabilizer, fuselage and strut, every key of the document. */
@customElement('shape-panel')
export class ShapePanel extends LitElement {
  static override styles = panelStyles;

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
    return html`<number-field
      .label=${label}
      edit-label="${owner} ${label.toLowerCase()}"
      .quantity=${quantity}
      .units=${this.units}
      .path=${path}
      .value=${value}
      .step=${options.step ?? null}
      .hint=${options.hint ?? ''}
      ?derived=${options.derived ?? false}
      .toChanges=${options.toChanges ?? null}
    ></number-field>`;
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

  #strut({ strut, fuselage }: Design) {
    if (!strut) return nothing;
    const x = strut.x ?? 0;
    const nose = fuselage?.nose ?? null;
    return html`<details ?open=${this.#isWide}>
      <summary><h2>Strut</h2></summary>
      ${this.#field('strut', 'Stands aft of the wing', 'strut.x', 'length', x, {
        step: 0.005,
        hint: 'quarter chord to quarter chord',
      })}
      ${
        nose === null
          ? nothing
          : this.#field('strut', 'From the fuselage nose', '', 'length', nose + x, {
              derived: true,
              step: 0.005,
              toChanges: (place) => [{ path: 'strut.x', value: tidy(place - nose) }],
            })
      }
      ${this.#field('strut', 'Length', 'strut.length', 'length', strut.length, { step: 0.01 })}
      ${this.#field('strut', 'Chord', 'strut.chord', 'length', strut.chord)}
      ${this.#field('strut', 'Thickness', 'strut.thickness', 'length', strut.thickness, {
        step: 0.0005,
        hint: describeThickness(strut),
      })}
      ${this.#atBoard('Chord at the board', 'chord', strut)}
      ${this.#atBoard('Thickness at the board', 'thickness', strut)}
      ${this.#removeButton('strut')}
    </details>`;
  }

  /** A strut of one size from foot to board has no `top`. */
  #atBoard(label: string, key: 'chord' | 'thickness', strut: Strut) {
    const { chord, thickness } = strut.top ?? strut;
    return this.#field('strut', label, `strut.top.${key}`, 'length', { chord, thickness }[key], {
      ...(key === 'thickness' && { step: 0.0005 }),
      ...(!strut.top && { hint: 'as at the foot' }),
      toChanges: (value) => {
        const top = { chord, thickness, [key]: value };
        const isEven = isSame(top.chord, strut.chord) && isSame(top.thickness, strut.thickness);
        return [{ path: 'strut.top', value: isEven ? undefined : top }];
      },
    });
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

/** Lengths in m that no builder can tell apart: "13 mm" is read as 0.013 and a rounding more. */
const isSame = (one: number, other: number) => Math.abs(one - other) < 1e-9;

declare global {
  interface HTMLElementTagNameMap {
    'shape-panel': ShapePanel;
  }
}
