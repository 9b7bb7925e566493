import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, formatWithUnit, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report } from '../../solver/report.ts';
import type { Ghost } from '../ghost.ts';
import { type GhostFigure, ghostFigures } from '../ghost-figures.ts';
import '../line-chart.ts';
import { coefficientSeries, liftSeries } from '../spread/charts.ts';
import { hardestStation, leastMargin, liftToMove, runsBeyond } from '../spread/spread-reading.ts';
import { placeAlong } from '../spread/stall-words.ts';

const FIGURES: readonly GhostFigure<Report>[] = [
  {
    label: 'Greatest section cl of the wing',
    read: ({ strips }) => hardestStation(strips.wing)?.cl,
    quantity: 'ratio',
    decimals: 2,
  },
  {
    label: 'Least margin to usable lift',
    read: ({ strips }) => leastMargin(strips.wing).margin,
    quantity: 'ratio',
    decimals: 2,
  },
  {
    label: 'Lift to move for the least drag',
    read: ({ strips }) => liftToMove(strips.wing),
    quantity: 'share',
    decimals: 1,
  },
  { label: 'Induced drag', read: ({ inducedDrag }) => inducedDrag.farField, quantity: 'force' },
  {
    label: 'Span efficiency',
    read: ({ inducedDrag }) => inducedDrag.spanEfficiency,
    quantity: 'ratio',
    decimals: 3,
  },
];

/** How lift is shared: lift per span and section lift coefficient of wing and stabilizer, root to tip. */
@customElement('spread-panel')
export class SpreadPanel extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    .charts {
      display: grid;
      grid-template-columns: repeat(auto-fit, minmax(min(100%, 21rem), 1fr));
      gap: 1rem 1.5rem;
    }
    p {
      margin: 0.2rem 0;
    }
    .say {
      font-size: var(--step-1);
      line-height: 1.45;
      font-variant-numeric: tabular-nums;
    }
    .note,
    .trouble {
      font-size: var(--step--1);
      color: var(--soft);
    }
    .trouble {
      border-left: 3px solid var(--thrown);
      padding-left: 0.5rem;
      color: var(--ink);
    }
  `;

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  /** Drawn dashed behind the design. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  /** The figures belong to the report: a design that has moved on changes nothing before its report comes. */
  protected override shouldUpdate(changed: PropertyValues<this>): boolean {
    return changed.size > 1 || !changed.has('design');
  }

  protected override render() {
    const { report, units } = this;
    if (!report) return html`<p class="note">No figures yet.</p>`;
    const reading = this.#reading(report);
    const common = {
      xUnit: unitOf('length', units),
      xDecimals: units === 'workshop' ? 0 : units === 'si' ? 3 : 2,
    };
    return html`<div class="charts">
        <line-chart
          heading="Lift per span"
          .summary=${`Lift per span from root to tip. ${reading.loading}`}
          x-name="from the middle"
          .xUnit=${common.xUnit}
          .xDecimals=${common.xDecimals}
          y-name="lift"
          .yUnit=${unitOf('liftPerSpan', units)}
          .yDecimals=${units === 'imperial' ? 2 : 0}
          .series=${liftSeries(report, this.ghost, units)}
        ></line-chart>
        <line-chart
          heading="Section lift coefficient"
          .summary=${`Section lift coefficient from root to tip. ${reading.hardest}`}
          x-name="from the middle"
          .xUnit=${common.xUnit}
          .xDecimals=${common.xDecimals}
          y-name="cl"
          .yDecimals=${3}
          .series=${coefficientSeries(report, this.ghost, units)}
        ></line-chart>
        <div>
          <p class="say">${reading.hardest}</p>
          ${this.#margin(report)}
          <p class="say">${reading.loading}</p>
          ${this.#drag(report)} ${ghostFigures(report, this.ghost?.report, units, FIGURES)}
        </div>
      </div>`;
  }

  #reading(report: Report): { hardest: string; loading: string } {
    const { units } = this;
    const hardest = hardestStation(report.strips.wing);
    const tip = report.geometry.wing.span / 2;
    const moved = formatWithUnit(liftToMove(report.strips.wing), 'share', units, { decimals: 1 });
    return {
      hardest: hardest
        ? `The wing’s section works hardest ${placeAlong(hardest.y, tip, units)}, at cl ${formatValue(hardest.cl, 'ratio', units, { decimals: 2 })}.`
        : 'The wing carries nothing upward here.',
      loading: `${moved} of the lift would have to move along the span to reach the least drag for this curve.`,
    };
  }

  /** How far the strips are from what their sections usably carry; which are beyond it. */
  #margin({ strips, sections, geometry }: Report) {
    const { units } = this;
    const tip = geometry.wing.span / 2;
    const { strip, margin } = leastMargin(strips.wing);
    const two = (value: number) => formatValue(value, 'ratio', units, { decimals: 2 });
    const beyond = runsBeyond(strips.wing);
    if (beyond.length > 0)
      return html`<p class="trouble" role="status">
        Beyond the usable lift of the section here:
        ${beyond.map((run) => `${formatWithUnit(run[0]!.y, 'length', units)} to ${formatWithUnit(run.at(-1)!.y, 'length', units)} from the middle`).join(', ')};
        furthest ${placeAlong(strip.y, tip, units)}, cl ${two(strip.cl)} of a usable ${two(strip.usableCl)}.
      </p>`;
    return html`<p class="note">
      Closest to its usable lift ${placeAlong(strip.y, tip, units)}: cl ${two(strip.cl)} of ${two(strip.usableCl)}, ${two(margin)}
      to go${sections.source === 'fixed' ? ' (assumed, common practice)' : ''}.
    </p>`;
  }

  #drag(report: Report) {
    const { units } = this;
    const { farField, spanEfficiency } = report.inducedDrag;
    const e =
      spanEfficiency === null
        ? nothing
        : `, span efficiency ${formatValue(spanEfficiency, 'ratio', units, { decimals: 3 })}`;
    const { froudeDepth, froudeSpan } = report.condition;
    return html`<p>Induced drag ${formatWithUnit(farField, 'force', units)}${e}.</p>
      <p class="note">
        Linear theory: coefficients follow the angle in proportion and know no stall. One half is shown; the other
        mirrors it.
        ${
          froudeDepth === null
            ? nothing
            : `Surface taken at infinite Froude number; here V/√(gh) is ${writeFixed(froudeDepth, 1)}, V/√(gb) ${writeFixed(froudeSpan, 1)}.`
        }
      </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'spread-panel': SpreadPanel;
  }
}
