/** Where water boils and how low pressures fall, written out in the chosen units. */
import { html } from 'lit';
import { toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { CavitationStudy } from '../../solver/studies/cavitation-study.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { tableWithGhost } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { quantityCell } from '../table-cells.ts';
import { fixedCell, PLACE_NAMES, pressureCell, signed } from './words.ts';

export function inceptionTable(own: CavitationStudy, ghost: CavitationStudy | null, units: UnitSystem) {
  return tableWithGhost('Where the water first boils, running level', own, ghost, ({ inception }) => ({
    head: ['', 'from', 'at', 'deep'],
    rows: inception.map(({ place, speed, eta, depth }) => ({
      cells: [
        PLACE_NAMES[place],
        quantityCell(speed, 'speed', units),
        place === 'wing' || place === 'stabilizer' ? `${Math.round(100 * eta)} % of the half length` : '',
        quantityCell(depth, 'length', units),
      ],
    })),
  }));
}

export function pressureTable(own: CavitationStudy, ghost: CavitationStudy | null, units: UnitSystem) {
  return tableWithGhost('Lowest pressure', own, ghost, ({ pressures }) => ({
    head: ['', 'speed', 'where', 'cavitation number', 'lowest Cp', 'margin', 'against the air'],
    rows: pressures.flatMap(({ name, speed, worst }) =>
      worst
        ? [
            {
              cells: [
                name,
                quantityCell(speed, 'speed', units),
                PLACE_NAMES[worst.place],
                fixedCell(worst.sigma, 2),
                fixedCell(worst.cpMin, 2),
                signed(worst.margin, 'ratio', units, 2),
                pressureCell(worst.againstAir),
              ],
            },
          ]
        : [],
    ),
  }));
}

const LINES = {
  wing: { colour: '--carry', dash: [] },
  stabilizer: { colour: '--tail', dash: [] },
  strut: { colour: '--thrown', dash: [5, 3] },
} as const;

/** Limit speed strip by strip; strips that do not boil are left out. */
export function stripChart(
  study: CavitationStudy,
  ghost: CavitationStudy | null,
  top: number,
  units: UnitSystem,
) {
  const lines = withGhost(stripLines(study, units), ghost && stripLines(ghost, units));
  if (lines.length === 0) return html`<p class="note">No strip boils at speeds up to 40 m/s.</p>`;
  const limit = toDisplay(top, 'speed', units);
  return html`<line-chart
    heading="Speed at which each strip boils"
    x-name="root to tip; strut: surface to foot"
    x-unit="%"
    y-name="speed"
    .yUnit=${unitOf('speed', units)}
    .yDecimals=${1}
    .summary=${'Limit speed against the place along wing, stabilizer and strut.'}
    .series=${[
      ...lines,
      { name: 'top speed', x: [0, 100], y: [limit, limit], colour: '--soft', dash: [3, 3], width: 1 },
    ]}
  ></line-chart>`;
}

function stripLines({ strips }: CavitationStudy, units: UnitSystem): ChartSeries[] {
  return strips.flatMap(({ place, eta, speed }): ChartSeries[] => {
    const seen = eta.flatMap((at, k) =>
      Number.isFinite(speed[k]) ? [[100 * at, toDisplay(speed[k]!, 'speed', units)] as const] : [],
    );
    if (seen.length < 2) return [];
    return [{ name: place, x: seen.map(([x]) => x), y: seen.map(([, y]) => y), ...LINES[place] }];
  });
}
