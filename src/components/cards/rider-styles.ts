import { css } from 'lit';

export const pictureStyles = css`
  .second {
    fill: none;
    stroke: var(--thrown);
    stroke-width: 2;
    stroke-dasharray: 6 4;
    stroke-linejoin: round;
  }
  @media (forced-colors: active) {
    .second {
      stroke: LinkText;
    }
  }
`;

export const riderStyles = css`
  .pair {
    margin: 0 0 0.6rem;
    padding: 0;
    list-style: none;
  }
  .pair li {
    display: grid;
    grid-template-columns: 3rem minmax(0, 1fr);
    gap: 0.6rem;
    align-items: center;
    overflow-wrap: anywhere;
    font-weight: 600;
    font-size: 1.15rem;
  }
  .pair svg {
    width: 3rem;
    height: 8px;
  }
  .pair path {
    stroke: var(--ink);
    stroke-width: 5;
  }
  .pair .dashed {
    stroke: var(--thrown);
    stroke-width: 2.5;
    stroke-dasharray: 6 4;
  }
  .five {
    margin: 0.8rem 0;
    padding: 0;
    list-style: none;
    counter-reset: line;
  }
  .five > li {
    padding: 0.6rem 0;
    border-bottom: 1px solid var(--line);
    font-size: 1.15rem;
  }
  .five p {
    margin: 0;
  }
  .links {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.6rem;
  }
  .note {
    font-size: 1rem;
    color: var(--soft);
  }
`;
