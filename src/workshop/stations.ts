/** The stations of a half and what a builder measures there. Millimetres and degrees: this is the edge. */
import type { Rib, Skin } from '../solver/geometry/skin.ts';

export interface Station {
  number: number; // 0 at the root
  eta: number;
  distance: number; // mm along the unrolled half
  y: number; // mm from the centre plane, quarter-chord line
  drop: number; // mm below the root's quarter chord, positive down
  chord: number; // mm
  leadingEdge: number; // mm aft of the root's leading edge, section untwisted
  trailingEdge: number; // mm aft of the root's leading edge, section untwisted
  twist: number; // degrees, nose up positive, without the incidence
  thickness: number; // mm, greatest
  thicknessAt: number; // mm aft of the leading edge
  droop: number; // degrees, positive down
}

export interface Column {
  key: keyof Station;
  head: string;
  unit: '' | 'mm' | 'deg';
  decimals: number;
}

/** In the order of the table. */
export const COLUMNS: readonly Column[] = [
  { key: 'number', head: 'station', unit: '', decimals: 0 },
  { key: 'distance', head: 'along the curve', unit: 'mm', decimals: 1 },
  { key: 'y', head: 'y', unit: 'mm', decimals: 1 },
  { key: 'drop', head: 'drop', unit: 'mm', decimals: 1 },
  { key: 'chord', head: 'chord', unit: 'mm', decimals: 1 },
  { key: 'leadingEdge', head: 'leading edge', unit: 'mm', decimals: 1 },
  { key: 'trailingEdge', head: 'trailing edge', unit: 'mm', decimals: 1 },
  { key: 'twist', head: 'twist', unit: 'deg', decimals: 2 },
  { key: 'thickness', head: 'thickness', unit: 'mm', decimals: 1 },
  { key: 'thicknessAt', head: 'thickest at', unit: 'mm', decimals: 1 },
  { key: 'droop', head: 'droop angle', unit: 'deg', decimals: 2 },
];

const MM = 1000;
const DEGREES = 180 / Math.PI;
const CLOSE = 0.1; // of a spacing: a station nearer the tip than this gives way to the tip

/** eta of the stations: every `spacing` (m) from the root, then the tip. */
export function stationPlaces({ surface }: Skin, spacing: number): number[] {
  const { halfLength } = surface;
  const inner = Math.ceil(halfLength / spacing - CLOSE);
  return [...Array.from({ length: Math.max(1, inner) }, (_, k) => (k * spacing) / halfLength), 1];
}

export function stationTable(skin: Skin, spacing: number): Station[] {
  const root = skin.rib(0);
  const nose = root.x - 0.25 * root.chord;
  return stationPlaces(skin, spacing).map((eta, number) => {
    const rib = skin.rib(eta);
    const thick = thickest(skin, rib);
    return {
      number,
      eta,
      distance: rib.distance * MM,
      y: rib.y * MM,
      drop: (root.z - rib.z) * MM,
      chord: rib.chord * MM,
      leadingEdge: (rib.x - 0.25 * rib.chord - nose) * MM,
      trailingEdge: (rib.x + 0.75 * rib.chord - nose) * MM,
      twist: rib.twist * DEGREES,
      thickness: thick.thickness * rib.chord * MM,
      thicknessAt: thick.at * rib.chord * MM,
      droop: rib.droop * DEGREES,
    };
  });
}

/** One cell of the table as text; no minus before a zero. */
export function cellText(station: Station, { key, decimals }: Column): string {
  const text = station[key].toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** Greatest thickness of a section and where it is, as shares of the chord. */
export function thickest(skin: Skin, rib: Rib): { thickness: number; at: number } {
  const count = 120;
  const at = (k: number) => 0.5 * (1 + Math.cos((Math.PI * k) / count));
  const values = Array.from({ length: count + 1 }, (_, k) => {
    const [upper, lower] = [skin.outline(rib, k / count), skin.outline(rib, 2 - k / count)];
    return Math.hypot(upper[0] - lower[0], upper[1] - lower[1]);
  });
  let best = 1;
  for (let k = 1; k < count; k++) if (values[k]! > values[best]!) best = k;
  const [before, here, after] = [values[best - 1]!, values[best]!, values[best + 1]!];
  const bend = before - 2 * here + after;
  const shift = bend < 0 ? (0.5 * (before - after)) / bend : 0;
  return { thickness: here - 0.25 * (before - after) * shift, at: at(best + shift) };
}
