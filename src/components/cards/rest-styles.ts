import { css } from 'lit';

/** The lower part of the beach card. */
export const restStyles = css`
  :host {
    max-width: none;
    margin: 0;
    padding: 0;
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
    p {
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
  }
`;
