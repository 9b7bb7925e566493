import { html, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Studies } from '../../session/studies.ts';
import type { Quantity, UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import type { Report } from '../../solver/report.ts';
import { answerStyles } from '../answer-styles.ts';
import { BandsController } from '../bands.ts';
import { InSight } from '../in-sight.ts';
import '../figure-value.ts';
import type { Ghost } from '../ghost.ts';
import { drawLedgerBar, ledgerBarStyles } from '../ledger-bar.ts';
import * as lines from '../ledger-workings.ts';
import type { Given, Working } from '../working-parts.ts';
import * as workings from '../workings.ts';

interface Row {
  label: string;
  read: (report: Report) => number | null;
  quantity: Quantity;
  decimals?: number;
  signed?: boolean;
  note?: string;
  why?: string;
  working?: (given: Given) => Working;
}

/** Where the lift goes: at the same angle, and what carrying the same rider then costs. */
@customElement('ledger-panel')
export class LedgerPanel extends InSight {
  static override styles = [answerStyles, ledgerBarStyles];

  @property({ attribute: false }) design: Design | null = null;
  @property({ attribute: false }) report: Report | null = null;
  @property() units: UnitSystem = 'workshop';
  @property({ attribute: false }) studies: Studies | null = null;
  /** A second design whose figures stand beside these. */
  @property({ attribute: false }) ghost: Ghost | null = null;

  readonly #bands = new BandsController(this);

  /** The figures belong to the report: a design that has moved on changes nothing before its report comes. */
  protected override shouldUpdate(changed: PropertyValues<this>): boolean {
    return changed.size > 1 || !changed.has('design');
  }

  protected override render() {
    const { report, units } = this;
    if (!report) return html`<h2>Where the lift goes</h2><p class="note">No figures yet.</p>`;
    return html`<h2>Where the lift goes <small>same angle</small></h2>
      ${drawLedgerBar(report.ledger, units, this.ghost?.report?.ledger)}
      <div class="figures">${sameAngle(report).map((row) => this.#draw(row, report))}</div>
      <h2>To carry the same rider</h2>
      <div class="figures">${sameLift(report).map((row) => this.#draw(row, report))}</div>`;
  }

  #draw(row: Row, report: Report) {
    const { design, units, ghost } = this;
    const { working } = row;
    return html`<figure-value
      .label=${row.label}
      .value=${row.read(report)}
      .quantity=${row.quantity}
      .units=${units}
      .decimals=${row.decimals ?? null}
      .signed=${row.signed ?? false}
      .note=${row.note ?? ''}
      .why=${row.why ?? 'none'}
      .ghost=${ghost?.report ? row.read(ghost.report) : null}
      .bands=${this.#bands.current}
      .working=${working && design ? () => working({ design, report, units }) : null}
    ></figure-value>`;
  }
}

function sameAngle(report: Report): Row[] {
  const { ledger, condition } = report;
  const isLoss = (ledger.lostFraction ?? 0) >= 0;
  const isSmaller = ledger.metAtSmallerAngle >= 0;
  return [
    {
      label: 'The unrolled twin would lift',
      read: ({ ledger: l }) => l.flatLift,
      quantity: 'force',
      working: lines.unrolledTwin,
    },
    {
      label: isSmaller ? '− met at a smaller angle' : '+ met at a larger angle',
      read: ({ ledger: l }) => (isSmaller ? l.metAtSmallerAngle : -l.metAtSmallerAngle),
      quantity: 'force',
      working: workings.metAtSmallerAngle,
    },
    {
      label: '− leaned away',
      read: ({ ledger: l }) => l.leanedAway,
      quantity: 'force',
      working: workings.leanedAway,
    },
    {
      label: '= the wing carries',
      read: ({ ledger: l }) => l.verticalLift,
      quantity: 'force',
      working: lines.wingCarries,
    },
    {
      label: isLoss ? 'Lost to the curve' : 'Gained by the curve',
      read: ({ ledger: l }) => (l.lostFraction === null || isLoss ? l.lostFraction : -l.lostFraction),
      quantity: 'share',
      decimals: 2,
      why: 'no lift to compare',
      working: workings.lostLift,
    },
    ...(condition.depth === null ? [] : depthRows(report)),
    {
      label: 'Pushed sideways',
      read: ({ ledger: l }) => l.pushedSideways,
      quantity: 'force',
      working: lines.pushedSideways,
      note: 'Port and starboard cancel; only what is leaned away is lost.',
    },
  ];
}

/** What depth does to the loss: drooped tips run deeper and the surface takes less from them. */
function depthRows({ ledger }: Report): Row[] {
  const given = givenBack(ledger);
  const isBack = given === null || given >= 0;
  const why = 'nothing to compare';
  return [
    {
      label: 'The same in deep water',
      read: ({ ledger: l }) => l.deepWater.lostFraction,
      quantity: 'share',
      decimals: 2,
      why,
      working: lines.deepWater,
    },
    {
      label: isBack ? 'Deeper tips give back' : 'Shallower tips cost',
      read: ({ ledger: l }) => {
        const share = givenBack(l);
        return share === null ? null : isBack ? share : -share;
      },
      quantity: 'share',
      decimals: 2,
      why,
      working: lines.givenBack,
    },
  ];
}

function givenBack({ lostFraction, deepWater }: Report['ledger']): number | null {
  return lostFraction === null || deepWater.lostFraction === null
    ? null
    : deepWater.lostFraction - lostFraction;
}

function sameLift(report: Report): Row[] {
  const { sameSpan } = report.ledger.sameLift;
  const gives = sameSpan.extraInducedDrag <= 0;
  return [
    {
      label: 'Extra angle',
      read: ({ ledger }) => ledger.sameLift.unrolled.extraAlpha,
      quantity: 'angle',
      signed: true,
      note: 'against the unrolled twin',
      working: workings.extraAngle,
    },
    {
      label: 'Extra induced drag',
      read: ({ ledger }) => ledger.sameLift.unrolled.extraInducedDrag,
      quantity: 'force',
      signed: true,
      note: 'against the unrolled twin, in two parts:',
      working: workings.extraDrag,
    },
    {
      label: 'the shorter span',
      read: ({ ledger }) =>
        ledger.sameLift.unrolled.extraInducedDrag - ledger.sameLift.sameSpan.extraInducedDrag,
      quantity: 'force',
      signed: true,
      working: lines.shorterSpan,
    },
    {
      label: gives ? 'the bent wake gives back' : 'the bent wake costs',
      read: ({ ledger }) => ledger.sameLift.sameSpan.extraInducedDrag,
      quantity: 'force',
      signed: true,
      note: 'this is the difference to the flat twin of the same span',
      working: workings.sameSpanDrag,
    },
    {
      label: 'Extra angle, same-span twin',
      read: ({ ledger }) => ledger.sameLift.sameSpan.extraAlpha,
      quantity: 'angle',
      signed: true,
      working: workings.sameSpanAngle,
    },
    {
      label: 'Induced drag',
      read: ({ inducedDrag }) => inducedDrag.farField,
      quantity: 'force',
      working: workings.inducedDrag,
    },
    {
      label: 'Span efficiency e',
      read: ({ inducedDrag }) => inducedDrag.spanEfficiency,
      quantity: 'ratio',
      decimals: 3,
      why: 'no drag to divide by',
      working: workings.spanEfficiency,
    },
    {
      label: 'Least-drag factor k',
      read: ({ inducedDrag }) => inducedDrag.leastFactor,
      quantity: 'ratio',
      decimals: 3,
      note: 'of the wing’s curve at this depth; 1 is flat and elliptic in deep water',
      working: workings.leastFactor,
    },
  ];
}

declare global {
  interface HTMLElementTagNameMap {
    'ledger-panel': LedgerPanel;
  }
}
