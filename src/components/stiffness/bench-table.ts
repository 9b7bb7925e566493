import { css, html, LitElement, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { BenchReading, Design } from '../../solver/design/document.ts';
import type { BenchFit } from '../../solver/studies/bench-fit.ts';
import '../choice-field.ts';
import type { Change } from '../events.ts';
import { tableStyles } from '../figure-table.ts';
import '../number-field.ts';
import { panelStyles } from '../panel-styles.ts';
import { sendEdit } from '../send-edit.ts';
import { studyStyles } from '../study-styles.ts';
import { fitAnswer } from './bench-answer.ts';

const PULLS = [
  { value: 'side', label: 'to the side' },
  { value: 'aft', label: 'aft' },
  { value: 'up', label: 'up' },
  { value: 'twist', label: 'on a cross-bar' },
];
const PLACES = [
  { value: 'strut', label: 'strut' },
  { value: 'wing', label: 'wing root' },
  { value: 'stabilizer', label: 'stabilizer root' },
];
const ORDERS = [
  { value: 'loading', label: 'loading' },
  { value: 'unloading', label: 'unloading' },
];

const readings = (design: Design | null): readonly BenchReading[] => design?.joints?.bench ?? [];

/** Readings of a bench test, as many as were taken, and the springs and moduli that explain them. */
@customElement('bench-table')
export class BenchTable extends LitElement {
  static override styles = [
    panelStyles,
    studyStyles,
    tableStyles,
    css`
      :host {
        container-type: inline-size;
      }
      .readings {
        overflow-x: auto;
      }
      .readings td,
      .readings th {
        text-align: left;
        min-width: 5.2rem;
        vertical-align: top;
      }
      .readings .choice {
        min-width: 6.6rem;
      }
      .readings :is(th, td):last-child {
        min-width: 0;
      }
      /* Where the columns do not fit, each reading stands by itself, every field with its head above it. */
      @container (max-width: 52rem) {
        .readings :is(table, tbody, td) {
          display: block;
        }
        .readings thead {
          display: none;
        }
        .readings tr {
          display: grid;
          grid-template-columns: repeat(auto-fill, minmax(8.5rem, 1fr));
          gap: 0.1rem 0.6rem;
          align-items: end;
          padding: 0.4rem 0;
          border-bottom: 1px solid var(--line);
        }
        .readings td {
          border: 0;
          padding: 0;
        }
        .readings td:empty {
          display: none;
        }
        .readings td::before {
          content: attr(data-head);
          color: var(--soft);
        }
      }
      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        margin: 0.5rem 0;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) fit: BenchFit | null = null;

  protected override render() {
    if (!this.design?.strut)
      return html`<p class="note">A bench test needs a strut to hang the weight on.</p>`;
    const list = readings(this.design);
    return html`<p class="note">
        Hold the board, hang a weight on the foil, and write down where it hangs and how far the foil moves where you read.
        Places on the strut count from the box down. Stations at several heights tell box and strut apart; a weight on a
        cross-bar tells of twist.
      </p>
      ${list.length > 0 ? this.#table(list) : nothing}
      <div class="tools">
        <button type="button" @click=${() => this.#add('side')}>Add a pull to the side</button>
        <button type="button" @click=${() => this.#add('twist')}>Add a twist</button>
      </div>
      ${this.fit ? this.#answer(this.fit) : nothing}`;
  }

  #table(list: readonly BenchReading[]) {
    return html`<div class="readings" role="region" tabindex="0" aria-label="Readings">
      <table>
        <thead>
          <tr>
            ${['pull', 'weight', 'hangs on', 'at', 'cross-bar', 'read on', 'at', 'reading', 'order', ''].map(
              (head) => (head ? html`<th scope="col">${head}</th>` : html`<td></td>`),
            )}
          </tr>
        </thead>
        <tbody>
          ${list.map((reading, k) => this.#row(reading, k))}
        </tbody>
      </table>
    </div>`;
  }

  #row(reading: BenchReading, k: number) {
    const path = `joints.bench.${k}`;
    const isTwist = reading.pull === 'twist';
    const number = (
      label: string,
      key: string,
      quantity: Quantity,
      value: number | undefined,
      placeholder = '',
    ) =>
      html`<td data-head=${label}>
        <number-field
          bare
          .label=${`${label}, reading ${k + 1}`}
          edit-label=${`bench reading ${k + 1}`}
          .path=${`${path}.${key}`}
          .quantity=${quantity}
          .units=${this.units}
          .value=${value ?? null}
          .placeholder=${placeholder}
          ?optional=${placeholder !== ''}
        ></number-field>
      </td>`;
    const choice = (
      label: string,
      key: string,
      value: string,
      choices: typeof PULLS,
      toChanges?: (value: string) => Change[],
    ) =>
      html`<td class="choice" data-head=${label}>
        <choice-field
          bare
          .label=${`${label}, reading ${k + 1}`}
          edit-label=${`bench reading ${k + 1}`}
          .path=${`${path}.${key}`}
          .value=${value}
          .choices=${choices}
          .toChanges=${toChanges ?? null}
        ></choice-field>
      </td>`;
    const none = html`<td></td>`;
    return html`<tr>
      ${choice('pull', 'pull', reading.pull, PULLS)} ${number('weight', 'mass', 'mass', reading.mass)}
      ${choice('hangs on', 'on', reading.on ?? 'strut', PLACES)}
      ${(reading.on ?? 'strut') === 'strut' ? number('hangs at', 'at', 'length', reading.at) : none}
      ${isTwist ? number('cross-bar', 'arm', 'length', reading.arm, '300 mm') : none}
      ${choice('read on', 'readOn', reading.readOn ?? 'strut', PLACES)}
      ${(reading.readOn ?? 'strut') === 'strut' ? number('read at', 'station', 'length', reading.station) : none}
      ${isTwist ? number('turn', 'turn', 'angle', reading.turn, 'turn') : number('deflection', 'deflection', 'length', reading.deflection, 'way')}
      ${choice('order', 'order', reading.order ?? 'loading', ORDERS)}
      <td><button type="button" aria-label=${`Take out reading ${k + 1}`} @click=${() => this.#remove(k)}>✕</button></td>
    </tr>`;
  }

  #add(pull: BenchReading['pull']): void {
    const length = this.design?.strut?.length ?? 1;
    const list = readings(this.design);
    const alike = list.filter((reading) => reading.pull === pull);
    const before = alike.at(-1);
    // The next station up, weight and place as before: what one does on the bench.
    const stations = [length, length / 2, length / 4].map((value) => Math.round(value * 1000) / 1000);
    const station =
      stations.find((value) => alike.every((reading) => reading.station !== value)) ?? stations[0]!;
    const next: BenchReading = {
      pull,
      mass: before?.mass ?? 10,
      at: before?.at ?? stations[0]!,
      station,
      ...(pull === 'twist' && { arm: before?.arm ?? 0.3 }),
    };
    this.#send([...list, next], 'add a bench reading');
  }

  #remove(k: number): void {
    const left = readings(this.design).filter((_, i) => i !== k);
    this.#send(left.length > 0 ? left : undefined, 'take out a bench reading');
  }

  #send(value: readonly BenchReading[] | undefined, label: string): void {
    sendEdit(this, { changes: [{ path: 'joints.bench', value }], label, phase: 'settled' });
  }

  #answer(fit: BenchFit) {
    return html`${fitAnswer(fit, readings(this.design), this.units)}
      ${
        fit.changes.length > 0
          ? html`<div class="tools"><button type="button" @click=${() => this.#use(fit)}>Use these values</button></div>`
          : nothing
      }`;
  }

  #use({ changes }: BenchFit): void {
    sendEdit(this, { changes: [...changes], label: 'values of the bench test', phase: 'settled' });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bench-table': BenchTable;
  }
}
