import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { withMark, writeFixed } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import { formatValue, formatWithUnit, type Quantity, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { SectionChoice, SectionComparison } from '../../solver/studies/section-choice.ts';
import { answerStyles } from '../answer-styles.ts';
import { take } from '../asked.ts';
import { tableStyles, tableWithGhost } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import { GhostStudy } from '../ghost-study.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';
import { type Cell, quantityCell } from '../table-cells.ts';
import '../text-field.ts';
import { NearScreen } from '../near-screen.ts';

type Found = Extract<SectionChoice, { problem: null }>;

/** Sections for one rider and one take-off speed: how much droop each wants, and what each costs. */
@customElement('section-choices')
export class SectionChoices extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    studyStyles,
    css`
      .table {
        max-width: 50rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** The same sections on it, for its own rider and take-off speed. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private typed: Array<string | null> = [null, null, null];

  readonly #sight = new NearScreen(this);
  readonly #compared = new StudyController(this, 'sections', () =>
    this.design && this.#sight.isSeen
      ? { studies: this.studies, design: this.design, options: { codes: this.#codes } }
      : null,
  );

  readonly #ghost = new GhostStudy(this, 'sections', () =>
    this.design && this.#sight.isSeen ? { codes: this.#codes } : null,
  );

  /** What is typed, else the drawn root section between one of less and one of more camber. */
  get #codes(): string[] {
    const usual = usualCodes(this.design);
    const codes = this.typed.map((code, k) => code ?? usual[k]!).filter((code) => code !== '');
    return [...new Set(codes)];
  }

  protected override render() {
    const found = this.#compared.result;
    const usual = usualCodes(this.design);
    return html`<div class="controls">
        ${this.typed.map(
          (code, k) => html`<text-field
            .label=${`Section ${k + 1}`}
            .value=${code ?? usual[k]!}
            .maxLength=${4}
            .hint=${k === 2 ? 'may be left empty' : ''}
            .toChanges=${(text: string) => this.#read(text, k)}
            @design-edit=${take((value) => {
              this.typed = this.typed.with(k, value as string);
            })}
          ></text-field>`,
        )}
      </div>
      ${found && !this.#compared.failure ? nothing : studyWait(this.#compared, 'Comparing sections')}
      ${found ? this.#answers(found) : nothing}`;
  }

  #read(text: string, k: number): Array<{ path: string; value: string }> | string {
    if (/^\d{4}$/.test(text) && Number(text.slice(2)) > 0) return [{ path: '', value: text }];
    if (text === '' && k === 2) return [{ path: '', value: '' }];
    return `“${text}” is no four-digit section; write for example 2411 or 0010.`;
  }

  #answers(compared: SectionComparison) {
    const { units } = this;
    const found = foundIn(compared);
    const problems = compared.choices.filter((choice) => choice.found === null);
    const reading = wantsReading(found);
    return html`${problems.map(({ code, problem }) => html`<p class="trouble">${code}: ${problem}.</p>`)}
      ${reading ? html`<p class="say">${reading}</p>` : nothing}
      ${found.length > 0 ? sectionTable(compared, this.#ghost.result, units) : nothing}
      ${found.length > 1 ? html`<p class="say">${couplingReading(found)}</p>` : nothing}
      <p class="note">
        Camber acts through area, angle and moment. The section is laid along the whole wing, span and stabilizer as drawn;
        its chords are scaled until the wing just lifts off at ${formatWithUnit(compared.takeOff, 'speed', units)}.
        ${
          compared.sections === 'fixed'
            ? withMark(
                'The usable lift coefficient counts as 1.2 and section drag as 0.008 for every section (common practice), so areas differ only by what the stabilizer bears.',
              )
            : nothing
        }
        Inception is inviscid, at the wing.
      </p>`;
  }
}

/** Less camber, the drawn root section, more camber; 2411 stands in for one that has no code. */
function usualCodes(design: Design | null): [string, string, string] {
  const root = design?.wing.section.root;
  const own = root?.kind === 'naca4' ? root.code : '2411';
  const camber = Number(own[0]);
  const place = own[1] === '0' ? '4' : own[1];
  const thick = own.slice(2);
  const cambered = (digit: number) => (digit === 0 ? `00${thick}` : `${digit}${place}${thick}`);
  return [cambered(Math.max(0, camber - 1)), own, cambered(Math.min(9, camber + 2))];
}

/** Only sections that could be laid along the open design's wing have a column. */
function sectionTable(own: SectionComparison, ghost: SectionComparison | null, units: UnitSystem) {
  const codes = foundIn(own).map(({ code }) => code);
  return tableWithGhost('For the same rider and take-off speed', own, ghost, (compared) => {
    const choices = codes.map((code) => foundIn(compared).find((choice) => choice.code === code));
    const rows = rowsOf(compared, units);
    return {
      head: ['', ...codes],
      rows: rows.map(([name, read], k) => ({
        key: String(k),
        cells: [name, ...choices.map((choice) => (choice ? read(choice) : 'not possible'))],
      })),
    };
  });
}

const foundIn = ({ choices }: SectionComparison) =>
  choices.filter((choice): choice is Found => choice.found !== null);

type Row = [name: string, read: (choice: Found) => Cell];

function rowsOf({ takeOff }: SectionComparison, units: UnitSystem): Row[] {
  const cell = (value: number | null, quantity: Quantity, decimals?: number, sign = false) => {
    const looks = { sign, bare: true, why: 'none', ...(decimals !== undefined && { decimals }) };
    return quantityCell(value, quantity, units, looks);
  };
  const angle = (value: number | null, decimals: number, sign = false) =>
    quantityCell(value, 'angle', units, { decimals, sign, why: 'none' });
  const named = (name: string, quantity: Quantity) => {
    const unit = unitOf(quantity, units);
    return unit ? `${name}, ${unit}` : name;
  };
  return [
    [
      `usable CL of the wing at ${formatWithUnit(takeOff, 'speed', units)}`,
      ({ found }) => cell(found.usableCL, 'ratio', 2),
    ],
    [named('area', 'area'), ({ found }) => cell(found.area, 'area')],
    ['wing CL at cruise', ({ found }) => cell(found.CLcruise, 'ratio', 3)],
    ['neutral droop', ({ found }) => angle(found.neutralDroop, 1)],
    [named('wetted area', 'area'), ({ found }) => cell(found.wettedArea, 'area')],
    [named('profile drag at top speed', 'force'), ({ found }) => cell(found.profileDragTop, 'force', 1)],
    [
      named('nose-down moment of the camber at cruise', 'moment'),
      ({ found }) => cell(found.noseDown, 'moment', 1),
    ],
    [
      named('stabilizer’s load with the stance kept', 'force'),
      ({ found }) => cell(found.stabilizerLift, 'force', 0, true),
    ],
    [named('wing boils from', 'speed'), ({ found }) => cell(found.inception, 'speed', 1)],
    ['fuselage to the flow at cruise', ({ found }) => angle(found.alphaCruise, 2, true)],
    [
      'on the drawn wing, C_lr about the foil’s own axes',
      ({ coupling }) => cell(coupling.own, 'ratio', 4, true),
    ],
    ['the same about the stream', ({ coupling }) => cell(coupling.stream, 'ratio', 4, true)],
    ['the same, wing alone', ({ coupling }) => cell(coupling.wingStream, 'ratio', 4, true)],
  ];
}

function wantsReading(found: readonly Found[]): string | null {
  const known = found.filter(({ found: of }) => of.neutralDroop !== null);
  if (known.length < 2) return null;
  const most = known.reduce((a, b) => (b.found.neutralDroop! > a.found.neutralDroop! ? b : a));
  const least = known.reduce((a, b) => (b.found.neutralDroop! < a.found.neutralDroop! ? b : a));
  const write = ({ code, found: of }: Found) =>
    `${code} cruises at wing CL ${writeFixed(of.CLcruise, 2)} and is neutral at ${formatWithUnit(of.neutralDroop!, 'angle', 'si', { decimals: 1 })} of droop`;
  return `Of these ${write(most)}; ${write(least)}.`;
}

/** What camber does at equal lift: nothing along the stream, an angle's worth about the foil's own axes. */
function couplingReading(found: readonly Found[]): string {
  const span = (read: (choice: Found) => number) => {
    const values = found.map(read);
    return [Math.min(...values), Math.max(...values)] as const;
  };
  const write = ([low, high]: readonly [number, number]) =>
    `${formatValue(low, 'ratio', 'si', { decimals: 4 })} to ${formatValue(high, 'ratio', 'si', { decimals: 4 })}`;
  const alone = span(({ coupling }) => coupling.wingStream);
  const own = span(({ coupling }) => coupling.own);
  const isSame = alone[1] - alone[0] < 0.02 * Math.max(Math.abs(alone[0]), Math.abs(alone[1]), 0.01);
  const head = isSame
    ? `At equal CL the wing alone couples the same whatever its section, about the stream (C_lr ${write(alone)}), as linear theory says.`
    : `At equal CL the wing alone couples nearly the same whatever its section, about the stream (C_lr ${write(alone)}).`;
  return `${head} About the foil’s own axes, which the neutral droop is about, it does not (${write(own)}): more camber flies at a smaller angle, and a yaw about an axis that leans aft is in part a roll. The rest is load that moves to or from the stabilizer.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'section-choices': SectionChoices;
  }
}
