import { css } from 'lit';

/** Headings and remarks of the panels that answer. */
export const answerStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }
  h2 {
    font-size: var(--step-0);
    font-weight: 650;
    margin: 0.75rem 0 0.2rem;
  }
  h2 small {
    font-size: var(--step--1);
    font-weight: 400;
    color: var(--soft);
  }
  h3 {
    font-size: var(--step--1);
    font-weight: 600;
    margin: 0.6rem 0 0;
    color: var(--soft);
  }
  section + section {
    border-top: 1px solid var(--line);
    margin-top: 0.8rem;
  }
  /* Read down the columns where there is room for two. */
  @container (min-width: 36rem) {
    .figures {
      columns: 2;
      column-gap: 1.6rem;
    }
    .figures > * {
      break-inside: avoid;
    }
  }
  @media (pointer: coarse) {
    summary {
      padding-block: 0.4rem;
    }
  }
  .note {
    margin: 0.15rem 0;
    font-size: var(--step--1);
    color: var(--soft);
  }
`;
