import { css } from 'lit';

/** Looks of handles: a small dot in a target of 24 px, 44 px for fingers; a ring where the keyboard is. */
export const handleStyles = css`
  .grip {
    touch-action: none;
    cursor: move;
  }
  .vertically {
    cursor: ns-resize;
  }
  .sideways {
    cursor: ew-resize;
  }
  .hit {
    fill: none;
    stroke: transparent;
    stroke-width: 24px;
    pointer-events: all;
  }
  .dot {
    fill: var(--raised);
    stroke: var(--focus);
    stroke-width: 1.8;
  }
  .point {
    fill: none;
    stroke: var(--focus);
    stroke-width: 1.3;
  }
  .grip:hover .dot {
    fill: color-mix(in oklab, var(--focus) 22%, var(--raised));
  }
  .slide {
    outline: none;
    pointer-events: none;
  }
  .ring,
  .toward {
    fill: none;
    stroke: var(--focus);
    stroke-width: 2.2;
    visibility: hidden;
  }
  .slide:focus .toward,
  .slide:focus-visible .ring {
    visibility: visible;
  }
  .refusal {
    margin: 0.15rem 0 0;
    min-height: 1.2em;
    font-size: var(--step--1);
    color: var(--bad);
  }
  .refusal:empty {
    display: none;
  }
  @media (pointer: coarse) {
    .hit {
      stroke-width: 44px;
    }
  }
  @media print {
    .handle {
      display: none;
    }
  }
  @media (forced-colors: active) {
    .dot {
      fill: Canvas;
      stroke: LinkText;
    }
    .point {
      stroke: LinkText;
    }
    .ring,
    .toward {
      stroke: Highlight;
    }
  }
`;
