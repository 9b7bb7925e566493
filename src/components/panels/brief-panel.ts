import { html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Brief, Speeds } from '../../solver/design/document.ts';
import '../brief-shelf.ts';
import '../choice-field.ts';
import type { Choice } from '../choice-field.ts';
import type { Change } from '../events.ts';
import '../number-field.ts';
import { panelStyles } from '../panel-styles.ts';

const USUAL_DEPTH = 0.5; // m, where a depth is wanted and none was set before
const USUAL_DRIVE_HEIGHT = 2; // m

const WATERS: readonly Choice[] = [
  { value: 'sea', label: 'sea' },
  { value: 'fresh', label: 'fresh' },
];
const CLARITIES: readonly Choice[] = [
  { value: 'clean', label: 'clean' },
  { value: 'coastal', label: 'coastal' },
  { value: 'silty', label: 'silty' },
];
const SURFACES: readonly Choice[] = [
  { value: 'near', label: 'at a depth' },
  { value: 'far', label: 'deep water' },
];
const DRIVES: readonly Choice[] = [
  { value: 'balance', label: 'balance point' },
  { value: 'height', label: 'a height' },
];

interface FieldOptions {
  step?: number;
  hint?: string;
  placeholder?: string;
  toChanges?: (value: number) => Change[];
}

/** The brief: who rides, in which water, how fast, how deep. */
@customElement('brief-panel')
export class BriefPanel extends LitElement {
  static override styles = panelStyles;

  @property({ attribute: false }) brief: Brief | null = null;
  @property() units: UnitSystem = 'workshop';

  #depth = USUAL_DEPTH; // the last one set, for the way back from deep water
  #driveHeight = USUAL_DRIVE_HEIGHT;

  protected override render() {
    if (!this.brief) return nothing;
    const { brief } = this;
    this.#depth = brief.depth ?? this.#depth;
    this.#driveHeight = brief.driveHeight ?? this.#driveHeight;
    return html`<details open>
      <summary><h2>Brief</h2></summary>
      <brief-shelf .brief=${brief}></brief-shelf>
      ${this.#field('All-up mass', 'allUpMass', 'mass', brief.allUpMass)}
      ${this.#field('Carried by the rig', 'upwardPull', 'share', brief.upwardPull, {
        hint: 'share of the weight that a kite or wing lifts',
      })}
      ${this.#speeds(brief.speeds)} ${this.#water(brief)} ${this.#depths(brief)} ${this.#balance(brief)}
      ${this.#more(brief)}
    </details>`;
  }

  #field(label: string, key: string, quantity: Quantity, value: number | null, options: FieldOptions = {}) {
    return html`<number-field
      .label=${label}
      .quantity=${quantity}
      .units=${this.units}
      .path="brief.${key}"
      .value=${value}
      .step=${options.step ?? null}
      .hint=${options.hint ?? ''}
      .placeholder=${options.placeholder ?? ''}
      ?optional=${options.placeholder !== undefined}
      .toChanges=${options.toChanges ?? null}
    ></number-field>`;
  }

  #speeds({ takeOff, cruise, top }: Speeds) {
    return html`${this.#field('Take-off', 'speeds.takeOff', 'speed', takeOff)}
    ${this.#field('Cruise', 'speeds.cruise', 'speed', cruise)}
    ${this.#field('Top speed', 'speeds.top', 'speed', top)}`;
  }

  #water({ water }: Brief) {
    return html`<choice-field label="Water" path="brief.water.kind" .value=${water.kind} .choices=${WATERS}></choice-field>
      ${this.#field('Water temperature', 'water.temperature', 'temperature', water.temperature)}
      <choice-field
        label="Clarity"
        path="brief.water.clarity"
        .value=${water.clarity}
        .choices=${CLARITIES}
      ></choice-field>`;
  }

  #depths(brief: Brief) {
    return html`<choice-field
        label="Water surface"
        .value=${brief.depth === null ? 'far' : 'near'}
        .choices=${SURFACES}
        .toChanges=${(value: string) => [{ path: 'brief.depth', value: value === 'far' ? null : this.#depth }]}
      ></choice-field>
      ${
        brief.depth === null
          ? nothing
          : this.#field('Depth of the wing', 'depth', 'length', brief.depth, {
              step: 0.01,
            })
      }`;
  }

  #balance({ balance, driveHeight }: Brief) {
    return html`${this.#field('Balance point, aft', 'balance.x', 'length', balance.x, {
      step: 0.005,
      hint: 'behind the wing’s quarter chord at the root',
    })}
      ${this.#field('Balance point, height', 'balance.height', 'length', balance.height, { step: 0.01 })}
      <choice-field
        label="Rig drives at"
        .value=${driveHeight === null ? 'balance' : 'height'}
        .choices=${DRIVES}
        .toChanges=${(value: string) => [
          { path: 'brief.driveHeight', value: value === 'balance' ? null : this.#driveHeight },
        ]}
      ></choice-field>
      ${
        driveHeight === null
          ? nothing
          : this.#field('Drive height', 'driveHeight', 'length', driveHeight, { step: 0.01 })
      }`;
  }

  /** What most designs leave alone. Emptied fields leave the document. */
  #more(brief: Brief) {
    const depth = (key: keyof Speeds, label: string) =>
      this.#field(label, `depths.${key}`, 'length', brief.depths?.[key] ?? null, {
        step: 0.01,
        placeholder: 'same',
      });
    const pull = brief.sidePull;
    return html`<details class="group more">
      <summary>Other depths, side pull, board</summary>
      ${depth('takeOff', 'Depth at take-off')} ${depth('cruise', 'Depth at cruise')} ${depth('top', 'Depth at top speed')}
      ${this.#field('Side pull of the rig', 'sidePull', 'share', pull?.share ?? null, {
        placeholder: 'none',
        hint: 'to starboard, share of the weight',
        toChanges: (share) => [
          { path: 'brief.sidePull', value: { height: USUAL_DRIVE_HEIGHT, ...pull, share } },
        ],
      })}
      ${pull ? this.#field('Height of the side pull', 'sidePull.height', 'length', pull.height, { step: 0.01 }) : nothing}
      ${this.#field('Board to foil angle', 'boardAngle', 'angle', brief.boardAngle ?? null, { placeholder: 'none' })}
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'brief-panel': BriefPanel;
  }
}
