import { css } from 'lit';

/** The beach card: three figures that stay in sight, steps in thumb's reach, the rest below. */
export const beachStyles = css`
  .strip {
    position: sticky;
    top: 0;
    z-index: 1;
    display: grid;
    grid-template-columns: repeat(3, minmax(0, 1fr));
    gap: 0.5rem;
    margin: 0;
    padding: 0.4rem 0 0.5rem;
    background: var(--paper);
    border-block: 3px solid var(--ink);
    min-height: 6.2rem;
  }
  @media (max-width: 30rem) {
    .strip {
      min-height: 8.6rem; /* as with its figures: nothing jumps when they come */
    }
  }
  .strip .wait {
    grid-column: 1 / -1;
  }
  .strip dt {
    font-size: 0.95rem;
    font-weight: 600;
  }
  .strip dd {
    margin: 0;
  }
  .strip strong {
    display: block;
    font-size: 1.55rem;
    line-height: 1.15;
  }
  .strip b {
    display: block;
    line-height: 1.1;
  }
  .strip span {
    display: block;
    font-size: 0.9rem;
    color: var(--soft);
  }
  .strip[data-late] strong {
    text-decoration: underline dotted 2px;
    text-underline-offset: 0.2em;
  }
  .steppers {
    padding-top: 0.3rem;
  }
  .steppers p {
    margin: 0.4rem 0;
  }
  .waters {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0.5rem;
    padding: 0.25rem 0;
  }
  .waters button {
    min-height: 3.5rem;
  }
  .waters [aria-pressed='true'] {
    background: var(--ink);
    color: var(--paper);
  }
  .waters [aria-pressed='true']::before {
    content: '✓ ' / '';
  }
  .reset button {
    width: 100%;
  }
  @media print {
    .strip {
      position: static;
      border-width: 1.5pt;
      min-height: 0;
    }
    .steppers {
      columns: 2;
      padding-top: 4pt;
    }
    .waters {
      display: block;
      padding: 0;
    }
    .waters [aria-pressed='true'] {
      display: inline;
      background: none;
      color: inherit;
      border: 0;
      padding: 0;
    }
    .reset {
      display: none;
    }
    .caution {
      margin-top: 6pt;
      font-size: 8.5pt;
    }
  }
`;
