import { css, html, nothing, type TemplateResult } from 'lit';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Ledger } from '../solver/report.ts';

/** One stretch of the bar, as a share of its whole. */
export interface Stretch {
  kind: 'carried' | 'leaned' | 'met' | 'gained';
  share: number;
}

/**
 * The twin's lift in one bar: what is carried, what is leaned away, what is met at a smaller angle. Where the bent wing
 * meets the stream at a larger angle than its twin, the bar is the normal force and what is gained is marked on it.
 * Null where there is nothing to share out.
 */
export function stretchesOf({ verticalLift, normalForce, flatLift }: Ledger): Stretch[] | null {
  const whole = Math.max(flatLift, normalForce);
  if (!(whole > 0) || verticalLift <= 0 || normalForce < verticalLift - 1e-9 * whole) return null;
  if (flatLift >= normalForce)
    return [
      { kind: 'carried', share: verticalLift / whole },
      { kind: 'leaned', share: (normalForce - verticalLift) / whole },
      { kind: 'met', share: (flatLift - normalForce) / whole },
    ];
  const gained = Math.min(normalForce - flatLift, verticalLift);
  return [
    { kind: 'carried', share: (verticalLift - gained) / whole },
    { kind: 'gained', share: gained / whole },
    { kind: 'leaned', share: (normalForce - verticalLift) / whole },
  ];
}

const NAMES: Record<Stretch['kind'], string> = {
  carried: 'carries',
  leaned: 'leaned away',
  met: 'met at a smaller angle',
  gained: 'met at a larger angle',
};

export const ledgerBarStyles = css`
  .bar {
    display: flex;
    contain: strict; /* its stretches move nothing else */
    height: 1.5rem;
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    overflow: hidden;
    margin: 0.35rem 0;
    background: var(--raised);
  }
  .bar i {
    flex: none;
    width: calc(100% * var(--share));
  }
  .bar i:not(.carried) {
    border-left: 1px solid var(--raised);
  }
  .bar.ghost {
    height: 0.7rem;
    border: 1px dashed var(--ghost);
    opacity: 0.75;
  }
  .carried {
    background: var(--carry);
  }
  .leaned {
    background: repeating-linear-gradient(45deg, var(--lean) 0 3px, var(--raised) 3px 6px);
  }
  .met {
    background: repeating-linear-gradient(-45deg, var(--ghost) 0 2px, var(--raised) 2px 5px);
  }
  .gained {
    background: repeating-linear-gradient(90deg, var(--carry) 0 3px, var(--raised) 3px 5px);
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.8rem;
    margin: 0 0 0.3rem;
    padding: 0;
    list-style: none;
    font-size: var(--step--1);
    color: var(--soft);
    font-variant-numeric: tabular-nums;
  }
  .key i {
    display: inline-block;
    width: 0.9rem;
    height: 0.7rem;
    margin-right: 0.3rem;
    border: 1px solid var(--edge);
    vertical-align: -1px;
  }
  @media (forced-colors: active) {
    .bar i,
    .key i {
      forced-color-adjust: none;
    }
  }
`;

/** The ghost's ledger is a thinner bar under it. */
export function drawLedgerBar(ledger: Ledger, units: UnitSystem, ghost: Ledger | null = null) {
  const stretches = stretchesOf(ledger);
  if (!stretches)
    return html`<p class="note">The wing carries nothing upward: there is no lift to share out.</p>`;
  const share = (value: number) => formatWithUnit(value, 'share', units, { decimals: 1 });
  const drawn = stretches.filter((stretch) => stretch.share > 0.0005);
  const text = stretches.map((each) => `${NAMES[each.kind]} ${share(each.share)}`).join(', ');
  return html`${bar(drawn, `Of the lift: ${text}.`)} ${ghost ? ghostBar(ghost, share) : nothing}
    <ul class="key" aria-hidden="true">
      ${stretches.map((each) => html`<li><i class=${each.kind}></i>${NAMES[each.kind]} ${share(each.share)}</li>`)}
    </ul>`;
}

function ghostBar(ledger: Ledger, share: (value: number) => string) {
  const stretches = stretchesOf(ledger);
  if (!stretches) return nothing;
  const text = stretches.map((each) => `${NAMES[each.kind]} ${share(each.share)}`).join(', ');
  return bar(stretches, `Of the ghost’s lift: ${text}.`, 'ghost');
}

function bar(stretches: readonly Stretch[], text: string, kind = ''): TemplateResult {
  return html`<div class="bar ${kind}" role="img" aria-label=${text}>
    ${stretches.map((each) => html`<i class=${each.kind} .style="--share: ${each.share.toFixed(5)}"></i>`)}
  </div>`;
}
