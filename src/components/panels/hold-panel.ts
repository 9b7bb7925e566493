import { css, html, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report } from '../../solver/report.ts';
import { answerStyles } from '../answer-styles.ts';
import { BandsController } from '../bands.ts';
import { InSight } from '../in-sight.ts';
import '../derivatives-table.ts';
import '../figure-value.ts';
import type { FigureValue } from '../figure-value.ts';
import type { Ghost } from '../ghost.ts';
import { isIndexSecondary, trustNote } from '../hold/index-trust.ts';
import { balancePoint } from '../ledger-workings.ts';
import { quietFold } from '../quiet-fold.ts';
import { cellStyles, drawCell, quantityCell } from '../table-cells.ts';
import type { Given, Working } from '../working-parts.ts';
import * as workings from '../workings.ts';

const NOT_RESOLVED = 0.002; // |C_nr| below which a ratio to it says nothing
const SEARCHED = 75; // degrees of droop that the search for the neutral droop covers

type Looks = Partial<Pick<FigureValue, 'decimals' | 'why' | 'note' | 'quantity' | 'stale'>>;

/**
 * Does it hold: the hold index with its terms beside the solved figures, after them where it ranks designs less well; where
 * the foil balances.
 */
@customElement('hold-panel')
export class HoldPanel extends InSight {
  static override styles = [
    answerStyles,
    cellStyles,
    quietFold,
    css`
      .terms {
        display: grid;
        grid-template-columns: repeat(3, minmax(0, 1fr));
        gap: 0 0.6rem;
        margin: 0;
        padding: 0.25rem 0;
        border-bottom: 1px dotted var(--line);
        font-size: var(--step--1);
        color: var(--soft);
      }
      small {
        font-size: 1em;
      }
      dd {
        margin: 0;
        font-weight: 600;
        color: var(--ink);
        font-variant-numeric: tabular-nums;
      }
      details {
        margin: 0.6rem 0;
        font-size: var(--step--1);
      }
    `,
  ];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** A second design whose figures stand beside these. */
  @property({ attribute: false }) ghost: Ghost | null = null;
  /** The complete answer, neutral droop included, is still to come. */
  @property({ type: Boolean }) pending = false;

  #neutralDroop: number | null = null; // as last found, shown until it is found again

  readonly #bands = new BandsController(this);

  /** The figures belong to the report: a design that has moved on changes nothing before its report comes. */
  protected override shouldUpdate(changed: PropertyValues<this>): boolean {
    return changed.size > 1 || !changed.has('design');
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const found = this.report?.stability.neutralDroop ?? null;
    if (changed.has('report') && (found !== null || !this.pending)) this.#neutralDroop = found;
    if (changed.has('pending') && !this.pending) this.#neutralDroop = found;
  }

  protected override render() {
    const { design, report } = this;
    if (!design || !report) return html`<h2>Does it hold?</h2><p class="note">No figures yet.</p>`;
    return html`<h2>Does it hold?</h2>
      <div class="figures">
        ${isIndexSecondary ? [this.#solved(report), this.#index(design, report)] : [this.#index(design, report), this.#solved(report)]}
      </div>
      <h2>Where it balances</h2>
      <div class="figures">${this.#balance(design)}</div>
      <details>
        <summary>All lateral derivatives</summary>
        <derivatives-table
          .stability=${report.stability}
          .ghost=${this.ghost?.report?.stability ?? null}
        ></derivatives-table>
      </details>`;
  }

  #figure(
    label: string,
    read: (report: Report, design: Design) => number | null,
    working: ((given: Given) => Working) | null,
    looks: Looks = {},
  ) {
    const { design, report, units, ghost } = this;
    return html`<figure-value
      .label=${label}
      .value=${read(report!, design!)}
      .quantity=${looks.quantity ?? 'ratio'}
      .units=${units}
      .decimals=${looks.decimals ?? null}
      .why=${looks.why ?? 'none'}
      .note=${looks.note ?? ''}
      .stale=${looks.stale ?? false}
      .ghost=${ghost?.report ? read(ghost.report, ghost.design) : null}
      .bands=${this.#bands.current}
      .working=${working ? () => working({ design: design!, report: report!, units }) : null}
    ></figure-value>`;
  }

  #index(design: Design, report: Report) {
    const { stability, lift } = report;
    const note = !design.stabilizer
      ? 'No stabilizer: index 0.'
      : stability.holdTerms.yaw === 0
        ? 'A flat stabilizer has no sideways volume: index 0.'
        : `For comparing designs; it proves nothing. ${trustNote()}`;
    const noLift = lift.CL > 0 ? 'none' : 'none: no lift';
    return html`${this.#figure('Hold index', ({ stability: s }) => s.holdIndex, workings.holdIndex, {
      decimals: 2,
      why: noLift,
      note,
    })}
      ${drawTerms(stability.holdTerms, this.ghost?.report?.stability.holdTerms)}`;
  }

  #solved(report: Report) {
    const { units } = this;
    const tip = report.geometry.wing;
    const isResolved = Math.abs(report.stability.foil.Cnr) >= NOT_RESOLVED;
    const isOld = this.#neutralDroop !== null && report.stability.neutralDroop === null;
    return html`${this.#figure(
      'Roll from yaw, solved',
      ({ stability: s }) => s.rollFromYaw,
      workings.rollFromYaw,
      {
        decimals: 3,
        note: describeRoll(report.stability.rollFromYaw),
      },
    )}
    ${this.#figure(
      'Neutral droop',
      (of) => (of === report ? this.#neutralDroop : of.stability.neutralDroop),
      workings.neutralDroop,
      {
        quantity: 'angle',
        decimals: 1,
        stale: isOld,
        why: this.pending ? 'being found' : `none found up to ${SEARCHED}°`,
        note: `Tip angle at which a yaw no longer rolls the foil. Effective droop now: ${formatWithUnit(tip.effectiveDroop, 'angle', units, { decimals: 1 })}.`,
      },
    )}
    ${this.#figure(
      'Yaw from roll, solved',
      ({ stability: s }) => (Math.abs(s.foil.Cnr) >= NOT_RESOLVED ? s.yawFromRoll : null),
      workings.yawFromRoll,
      {
        decimals: 2,
        why: 'not resolved',
        note: isResolved ? '' : 'The foil alone hardly damps a yaw: a ratio to next to nothing says nothing.',
      },
    )}`;
  }

  #balance(design: Design) {
    const { units } = this;
    const height = formatWithUnit(design.brief.balance.height, 'length', units);
    return html`${this.#figure(
      'Neutral point, aft',
      ({ stability: s }) => s.neutralPoint,
      workings.neutralPoint,
      {
        quantity: 'length',
        note: 'from the wing root’s quarter chord',
      },
    )}
    ${this.#figure('Balance point, aft', (_report, { brief }) => brief.balance.x, balancePoint, {
      quantity: 'length',
      note: `${height} above the wing: rider, board and foil together`,
    })}
    ${this.#figure('Geometric static margin', ({ stability: s }) => s.staticMargin, workings.staticMargin, {
      quantity: 'share',
      decimals: 0,
      note: 'of the mean chord; ranges known from aircraft do not apply, the weight stands high above',
    })}
    ${this.#figure(
      'Stabilizer volume',
      ({ geometry }) => geometry.stabilizer?.volume ?? null,
      design.stabilizer ? workings.stabilizerVolume : null,
      { decimals: 2, why: 'no stabilizer' },
    )}`;
  }
}

/** The three terms, as they multiply. */
function drawTerms(own: Terms, ghost: Terms | undefined) {
  return html`<dl class="terms">
    ${TERMS.map(([key, meaning, decimals]) => {
      const cell = (of: Terms) => quantityCell(of[key], 'ratio', 'si', { decimals, why: 'none' });
      return html`<div>
        <dt>${key} term<br /><small>${meaning}</small></dt>
        <dd>${drawCell(cell(own), ghost && cell(ghost))}</dd>
      </div>`;
    })}
  </dl>`;
}

type Terms = Report['stability']['holdTerms'];

const TERMS = [
  ['roll', 'droop by lift', 3],
  ['yaw', 'sideways volume', 5],
  ['pitch', 'stabilizer volume', 2],
] as const;

/** C_lr positive: turning to starboard rolls starboard down. */
function describeRoll(ratio: number | null): string {
  if (ratio === null) return '';
  if (Math.abs(ratio) < 0.01) return 'A yaw hardly rolls the foil.';
  return ratio > 0 ? 'A yaw rolls the foil into the turn.' : 'A yaw rolls the foil out of the turn.';
}

declare global {
  interface HTMLElementTagNameMap {
    'hold-panel': HoldPanel;
  }
}
