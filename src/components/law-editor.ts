import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { chordAs, droopLawAs, sweepAs, twistAs } from '../session/law-conversion.ts';
import { surfaceFor } from '../session/planform-edits.ts';
import type { Quantity, UnitSystem } from '../session/units.ts';
import type { ChordLaw, DroopLaw, Planform, SweepLaw, TwistLaw } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import './choice-field.ts';
import type { Choice } from './choice-field.ts';
import { withoutPath } from './draft.ts';
import type { Change } from './events.ts';
import { InSight } from './in-sight.ts';
import { areaFields, type LawName, type LawPlace, lawFields } from './law-fields.ts';
import { panelStyles } from './panel-styles.ts';
import './points-table.ts';
import './text-field.ts';

interface Described {
  title: string;
  kinds: readonly Choice[];
  quantity: Quantity;
  formulaLabel: string;
  curve: (surface: Surface) => (eta: number) => number; // in the document's unit
}

const DEGREES = 180 / Math.PI;
const FREE: readonly Choice[] = [
  { value: 'points', label: 'points' },
  { value: 'formula', label: 'formula' },
];

const LAWS: Record<LawName, Described> = {
  chord: {
    title: 'Chord',
    kinds: [
      { value: 'taper', label: 'straight taper' },
      { value: 'elliptic', label: 'elliptic' },
      { value: 'superelliptic', label: 'superelliptic' },
      ...FREE,
    ],
    quantity: 'length',
    formulaLabel: 'Chord in metres at eta',
    curve: (surface) => surface.chord,
  },
  sweep: {
    title: 'Sweep',
    kinds: [{ value: 'straight', label: 'straight' }, { value: 'rake', label: 'raked tip' }, ...FREE],
    quantity: 'length',
    formulaLabel: 'Metres aft of the root at eta',
    curve: (surface) => (eta) => surface.x(eta) - surface.x(0),
  },
  droop: {
    title: 'Droop',
    kinds: [
      { value: 'flat', label: 'flat' },
      { value: 'vee', label: 'vee' },
      { value: 'arc', label: 'arc' },
      { value: 'late', label: 'late' },
      { value: 'gull', label: 'gull' },
      ...FREE,
    ],
    quantity: 'angle',
    formulaLabel: 'Degrees down at eta',
    curve: (surface) => (eta) => surface.droop(eta) * DEGREES,
  },
  twist: {
    title: 'Twist',
    kinds: [{ value: 'linear', label: 'linear' }, ...FREE],
    quantity: 'angle',
    formulaLabel: 'Degrees nose up at eta',
    curve: (surface) => (eta) => surface.twist(eta) * DEGREES,
  },
};

const FORMULA_HINT =
  'eta is 0 at the root, 1 at the tip. Allowed: + - * / ^ ( ) ?: pi sqrt abs min max sin cos tan exp log';

/** Chooses and edits one law of a wing or stabilizer. Another kind starts as near to the present shape as it can. */
@customElement('law-editor')
export class LawEditor extends InSight {
  static override styles = panelStyles;

  @property() law: LawName = 'chord';
  @property({ attribute: false }) planform: Planform | null = null;
  /** Where the planform lives in the document, and its name in undo steps: "wing". */
  @property() path = 'wing';
  @property() units: UnitSystem = 'workshop';

  protected override render() {
    const { planform, law, path, units } = this;
    if (!planform) return nothing;
    const place: LawPlace = { law, planform, path, units, attempt: this.#attempt };
    return html`<choice-field
        .label=${LAWS[law].title}
        edit-label="${path} ${law} law"
        .value=${planform[law].kind}
        .choices=${LAWS[law].kinds}
        .toChanges=${this.#toKind}
      ></choice-field>
      ${this.#pointsOrFormula(planform) ?? lawFields(place)}
      ${law === 'chord' ? areaFields(place) : nothing}`;
  }

  readonly #toKind = (kind: string): Change[] | string =>
    this.#attempt(() => converted(this.planform!, this.law, kind));

  readonly #attempt = (work: () => unknown): Change[] | string => {
    try {
      const value = work();
      return typeof value === 'string' ? value : [{ path: `${this.path}.${this.law}`, value }];
    } catch (error) {
      return withoutPath(error instanceof Error ? error.message : String(error)) ?? '';
    }
  };

  #pointsOrFormula(planform: Planform) {
    const law = planform[this.law];
    const { title, quantity, formulaLabel, curve } = LAWS[this.law];
    if (law.kind === 'points') {
      const surface = surfaceFor(planform);
      return html`<points-table
        .points=${law.at}
        .name=${title.toLowerCase()}
        .quantity=${quantity}
        .units=${this.units}
        .path="${this.path}.${this.law}.at"
        .owner=${this.path}
        .curve=${surface ? curve(surface) : () => 0}
      ></points-table>`;
    }
    if (law.kind !== 'formula') return null;
    return html`<text-field
      wide
      .label=${formulaLabel}
      edit-label="${this.path} ${this.law} formula"
      .path="${this.path}.${this.law}.expression"
      .value=${law.expression}
      .hint=${FORMULA_HINT}
      .maxLength=${500}
    ></text-field>`;
  }
}

function converted(
  planform: Planform,
  law: LawName,
  kind: string,
): ChordLaw | SweepLaw | DroopLaw | TwistLaw {
  switch (law) {
    case 'chord':
      return chordAs(planform, kind as ChordLaw['kind']);
    case 'sweep':
      return sweepAs(planform, kind as SweepLaw['kind']);
    case 'droop':
      return droopLawAs(planform, kind as DroopLaw['kind']);
    case 'twist':
      return twistAs(planform, kind as TwistLaw['kind']);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'law-editor': LawEditor;
  }
}
