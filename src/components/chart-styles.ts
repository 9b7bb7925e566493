import { css } from 'lit';

export const chartStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: baseline;
    gap: 0.2rem 0.8rem;
  }
  h3 {
    margin: 0;
    font-size: var(--step--1);
    font-weight: 600;
    color: var(--soft);
  }
  button[aria-pressed='true'] {
    background: var(--line);
  }
  .table:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  .copied {
    margin: 0;
    font-size: var(--step--1);
    color: var(--soft);
  }
  .copied:empty {
    display: none;
  }
  .chart[hidden] {
    display: none;
  }
  .plot {
    width: 100%;
    min-height: 210px;
  }
  .u-cursor-x {
    border-right-color: var(--soft);
  }
  ul {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1rem 0.9rem;
    margin: 0.2rem 0 0;
    padding: 0;
    list-style: none;
    font-size: var(--step--1);
    color: var(--soft);
  }
  li {
    display: flex;
    align-items: center;
    gap: 0.35rem;
  }
  output {
    min-width: 4.5ch;
    color: var(--ink);
    font-weight: 600;
    font-variant-numeric: tabular-nums;
  }
  .table {
    max-height: 16rem;
    overflow: auto;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    margin-top: 0.3rem;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: var(--step--1);
    font-variant-numeric: tabular-nums;
  }
  th,
  td {
    padding: 0.15rem 0.6rem;
    text-align: right;
    font-weight: 400;
    border-bottom: 1px solid var(--line);
  }
  thead th {
    position: sticky;
    top: 0;
    background: var(--raised);
    font-weight: 600;
  }
  @media print {
    .tools {
      display: none;
    }
  }
`;
