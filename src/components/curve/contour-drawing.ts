/** How a map of two fields is drawn: shades, lines and limit as shapes, text laid over them, ticks and key at the rim. */
import { html, nothing, svg } from 'lit';
import { writeFixed, writePlain } from '../../session/number-format.ts';
import {
  areaAbove,
  areaWithout,
  type ContourLine,
  contourLine,
  type Field,
  rangeOf,
  roundLevels,
} from './contour-shapes.ts';

const SHADES = 9; // at most
const LINES = 9;

/** An axis of the map: evenly spaced places in the shown unit. */
export interface MapAxis {
  name: string;
  unit: string;
  decimals: number;
  places: readonly number[];
}

/** What is drawn over the two axes; values in the shown unit, row after row. */
export interface MapField {
  name: string;
  unit: string;
  decimals: number;
  values: readonly number[];
}

export interface MapPlace {
  x: number;
  y: number;
}

export interface MapAxes {
  across: MapAxis;
  up: MapAxis;
}

export interface MapFields {
  shade: MapField;
  lines: MapField;
  limit: (MapField & { level: number }) | null;
}

/** Paths as they are drawn. */
export interface MapShapes {
  bands: string[]; // from the lowest shade up
  missing: string;
  lines: ContourLine[];
  limit: ContourLine | null;
}

export const NO_SHAPES: MapShapes = { bands: [], missing: '', lines: [], limit: null };

/** A case of the map, by its steps across and up. */
export interface MapCross {
  i: number;
  j: number;
}

const fieldOf = ({ values }: MapField, { across, up }: MapAxes): Field => ({
  columns: across.places.length,
  rows: up.places.length,
  values,
});

const sizeOf = ({ across, up }: MapAxes) => [across.places.length - 1, up.places.length - 1] as const;

export function shapesOf({ shade, lines, limit }: MapFields, axes: MapAxes): MapShapes {
  const shaded = fieldOf(shade, axes);
  const lined = fieldOf(lines, axes);
  return {
    bands: levelsOf(shaded, SHADES).map((level) => areaAbove(shaded, level)),
    missing: areaWithout(shaded),
    lines: levelsOf(lined, LINES).map((level) => contourLine(lined, level)),
    limit: limit && contourLine(fieldOf(limit, axes), limit.level),
  };
}

export function drawMap({ bands, missing, lines, limit }: MapShapes, axes: MapAxes, cross: MapCross | null) {
  const [width, height] = sizeOf(axes);
  return html`<svg viewBox="0 0 ${width} ${height}" preserveAspectRatio="none" aria-hidden="true">
    <defs>
      <pattern id="none" width="0.8" height="0.8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        ${svg`<rect width="0.8" height="0.8" fill="var(--paper)"></rect><rect width="0.2" height="0.8" fill="var(--line)"></rect>`}
      </pattern>
    </defs>
    <g transform="translate(0 ${height}) scale(1 -1)">
      ${svg`<rect width=${width} height=${height} fill=${shadeOf(0, bands.length)}></rect>`}
      ${bands.map((path, k) => svg`<path d=${path} fill=${shadeOf(k + 1, bands.length)}></path>`)}
      ${missing ? svg`<path d=${missing} fill="url(#none)"></path>` : nothing}
      ${lines.map(({ path }) => svg`<path class="line" d=${path}></path>`)}
      ${limit ? svg`<path class="limit" d=${limit.path}></path>` : nothing}
      ${
        cross
          ? svg`<line class="cross" x1=${cross.i} x2=${cross.i} y1="0" y2=${height}></line><line class="cross" x1="0" x2=${width} y1=${cross.j} y2=${cross.j}></line>`
          : nothing
      }
    </g>
  </svg>`;
}

/** What stands over the drawing; `limit`: what the limit is called. */
export interface MapMarks {
  limit: string | null;
  present: MapPlace | null;
  ghost: MapPlace | null;
}

const LIMIT_RIM = 26; // per cent of a phone's map: half of the longest name of a limit
const LIMIT_REACH = { across: 26, up: 8 }; // per cent to either side of that name's middle where no value stands

/**
 * Values on the lines, the limit's name, present design and ghost: text must not be stretched with the drawing. A value
 * gives way to the limit's name.
 */
export function drawTags(shapes: MapShapes, axes: MapAxes, { limit, present, ghost }: MapMarks) {
  const [width, height] = sizeOf(axes);
  const placeOf = ({ x, y }: MapPlace, rim: number): MapPlace => ({
    x: within((100 * x) / width, rim),
    y: within((100 * y) / height, rim / 2),
  });
  const style = ({ x, y }: MapPlace) => `left: ${x}%; bottom: ${y}%`;
  const mark = ({ x, y }: MapPlace) =>
    style(placeOf({ x: stepOf(axes.across, x), y: stepOf(axes.up, y) }, 0));
  const edge = limit !== null && shapes.limit?.label ? placeOf(shapes.limit.label, LIMIT_RIM) : null;
  const isHidden = ({ x, y }: MapPlace) =>
    edge !== null && Math.abs(x - edge.x) < LIMIT_REACH.across && Math.abs(y - edge.y) < LIMIT_REACH.up;
  const tags = shapes.lines.flatMap(({ level, label }) => {
    const place = label && placeOf(label, 5);
    return place && !isHidden(place)
      ? [html`<span class="tag" .style=${style(place)}>${writePlain(level)}</span>`]
      : [];
  });
  return html`${tags}
    ${edge ? html`<span class="tag edge" .style=${style(edge)}>${limit}</span>` : nothing}
    ${ghost ? html`<span class="ghost" .style=${mark(ghost)}></span>` : nothing}
    ${present ? html`<span class="present" .style=${mark(present)}></span>` : nothing}`;
}

export function drawTicks(axis: MapAxis, side: 'left' | 'bottom') {
  const [low, high] = [axis.places[0]!, axis.places.at(-1)!];
  return [low, ...roundLevels(low, high, 5), high]
    .filter((place, k, all) => k === 0 || k === all.length - 1 || isApart(place, low, high))
    .map(
      (place) =>
        html`<span .style="${side}: ${(100 * (place - low)) / (high - low)}%">${writeFixed(place, axis.decimals)}${axis.unit === '°' ? '°' : ''}</span>`,
    );
}

export function drawKey(shade: MapField, axes: MapAxes) {
  const range = rangeOf(fieldOf(shade, axes));
  if (!range) return nothing;
  const levels = levelsOf(fieldOf(shade, axes), SHADES);
  return html`<span class="key"
    >${titleOf(shade)} ${writeFixed(range.low, shade.decimals)}
    <span class="ramp">
      ${[0, ...levels.map((_, k) => k + 1)].map((k) => html`<i .style="background: ${shadeOf(k, levels.length)}"></i>`)}
    </span>
    ${writeFixed(range.high, shade.decimals)}</span
  >`;
}

/** "hold index" or "stabilizer area, cm²". */
export const titleOf = ({ name, unit }: { name: string; unit: string }) => (unit ? `${name}, ${unit}` : name);

/** What the map says at the cross. */
export function readingAt({ i, j }: MapCross, { across, up }: MapAxes, fields: readonly MapField[]): string {
  const k = j * across.places.length + i;
  const figures = fields.map(({ name, unit, decimals, values }) => {
    const value = values[k]!;
    return `${name} ${Number.isFinite(value) ? withUnit(value, unit, decimals) : 'none'}`;
  });
  const places = [
    `${across.name} ${withUnit(across.places[i]!, across.unit, across.decimals)}`,
    `${up.name} ${withUnit(up.places[j]!, up.unit, up.decimals)}`,
  ];
  return `${places.join(', ')}: ${figures.join(', ')}.`;
}

function levelsOf(field: Field, most: number): number[] {
  const range = rangeOf(field);
  return range ? roundLevels(range.low, range.high, most) : [];
}

const shadeOf = (k: number, most: number) =>
  `color-mix(in srgb, var(--surface) ${Math.round(6 + (64 * k) / Math.max(1, most))}%, var(--paper))`;

/** Percent, kept off the rim so that nothing is cut. */
const within = (percent: number, rim: number) => Math.min(100 - rim, Math.max(rim, percent));

const withUnit = (value: number, unit: string, decimals: number) =>
  `${writeFixed(value, decimals)}${unit === '°' ? '°' : unit ? `\u00a0${unit}` : ''}`;

/** Where a value stands among evenly spaced places, in steps. */
const stepOf = ({ places }: MapAxis, value: number) =>
  ((value - places[0]!) / (places.at(-1)! - places[0]!)) * (places.length - 1);

const isApart = (place: number, low: number, high: number) =>
  place - low > 0.12 * (high - low) && high - place > 0.12 * (high - low);
