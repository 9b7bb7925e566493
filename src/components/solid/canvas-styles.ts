import { css } from 'lit';

export const canvasStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }
  .view {
    position: relative;
  }
  .frame {
    position: relative;
    aspect-ratio: 16 / 10;
    max-height: 82vh;
    width: 100%;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: linear-gradient(var(--paper), var(--water));
    overflow: hidden;
  }
  canvas {
    display: block;
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    cursor: grab;
    touch-action: pan-y;
    user-select: none;
    -webkit-user-select: none;
    border-radius: var(--radius);
  }
  canvas:active {
    cursor: grabbing;
  }
  canvas:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: -2px;
  }
  .pad {
    position: absolute;
    right: 0.4rem;
    bottom: 0.4rem;
    display: grid;
    grid-template-areas: 'nearer up further' 'left down right';
    gap: 0.2rem;
  }
  .left {
    grid-area: left;
  }
  .up {
    grid-area: up;
  }
  .down {
    grid-area: down;
  }
  .right {
    grid-area: right;
  }
  .nearer {
    grid-area: nearer;
  }
  .further {
    grid-area: further;
  }
  .pad button {
    width: 1.9rem;
    height: 1.9rem;
    padding: 0;
    background: var(--raised);
  }
  .pad button:hover {
    background: var(--line);
  }
  .lost {
    position: absolute;
    inset: auto 0 0 0;
    margin: 0;
    padding: 0.4rem 0.7rem;
    background: var(--raised);
    border-top: 1px solid var(--line);
  }
  @container (max-width: 34rem) {
    .frame {
      aspect-ratio: 1;
    }
    /* A small picture has no room for buttons on it. */
    .pad {
      position: static;
      grid-template-areas: 'left up down right nearer further';
      justify-content: start;
      margin-top: 0.3rem;
    }
  }
  @media (pointer: coarse) {
    .pad button {
      width: 2.5rem;
      height: 2.5rem;
    }
  }
`;
