import { css } from 'lit';
import { visuallyHidden } from '../visually-hidden.ts';

/** Looks shared by the two pages outside the workbench: one column, big type, large targets. */
const ownStyles = css`
  :host {
    display: block;
    box-sizing: border-box;
    max-width: 40rem;
    margin: 0 auto;
    padding: 0.5rem 0.9rem 2rem;
    font-size: 1.0625rem;
    line-height: 1.35;
    color: var(--ink);
    background: var(--paper);
    font-variant-numeric: tabular-nums;
  }
  nav {
    display: flex;
    justify-content: space-between;
    align-items: center;
    gap: 0.6rem;
  }
  a {
    color: var(--ink);
    text-underline-offset: 0.2em;
  }
  nav a,
  p.back a {
    display: inline-flex;
    align-items: center;
    min-height: 3rem;
    font-weight: 600;
  }
  h1 {
    margin: 0.2rem 0 0.5rem;
    font-size: 1.3rem;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
  h2 {
    margin: 1.4rem 0 0.3rem;
    font-size: 1.1rem;
  }
  h1 .kind {
    display: block;
    font-size: 1rem;
    font-weight: 500;
    color: var(--soft);
  }
  button {
    font: inherit;
    font-weight: 600;
    color: inherit;
    background: var(--raised);
    border: 2px solid var(--edge);
    border-radius: var(--radius);
    min-height: 3rem;
    padding: 0 0.9rem;
    cursor: pointer;
    touch-action: manipulation;
  }
  button:is(:disabled, [aria-disabled='true']) {
    color: var(--soft);
    border-color: var(--line);
    cursor: default;
  }
  button:active:not(:disabled, [aria-disabled='true']) {
    background: var(--ink);
    color: var(--paper);
  }
  :is(a, button, [tabindex], summary):focus-visible {
    outline: 3px solid var(--focus);
    outline-offset: 2px;
  }
  summary {
    display: flex;
    align-items: center;
    gap: 0.5rem;
    min-height: 3rem;
    font-weight: 600;
    cursor: pointer;
    list-style: none;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary::before {
    content: '+' / '';
    font-size: 1.3em;
    width: 1em;
    text-align: center;
  }
  details[open] > summary::before {
    content: '\u2212' / '';
  }
  .trouble {
    border: 2px solid var(--bad);
    border-radius: var(--radius);
    padding: 0.5rem 0.8rem;
    margin: 0.6rem 0;
    font-weight: 600;
  }
  .wait {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.4rem 0.8rem;
    margin: 0.6rem 0;
  }
  progress {
    accent-color: var(--ink);
    width: 8rem;
  }
  .mark {
    white-space: nowrap;
    font-size: 0.9rem;
    color: var(--soft);
  }
  .mark::before {
    content: '' / '';
    display: inline-block;
    width: 0.6em;
    height: 0.6em;
    margin-right: 0.35em;
    border: 2px solid currentcolor;
  }
  .mark.solved::before {
    background: currentcolor;
  }
  .caution {
    margin: 1.4rem 0 0;
    padding-left: 0.6rem;
    border-left: 4px solid var(--thrown);
    font-size: 0.95rem;
    color: var(--soft);
  }
  @media print {
    :host {
      max-width: none;
      padding: 0;
      font-size: 11pt;
    }
    nav,
    button,
    .wait,
    p.back {
      display: none;
    }
    .mark.solved::before {
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
  }
`;

export const cardStyles = [visuallyHidden, ownStyles];
