/** The strut under load, and root strains against what the laminate bears. */
import { html } from 'lit';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { LoadState, StrutState } from '../../solver/studies/strut-state.ts';
import { figureTable } from '../figure-table.ts';
import { PART_NAMES } from './words.ts';

const STATES = ['test', 'running'] as const;
const STATE_NAMES = { running: 'running at cruise', test: 'standard test load' };

export function strutTable(strut: StrutState, units: UnitSystem) {
  const foot = (state: LoadState) => {
    const motion = state.foot;
    if (!motion) return ['–', '–', '–'];
    const way = (value: number) => formatWithUnit(value, 'length', units, { sign: true });
    return [
      way(motion.side),
      way(motion.aft),
      formatWithUnit(motion.twist, 'angle', units, { decimals: 2, sign: true }),
    ];
  };
  return figureTable(
    'Where the strut’s foot goes',
    ['', 'to starboard', 'aft', 'twist'],
    STATES.map((state) => ({ cells: [STATE_NAMES[state], ...foot(strut[state])] })),
  );
}

/** Permille of strain, and what is left of the allowable after the safety factor. */
export function strainTable(strut: StrutState, units: UnitSystem) {
  const permille = (strain: number) => `${(1000 * strain).toFixed(2)} ‰`;
  const rows = STATES.flatMap((state) =>
    strut[state].strains
      .filter(({ strain }) => strain > 1e-6)
      .map(({ part, strain, from, allowable, reserve }) => ({
        cells: [
          `${PART_NAMES[part]}, ${STATE_NAMES[state]}`,
          permille(strain),
          formatWithUnit(from, 'length', units),
          permille(allowable),
          reserve === null ? '–' : reserve < 1 ? `${reserve.toFixed(2)}: short` : reserve.toFixed(1),
        ],
        isHere: reserve !== null && reserve < 1,
      })),
  );
  return html`${figureTable(
    'Strain at the most strained place',
    ['', 'strain', 'from its held end', 'allowable', `reserve at ${strut.safety} times`],
    rows,
  )}
    <p class="note">
      Reserve is the allowable over the strain times your safety factor; below 1 it is short. Landing, pumping and running
      aground load a foil far beyond cruise. Bonds, bolts and the box itself are not looked at.
    </p>`;
}
