/** Where water boils and how low pressures fall, written out in the chosen units. */
import { html } from 'lit';
import { writeFixed } from '../../session/number-format.ts';
import { formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { CavitationStudy } from '../../solver/studies/cavitation-study.ts';
import type { ChartSeries } from '../chart-columns.ts';
import { figureTable } from '../figure-table.ts';
import { withGhost } from '../ghost.ts';
import '../line-chart.ts';
import { PLACE_NAMES, signed } from './words.ts';

export function inceptionTable({ inception }: CavitationStudy, units: UnitSystem) {
  return figureTable(
    'Where the water first boils, running level',
    ['', 'from', 'at', 'deep'],
    inception.map(({ place, speed, eta, depth }) => ({
      cells: [
        PLACE_NAMES[place],
        formatWithUnit(speed, 'speed', units),
        place === 'wing' || place === 'stabilizer' ? `${Math.round(100 * eta)} % of the half length` : '',
        formatWithUnit(depth, 'length', units),
      ],
    })),
  );
}

export function pressureTable({ pressures }: CavitationStudy, units: UnitSystem) {
  return figureTable(
    'Lowest pressure',
    ['', 'speed', 'where', 'cavitation number', 'lowest Cp', 'margin', 'against the air'],
    pressures.flatMap(({ name, speed, worst }) =>
      worst
        ? [
            {
              cells: [
                name,
                formatWithUnit(speed, 'speed', units),
                PLACE_NAMES[worst.place],
                writeFixed(worst.sigma, 2),
                writeFixed(worst.cpMin, 2),
                signed(worst.margin, 'ratio', units, 2),
                `${signed(worst.againstAir / 1000, 'ratio', units, 0)} kPa`,
              ],
            },
          ]
        : [],
    ),
  );
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
