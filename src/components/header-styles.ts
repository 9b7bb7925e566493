import { css } from 'lit';

/** Buttons and choices in the head of the page. */
export const headerStyles = css`
  button,
  select,
  .file {
    font: inherit;
    color: inherit;
    background: var(--raised);
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    padding: 0.25rem 0.6rem;
    min-height: 1.9rem;
    max-width: 15rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    cursor: pointer;
  }
  button:disabled {
    color: var(--soft);
    border-color: var(--line);
    cursor: default;
  }
  :is(button, .file, select):hover:not(:disabled) {
    background: var(--line);
  }
  :is(button, select):focus-visible,
  .file:focus-within {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  @media (pointer: coarse) {
    button,
    select,
    .file {
      min-height: 2.5rem;
    }
  }
`;
