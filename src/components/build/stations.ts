/** The stations of wing and stabilizer in the chosen units; files and sheet keep to millimetres. */
import { html } from 'lit';
import { type UnitSystem, unitOf } from '../../session/units.ts';
import type { Overview } from '../../workshop/overview.ts';
import type { Station } from '../../workshop/stations.ts';
import { tableWithGhost } from '../figure-table.ts';
import { type Cell, quantityCell } from '../table-cells.ts';

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

/** The ghost's stations by their numbers, each where its own spacing puts it. */
export function stationTables(
  stations: Overview['stations'],
  ghost: Overview['stations'] | null,
  units: UnitSystem,
) {
  const head = ['', ...COLUMNS.map(({ head, quantity }) => `${head}, ${unitOf(quantity, units)}`)];
  return html`${stations.map(({ part, rows: own }) =>
    tableWithGhost(TITLES[part], own, ghost?.find((other) => other.part === part)?.rows, (rows) => ({
      head,
      rows: rows.map((station) => ({ cells: [`S${station.number}`, ...cellsOf(station, units)] })),
    })),
  )}
    <p class="note">
      Edges count aft of the root’s leading edge, twist and incidence taken out; drop counts down from the root; twist is
      nose up, without the incidence.
    </p>`;
}

function cellsOf(station: Station, units: UnitSystem): Cell[] {
  return COLUMNS.map(({ key, quantity }) =>
    quantity === 'angle'
      ? quantityCell(station[key], 'angle', units, { decimals: 2, bare: true })
      : quantityCell(station[key] / MILLIMETRES, 'length', units, {
          decimals: LENGTH_DECIMALS[units],
          bare: true,
        }),
  );
}
