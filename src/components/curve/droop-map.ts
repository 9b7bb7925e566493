import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { mapChanges } from '../../session/curve-edits.ts';
import { decimalMark, writeFixed } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import { fromDisplay, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Kept } from '../../solver/geometry/bend.ts';
import type { StabilizerMeasure } from '../../solver/geometry/stabilizer-size.ts';
import type { DroopMap } from '../../solver/studies/droop-map.ts';
import { answerStyles } from '../answer-styles.ts';
import { take, toPart } from '../asked.ts';
import '../choice-field.ts';
import { tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import '../number-field.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';
import './contour-map.ts';
import { NearScreen } from '../near-screen.ts';
import type { MapAxis, MapField } from './contour-drawing.ts';
import type { MapPlaceEvent } from './contour-map.ts';
import {
  bestReading,
  decimalsOf,
  fieldTable,
  ghostPlace,
  ghostReading,
  MEASURES,
  marginReading,
} from './map-words.ts';

type Shade = 'inducedDrag' | 'lostFraction';

const USUAL_END = 45; // degrees of wing droop

/** Wing droop against stabilizer size: hold index as lines over drag or lost lift; a place on it is a design. */
@customElement('droop-map')
export class DroopMapView extends LitElement {
  static override styles = [
    answerStyles,
    tableStyles,
    studyStyles,
    css`
      .controls {
        --control-width: 12.5rem;
      }
      contour-map {
        max-width: 56rem;
        margin-top: 0.5rem;
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  @property() kept: Kept = 'unrolled';
  /** Marked where its droop and stabilizer lie. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  @state() private measure: StabilizerMeasure = 'area';
  @state() private shade: Shade = 'inducedDrag';
  @state() private limit = 0;
  @state() private isTable = false;
  @state() private refusal: string | null = null;

  readonly #sight = new NearScreen(this);
  readonly #map = new StudyController(this, 'droopMap', () =>
    this.design?.stabilizer && this.#sight.isSeen
      ? {
          studies: this.studies,
          design: this.design,
          options: { measure: this.measure, kept: this.kept, to: USUAL_END },
        }
      : null,
  );

  protected override render() {
    if (!this.design?.stabilizer) return html`<p class="note">Without a stabilizer there is no map.</p>`;
    const found = this.#map.result;
    return html`<div class="controls">${this.#controls()}</div>
      ${this.refusal ? html`<p class="trouble" role="alert">${this.refusal}</p>` : nothing}
      ${found && !this.#map.isRunning && !this.#map.isHalted && !this.#map.failure ? nothing : studyWait(this.#map, 'Solving the map')}
      ${found ? guard([found, this.ghost, this.units, decimalMark(), this.shade, this.limit, this.isTable], () => this.#answers(found)) : nothing}`;
  }

  #controls() {
    return html`<choice-field
        label="Stabilizer varied by"
        .value=${this.measure}
        .choices=${Object.entries(MEASURES).map(([value, { label }]) => ({ value, label }))}
        .toChanges=${toPart}
        @design-edit=${take((value) => {
          this.measure = value as StabilizerMeasure;
        })}
      ></choice-field>
      <choice-field
        label="Shaded by"
        .value=${this.shade}
        .choices=${[
          { value: 'inducedDrag', label: 'induced drag' },
          { value: 'lostFraction', label: 'lost lift' },
        ]}
        .toChanges=${toPart}
        @design-edit=${take((value) => {
          this.shade = value as Shade;
        })}
      ></choice-field>
      <number-field
        label="Least static margin"
        quantity="share"
        .units=${this.units}
        .value=${this.limit}
        .min=${-1}
        .max=${3}
        .step=${0.05}
        hint="of the mean chord"
        .toChanges=${toPart}
        @design-edit=${take((value) => {
          this.limit = value as number;
        })}
      ></number-field>`;
  }

  #answers(map: DroopMap) {
    const { units } = this;
    const { name, quantity } = MEASURES[map.measure];
    const across: MapAxis = { name: 'wing droop', unit: '°', decimals: 1, places: [...map.droop] };
    const up: MapAxis = {
      name,
      unit: unitOf(quantity, units),
      decimals: decimalsOf(quantity, units),
      places: Array.from(map.size, (size) => toDisplay(size, quantity, units)),
    };
    const lines: MapField = { name: 'hold index', unit: '', decimals: 2, values: [...map.holdIndex] };
    const margin: MapField = {
      name: 'static margin',
      unit: '%',
      decimals: 0,
      values: Array.from(map.staticMargin, (value) => 100 * value),
    };
    const shade = this.#shadeField(map);
    const present = { x: map.present.droop, y: toDisplay(map.present.size, quantity, units) };
    const isOnMap = present.x >= 0 && present.x <= USUAL_END;
    const behind = ghostPlace(this.ghost, map, units);
    return html`<contour-map
        .label=${`Wing droop against ${name}: lines of hold index over ${shade.name}.`}
        .across=${across}
        .up=${up}
        .shade=${shade}
        .lines=${lines}
        .limit=${{ ...margin, name: `static margin ${writeFixed(100 * this.limit, 0)} %`, level: 100 * this.limit }}
        .present=${isOnMap ? present : null}
        .ghost=${behind?.isOnMap ? behind.place : null}
        @map-place=${this.#onPlace}
      ></contour-map>
      <p class="note">${marginReading(map, this.limit)} ${bestReading(map, units)}</p>
      ${behind ? html`<p class="note">${ghostReading(behind, map, this.ghost, units)}</p>` : nothing}
      <p class="note">
        Lines are the hold index, shades ${shade.name} at the same lift, the dot the design as it is; a click, or the arrows
        and Enter, takes the design there in one step. Hatched: does not fit the water or carries the lift at no angle. The
        stabilizer keeps its incidence; drag that comes of trimming it is Hold’s matter.
      </p>
      <button type="button" aria-pressed=${this.isTable} @click=${this.#toggle}>As tables</button>
      ${this.isTable ? [lines, shade, margin].map((field) => fieldTable(field, across, up)) : nothing}`;
  }

  #shadeField(map: DroopMap): MapField {
    const { units } = this;
    return this.shade === 'inducedDrag'
      ? {
          name: 'induced drag of wing and stabilizer',
          unit: unitOf('force', units),
          decimals: 2,
          values: Array.from(map.inducedDrag, (value) => toDisplay(value, 'force', units)),
        }
      : {
          name: 'lost lift',
          unit: '%',
          decimals: 1,
          values: Array.from(map.lostFraction, (value) => 100 * value),
        };
  }

  readonly #onPlace = ({ detail: { x, y } }: MapPlaceEvent): void => {
    const { design, measure, units } = this;
    if (!design?.stabilizer) return;
    const size = fromDisplay(y, MEASURES[measure].quantity, units);
    try {
      const whole = { ...design, stabilizer: design.stabilizer };
      const changes = mapChanges(whole, this.kept, measure, { droop: x, size });
      this.refusal = sendEdit(this, { changes, label: 'droop and stabilizer', phase: 'settled' });
    } catch (error) {
      this.refusal = error instanceof Error ? error.message : String(error);
    }
  };

  readonly #toggle = (): void => {
    this.isTable = !this.isTable;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'droop-map': DroopMapView;
  }
}
