import { css, html, nothing, svg } from 'lit';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Report } from '../solver/report.ts';

/** The hatch of what is leaned away, for the defs of a drawing. */
export const leanHatch = svg`<pattern id="lean-hatch" width="4" height="4" patternUnits="userSpaceOnUse"
  patternTransform="rotate(45)"><rect class="lean-ground" width="4" height="4"></rect>
  <rect class="lean-line" width="2" height="4"></rect></pattern>`;

export const forceStyles = css`
  .carry {
    stroke: var(--carry);
    stroke-width: 2.6;
  }
  .thrown {
    stroke: var(--thrown);
    stroke-width: 2;
    stroke-dasharray: 4 2.5;
  }
  .lean {
    fill: url(#lean-hatch);
    stroke: var(--lean);
    stroke-width: 1;
  }
  .lean-ground {
    fill: var(--raised);
  }
  .lean-line {
    fill: var(--lean);
  }
  .force {
    stroke: var(--soft);
    stroke-width: 0.9;
  }
  .end {
    stroke: var(--soft);
    stroke-width: 3.6;
    stroke-linecap: round;
  }
  .tail-force {
    stroke: var(--tail);
    stroke-width: 2;
  }
  @media (forced-colors: active) {
    .carry,
    .thrown,
    .lean,
    .force,
    .tail-force {
      stroke: CanvasText;
    }
    .lean-line {
      fill: CanvasText;
    }
    .lean-ground {
      fill: Canvas;
    }
  }
`;

export const keyStyles = css`
  ul {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2rem 1rem;
    margin: 0.4rem 0 0;
    padding: 0;
    list-style: none;
    font-size: var(--step--1);
    color: var(--soft);
    font-variant-numeric: tabular-nums;
  }
  li {
    display: flex;
    align-items: center;
    gap: 0.4rem;
  }
  li svg {
    flex: none;
    width: 26px;
    height: 14px;
  }
  b {
    font-weight: 600;
    color: var(--ink);
  }
  .why {
    margin: 0.15rem 0 0;
    font-size: var(--step--1);
    color: var(--soft);
  }
`;

/** What the marks of the head-on view mean, with their sums. */
export function headOnKey(report: Report | null, units: UnitSystem) {
  const force = (value: number | undefined) =>
    value === undefined ? nothing : html`<b>${formatWithUnit(value, 'force', units)}</b>`;
  const ledger = report?.ledger;
  return html`<ul aria-label="Key">
      <li>${mark(svg`<line class="carry" x1="1" y1="7" x2="25" y2="7"></line>`)}carries the rider ${force(ledger?.verticalLift)}</li>
      <li>
        ${mark(svg`<line class="thrown" x1="1" y1="7" x2="25" y2="7"></line>`)}pushed sideways
        ${force(ledger?.pushedSideways)}
      </li>
      <li>${mark(svg`<rect class="lean" x="1" y="4" width="24" height="6"></rect>`)}leaned away ${force(ledger?.leanedAway)}</li>
      ${
        report && report.strips.stabilizer.length > 0
          ? html`<li>
              ${mark(svg`<line class="tail-force" x1="1" y1="7" x2="25" y2="7"></line>`)}stabilizer
              ${force(report.lift.stabilizer)}
            </li>`
          : nothing
      }
    </ul>
    <p class="why">Port and starboard cancel; only what is leaned away is lost.</p>`;
}

const mark = (shape: unknown) => html`<svg viewBox="0 0 26 14" aria-hidden="true">${shape}</svg>`;
