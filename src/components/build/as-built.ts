/** What the measured wing does: the roll of its two sides, what cancels it, drawn against built, how exact to be. */
import { html } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { AsBuilt, Compared } from '../../solver/studies/as-built.ts';
import { figureTable, tableWithGhost } from '../figure-table.ts';
import { quantityCell } from '../table-cells.ts';

const fine = (value: number, units: UnitSystem) =>
  formatWithUnit(Math.abs(value), 'length', units, { decimals: { workshop: 2, si: 5, imperial: 4 }[units] });

/** The measured wing is one alone; how exact to be stands beside the ghost's. */
export function asBuiltAnswer(built: AsBuilt, ghost: AsBuilt | null, units: UnitSystem) {
  return html`${
    built.isMeasured
      ? html`${rollReading(built, units)} ${comparedTable(built.compared, units)}`
      : html`<p class="note">Nothing is measured yet: both sides count as drawn.</p>`
  }
  ${toleranceTable(built, ghost, units)}`;
}

function rollReading({ roll, byTwist, byChord, byHeight, shim, packing, lean }: AsBuilt, units: UnitSystem) {
  const moment = (value: number) => formatWithUnit(value, 'moment', units, { sign: true });
  const degrees = (value: number) => formatWithUnit(value, 'angle', units, { decimals: 2 });
  return html`<p class="say">
      At cruise the difference between the sides rolls the foil by <b>${moment(roll)}</b>, starboard down positive: twist
      ${moment(byTwist)}, chord ${moment(byChord)}, height ${moment(byHeight)}.
    </p>
    <p class="say">
      ${
        shim === null || packing === null
          ? 'No shim between the halves cancels it.'
          : `Turning the starboard half ${degrees(Math.abs(shim))} nose ${shim >= 0 ? 'up' : 'down'} and the port half as much the other way cancels it: ${fine(packing, units)} of packing over the root chord.`
      }
      Standing ${fine(lean, units)} further to ${lean >= 0 ? 'starboard' : 'port'} carries it too.
    </p>`;
}

function comparedTable(compared: readonly Compared[], units: UnitSystem) {
  const text = (value: number, unit: Compared['unit']) =>
    formatWithUnit(value, unit, units, unit === 'angle' ? { decimals: 2 } : {});
  return figureTable(
    'Drawn, and built: the middle of both sides',
    ['', 'drawn', 'built'],
    compared.map(({ name, unit, drawn, built }) => ({ cells: [name, text(drawn, unit), text(built, unit)] })),
  );
}

function toleranceTable(own: AsBuilt, ghost: AsBuilt | null, units: UnitSystem) {
  const table = tableWithGhost('How exactly each station must be twisted', own, ghost, ({ stations }) => ({
    head: ['', 'out', 'roll for 1° between the sides', 'difference that makes 1 N m'],
    rows: stations.map(({ distance, roll, tolerance }, number) => ({
      cells: [
        `S${number}`,
        quantityCell(distance, 'length', units),
        quantityCell(Math.abs(roll), 'moment', units),
        quantityCell(tolerance === null || tolerance > 45 ? null : tolerance, 'angle', units, {
          decimals: 2,
          why: 'any',
        }),
      ],
    })),
  }));
  return html`${table}
    <p class="note">
      One station at a time, its error fading to nothing at the stations beside it; nose up to starboard rolls starboard
      up. Wing, stabilizer and strut, vortex forces, no leeway.
    </p>`;
}
