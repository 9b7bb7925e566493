/** The parts of the page below its head, each the inside of one section. */
import { html, nothing, type TemplateResult } from 'lit';
import { withMark } from '../session/number-format.ts';
import type { Session } from '../session/session.ts';
import { CAUTION } from '../solver/design/caution.ts';
import './band-list.ts';
import './ghost-chip.ts';
import './head-on-view.ts';
import './headline-figures.ts';
import './panels/brief-panel.ts';
import './panels/hold-panel.ts';
import './panels/ledger-panel.ts';
import './panels/shape-panel.ts';
import './plan-view.ts';
import type { QuestionContext } from './questions.ts';
import './side-view.ts';
import './solid-fold.ts';

export function headOn({ design, report, units, ghost }: QuestionContext): TemplateResult {
  return html`<ghost-chip .ghost=${ghost}></ghost-chip>
    <head-on-view .design=${design} .report=${report} .units=${units} .ghost=${ghost}></head-on-view>`;
}

export function headline({
  design,
  report,
  units,
  ghost,
  session,
  studies,
}: QuestionContext): TemplateResult {
  return html`<headline-figures .report=${report} .units=${units} .ghost=${ghost}></headline-figures>
    <band-list .design=${design} .units=${units} .studies=${studies} question="headline"></band-list>
    ${session.isFirst ? html`<p class="first">First figures, by thin-airfoil theory: the sections are being worked out.</p>` : nothing}`;
}

export function editors({ design, units }: QuestionContext): TemplateResult {
  return html`<brief-panel .brief=${design.brief} .units=${units}></brief-panel>
    <shape-panel .design=${design} .units=${units}></shape-panel>`;
}

export function moreViews({ design, report, units, ghost, studies }: QuestionContext): TemplateResult {
  return html`<plan-view .design=${design} .report=${report} .units=${units} .ghost=${ghost}></plan-view>
    <side-view .design=${design} .report=${report} .units=${units} .ghost=${ghost}></side-view>
    <solid-fold
      .design=${design}
      .report=${report}
      .units=${units}
      .ghost=${ghost}
      .studies=${studies}
    ></solid-fold>`;
}

export function answers({ design, report, units, ghost, session, studies }: QuestionContext): TemplateResult {
  return html`${trouble(session)}
    <ledger-panel
      .design=${design}
      .report=${report}
      .units=${units}
      .studies=${studies}
      .ghost=${ghost}
    ></ledger-panel>
    <hold-panel
      .design=${design}
      .report=${report}
      .units=${units}
      .pending=${session.isPending}
      .studies=${studies}
      .ghost=${ghost}
    ></hold-panel>
    ${report ? html`<p class="caution">${CAUTION}</p>` : nothing}`;
}

/** What the solver says begins small and ends without a stop; a key path at its head stays as it is. */
const asSentence = (text: string): string =>
  `${text.replace(/^[a-z](?=[a-z]* )/, (letter) => letter.toUpperCase()).replace(/\.$/, '')}.`;

function trouble({ failure, report }: Session) {
  if (failure === null) return nothing;
  return html`<p class="notice trouble" role="status">
    ${asSentence(withMark(failure))} ${report ? 'The figures here belong to the shape before it.' : ''}
  </p>`;
}

export const foot = html`<footer>
  <a href="help/accuracy.html">How far to trust it</a>
  <a href="help/theory.html">Theory</a>
  <a href="help/design-document.html">The design document</a>
  <a href="help/batch.html">The batch command</a>
</footer>`;
