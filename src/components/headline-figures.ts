import { css, html, LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Report } from '../solver/report.ts';

export interface Headline {
  name: string;
  value: string;
}

/** The few figures that decide, in words and numbers: also what is announced to screen readers. */
export function headlinesOf(report: Report, units: UnitSystem): Headline[] {
  const { ledger, inducedDrag, stability, geometry } = report;
  const plain = (value: number | null, decimals: number) =>
    value === null ? 'none' : formatWithUnit(value, 'ratio', units, { decimals });
  return [
    {
      name: 'Lost to the curve',
      value: ledger.lostFraction === null ? 'none' : formatWithUnit(ledger.lostFraction, 'share', units),
    },
    { name: 'Induced drag', value: formatWithUnit(inducedDrag.farField, 'force', units) },
    { name: 'Hold index', value: plain(stability.holdIndex, 2) },
    { name: 'Stabilizer volume', value: plain(geometry.stabilizer?.volume ?? null, 2) },
    { name: 'Neutral point, aft', value: formatWithUnit(stability.neutralPoint, 'length', units) },
  ];
}

/** The headline figures right under the shape, where the full answers do not fit beside it. */
@customElement('headline-figures')
export class HeadlineFigures extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    dl {
      display: grid;
      grid-template-columns: repeat(auto-fit, minmax(6.6rem, 1fr));
      gap: 0.4rem 0.8rem;
      margin: 0;
    }
    dt {
      color: var(--soft);
      font-size: var(--step--1);
    }
    dd {
      margin: 0;
      font-size: var(--step-1);
      font-weight: 600;
      font-variant-numeric: tabular-nums;
    }
  `;

  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';

  protected override render() {
    if (!this.report) return html`<p>…</p>`;
    return html`<dl>
      ${headlinesOf(this.report, this.units).map(
        ({ name, value }) =>
          html`<div>
            <dt>${name}</dt>
            <dd>${value}</dd>
          </div>`,
      )}
    </dl>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'headline-figures': HeadlineFigures;
  }
}
