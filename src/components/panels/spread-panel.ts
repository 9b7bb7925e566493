import { css, html, LitElement, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { writeFixed } from '../../session/number-format.ts';
import { formatValue, formatWithUnit, toDisplay, type UnitSystem, unitOf } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report, StripFigures } from '../../solver/report.ts';
import type { ChartSeries } from '../chart-columns.ts';
import '../line-chart.ts';
import type { Ghost } from '../ghost.ts';
import { hardestStation, liftToMove } from './spread-reading.ts';

const DASH = [6, 4];
const THIN = [2, 3];
const DASH_DOT = [10, 3, 2, 3]; // the stabilizer: told apart without colour

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
    .note {
      font-size: var(--step--1);
      color: var(--soft);
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
          .series=${this.#lift(report)}
        ></line-chart>
        <line-chart
          heading="Section lift coefficient"
          .summary=${`Section lift coefficient from root to tip. ${reading.hardest}`}
          x-name="from the middle"
          .xUnit=${common.xUnit}
          .xDecimals=${common.xDecimals}
          y-name="cl"
          .yDecimals=${3}
          .series=${this.#coefficients(report)}
        ></line-chart>
        <div>
          <p class="say">${reading.hardest}</p>
          <p class="say">${reading.loading}</p>
          ${this.#drag(report)}
        </div>
      </div>`;
  }

  #lift(report: Report): ChartSeries[] {
    const { density, speed } = report.condition;
    const { ghost } = this;
    const wing = (of: Report) => [...of.strips.wing.map(liftPerSpan), 0];
    const series = [
      this.#line('wing', report, 'wing', wing(report), { colour: '--carry' }),
      this.#line(
        'least drag for this curve',
        report,
        'wing',
        [...report.strips.wing.map(({ leastCirculation }) => density * speed * leastCirculation), 0],
        { colour: '--ink', width: 1, dash: THIN },
      ),
    ];
    if (report.strips.stabilizer.length > 0)
      series.push(
        this.#line('stabilizer', report, 'stabilizer', [...report.strips.stabilizer.map(liftPerSpan), 0], {
          colour: '--tail',
          dash: DASH_DOT,
        }),
      );
    if (ghost?.report)
      series.push(
        this.#line(`ghost wing`, ghost.report, 'wing', wing(ghost.report), { colour: '--ghost', dash: DASH }),
      );
    return series.map((each) => ({
      ...each,
      y: each.y.map((value) => toDisplay(value, 'liftPerSpan', this.units)),
    }));
  }

  #coefficients(report: Report): ChartSeries[] {
    const { ghost } = this;
    const cl = (of: Report, part: 'wing' | 'stabilizer') => of.strips[part].map((strip) => strip.cl);
    const series = [this.#line('wing', report, 'wing', cl(report, 'wing'), { colour: '--carry' })];
    if (report.strips.stabilizer.length > 0)
      series.push(
        this.#line('stabilizer', report, 'stabilizer', cl(report, 'stabilizer'), {
          colour: '--tail',
          dash: DASH_DOT,
        }),
      );
    if (ghost?.report)
      series.push(
        this.#line('ghost wing', ghost.report, 'wing', cl(ghost.report, 'wing'), {
          colour: '--ghost',
          dash: DASH,
        }),
      );
    return series;
  }

  /** A line over the strips' places; one value more than strips stands at the tip itself. */
  #line(
    name: string,
    report: Report,
    part: 'wing' | 'stabilizer',
    y: number[],
    looks: Pick<ChartSeries, 'colour' | 'width' | 'dash'>,
  ): ChartSeries {
    const strips = report.strips[part];
    const tip = (report.geometry[part]?.span ?? 0) / 2;
    const x =
      y.length > strips.length ? [...strips.map((strip) => strip.y), tip] : strips.map((strip) => strip.y);
    return { name, x: x.map((place) => toDisplay(place, 'length', this.units)), y, ...looks };
  }

  #reading(report: Report): { hardest: string; loading: string } {
    const { units } = this;
    const hardest = hardestStation(report.strips.wing);
    const tip = report.geometry.wing.span / 2;
    const moved = formatWithUnit(liftToMove(report.strips.wing), 'share', units, { decimals: 1 });
    return {
      hardest: hardest
        ? `The wing’s section works hardest ${placeOf(hardest.y / tip, formatWithUnit(hardest.y, 'length', units))}, at cl ${formatValue(hardest.cl, 'ratio', units, { decimals: 2 })}: raise the angle and with the same section all along it stalls there first.`
        : 'The wing carries nothing upward here.',
      loading: `${moved} of the lift would have to move along the span to reach the least drag for this curve.`,
    };
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

function placeOf(share: number, distance: string): string {
  return share < 0.08
    ? 'at the root'
    : `${distance} from the middle (${Math.round(100 * share)} % of the half span)`;
}

/** Vertical force per metre of span seen from above. */
const liftPerSpan = ({ forceZ, width, droop }: StripFigures): number =>
  forceZ / (width * Math.cos((droop * Math.PI) / 180));

declare global {
  interface HTMLElementTagNameMap {
    'spread-panel': SpreadPanel;
  }
}
