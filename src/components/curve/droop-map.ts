import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import { mapChanges, mapPlaceOf } from '../../session/curve-edits.ts';
import { decimalMark, writeFixed } from '../../session/number-format.ts';
import type { Studies } from '../../session/studies.ts';
import {
  formatWithUnit,
  fromDisplay,
  type Quantity,
  toDisplay,
  type UnitSystem,
  unitOf,
} from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Kept } from '../../solver/geometry/bend.ts';
import type { StabilizerMeasure } from '../../solver/geometry/stabilizer-size.ts';
import type { DroopMap } from '../../solver/studies/droop-map.ts';
import { answerStyles } from '../answer-styles.ts';
import { take, toPart } from '../asked.ts';
import '../choice-field.ts';
import { figureTable, tableStyles } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import '../number-field.ts';
import { sendEdit } from '../send-edit.ts';
import { StudyController } from '../study-controller.ts';
import { studyStyles } from '../study-styles.ts';
import { studyWait } from '../study-wait.ts';
import './contour-map.ts';
import type { MapAxis, MapField, MapPlace, MapPlaceEvent } from './contour-map.ts';
import { InSight } from './in-sight.ts';

type Shade = 'inducedDrag' | 'lostFraction';

const MEASURES: Record<StabilizerMeasure, { label: string; name: string; quantity: Quantity }> = {
  area: { label: 'area, its shape kept', name: 'stabilizer area', quantity: 'area' },
  arm: { label: 'arm', name: 'stabilizer arm', quantity: 'length' },
  droop: { label: 'droop', name: 'stabilizer droop', quantity: 'angle' },
};
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

  readonly #sight = new InSight(this);
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

interface GhostPlace {
  droop: number; // degrees
  size: number; // of the stabilizer, by the measure of the map
  place: MapPlace;
  isOnMap: boolean;
}

function ghostPlace(ghost: Ghost | null, map: DroopMap, units: UnitSystem): GhostPlace | null {
  const found = ghost && mapPlaceOf(ghost.design, map.measure);
  if (!found) return null;
  const { droop, size } = found;
  const isWithin = (at: number, places: Float64Array) => at >= places[0]! && at <= places.at(-1)!;
  return {
    droop,
    size,
    place: { x: droop, y: toDisplay(size, MEASURES[map.measure].quantity, units) },
    isOnMap: isWithin(droop, map.droop) && isWithin(size, map.size),
  };
}

/** The map is of the open design: at the ghost's place stands the open design bent so, not the ghost. */
function ghostReading(
  { droop, size, isOnMap }: GhostPlace,
  map: DroopMap,
  ghost: Ghost | null,
  units: UnitSystem,
): string {
  const { name, quantity } = MEASURES[map.measure];
  const at = `${formatWithUnit(droop, 'angle', units, { decimals: 1 })} of droop and a ${name} of ${formatWithUnit(size, quantity, units)}`;
  const index = ghost?.report?.stability.holdIndex;
  const own = index == null ? '' : ` (${writeFixed(index, 2)})`;
  return isOnMap
    ? `The dashed ring is the ghost’s ${at}. Its other sizes are its own, and so is its hold index${own}: the map shows what this design would have there.`
    : `The ghost, with ${at}, lies outside this map.`;
}

function decimalsOf(quantity: Quantity, units: UnitSystem): number {
  if (quantity === 'angle') return 1;
  if (quantity === 'area') return units === 'si' ? 4 : 1;
  return units === 'workshop' ? 0 : units === 'si' ? 3 : 2;
}

function marginReading({ staticMargin }: DroopMap, limit: number): string {
  const known = [...staticMargin].filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const write = (value: number) => formatWithUnit(value, 'share', 'si', { decimals: 0 });
  const range = `Static margin runs from ${write(low)} to ${write(high)} of the mean chord`;
  if (low > limit) return `${range}: all of the map is above ${write(limit)}.`;
  if (high < limit) return `${range}: none of the map reaches ${write(limit)}.`;
  return `${range}; the dashed line is ${write(limit)}, with less below it.`;
}

/** The least drag on the map that holds as well as the present design does. */
function bestReading(map: DroopMap, units: UnitSystem): string {
  const { quantity, name } = MEASURES[map.measure];
  const here = nearest(map);
  const wanted = map.holdIndex[here]!;
  if (!(wanted > 0)) return '';
  let best = here;
  map.holdIndex.forEach((index, k) => {
    if (index >= wanted && map.inducedDrag[k]! < map.inducedDrag[best]!) best = k;
  });
  if (best === here) return '';
  const columns = map.droop.length;
  const saved = map.inducedDrag[here]! - map.inducedDrag[best]!;
  const at = `${formatWithUnit(map.droop[best % columns]!, 'angle', units, { decimals: 0 })} of droop with a ${name} of ${formatWithUnit(map.size[Math.floor(best / columns)]!, quantity, units)}`;
  return `The same hold with least induced drag on this map: ${at}, ${formatWithUnit(saved, 'force', units, { decimals: 2 })} less.`;
}

/** The case nearest to the present design. */
function nearest({ droop, size, present }: DroopMap): number {
  const closest = (places: Float64Array, at: number) =>
    places.reduce((best, place, k) => (Math.abs(place - at) < Math.abs(places[best]! - at) ? k : best), 0);
  return closest(size, present.size) * droop.length + closest(droop, present.droop);
}

/** Every fourth droop and third size: enough to read by ear. */
function fieldTable(field: MapField, across: MapAxis, up: MapAxis) {
  const columns = across.places.flatMap((place, i) => (i % 4 === 0 ? [{ place, i }] : []));
  const rows = up.places.flatMap((place, j) => (j % 3 === 0 ? [{ place, j }] : []));
  return figureTable(
    field.unit ? `${field.name}, ${field.unit}` : field.name,
    [`${up.name}${up.unit ? `, ${up.unit}` : ''}`, ...columns.map(({ place }) => `${writeFixed(place, 1)}°`)],
    rows.map(({ place, j }) => ({
      cells: [
        writeFixed(place, up.decimals),
        ...columns.map(({ i }) => {
          const value = field.values[j * across.places.length + i]!;
          return Number.isFinite(value) ? writeFixed(value, field.decimals) : '';
        }),
      ],
    })),
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'droop-map': DroopMapView;
  }
}
