import { css } from 'lit';

/** What the parts of Hold share beyond the other studies: measures that keep sentences and short tables readable. */
export const holdStyles = css`
  .say {
    max-width: 86ch;
  }
  .note {
    max-width: 100ch;
  }
  .wide {
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 36rem), 1fr));
  }
  .short {
    max-width: 44rem;
  }
  summary {
    cursor: pointer;
    border-radius: var(--radius);
    padding: 0.2rem 0;
  }
  :is(button, summary):focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
`;
