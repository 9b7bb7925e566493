import { html, type TemplateResult } from 'lit';
import type { StudyName } from '../session/study-messages.ts';
import type { StudyController } from './study-controller.ts';

/** In place of an answer that is not there yet: why there is none, or how far it has come, with Cancel and Go on. */
export function studyWait<N extends StudyName>(study: StudyController<N>, what: string): TemplateResult {
  if (study.failure) return html`<p class="trouble" role="status">${study.failure}</p>`;
  if (study.isHalted)
    return html`<p class="wait">Stopped. <button type="button" @click=${study.resume}>Go on</button></p>`;
  return html`<div class="wait" role="status">
    <span>${what} …</span><progress max="1" .value=${study.share ?? 0} aria-label=${what}></progress>
    <button type="button" @click=${study.cancel}>Cancel</button>
  </div>`;
}
