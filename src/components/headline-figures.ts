import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { formatWithUnit, type Quantity, type UnitSystem } from '../session/units.ts';
import type { Report } from '../solver/report.ts';
import type { Ghost } from './ghost.ts';
import { InSight } from './in-sight.ts';

export interface Headline {
  name: string;
  value: string;
  against: string; // the ghost's value and the difference to it; empty without a ghost
}

interface Kind {
  name: string;
  quantity: Quantity;
  decimals?: number;
  read: (report: Report) => number | null;
}

const KINDS: readonly Kind[] = [
  { name: 'Lost to the curve', quantity: 'share', read: ({ ledger }) => ledger.lostFraction },
  { name: 'Induced drag', quantity: 'force', read: ({ inducedDrag }) => inducedDrag.farField },
  { name: 'Hold index', quantity: 'ratio', decimals: 2, read: ({ stability }) => stability.holdIndex },
  {
    name: 'Stabilizer volume',
    quantity: 'ratio',
    decimals: 2,
    read: ({ geometry }) => geometry.stabilizer?.volume ?? null,
  },
  { name: 'Neutral point, aft', quantity: 'length', read: ({ stability }) => stability.neutralPoint },
];

/** The few figures that decide, in words and numbers: also what is announced to screen readers. */
export function headlinesOf(report: Report, units: UnitSystem, ghost: Report | null = null): Headline[] {
  return KINDS.map(({ name, quantity, decimals, read }) => {
    const write = (value: number, sign = false) =>
      formatWithUnit(value, quantity, units, { sign, ...(decimals !== undefined && { decimals }) });
    const value = read(report);
    const other = ghost && read(ghost);
    const difference = value === null || other === null ? '' : ` (${write(value - other, true)})`;
    return {
      name,
      value: value === null ? 'none' : write(value),
      against: other === null ? '' : `ghost ${write(other)}${difference}`,
    };
  });
}

/** Their places, so that nothing moves when they come. */
const YET_TO_COME: readonly Headline[] = KINDS.map(({ name }) => ({ name, value: '…', against: '' }));

/** The headline figures right under the shape, where the full answers do not fit beside it. */
@customElement('headline-figures')
export class HeadlineFigures extends InSight {
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
    .ghost {
      font-size: var(--step--1);
      font-weight: 400;
      color: var(--soft);
      border-left: 2px dashed var(--ghost);
      padding-left: 0.4rem;
    }
  `;

  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) ghost: Ghost | null = null;

  protected override render() {
    const { report, units, ghost } = this;
    const headlines = report ? headlinesOf(report, units, ghost?.report) : YET_TO_COME;
    return html`<dl>
      ${headlines.map(
        ({ name, value, against }) =>
          html`<div>
            <dt>${name}</dt>
            <dd>${value}</dd>
            ${against ? html`<dd class="ghost">${against}</dd>` : nothing}
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
