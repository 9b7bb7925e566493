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
import { figureTable, tableStyles } from '../figure-table.ts';
import { recall, remember } from '../preferences.ts';
import { StudyController } from '../study-controller.ts';
import { studyWait } from '../study-wait.ts';
import { beachStyles } from './beach-styles.ts';
import type { CardFigure } from './beach-words.ts';
import { headlines, otherFigures, settingWords, spoken, TABLE_HEAD, tableRow } from './beach-words.ts';
import { cardStyles } from './card-styles.ts';
import { cardTrouble, markOf, marksExplained } from './marks.ts';
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
  static override styles = [tableStyles, cardStyles, beachStyles];

  /** The address's fragment, which holds design and setting. */
  @property() fragment = '';
  @property({ attribute: false }) read: ((text: string) => Reading) | null = null;
  @property({ attribute: false }) studies: Studies | null = null;

  @state() private design: Design | null = null;
  @state() private setting: BeachSetting | null = null;
  @state() private trouble: string | null = null;
  @state() private look = recall('cardLook', 'sun');
  @state() private hasTable = false;
  @state() private said = '';
  @state() private undone: BeachSetting | null = null; // what a reset can take back

  readonly #units: UnitSystem = recall('units', 'workshop');
  #timer: ReturnType<typeof setTimeout> | undefined;
  #told: BeachAnswer | null = null;

  readonly #study = new StudyController(this, 'beach', () =>
    this.setting ? { studies: this.studies, design: this.design, options: { setting: this.setting } } : null,
  );
  /** Asked once the card itself has figures, so that it does not keep them waiting. */
  readonly #table = new StudyController(this, 'beachTable', () =>
    this.#study.result ? { studies: this.studies, design: this.design, options: {} } : null,
  );

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  protected override willUpdate(changed: Map<string, unknown>): void {
    if ((changed.has('fragment') || changed.has('read')) && this.read) this.#open(this.read);
    document.documentElement.dataset.look = this.look;
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
    const { result, isCurrent } = this.#study;
    if (!result || !isCurrent || result === this.#told) return;
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
    const { result, failure, isCurrent } = this.#study;
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
    const stepWords = formatWithUnit(step, QUANTITIES[key], key === 'temperature' ? 'workshop' : this.#units);
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
    const answer = this.#study.result;
    if (!answer) return nothing;
    const rest = otherFigures(answer, design, this.#units);
    const all = [...headlines(answer, design, this.#units), ...rest];
    return html`<h2>Also</h2>
      ${answer.set.problem ? html`<p class="trouble">At cruise: ${answer.set.problem}.</p>` : nothing}
      <dl class="rest">${rest.map((figure) => figureRow(figure))}</dl>
      <p class="still">${this.#still(answer)}</p>
      ${marksExplained()}
      <details>
        <summary>How the figures come about</summary>
        <dl class="how">${all.map(({ name, how }) => html`<dt>${name}</dt><dd>${how}</dd>`)}</dl>
      </details>
      <p class="paper">
        <button type="button" aria-expanded=${this.hasTable} @click=${this.#onTable}>Table of single steps</button>
        <button type="button" @click=${() => window.print()}>Print</button>
      </p>
      <div class="single" ?hidden=${!this.hasTable}>${this.#singleSteps(design)}</div>
      <p class="back"><a href=${`./${this.fragment.split(';')[0]}`}>Open this design in the workbench</a></p>`;
  }

  #still({ breachHeel }: BeachAnswer) {
    const heel =
      breachHeel === null
        ? 'no heel brings a wing tip to the surface'
        : `a wing tip comes to the surface at ${formatWithUnit(breachHeel, 'angle', this.#units, { decimals: 0 })} of heel`;
    return html`None of this moves the shape: at cruise depth ${heel}. ${markOf('solved')}`;
  }

  #singleSteps(design: Design) {
    const rows = this.#table.result;
    if (!rows?.[0]) return studyWait(this.#table, 'Single steps');
    const drawn = rows[0].figures;
    return figureTable(
      'Each step by itself. Several at once do not add up: use the steps above.',
      TABLE_HEAD,
      rows.map((row) => ({
        cells: tableRow(row, drawn, design, this.#units),
        isHere: row.changes === null,
      })),
    );
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

  readonly #onTable = (): void => {
    this.hasTable = !this.hasTable;
  };
}

function figureRow({ name, value, was, kind }: CardFigure) {
  return html`<div>
    <dt>${name}</dt>
    <dd><strong>${value}</strong> <span>${was}</span> ${markOf(kind)}</dd>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'beach-card': BeachCard;
  }
}
