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
  .rest,
  .how {
    margin: 0;
  }
  .rest div {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 0.8rem;
    align-items: baseline;
    padding: 0.35rem 0;
    border-bottom: 1px solid var(--line);
  }
  .rest dt {
    font-weight: 600;
  }
  .rest dd {
    display: contents;
  }
  .rest strong {
    font-size: 1.3rem;
    text-align: right;
  }
  .rest dd > span {
    color: var(--soft);
    font-size: 0.95rem;
  }
  .rest .mark {
    justify-self: end;
  }
  .how dt {
    font-weight: 600;
  }
  .how dd {
    margin: 0 0 0.6rem;
  }
  .paper {
    display: flex;
    flex-wrap: wrap;
    gap: 0.6rem;
  }
  table {
    font-size: 0.95rem;
  }
  caption,
  th {
    color: var(--ink);
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
    .reset,
    .paper,
    details,
    h2 {
      display: none;
    }
    .rest {
      columns: 2;
      column-gap: 16pt;
      border-top: 1pt solid var(--line);
    }
    .rest div {
      padding: 1pt 0;
      break-inside: avoid;
    }
    .rest strong {
      font-size: 12pt;
    }
    p:not(.caution) {
      margin: 4pt 0;
      font-size: 9.5pt;
    }
    .single[hidden] {
      display: block;
    }
    table {
      font-size: 9pt;
    }
    th,
    td {
      padding-block: 0;
    }
    .caution {
      margin-top: 6pt;
      font-size: 8.5pt;
    }
  }
`;
