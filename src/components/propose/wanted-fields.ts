import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { UnitSystem } from '../../session/units.ts';
import { freeChanges, limitChanges } from '../../session/wanted-edits.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Plan, PlannedLimit, PlannedQuantity } from '../../solver/studies/propose/plan.ts';
import { tableStyles } from '../figure-table.ts';
import '../number-field.ts';
import { panelStyles } from '../panel-styles.ts';
import { sendEdit } from '../send-edit.ts';
import './tried-laws.ts';
import { tickStyles } from './tick-styles.ts';
import { FIGURE_WORDS, inSentence, QUANTITY_WORDS, writeFigure, writeQuantity } from './words.ts';

/** Held whether ticked or not: a rider reaches no further. */
const ALWAYS: PlannedLimit['name'] = 'stanceShift';

const SPEEDS = [
  ['takeOff', 'Take-off counts'],
  ['cruise', 'Cruise counts'],
  ['top', 'Top speed counts'],
] as const;

/** What a proposal is looked for with: limits that hold, quantities that may move and their ranges, weights of the speeds. */
@customElement('wanted-fields')
export class WantedFields extends LitElement {
  static override styles = [
    panelStyles,
    tableStyles,
    tickStyles,
    css`
      .sides {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 27rem), 1fr));
        gap: 0 2rem;
        align-items: start;
      }
      td {
        vertical-align: middle;
      }
      td number-field {
        --control-width: 6.5rem;
        display: inline-block;
        width: clamp(6.5rem, 12vw, 9rem); /* alike, with a unit and without */
      }
      tbody th {
        white-space: normal;
        min-width: 9rem;
      }
      .controls {
        display: flex;
        flex-wrap: wrap;
        gap: 0 1.5rem;
        --control-width: 6rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) plan: Plan | null = null;
  @property() units: UnitSystem = 'workshop';

  protected override render() {
    const { plan, units } = this;
    if (!plan) return nothing;
    return html`<div class="sides">
        <div>
          <h3 id="limits">What must hold</h3>
          <div class="table" role="region" tabindex="0" aria-labelledby="limits">
            <table>
              <thead>
                <tr>
                  <th scope="col">figure</th>
                  <th scope="col">drawn</th>
                  <th scope="col">limit</th>
                </tr>
              </thead>
              <tbody>
                ${plan.limits.map((limit) => this.#limit(plan, limit))}
              </tbody>
            </table>
          </div>
        </div>
        <div>
          <h3 id="free">What may move</h3>
          <div class="table" role="region" tabindex="0" aria-labelledby="free">
            <table>
              <thead>
                <tr>
                  <th scope="col">quantity</th>
                  <th scope="col">drawn</th>
                  <th scope="col">from</th>
                  <th scope="col">to</th>
                </tr>
              </thead>
              <tbody>
                ${plan.quantities.map((quantity) => this.#quantity(plan, quantity))}
              </tbody>
            </table>
          </div>
        </div>
      </div>
      <tried-laws .design=${this.design} .starts=${plan.starts}></tried-laws>
      <h3>How much the drag at each speed counts</h3>
      <div class="controls">
        ${SPEEDS.map(
          ([name, label]) => html`<number-field
            .label=${label}
            .path=${`wanted.weights.${name}`}
            quantity="share"
            .units=${units}
            .value=${plan.weights[name]}
            .toChanges=${(value: number) => [
              { path: 'wanted.weights', value: { ...plan.weights, [name]: value } },
            ]}
          ></number-field>`,
        )}
      </div>`;
  }

  #limit(plan: Plan, limit: PlannedLimit) {
    const { name, side, drawn, held } = limit;
    const { label, quantity } = FIGURE_WORDS[name];
    const whole = `${label}, at ${side}`;
    const isTicked = held !== null;
    return html`<tr>
      <th scope="row">
        <label>
          <input
            type="checkbox"
            .checked=${live(isTicked)}
            ?disabled=${name === ALWAYS}
            @change=${(event: Event) => this.#tickLimit(plan, limit, event)}
          />
          ${whole}
        </label>
      </th>
      <td>${writeFigure(drawn, name, this.units)}</td>
      <td>
        ${
          isTicked
            ? html`<number-field
                bare
                .label=${whole}
                .path=${`wanted.limits.${name}.${side}`}
                .quantity=${quantity}
                .units=${this.units}
                .value=${held}
                .toChanges=${(value: number) => limitChanges(plan, limit, value)}
              ></number-field>`
            : nothing
        }
      </td>
    </tr>`;
  }

  #quantity(plan: Plan, row: PlannedQuantity) {
    const { name, values, isFree, least, most } = row;
    const { label, quantity } = QUANTITY_WORDS[name];
    const end = (which: 'least' | 'most', word: string, value: number) =>
      isFree
        ? html`<number-field
            bare
            .label=${`${label}, ${word}`}
            .path=${`wanted.free.${name}.${which}`}
            .quantity=${quantity}
            .units=${this.units}
            .value=${value}
            .toChanges=${(to: number) => freeChanges(plan, name, { least, most, [which]: to })}
          ></number-field>`
        : nothing;
    return html`<tr>
      <th scope="row">
        <label>
          <input
            type="checkbox"
            .checked=${live(isFree)}
            @change=${(event: Event) => this.#tickQuantity(plan, row, event)}
          />
          ${label}
        </label>
      </th>
      <td>${writeQuantity(values.length > 2 ? [values[0]!, values.at(-1)!] : values, name, this.units)}</td>
      <td>${end('least', 'from', least)}</td>
      <td>${end('most', 'to', most)}</td>
    </tr>`;
  }

  #tickLimit(plan: Plan, limit: PlannedLimit, event: Event): void {
    const isTicked = (event.target as HTMLInputElement).checked;
    const label = `limit of ${inSentence(FIGURE_WORDS[limit.name])}`;
    const value = isTicked ? (limit.drawn ?? 0) : null;
    sendEdit(this, { changes: limitChanges(plan, limit, value), label, phase: 'settled' });
    this.requestUpdate();
  }

  #tickQuantity(plan: Plan, { name, least, most }: PlannedQuantity, event: Event): void {
    const isTicked = (event.target as HTMLInputElement).checked;
    const label = `${inSentence(QUANTITY_WORDS[name])} ${isTicked ? 'free' : 'held'}`;
    const changes = freeChanges(plan, name, isTicked ? { least, most } : null);
    sendEdit(this, { changes, label, phase: 'settled' });
    this.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wanted-fields': WantedFields;
  }
}
