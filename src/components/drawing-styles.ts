import { css } from 'lit';

/** Looks shared by the drawings of the foil. */
export const drawingStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  figure {
    margin: 0;
  }
  figcaption {
    margin: 0.2rem 0;
    font-size: var(--step--1);
    color: var(--soft);
  }
  svg {
    display: block;
    width: 100%;
    contain: strict; /* what moves inside never moves the page */
    user-select: none;
    -webkit-user-select: none;
  }
  text {
    fill: var(--soft);
    font-size: 12px;
    paint-order: stroke;
    stroke: var(--water);
    stroke-width: 3px;
    stroke-linejoin: round;
    font-variant-numeric: tabular-nums;
  }
  .onPaper text {
    stroke: var(--paper);
  }
  text.air {
    stroke: var(--paper);
  }
  .water {
    fill: var(--water);
  }
  .surface {
    stroke: var(--surface);
    stroke-width: 1.5;
    fill: none;
  }
  .level {
    fill: var(--surface);
  }
  .wing {
    fill: var(--ink);
    stroke: var(--ink);
    stroke-width: 1;
    stroke-linejoin: round;
  }
  .tail {
    fill: var(--tail);
    stroke: var(--tail);
    stroke-width: 1;
    stroke-linejoin: round;
  }
  .before {
    stroke: var(--water);
  }
  .body {
    fill: var(--line);
    stroke: var(--ink);
    stroke-width: 1;
  }
  .strut {
    fill: var(--raised);
    stroke: var(--ink);
    stroke-width: 1;
  }
  .cut {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1;
  }
  .gap {
    fill: none;
    stroke: var(--water);
    stroke-width: 5;
  }
  .onPaper .gap {
    stroke: var(--paper);
  }
  .ghost {
    fill: none;
    stroke: var(--ghost);
    stroke-width: 1.6;
    stroke-dasharray: 5 4;
  }
  .measure {
    fill: none;
    stroke: var(--soft);
    stroke-width: 1;
  }
  .mark {
    fill: var(--ink);
  }
  .mark-ground {
    fill: var(--raised);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .thin {
    stroke-dasharray: 2 3;
  }
  @media (forced-colors: active) {
    text {
      fill: CanvasText;
      stroke: Canvas;
    }
    .water {
      fill: Canvas;
    }
    .wing,
    .tail {
      fill: CanvasText;
      stroke: CanvasText;
    }
    .surface,
    .measure,
    .cut {
      stroke: CanvasText;
    }
    .ghost {
      stroke: GrayText;
    }
  }
`;
