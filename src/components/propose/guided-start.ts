import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  GUIDED,
  type GuidedAnswers,
  type GuidedKind,
  guidedDesign,
  HOLDS,
  type Hold,
  type Pulling,
  usualAnswers,
} from '../../session/guided.ts';
import { withMark } from '../../session/number-format.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import '../choice-field.ts';
import type { Choice } from '../choice-field.ts';
import type { Change, DesignEditEvent } from '../events.ts';
import '../number-field.ts';
import { firstButton } from '../first-button.ts';
import { panelStyles } from '../panel-styles.ts';

/** A whole design to begin from; `label` names the step for undo. */
export class GuidedEvent extends CustomEvent<{ design: Design; label: string }> {
  constructor(design: Design, label: string) {
    super('guided', { detail: { design, label } });
  }
}

const KINDS = Object.keys(GUIDED) as GuidedKind[];

const WATERS: readonly Choice[] = [
  { value: 'sea', label: 'the sea' },
  { value: 'fresh', label: 'a lake or river' },
];
const PULLS: readonly Choice[] = [
  { value: 'none', label: 'nothing: paddle and waves' },
  { value: 'wing', label: 'a hand-held wing' },
  { value: 'kite', label: 'a kite' },
];
const HOLD_CHOICES: readonly Choice[] = [
  { value: 'loose', label: 'loose: turns at a thought' },
  { value: 'middle', label: 'middle' },
  { value: 'firm', label: 'firm: keeps its line' },
];

/** Five questions and a design: answers are filled in already, each with its reason. */
@customElement('guided-start')
export class GuidedStart extends LitElement {
  static override styles = [
    panelStyles,
    firstButton,
    css`
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem 0.6rem;
        margin: 0.3rem 0;
      }
      button[aria-expanded='true'] {
        border-color: var(--carry);
        font-weight: 650;
      }
      .questions {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 19rem), 1fr));
        gap: 0.2rem 2rem;
        --control-width: 10rem;
        max-width: 62rem;
      }
      .questions p {
        margin: 0 0 0.5rem;
      }
    `,
  ];

  @property() units: UnitSystem = 'workshop';

  @state() private kind: GuidedKind | null = null;
  @state() private answers: GuidedAnswers = usualAnswers('downwind');

  protected override render() {
    return html`<p class="note">
        A few questions set brief, limits and what may move; then a wing is looked for. The open design is put aside by one
        step that can be undone.
      </p>
      <div class="row">
        ${KINDS.map(
          (kind) => html`<button
            type="button"
            aria-expanded=${kind === this.kind ? 'true' : 'false'}
            aria-controls="questions"
            @click=${() => this.#choose(kind)}
          >
            ${GUIDED[kind].label}
          </button>`,
        )}
      </div>
      <div id="questions">${this.kind === null ? nothing : this.#questions(this.kind)}</div>`;
  }

  #questions(kind: GuidedKind) {
    const { allUpMass, takeOff, cruise } = this.answers;
    const isRace = kind === 'race';
    const number = (
      label: string,
      key: 'allUpMass' | 'takeOff' | 'cruise',
      quantity: 'mass' | 'speed',
      path: string,
      value: number,
      why: string,
    ) => html`<div>
      <number-field
        .label=${label}
        .quantity=${quantity}
        .units=${this.units}
        .path=${path}
        .value=${value}
        .toChanges=${(to: number): Change[] => [{ path: key, value: to }]}
      ></number-field>
      <p class="note">${why}</p>
    </div>`;
    const choice = (
      label: string,
      key: 'water' | 'rig' | 'hold',
      choices: readonly Choice[],
      why: string,
    ) => html`<div>
      <choice-field
        .label=${label}
        .choices=${choices}
        .value=${this.answers[key]}
        .toChanges=${(to: string): Change[] => [{ path: key, value: to }]}
      ></choice-field>
      <p class="note">${why}</p>
    </div>`;
    return html`<div class="questions" @design-edit=${this.#onAnswer}>
        ${number('How heavy, all up?', 'allUpMass', 'mass', 'brief.allUpMass', allUpMass, 'Rider, board, foil and rig, wet.')}
        ${
          isRace
            ? choice(
                'What pulls?',
                'rig',
                PULLS,
                'A rig that pulls upward carries part of the weight: 10 % for a wing, 25 % for a kite.',
              )
            : choice('Which water?', 'water', WATERS, withMark('Salt water carries 2.5 % more.'))
        }
        ${number('How slowly must it lift off?', 'takeOff', 'speed', 'brief.speeds.takeOff', takeOff, 'Slower needs more area, and area costs drag at every other speed.')}
        ${number('How fast does it cruise?', 'cruise', 'speed', 'brief.speeds.cruise', cruise, `Counts three times as much as take-off and as top speed, which is taken ${GUIDED[kind].top} times as fast.`)}
        ${choice('How much hold?', 'hold', HOLD_CHOICES, `A hold index of ${HOLDS.loose}, ${HOLDS.middle} or ${HOLDS.firm}: curve that keeps the line, paid for in drag.`)}
      </div>
      <p class="note">
        Also set: a span of at most ${this.#length(GUIDED[kind].span)} and a tip chord of at least
        ${this.#length(GUIDED[kind].tipChord)}, to be built and carried; a neutral point behind the balance point. All of
        it can be changed below.
      </p>
      <div class="row">
        <button type="button" class="first" @click=${() => this.#begin(kind)}>Look for this wing</button>
      </div>`;
  }

  #length(value: number): string {
    return formatWithUnit(value, 'length', this.units);
  }

  #choose(kind: GuidedKind): void {
    this.kind = kind === this.kind ? null : kind;
    this.answers = usualAnswers(kind);
  }

  /** The fields speak of edits; these answers are no part of the design yet. */
  readonly #onAnswer = (event: DesignEditEvent): void => {
    event.stopPropagation();
    for (const { path, value } of event.detail.changes) this.#answer(path, value);
  };

  #answer(path: string, value: unknown): void {
    if (typeof value === 'number') this.answers = { ...this.answers, [path]: value };
    else if (path === 'hold') this.answers = { ...this.answers, hold: value as Hold };
    else if (path === 'rig') this.answers = { ...this.answers, rig: value as Pulling };
    else this.answers = { ...this.answers, water: value as GuidedAnswers['water'] };
  }

  #begin(kind: GuidedKind): void {
    const design = guidedDesign(kind, this.answers);
    this.dispatchEvent(new GuidedEvent(design, `guided start: ${GUIDED[kind].label.toLowerCase()}`));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'guided-start': GuidedStart;
  }
}
