/** What the paint means: swatches with their figures, a sentence, and the same as a table. */
import { css, html, nothing, type TemplateResult } from 'lit';
import { formatValue, formatWithUnit, type UnitSystem, unitOf } from '../../session/units.ts';
import { placeOf } from '../../solver/geometry/shell.ts';
import type { Report } from '../../solver/report.ts';
import type { TransitionMap, TransitionStation } from '../../solver/studies/transition-map.ts';
import { figureTable } from '../figure-table.ts';
import { bandLabels, type SpreadPaint, valueAt } from './paint.ts';
import type { LegendEntry } from './picture.ts';

export const legendStyles = css`
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 0.15rem 0.9rem;
    margin: 0.3rem 0;
    padding: 0;
    list-style: none;
    font-size: var(--step--1);
    color: var(--soft);
    font-variant-numeric: tabular-nums;
  }
  .legend li {
    display: flex;
    align-items: center;
    gap: 0.35rem;
  }
  .legend i {
    flex: none;
    width: 1.5rem;
    height: 0.8rem;
    border: 1px solid var(--edge);
    forced-color-adjust: none;
  }
  .legend .hatched {
    background-image: repeating-linear-gradient(45deg, var(--turbulent-hatch) 0 1.5px, transparent 1.5px 5px);
  }
`;

const SHOWN_ETAS = [0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97];

export function spreadLegend({ bands, quantity }: SpreadPaint, units: UnitSystem): LegendEntry[] {
  const labels = bandLabels(bands, quantity, units);
  return bands.colours.map((colour, k) => ({ colour, label: labels[k]! }));
}

export const TRANSITION_LEGEND: readonly LegendEntry[] = [
  { colour: '--laminar', label: 'laminar' },
  { colour: '--turbulent', label: 'turbulent' },
];

export function legendList(entries: readonly LegendEntry[]): TemplateResult {
  return html`<ul class="legend" aria-label="Key to the colours">
    ${entries.map(
      ({ colour, label }) =>
        html`<li>
          <i class=${colour === '--turbulent' ? 'hatched' : nothing} .style=${`background-color: var(${colour})`}></i>${label}
        </li>`,
    )}
  </ul>`;
}

/** The painted figure at a few places of both surfaces. */
export function spreadTable(paint: SpreadPaint, report: Report, units: UnitSystem): TemplateResult {
  const { wing, stabilizer } = paint.lines;
  const unit = unitOf(paint.quantity, units);
  const write = (line: typeof wing, eta: number) =>
    line ? formatValue(valueAt(line, placeOf(eta)), paint.quantity, units) : '–';
  const half = report.geometry.wing.unrolledLength / 2;
  return figureTable(
    `${paint.title}${unit ? `, ${unit}` : ''}`,
    ['way to the tip', 'along the wing', 'wing', ...(stabilizer ? ['stabilizer'] : [])],
    SHOWN_ETAS.map((eta) => ({
      cells: [
        `${Math.round(100 * eta)} %`,
        formatWithUnit(eta * half, 'length', units),
        write(wing, eta),
        ...(stabilizer ? [write(stabilizer, eta)] : []),
      ],
    })),
  );
}

export function transitionTable({ wing, stabilizer }: TransitionMap): TemplateResult {
  const share = (x: number | null | undefined) =>
    x === null || x === undefined ? '–' : `${Math.round(100 * x)} %`;
  const cells = (station: TransitionStation | undefined) => [share(station?.upper), share(station?.lower)];
  const hasTail = stabilizer.length > 0;
  return figureTable(
    'Laminar up to this share of the chord',
    [
      'way to the tip',
      'wing, upper',
      'wing, lower',
      ...(hasTail ? ['stabilizer, upper', 'stabilizer, lower'] : []),
    ],
    wing.map((station, k) => ({
      cells: [share(station.eta), ...cells(station), ...(hasTail ? cells(stabilizer[k]) : [])],
    })),
  );
}

export function transitionWords({ laminarShare, speed }: TransitionMap, units: UnitSystem): string {
  const share = (value: number | null) =>
    value === null ? 'no section settled' : `${Math.round(100 * value)} % of the area laminar`;
  const tail = laminarShare.stabilizer === null ? '' : `, stabilizer ${share(laminarShare.stabilizer)}`;
  return `At ${formatWithUnit(speed, 'speed', units)}, level: wing ${share(laminarShare.wing)}${tail}.`;
}
