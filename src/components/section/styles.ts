import { css } from 'lit';

/** Shared by the panels that look at one section of the foil. */
export const sectionStyles = css`
  .controls,
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.5rem;
    --control-width: 10.5rem;
  }
  .pair,
  .charts {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 21rem), 1fr));
    gap: 0.5rem 1.5rem;
    align-items: start;
  }
  .say {
    font-size: var(--step-1);
    line-height: 1.45;
    margin: 0.2rem 0;
    font-variant-numeric: tabular-nums;
  }
  .trouble {
    border-left: 3px solid var(--thrown);
    padding-left: 0.5rem;
    font-size: var(--step--1);
    color: var(--ink);
    margin: 0.4rem 0;
  }
  section + section {
    border-top: 1px solid var(--line);
    margin-top: 0.7rem;
  }
  .wait {
    display: flex;
    gap: 0.6rem;
    align-items: center;
    font-size: var(--step--1);
    color: var(--soft);
  }
  progress {
    accent-color: var(--carry);
    width: 9rem;
  }
  button {
    font: inherit;
    font-size: var(--step--1);
    color: inherit;
    background: none;
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    padding: 0.2rem 0.55rem;
    min-height: 1.7rem;
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
