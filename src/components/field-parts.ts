/** What every field looks like: label on the left, control on the right, message and hint below. */
import { css, html, nothing, type TemplateResult } from 'lit';

export const fieldStyles = css`
  :host {
    display: block;
    margin: 0.2rem 0;
    isolation: isolate; /* painted by itself: a value that changes under a drag leaves the other fields as they are */
  }
  :host([hidden]) {
    display: none;
  }
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr) var(--control-width, 8.2rem);
    gap: 0.12rem 0.5rem;
    align-items: center;
  }
  :host([wide]) .field,
  :host([bare]) .field {
    grid-template-columns: minmax(0, 1fr);
  }
  label {
    color: var(--soft);
  }
  :host([bare]) label {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .control {
    display: flex;
    align-items: baseline;
    min-width: 0;
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .control:focus-within {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  input,
  select {
    font: inherit;
    color: inherit;
    background: none;
    border: 0;
    outline: none;
    min-width: 0;
    width: 100%;
    padding: 0.2rem 0.4rem;
    border-radius: var(--radius);
  }
  select {
    padding-right: 0;
    background: var(--raised);
    min-height: 1.7rem;
  }
  input {
    font-variant-numeric: tabular-nums;
  }
  .unit {
    color: var(--soft);
    padding-right: 0.45rem;
    white-space: nowrap;
  }
  .invalid {
    border-color: var(--bad);
  }
  .message,
  .hint {
    grid-column: 1 / -1;
    margin: 0;
    font-size: var(--step--1);
    text-align: start; /* in a cell of a table too, as the next line */
    white-space: normal;
  }
  .message {
    color: var(--bad);
  }
  .message::before {
    content: '⚠ ' / '';
  }
  .hint {
    color: var(--soft);
  }
  @media (pointer: coarse) {
    .field {
      --control-width: 9.5rem;
    }
    input,
    select {
      min-height: 2.5rem;
      font-size: max(1rem, 16px);
    }
  }
`;

/** The part below the control: why the text does not count, or what the field means. */
export function below(message: string | null, hint: string): TemplateResult | typeof nothing {
  if (message) return html`<p class="message" id="note" role="alert">${message}</p>`;
  return hint ? html`<p class="hint" id="note">${hint}</p>` : nothing;
}
