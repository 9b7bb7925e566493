import { css } from 'lit';

/** A line that unfolds what few will read. */
export const quietFold = css`
  summary {
    cursor: pointer;
    color: var(--soft);
    border-radius: var(--radius);
  }
  summary:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
`;
