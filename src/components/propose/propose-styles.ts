import { css } from 'lit';

export const proposeStyles = css`
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.8rem;
    align-items: center;
    margin: 0.5rem 0;
  }
  button:disabled {
    opacity: 0.5;
    cursor: default;
  }
  .row label {
    display: inline-flex;
    align-items: center;
    gap: 0.4rem;
    font-size: var(--step--1);
  }
  .row input[type='number'] {
    width: 5rem;
    font: inherit;
    color: inherit;
    background: var(--raised);
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    padding: 0.15rem 0.3rem;
  }
  input:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  .list {
    margin: 0.2rem 0 0.4rem;
    padding-left: 1.2rem;
  }
  .say {
    text-wrap: pretty;
  }
  .next {
    max-width: 40rem;
  }
`;
