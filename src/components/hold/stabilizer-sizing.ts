import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { stabilizerTaken } from '../../session/parts.ts';
import type { Studies } from '../../session/studies.ts';
import type { StudyName } from '../../session/study-messages.ts';
import { formatValue, type Quantity, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { RANGES } from '../../solver/design/ranges.ts';
import type { ChangeOptions, StabilizerChanges } from '../../solver/studies/stabilizer-changes.ts';
import type { Sizing, SizingOptions } from '../../solver/studies/stabilizer-sizing.ts';
import { answerStyles } from '../answer-styles.ts';
import type { DesignEditEvent } from '../events.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { holdStyles } from './hold-styles.ts';
import '../number-field.ts';
import { recall, remember } from '../preferences.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';
import { balanceReading, changesReading, foundOf, liftReading, sizeReading } from './sizing-readings.ts';
import { changesTable, choicesTable, sizingStyles, type Take } from './sizing-tables.ts';

type Wanted = Pick<SizingOptions, 'staticMargin' | 'holdIndex' | 'arm' | 'area'>;
type Steps = Pick<ChangeOptions, 'shim' | 'length' | 'share'>;

interface Field {
  label: string;
  quantity: Quantity;
  range: readonly [number, number];
  step: number;
}

const WANTED: Record<keyof Wanted, Field> = {
  staticMargin: { label: 'Wanted static margin', quantity: 'share', range: [-5, 5], step: 0.05 },
  holdIndex: { label: 'Wanted hold index', quantity: 'ratio', range: [0.01, 1000], step: 0.5 },
  arm: {
    label: 'Areas at an arm of',
    quantity: 'length',
    range: [RANGES['stabilizer.arm'].min, RANGES['stabilizer.arm'].max],
    step: 0.01,
  },
  area: { label: 'Arms at an area of', quantity: 'area', range: [0.0005, 0.5], step: 0.0005 },
};

const STEPS: Record<keyof Steps, Field & { usual: number }> = {
  shim: { label: 'Shim', quantity: 'angle', range: [0.05, 5], step: 0.1, usual: 0.5 },
  length: { label: 'Fuselage', quantity: 'length', range: [0.005, 0.5], step: 0.01, usual: 0.05 },
  share: { label: 'Area', quantity: 'share', range: [0.01, 0.6], step: 0.05, usual: 0.1 },
};

/**
 * Is the stabilizer big enough? Area and arm for a wanted margin and a wanted hold, each balanced, with its price; what a
 * shim, a longer fuselage or another size does to the foil as it is. A choice taken is one edit.
 */
@customElement('stabilizer-sizing')
export class StabilizerSizing extends LitElement {
  static override styles = [answerStyles, tableStyles, studyStyles, holdStyles, sizingStyles];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** Its choices stand beside these. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private wanted: Wanted = recall('sizing', {});
  @state() private steps: Steps = recall('shims', {});
  @state() private refusal: string | null = null;

  readonly #sizing = new StudyController(this, 'sizing', () => ({
    studies: this.studies,
    design: this.design,
    options: this.wanted,
  }));
  readonly #changes = new StudyController(this, 'stabilizerChanges', () => ({
    studies: this.studies,
    design: this.design,
    options: this.steps,
  }));
  readonly #ghostSizing = new GhostStudy(this, 'sizing', ({ stabilizer }) => stabilizer && this.wanted);
  readonly #ghostChanges = new GhostStudy(
    this,
    'stabilizerChanges',
    ({ stabilizer }) => stabilizer && this.steps,
  );

  protected override render() {
    const { design } = this;
    if (!design) return nothing;
    if (!design.stabilizer)
      return html`<p class="say">No stabilizer: nothing behind the wing holds its pitch or its line.</p>`;
    const sizing = this.#sizing.result;
    const changes = this.#changes.result;
    const trouble = sizing ? this.#sizing.failure : null;
    return html`${trouble ? html`<p class="trouble" role="status">${trouble}</p>` : nothing}
      ${sizing ? this.#answer(sizing) : studyWait(this.#sizing, 'Sizing the stabilizer')}
      ${this.refusal ? html`<p class="trouble" role="alert">${this.refusal}</p>` : nothing}
      <h3>What a shim or a longer fuselage does</h3>
      ${changes ? this.#trials(changes) : studyWait(this.#changes, 'Trying changes')}`;
  }

  #answer(sizing: Sizing) {
    const present = foundOf(sizing, 'present');
    const { stance } = sizing.drawn;
    return html`<p class="say">${sizeReading(sizing, this.units)}</p>
      ${present ? html`<p class="say">${balanceReading(present, stance, this.units)}</p>` : nothing}
      ${present ? html`<p class="say">${liftReading(present, this.units)}</p>` : nothing}
      <div class="controls" @design-edit=${this.#setWanted}>
        ${(Object.keys(WANTED) as Array<keyof Wanted>).map((key) =>
          this.#field(key, WANTED[key], this.wanted[key], { ...sizing.wanted, ...sizing.given }[key]),
        )}
      </div>
      ${choicesTable(sizing, this.#ghostSizing.result, this.units, this.#taker(this.#sizing))}
      <p class="note">
        Each choice keeps the stabilizer’s shape, sections and droop, and is balanced at cruise with the stance kept: the
        drags compare foils that are ridden alike. Margins known from aircraft do not apply to a weight two metres above the
        wing; what to want is found by riding (common practice).
      </p>`;
  }

  #trials(changes: StabilizerChanges) {
    const reading = changesReading(changes, this.units);
    return html`${reading ? html`<p class="say">${reading}</p>` : nothing}
      <div class="controls" @design-edit=${this.#setSteps}>
        ${(Object.keys(STEPS) as Array<keyof Steps>).map((key) =>
          this.#field(key, STEPS[key], this.steps[key], STEPS[key].usual),
        )}
      </div>
      ${changesTable(changes, this.#ghostChanges.result, this.units, this.#taker(this.#changes))}`;
  }

  /** A choice is a size relative to the stabilizer it was found for: it waits until the figures are those of this one. */
  #taker(study: Pick<StudyController<StudyName>, 'resultDesign'>): Take {
    return (label, found) => {
      this.refusal =
        study.resultDesign === this.design
          ? sendEdit(this, { changes: stabilizerTaken(this.design!, found), label, phase: 'settled' })
          : 'The figures are being found again for the design as it is now: choose once they stand.';
    };
  }

  #field(path: string, field: Field, value: number | undefined, usual: number) {
    return html`<number-field
      .label=${field.label}
      .path=${path}
      .quantity=${field.quantity}
      .units=${this.units}
      .value=${value ?? null}
      .min=${field.range[0]}
      .max=${field.range[1]}
      .step=${field.step}
      .placeholder=${formatValue(usual, field.quantity, this.units)}
      optional
    ></number-field>`;
  }

  /** Fields here set how the question is asked, not the design: their edits stop here. */
  readonly #setWanted = (event: DesignEditEvent): void => {
    this.wanted = answered(this.wanted, event);
    remember('sizing', this.wanted);
  };

  readonly #setSteps = (event: DesignEditEvent): void => {
    this.steps = answered(this.steps, event);
    remember('shims', this.steps);
  };
}

/** The settings with what a field says put in; an emptied field leaves the usual. */
function answered<T extends object>(settings: T, event: DesignEditEvent): T {
  event.stopPropagation();
  const entries = new Map<string, unknown>(Object.entries(settings));
  for (const { path, value } of event.detail.changes) {
    if (value === undefined) entries.delete(path);
    else entries.set(path, value);
  }
  return Object.fromEntries(entries) as T;
}

declare global {
  interface HTMLElementTagNameMap {
    'stabilizer-sizing': StabilizerSizing;
  }
}
