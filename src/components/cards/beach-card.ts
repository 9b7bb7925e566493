import { html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { readSetting, settingRange, withSetting } from '../../session/beach-link.ts';
import { readLink } from '../../session/share-link.ts';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import { asDrawn, BEACH_STEPS, type BeachSetting } from '../../solver/design/beach-setting.ts';
import { CAUTION } from '../../solver/design/caution.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Reading } from '../../solver/design/read.ts';
import type { BeachAnswer } from '../../solver/studies/beach.ts';
import { recall, remember } from '../preferences.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { beachStyles } from './beach-styles.ts';
import './beach-rest.ts';
import { headlines, settingWords, spoken } from './beach-words.ts';
import { cardStyles } from './card-styles.ts';
import { cardTrouble, markOf } from './marks.ts';
import './setting-stepper.ts';
import type { SteppedEvent } from './setting-stepper.ts';

type Stepped = keyof typeof BEACH_STEPS;

const QUIET = 800; // ms without a step before figures are read out
const LABELS: Record<Stepped, string> = {
  shim: 'Shim under the stabilizer',
  strut: 'Strut in its track',
  mass: 'Rider',
  temperature: 'Water temperature',
};
const QUANTITIES = { shim: 'angle', strut: 'length', mass: 'mass', temperature: 'temperature' } as const;

/**
 * The beach card: a design from the address, a setting changed in steps, and what that does in millimetres, knots and
 * percent. The setting is kept in the address. Every setting is solved; the last figures stay until the new ones come.
 */
@customElement('beach-card')
export class BeachCard extends LitElement {
  static override styles = [cardStyles, beachStyles];

  /** The address's fragment, which holds design and setting. */
  @property() fragment = '';
  @property({ attribute: false }) read: ((text: string) => Reading) | null = null;
  @property({ attribute: false }) studies: Studies | null = null;

  @state() private design: Design | null = null;
  @state() private setting: BeachSetting | null = null;
  @state() private trouble: string | null = null;
  @state() private look = recall('cardLook', 'sun');
  @state() private said = '';
  @state() private undone: BeachSetting | null = null; // what a reset can take back

  /** A card is read in millimetres and knots, or in inches. */
  readonly #units: UnitSystem = recall('units', 'workshop') === 'imperial' ? 'imperial' : 'workshop';
  #timer: ReturnType<typeof setTimeout> | undefined;
  #told: BeachAnswer | null = null;

  readonly #study = new StudyController(this, 'beach', () =>
    this.setting ? { studies: this.studies, design: this.design, options: { setting: this.setting } } : null,
  );
  /** Figures of this design, perhaps of the setting before; null until there are some. */
  get #answer(): BeachAnswer | null {
    return this.#study.resultDesign === this.design ? this.#study.result : null;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if ((changed.has('fragment') || changed.has('read')) && this.read) this.#open(this.read);
    if (this.isConnected) document.documentElement.dataset.look = this.look; // a card taken away may still hear of figures
  }

  #open(read: (text: string) => Reading): void {
    const reading: Reading = this.fragment.includes('#design')
      ? readLink(this.fragment, read)
      : {
          ok: false,
          message:
            'There is no design in this address. Open a design in the workbench and choose “Beach card”.',
        };
    this.design = reading.ok ? reading.design : null;
    this.trouble = reading.ok ? null : reading.message;
    this.setting = null;
    this.undone = null;
    if (!reading.ok) return;
    document.title = `Beach card: ${reading.design.name}`;
    const { setting, problem } = readSetting(this.fragment, reading.design);
    this.setting = setting;
    this.trouble = problem;
  }

  protected override updated(): void {
    const result = this.#answer;
    if (!result || !this.#study.isCurrent || result === this.#told) return;
    this.#told = result;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      if (this.design) this.said = spoken(result, this.design, this.#units);
    }, QUIET);
  }

  protected override render() {
    const { design, setting } = this;
    if (!this.read) return nothing;
    if (!design || !setting) return html`<main>${cardTrouble(this.trouble ?? '')}</main>`;
    const isSun = this.look === 'sun';
    return html`<nav aria-label="Pages">
        <a href="./">‹ Workbench</a>
        <button type="button" @click=${this.#onLook}>${isSun ? 'White on black' : 'Black on white'}</button>
      </nav>
      <main>
        <h1><span class="kind">Beach card</span>${design.name}</h1>
        ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing} ${this.#strip(design)}
        ${this.#steppers(design, setting)} ${this.#rest(design)}
        <p class="caution">${CAUTION}</p>
        <p class="visually-hidden" role="status">${this.said}</p>
      </main>`;
  }

  /** The three figures that stay in sight while stepping. */
  #strip(design: Design) {
    const { failure, isCurrent } = this.#study;
    const result = this.#answer;
    if (!result || failure)
      return html`<div class="strip">${studyWait(this.#study, 'Solving this foil')}</div>`;
    return html`<dl class="strip" ?data-late=${!isCurrent}>
      ${headlines(result, design, this.#units).map(
        ({ name, value, was, kind }) =>
          html`<div>
            <dt>${name}</dt>
            <dd><strong>${value.replace(/ (aft|forward)$/, '')}</strong><b>${/ (aft|forward)$/.exec(value)?.[1]}</b><span>${was}</span>${markOf(kind)}</dd>
          </div>`,
      )}
    </dl>`;
  }

  #steppers(design: Design, setting: BeachSetting) {
    const drawn = asDrawn(design);
    const isChanged = Object.entries(drawn).some(
      ([key, value]) => setting[key as keyof BeachSetting] !== value,
    );
    return html`<section class="steppers" aria-label="Setting">
      ${design.stabilizer ? this.#stepper('shim', design, setting) : html`<p>No stabilizer, no shim.</p>`}
      ${design.strut ? this.#stepper('strut', design, setting) : html`<p>No strut, no track.</p>`}
      ${this.#stepper('mass', design, setting)}
      <div class="waters" role="group" aria-label="Water">
        ${(['sea', 'fresh'] as const).map(
          (kind) =>
            html`<button type="button" aria-pressed=${setting.water === kind} @click=${() => this.#set({ ...setting, water: kind })}>
              ${kind === 'sea' ? 'Sea' : 'Fresh'} water
            </button>`,
        )}
      </div>
      ${this.#stepper('temperature', design, setting)}
      <p class="reset">
        ${
          this.undone && !isChanged
            ? html`<button type="button" @click=${() => this.#set(this.undone!)}>Take that back</button>`
            : html`<button type="button" ?disabled=${!isChanged} @click=${() => this.#reset(setting, drawn)}>
                Everything as drawn
              </button>`
        }
      </p>
    </section>`;
  }

  #stepper(key: Stepped, design: Design, setting: BeachSetting) {
    const { step } = BEACH_STEPS[key];
    const { min, max } = settingRange(key, design);
    const isRound = key === 'temperature' || this.#units === 'workshop';
    const system = isRound ? 'workshop' : this.#units;
    const stepWords = formatWithUnit(
      step,
      QUANTITIES[key],
      system,
      isRound ? { decimals: key === 'shim' ? 1 : 0 } : {},
    );
    return html`<setting-stepper
      .label=${LABELS[key]}
      .words=${settingWords(key, setting, design, this.#units)}
      .stepWords=${stepWords}
      .value=${setting[key]}
      .drawn=${asDrawn(design)[key]}
      .min=${min}
      .max=${max}
      .step=${step}
      @stepped=${({ detail }: SteppedEvent) => this.#set({ ...setting, [key]: detail })}
    ></setting-stepper>`;
  }

  #rest(design: Design) {
    return html`<beach-rest
      .design=${design}
      .answer=${this.#answer}
      .units=${this.#units}
      .studies=${this.studies}
      .workbench=${`./${this.fragment.split(';')[0]}`}
    ></beach-rest>`;
  }

  #set(setting: BeachSetting): void {
    if (!this.design) return;
    this.setting = setting;
    this.trouble = null;
    this.undone = null;
    this.#keep(setting, this.design);
  }

  #reset(setting: BeachSetting, drawn: BeachSetting): void {
    this.#set(drawn);
    this.undone = setting;
  }

  /** In the address, so that a reload or a bookmark brings it back. */
  #keep(setting: BeachSetting, design: Design): void {
    window.history.replaceState(window.history.state, '', withSetting(this.fragment, setting, design));
  }

  readonly #onLook = (): void => {
    this.look = this.look === 'sun' ? 'night' : 'sun';
    remember('cardLook', this.look);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'beach-card': BeachCard;
  }
}
