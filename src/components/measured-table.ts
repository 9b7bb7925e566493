import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Quantity, UnitSystem } from '../session/units.ts';
import type { Design, Measured } from '../solver/design/document.ts';
import './number-field.ts';

const PLACES = [0.25, 0.5, 0.75, 1];
const SIDES = ['port', 'starboard'] as const;

/** What was measured on the finished wing, by side: twist and chord at stations, tip drop. Empty: as drawn. */
@customElement('measured-table')
export class MeasuredTable extends LitElement {
  static override styles = css`
    :host {
      display: block;
      overflow-x: auto;
    }
    th,
    td {
      padding: 0.1rem 0.4rem 0.1rem 0;
      text-align: left;
      font-size: var(--step--1);
    }
    td {
      min-width: 7.5rem;
    }
  `;

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';

  protected override render() {
    if (!this.design) return nothing;
    const measured: Measured = this.design.asBuilt?.wing ?? { at: [] };
    const places = [...new Set([...PLACES, ...measured.at.map(({ eta }) => eta)])].sort((a, b) => a - b);
    return html`<table>
      <thead>
        <tr>
          <th scope="col">share of half</th>
          ${['twist', 'chord'].flatMap((what) => SIDES.map((side) => html`<th scope="col">${what}, ${side}</th>`))}
        </tr>
      </thead>
      <tbody>
        ${places.map((eta) => this.#row(measured, eta))}
        <tr>
          <th scope="row">tip drop</th>
          ${SIDES.map((side) => html`<td>${this.#drop(measured, side)}</td>`)}
        </tr>
      </tbody>
    </table>`;
  }

  #row(measured: Measured, eta: number) {
    const found = measured.at.find((station) => station.eta === eta);
    const cells = (['twist', 'chord'] as const).flatMap((what) =>
      SIDES.map((side) => {
        const toNext = (value: number | undefined): Measured => {
          const station = { ...found, eta, [side]: { ...found?.[side], [what]: value } };
          const others = measured.at.filter((other) => other.eta !== eta);
          return { ...measured, at: [...others, station].sort((a, b) => a.eta - b.eta) };
        };
        const quantity = what === 'twist' ? 'angle' : 'length';
        return html`<td>
          ${this.#field(`${what} ${side} at ${eta}`, quantity, found?.[side]?.[what] ?? null, toNext)}
        </td>`;
      }),
    );
    return html`<tr>
      <th scope="row">${eta}</th>
      ${cells}
    </tr>`;
  }

  #drop(measured: Measured, side: (typeof SIDES)[number]) {
    const toNext = (value: number | undefined): Measured =>
      ({ ...measured, tipDrop: { ...measured.tipDrop, [side]: value } }) as Measured;
    return this.#field(`tip drop ${side}`, 'length', measured.tipDrop?.[side] ?? null, toNext);
  }

  #field(
    label: string,
    quantity: Quantity,
    value: number | null,
    toNext: (value: number | undefined) => Measured,
  ) {
    return html`<number-field
      bare
      .label=${label}
      .quantity=${quantity}
      .units=${this.units}
      .value=${value}
      placeholder="drawn"
      .toChanges=${(next: number) => [{ path: 'asBuilt.wing', value: toNext(next) }]}
    ></number-field>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measured-table': MeasuredTable;
  }
}
