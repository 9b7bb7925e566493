/** What is said of the map of droop against the stabilizer, and its fields as tables. */
import { mapPlaceOf } from '../../session/curve-edits.ts';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, type Quantity, toDisplay, type UnitSystem } from '../../session/units.ts';
import type { StabilizerMeasure } from '../../solver/geometry/stabilizer-size.ts';
import type { DroopMap } from '../../solver/studies/droop-map.ts';
import { figureTable } from '../figure-table.ts';
import type { Ghost } from '../ghost.ts';
import type { MapAxis, MapField, MapPlace } from './contour-drawing.ts';

export const MEASURES: Record<StabilizerMeasure, { label: string; name: string; quantity: Quantity }> = {
  area: { label: 'area, its shape kept', name: 'stabilizer area', quantity: 'area' },
  arm: { label: 'arm', name: 'stabilizer arm', quantity: 'length' },
  droop: { label: 'droop', name: 'stabilizer droop', quantity: 'angle' },
};

interface GhostPlace {
  droop: number; // degrees
  size: number; // of the stabilizer, by the measure of the map
  place: MapPlace;
  isOnMap: boolean;
}

export function ghostPlace(ghost: Ghost | null, map: DroopMap, units: UnitSystem): GhostPlace | null {
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
export function ghostReading(
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

export function decimalsOf(quantity: Quantity, units: UnitSystem): number {
  if (quantity === 'angle') return 1;
  if (quantity === 'area') return units === 'si' ? 4 : 1;
  return units === 'workshop' ? 0 : units === 'si' ? 3 : 2;
}

export function marginReading({ staticMargin }: DroopMap, limit: number): string {
  const known = [...staticMargin].filter(Number.isFinite);
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const write = (value: number) => formatWithUnit(value, 'share', 'si', { decimals: 0 });
  const range = `Static margin runs from ${write(low)} to ${write(high)} of the mean chord`;
  if (low > limit) return `${range}: all of the map is above ${write(limit)}.`;
  if (high < limit) return `${range}: none of the map reaches ${write(limit)}.`;
  return `${range}; the dashed line is ${write(limit)}, with less below it.`;
}

/** The least drag on the map that holds as well as the present design does. */
export function bestReading(map: DroopMap, units: UnitSystem): string {
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
export function fieldTable(field: MapField, across: MapAxis, up: MapAxis) {
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
