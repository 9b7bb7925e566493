import { css } from 'lit';

/** Ticks beside their words. */
export const tickStyles = css`
  label {
    display: inline-flex;
    gap: 0.45rem;
    align-items: center;
    min-height: 1.5rem;
    color: var(--ink);
  }
  input[type='checkbox'] {
    width: 1rem;
    height: 1rem;
    margin: 0;
    accent-color: var(--carry);
  }
  input:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
  }
`;
