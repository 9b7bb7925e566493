/** The stations of wing and stabilizer in the chosen units; files and sheet keep to millimetres. */
import { html } from 'lit';
import { formatValue, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Overview } from '../../workshop/overview.ts';
import type { Station } from '../../workshop/stations.ts';
import { figureTable } from '../figure-table.ts';

type Column = { key: Exclude<keyof Station, 'number' | 'eta'>; head: string; quantity: 'length' | 'angle' };

const COLUMNS: readonly Column[] = [
  { key: 'distance', head: 'along the curve', quantity: 'length' },
  { key: 'y', head: 'y', quantity: 'length' },
  { key: 'drop', head: 'drop', quantity: 'length' },
  { key: 'chord', head: 'chord', quantity: 'length' },
  { key: 'leadingEdge', head: 'leading edge', quantity: 'length' },
  { key: 'trailingEdge', head: 'trailing edge', quantity: 'length' },
  { key: 'twist', head: 'twist', quantity: 'angle' },
  { key: 'thickness', head: 'thickness', quantity: 'length' },
  { key: 'thicknessAt', head: 'thickest at', quantity: 'length' },
  { key: 'droop', head: 'droop angle', quantity: 'angle' },
];

/** Tenths of a millimetre or finer. */
const LENGTH_DECIMALS: Record<UnitSystem, number> = { workshop: 1, si: 4, imperial: 3 };
const MILLIMETRES = 1000;
const TITLES = { wing: 'Wing, root to tip', stabilizer: 'Stabilizer, root to tip' };

export function stationTables(stations: Overview['stations'], units: UnitSystem) {
  const head = ['', ...COLUMNS.map(({ head, quantity }) => `${head}, ${unitOf(quantity, units)}`)];
  return html`${stations.map(({ part, rows }) =>
    figureTable(
      TITLES[part],
      head,
      rows.map((station) => ({ cells: [`S${station.number}`, ...cellsOf(station, units)] })),
    ),
  )}
    <p class="note">
      Edges count aft of the root’s leading edge, twist and incidence taken out; drop counts down from the root; twist is
      nose up, without the incidence.
    </p>`;
}

function cellsOf(station: Station, units: UnitSystem): string[] {
  return COLUMNS.map(({ key, quantity }) =>
    quantity === 'angle'
      ? formatValue(station[key], 'angle', units, { decimals: 2 })
      : formatValue(station[key] / MILLIMETRES, 'length', units, { decimals: LENGTH_DECIMALS[units] }),
  );
}
