import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { withMark } from '../../session/number-format.ts';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Design, Makeup } from '../../solver/design/document.ts';
import type { Stiffness } from '../../solver/studies/stiffness.ts';
import '../choice-field.ts';
import type { Change } from '../events.ts';
import '../number-field.ts';
import { panelStyles } from '../panel-styles.ts';

type PartName = 'strut' | 'fuselage' | 'wing' | 'stabilizer';
type JointName = 'box' | 'strut' | 'wing' | 'stabilizer';
type SpringAxis = 'roll' | 'pitch' | 'yaw';

const PARTS: readonly PartName[] = ['strut', 'fuselage', 'wing', 'stabilizer'];
const JOINTS: Record<JointName, string> = {
  box: 'Board box',
  strut: 'Strut joint',
  wing: 'Wing joint',
  stabilizer: 'Stabilizer joint',
};
const AXES: readonly SpringAxis[] = ['roll', 'pitch', 'yaw'];
const MATERIALS = [
  { value: 'standard', label: 'carbon, standard modulus' },
  { value: 'intermediate', label: 'carbon, intermediate modulus' },
  { value: 'high', label: 'carbon, high modulus' },
  { value: 'aluminium', label: 'aluminium 6061-T6' },
];
const BUILDS = [
  { value: 'solid', label: 'solid' },
  { value: 'shell', label: 'skin over foam' },
];

/** What the parts are made of and how stiff the joints are. An empty field takes the value shown in it. */
@customElement('makeup-fields')
export class MakeupFields extends LitElement {
  static override styles = [
    panelStyles,
    css`
      .parts {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
        gap: 0 1.5rem;
        align-items: start;
      }
      details {
        border-top: 1px solid var(--line);
        padding-top: 0.2rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  /** What the left-out values come to; null until the study has answered. */
  @property({ attribute: false }) given: Pick<Stiffness, 'materials' | 'springs'> | null = null;

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    return html`<div class="parts">
        ${PARTS.filter((part) => design[part]).map((part) => this.#part(part, design.laminate?.[part] ?? {}))}
      </div>
      <h3>Joints, N m a radian</h3>
      <div class="parts">
        ${(Object.keys(JOINTS) as JointName[])
          .filter((name) => name === 'wing' || (name === 'stabilizer' ? design.stabilizer : design.strut))
          .map((name) => this.#joint(name))}
      </div>`;
  }

  #part(part: PartName, makeup: Makeup) {
    const material = this.given?.materials[part];
    const isMetal = makeup.material === 'aluminium';
    const name = part[0]!.toUpperCase() + part.slice(1);
    const placeholder = (value: number | undefined, size: number, digits: number) =>
      value === undefined ? 'by the material' : withMark((value / size).toPrecision(digits));
    return html`<details>
      <summary>${name}: ${MATERIALS.find(({ value }) => value === (makeup.material ?? 'standard'))!.label}, ${makeup.build === 'shell' ? 'skin over foam' : 'solid'}${material?.isOwn ? ', own values' : ''}</summary>
      <choice-field
        label="Material"
        .path=${`laminate.${part}.material`}
        edit-label="${part} material"
        .value=${makeup.material ?? 'standard'}
        .choices=${MATERIALS}
      ></choice-field>
      <choice-field
        label="Built"
        .path=${`laminate.${part}.build`}
        edit-label="${part} build"
        .value=${makeup.build ?? 'solid'}
        .choices=${BUILDS}
      ></choice-field>
      ${makeup.build === 'shell' ? this.#field('Skin', `laminate.${part}.skin`, 'length', makeup.skin, { step: 0.0001, placeholder: '2 mm' }) : nothing}
      ${
        isMetal
          ? nothing
          : html`${this.#field('Plies along', `laminate.${part}.along`, 'share', makeup.along, {
              placeholder: '60',
              step: 0.05,
              toChanges: this.#share(part, 'along', makeup),
            })}
            ${this.#field('Plies at 45°', `laminate.${part}.diagonal`, 'share', makeup.diagonal, {
              placeholder: '40',
              step: 0.05,
              toChanges: this.#share(part, 'diagonal', makeup),
            })}`
      }
      ${this.#field('Modulus along', `laminate.${part}.modulus`, 'modulus', makeup.modulus, {
        placeholder: placeholder(material?.modulus, 1e9, 3),
      })}
      ${this.#field('Modulus in shear', `laminate.${part}.shear`, 'modulus', makeup.shear, {
        placeholder: placeholder(material?.shear, 1e9, 3),
      })}
      ${this.#field('Fails or yields at a strain of', `laminate.${part}.strain`, 'share', makeup.strain, {
        placeholder: placeholder(material?.strain, 0.01, 2),
        step: 0.0005,
      })}
      ${this.#field('Density', `laminate.${part}.density`, 'density', makeup.density, {
        placeholder: placeholder(material?.density, 1, 4),
        step: 50,
      })}
      ${material ? html`<p class="note">${material.source}</p>` : nothing}
    </details>`;
  }

  /** The two shares come to one at most: the other gives way. */
  #share(part: PartName, key: 'along' | 'diagonal', makeup: Makeup) {
    const other = key === 'along' ? 'diagonal' : 'along';
    return (value: number): Change[] => {
      const rest = makeup[other];
      return [
        { path: `laminate.${part}.${key}`, value },
        ...(rest !== undefined && rest + value > 1
          ? [{ path: `laminate.${part}.${other}`, value: Math.round((1 - value) * 1000) / 1000 }]
          : []),
      ];
    };
  }

  #joint(name: JointName) {
    return html`<details>
      <summary>${JOINTS[name]}</summary>
      ${AXES.map((axis) =>
        this.#field(
          `Against ${axis}`,
          `joints.${name}.${axis}`,
          'spring',
          this.design?.joints?.[name]?.[axis],
          {
            placeholder: this.given ? String(this.given.springs[name][axis]) : 'usual',
          },
        ),
      )}
      <p class="note">Left empty, a value of the size a sound joint has is assumed; a bench test finds the true one.</p>
    </details>`;
  }

  #field(
    label: string,
    path: string,
    quantity: Quantity,
    value: number | undefined,
    more: { placeholder?: string; step?: number; toChanges?: (value: number) => Change[] } = {},
  ) {
    return html`<number-field
      .label=${label}
      .path=${path}
      .quantity=${quantity}
      .units=${this.units}
      .value=${value ?? null}
      .step=${more.step ?? null}
      .placeholder=${more.placeholder ?? ''}
      .toChanges=${more.toChanges ?? null}
      optional
    ></number-field>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'makeup-fields': MakeupFields;
  }
}
