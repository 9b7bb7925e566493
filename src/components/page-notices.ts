import { html, nothing, type TemplateResult } from 'lit';
import type { LeftOver } from '../session/left-over.ts';
import type { Elsewhere } from '../session/neighbours.ts';
import type { Notice, Session } from '../session/session.ts';

type Part = TemplateResult | typeof nothing;

/** What the user should know, above everything else: trouble with storage and files, and what other tabs have made. */
export function pageNotices(session: Session): Part[] {
  const { keeping, notice } = session;
  const [left, ...others] = keeping.left;
  return [
    keeping.state.kind === 'failed' ? troubleSaving(session, keeping.state.message) : nothing,
    session.isNewerReady ? newerReady(session) : nothing,
    keeping.elsewhere ? changedElsewhere(session, keeping.elsewhere) : nothing,
    left ? leftBehind(session, left, others.length) : nothing,
    notice ? said(session, notice) : nothing,
  ];
}

function troubleSaving(session: Session, message: string): TemplateResult {
  return html`<p class="notice trouble">
    ${message}
    <button type="button" @click=${() => session.saveFile()}>Save as a file</button>
  </p>`;
}

function newerReady({ keeping }: Session): TemplateResult {
  return html`<p class="notice news newer">
    A newer version is ready: reload when it suits you.
    ${
      keeping.state.kind === 'failed'
        ? nothing
        : html`<button type="button" @click=${() => window.location.reload()}>Reload now</button>`
    }
  </p>`;
}

function changedElsewhere(session: Session, { label }: Elsewhere): TemplateResult {
  const step = label === null ? '' : `; the last step there: ${label}`;
  return html`<p class="notice news elsewhere">
    This design differs in another tab${step}. Nothing has changed here.
    <button type="button" @click=${() => session.takeElsewhere()}>Take that version</button>
    <button type="button" @click=${() => session.keeping.declineElsewhere()}>Go on with mine</button>
  </p>`;
}

function leftBehind(session: Session, { design, time }: LeftOver, more: number): TemplateResult {
  const when = new Date(time).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
  return html`<p class="notice news left">
    “${design.name}”, last changed ${when} in a tab that is closed, is still saved here${more > 0 ? `, and ${more} more` : ''}.
    <button type="button" @click=${() => session.openLeft()}>Open it</button>
    <button type="button" @click=${() => session.keeping.hideLeft()}>Not now</button>
  </p>`;
}

function said(session: Session, { kind, message, unreadable, offer }: Notice): TemplateResult {
  return html`<p class="notice ${kind}">
    ${message}
    ${
      unreadable === undefined
        ? nothing
        : html`<button type="button" @click=${() => session.saveUnreadable()}>Save the unreadable copy</button>`
    }
    ${offer ? html`<button type="button" @click=${offer.take}>${offer.label}</button>` : nothing}
    <button type="button" @click=${() => session.say(null)}>Close</button>
  </p>`;
}
