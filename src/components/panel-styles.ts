import { css } from 'lit';

/** Headings, groups and small buttons shared by the editors. */
export const panelStyles = css`
  :host {
    display: block;
  }
  h2,
  summary {
    font-size: var(--step-0);
    font-weight: 650;
    margin: 0.6rem 0 0.25rem;
  }
  h3 {
    font-size: var(--step--1);
    font-weight: 600;
    margin: 0.55rem 0 0.1rem;
    color: var(--soft);
  }
  summary {
    cursor: pointer;
    border-radius: var(--radius);
  }
  summary h2 {
    display: inline;
    margin: 0;
  }
  @media (pointer: coarse) {
    summary {
      padding-block: 0.4rem;
    }
  }
  .group {
    border-top: 1px solid var(--line);
    margin-top: 0.45rem;
    padding-top: 0.35rem;
  }
  .note {
    margin: 0.15rem 0 0.35rem;
    font-size: var(--step--1);
    color: var(--soft);
    font-variant-numeric: tabular-nums;
  }
  button {
    font: inherit;
    font-size: var(--step--1);
    color: inherit;
    background: none;
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    padding: 0.2rem 0.55rem;
    min-height: 1.6rem;
    cursor: pointer;
  }
  button:hover {
    background: var(--line);
  }
  :is(button, summary):focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  @media (pointer: coarse) {
    button {
      min-height: 2.5rem;
    }
  }
`;
