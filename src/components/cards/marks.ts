import { html, type TemplateResult } from 'lit';

/** How a figure of a card comes about. */
export type Kind = 'solved' | 'estimated';

export const markOf = (kind: Kind): TemplateResult => html`<span class="mark ${kind}">${kind}</span>`;

/** `what`: "this setting". */
export const marksExplained = (what: string): TemplateResult => html`<p>
  ${markOf('solved')}: flow round the foil and balance of the rider, worked out anew for exactly ${what}.
  ${markOf('estimated')}: rests as well on section friction, stall, or a formula. Good for comparing, not to the last digit.
</p>`;

/** One clear message in place of a page, with the way back. */
export function cardTrouble(message: string): TemplateResult {
  return html`<h1>Downcurve</h1>
    <p class="trouble" role="alert">${message}</p>
    <p class="back"><a href="./">To the workbench</a></p>`;
}
