import { css } from 'lit';

/** The button of a part that takes the reader on; the other buttons stand back. */
export const firstButton = css`
  button.first {
    background: var(--carry);
    border-color: var(--carry);
    color: var(--paper);
    font-weight: 600;
    padding: 0.35rem 0.9rem;
  }
`;
