import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  type MeasuredKey,
  measuredAt,
  type SideName,
  withMeasurement,
  withTipDrop,
} from '../../session/measured-edits.ts';
import { formatValue, formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design, Measured } from '../../solver/design/document.ts';
import type { Station } from '../../workshop/stations.ts';
import type { Change } from '../events.ts';
import { tableStyles } from '../figure-table.ts';
import '../number-field.ts';

const MOST_ROWS = 12;
const LEAST_CHORD = 5; // mm; less cannot be measured
const SIDES: readonly SideName[] = ['port', 'starboard'];
const KEYS: readonly MeasuredKey[] = ['twist', 'chord'];
const QUANTITIES = { twist: 'angle', chord: 'length' } as const;
const DECIMALS: Record<UnitSystem, number> = { workshop: 1, si: 4, imperial: 3 };

interface Row {
  eta: number;
  name: string;
  station: Station | null; // what is drawn there, where it is known
}

/** What was measured on the finished wing by side: twist and chord at stations, tip drop. Empty: as drawn. */
@customElement('measured-table')
export class MeasuredTable extends LitElement {
  static override styles = [
    tableStyles,
    css`
      :host {
        display: block;
      }
      table {
        width: auto;
      }
      td:has(number-field) {
        min-width: 7rem;
        padding: 0 0.4rem 0 0;
        border: 0;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  /** Of the wing. */
  @property({ attribute: false }) stations: readonly Station[] = [];
  @property() units: UnitSystem = 'workshop';

  protected override render() {
    if (!this.design) return nothing;
    const measured: Measured = this.design.asBuilt?.wing ?? { at: [] };
    const heads = KEYS.flatMap((key) => [`${key}, drawn`, ...SIDES.map((side) => `${key}, ${side}`)]);
    return html`<div class="table" role="region" tabindex="0" aria-label="Measured on the finished wing">
      <table>
        <caption>
          Measured on the finished wing; empty fields count as drawn
        </caption>
        <thead>
          <tr>
            <td></td>
            ${heads.map((head) => html`<th scope="col">${head}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${this.#rows(measured).map((row) => this.#row(measured, row))} ${this.#tipRow(measured)}
        </tbody>
      </table>
    </div>`;
  }

  /** Every so manyth station that can be measured, and wherever a measurement is. */
  #rows(measured: Measured): Row[] {
    const usable = this.stations.filter(({ chord }) => chord >= LEAST_CHORD);
    const every = Math.ceil(usable.length / MOST_ROWS);
    const half =
      usable.length > 0 ? usable[usable.length - 1]!.distance / usable[usable.length - 1]!.eta / 1000 : 0;
    const place = (eta: number) => formatWithUnit(eta * half, 'length', this.units);
    const rows = usable
      .filter((_, k) => k % every === 0)
      .map((station): Row => {
        const eta = Number(station.eta.toFixed(6));
        return { eta, name: `S${station.number}, ${place(eta)} out`, station };
      });
    const others = measured.at
      .filter(({ eta }) => rows.every((row) => row.eta !== eta))
      .map(({ eta }): Row => ({ eta, name: `${place(eta)} out`, station: null }));
    return [...rows, ...others].sort((a, b) => a.eta - b.eta);
  }

  #row(measured: Measured, { eta, name, station }: Row) {
    return html`<tr>
      <th scope="row">${name}</th>
      ${KEYS.map(
        (key) =>
          html`<td>${station ? this.#drawn(station, key) : '–'}</td>
            ${SIDES.map((side) => {
              const at = { eta, side, key };
              return html`<td>
                ${this.#field(
                  `${key}, ${side}, ${name}`,
                  QUANTITIES[key],
                  measuredAt(measured, at),
                  (value) => withMeasurement(measured, at, value),
                )}
              </td>`;
            })}`,
      )}
    </tr>`;
  }

  #drawn(station: Station, key: MeasuredKey): string {
    if (key === 'twist') return formatWithUnit(station.twist, 'angle', this.units, { decimals: 2 });
    return formatValue(station.chord / 1000, 'length', this.units, { decimals: DECIMALS[this.units] });
  }

  #tipRow(measured: Measured) {
    return html`<tr>
      <th scope="row">tip drop</th>
      <td></td>
      ${SIDES.map(
        (side) => html`<td>
          ${this.#field(`tip drop, ${side}`, 'length', measured.tipDrop?.[side] ?? null, (value) =>
            withTipDrop(measured, side, value),
          )}
        </td>`,
      )}
    </tr>`;
  }

  #field(
    label: string,
    quantity: 'angle' | 'length',
    value: number | null,
    withValue: (value: number | null) => Measured | null,
  ) {
    const changes = (next: number | null): Change[] => {
      const measured = withValue(next);
      return [measured ? { path: 'asBuilt.wing', value: measured } : { path: 'asBuilt', value: undefined }];
    };
    return html`<number-field
      bare
      .label=${label}
      .quantity=${quantity}
      .units=${this.units}
      .value=${value}
      .step=${quantity === 'angle' ? 0.05 : 0.0001}
      placeholder="drawn"
      .toChanges=${changes}
      .cleared=${changes(null)}
    ></number-field>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'measured-table': MeasuredTable;
  }
}
