import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Quantity, UnitSystem } from '../session/units.ts';
import { unitOf } from '../session/units.ts';
import type { Pair } from '../solver/design/document.ts';
import type { Change } from './events.ts';
import './number-field.ts';
import { panelStyles } from './panel-styles.ts';
import { sendEdit } from './send-edit.ts';

const LEAST_GAP = 0.001; // of the half length, between neighbouring points

/** The points of a law: place along the half wing and value there, root first. The ends stay at root and tip. */
@customElement('points-table')
export class PointsTable extends LitElement {
  static override styles = [
    panelStyles,
    css`
      table {
        width: 100%;
        border-collapse: collapse;
        margin: 0.25rem 0;
      }
      th {
        font-weight: 400;
        text-align: left;
        color: var(--soft);
        font-size: var(--step--1);
      }
      td {
        padding: 0 0.25rem 0 0;
        vertical-align: top;
      }
      td:last-child {
        width: 1.9rem;
        padding: 0.2rem 0 0;
      }
    `,
  ];

  @property({ attribute: false }) points: readonly Pair[] = [];
  /** What the values are: "chord". */
  @property() name = '';
  @property() quantity: Quantity = 'length';
  @property() units: UnitSystem = 'workshop';
  /** Where the list lives in the document. */
  @property() path = '';
  /** Whose law it is, for the names of undo steps: "wing". */
  @property() owner = '';
  /** The law as a curve, to place a new point on it. */
  @property({ attribute: false }) curve: (eta: number) => number = () => 0;

  protected override render() {
    const symbol = unitOf(this.quantity, this.units);
    return html`<table>
        <thead>
          <tr>
            <th scope="col">along the half</th>
            <th scope="col">${this.name}${symbol ? `, ${symbol}` : ''}</th>
            <td></td>
          </tr>
        </thead>
        <tbody>
          ${this.points.map((point, index) => this.#row(point, index))}
        </tbody>
      </table>
      <button type="button" @click=${this.#add}>Add a point</button>`;
  }

  #row([eta, value]: Pair, index: number) {
    const isEnd = index === 0 || index === this.points.length - 1;
    const number = index + 1;
    return html`<tr>
      <td>
        ${
          isEnd
            ? html`<span class="note">${index === 0 ? 'root' : 'tip'}</span>`
            : html`<number-field
              bare
              label="point ${number}, place along the half"
              edit-label="${this.owner} ${this.name} point"
              quantity="share"
              .units=${this.units}
              .path="${this.path}.${index}.0"
              .value=${eta}
              .min=${this.points[index - 1]![0] + LEAST_GAP}
              .max=${this.points[index + 1]![0] - LEAST_GAP}
            ></number-field>`
        }
      </td>
      <td>
        <number-field
          bare
          label="point ${number}, ${this.name}"
          edit-label="${this.owner} ${this.name} point"
          .quantity=${this.quantity}
          .units=${this.units}
          .path="${this.path}.${index}.1"
          .value=${value}
        ></number-field>
      </td>
      <td>
        ${
          isEnd
            ? ''
            : html`<button
              type="button"
              aria-label="Take point ${number} away"
              title="Take this point away"
              @click=${() => this.#remove(index)}
            >
              ×
            </button>`
        }
      </td>
    </tr>`;
  }

  readonly #add = (): void => {
    const gaps = this.points.slice(1).map(([eta], k) => eta - this.points[k]![0]);
    const widest = gaps.indexOf(Math.max(...gaps));
    const from = this.points[widest]![0];
    const eta = Number((from + gaps[widest]! / 2).toFixed(3));
    const point: Pair = [eta, Number(this.curve(eta).toFixed(6))];
    this.#replace(
      [...this.points.slice(0, widest + 1), point, ...this.points.slice(widest + 1)],
      'add a point',
    );
  };

  #remove(index: number): void {
    this.#replace(
      this.points.filter((_, k) => k !== index),
      'take a point away',
    );
  }

  #replace(points: readonly Pair[], what: string): void {
    const changes: Change[] = [{ path: this.path, value: points }];
    sendEdit(this, { changes, label: `${this.owner} ${this.name}: ${what}`, phase: 'settled' });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'points-table': PointsTable;
  }
}
