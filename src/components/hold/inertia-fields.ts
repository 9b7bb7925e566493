import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatValue, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import '../number-field.ts';
import { panelStyles } from '../panel-styles.ts';
import { studyStyles } from '../study-styles.ts';

type InertiaKey = keyof NonNullable<Design['inertia']>;

const FIELDS: ReadonlyArray<{ key: InertiaKey; label: string; quantity: Quantity; step: number }> = [
  { key: 'boardMass', label: 'Board', quantity: 'mass', step: 0.5 },
  { key: 'boardLength', label: 'Board length', quantity: 'length', step: 0.05 },
  { key: 'boardWidth', label: 'Board width', quantity: 'length', step: 0.01 },
  { key: 'foilMass', label: 'Foil and strut', quantity: 'mass', step: 0.5 },
  { key: 'riderRoll', label: 'Rider, swing in roll', quantity: 'length', step: 0.01 },
  { key: 'riderPitch', label: 'Rider, swing in pitch', quantity: 'length', step: 0.01 },
  { key: 'riderYaw', label: 'Rider, swing in yaw', quantity: 'length', step: 0.01 },
];

/** Masses and sizes of rider, board and foil behind the modes. An empty field takes the value shown in it. */
@customElement('inertia-fields')
export class InertiaFields extends LitElement {
  static override styles = [panelStyles, studyStyles];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';

  protected override render() {
    const { design, units } = this;
    if (!design) return nothing;
    return html`<div class="pair">
        ${FIELDS.map(
          ({ key, label, quantity, step }) => html`<number-field
            .label=${label}
            .path=${`inertia.${key}`}
            .quantity=${quantity}
            .units=${units}
            .value=${design.inertia?.[key] ?? null}
            .step=${step}
            .placeholder=${formatValue(RANGES[`inertia.${key}`].default, quantity, units)}
            optional
          ></number-field>`,
        )}
      </div>
      <p class="note">
        The board is a flat plate at the top of the strut, the foil an upright rod and one along the span, the rider what is
        left of the all-up mass, rigid, where the whole balances at the balance point. Swing is the radius of gyration about
        the rider’s own centre. What is left empty stands at a usual value (common practice, not measured).
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'inertia-fields': InertiaFields;
  }
}
