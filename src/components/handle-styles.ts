import { css, svg } from 'lit';

export const RING = 12; // px, radius of the ring that shows where the keyboard is

const POINTS = {
  vertically: 'M-2.6 -1.6l2.6 -2.6 2.6 2.6m-5.2 3.2l2.6 2.6 2.6 -2.6',
  sideways: 'M-1.6 -2.6l-2.6 2.6 2.6 2.6m3.2 -5.2l2.6 2.6 -2.6 2.6',
};
const TOWARD = {
  vertically: 'M-4 -15l4 -4 4 4m-8 30l4 4 4 -4',
  sideways: 'M-15 -4l-4 4 4 4m30 -8l4 4 -4 4',
};

const look = (id: string, drawn: unknown) =>
  svg`<marker id=${id} class="look" markerUnits="userSpaceOnUse">${drawn}</marker>`;
const dot = (points: string) =>
  svg`<circle class="dot" r="6.5"></circle><path class="point" d=${points}></path>`;

/** What stands where a handle is: its dot by the ways it goes, arrows where it is held, with a ring for the keyboard. */
export const handleLooks = svg`<defs>
  ${look('goes-freely', dot(POINTS.vertically + POINTS.sideways))}
  ${(['vertically', 'sideways'] as const).map((way) => {
    const toward = svg`<path class="toward" d=${TOWARD[way]}></path>`;
    return [
      look(`goes-${way}`, dot(POINTS[way])),
      look(`toward-${way}`, toward),
      look(`at-${way}`, [svg`<circle class="ring" r=${RING}></circle>`, toward]),
    ];
  })}
</defs>`;

/** Looks of handles: a small dot in a target of 24 px, 44 px for fingers; a ring where the keyboard is. */
export const handleStyles = css`
  .look {
    overflow: visible;
  }
  .grip {
    fill: none;
    stroke: transparent;
    stroke-width: 24px;
    stroke-linecap: round;
    pointer-events: all;
    touch-action: none;
    cursor: move;
    marker-start: url(#goes-freely);
  }
  .grip.vertically {
    cursor: ns-resize;
    marker-start: url(#goes-vertically);
  }
  .grip.sideways {
    cursor: ew-resize;
    marker-start: url(#goes-sideways);
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
  @media (hover: hover) {
    .grip:hover {
      stroke: color-mix(in oklab, var(--focus) 22%, transparent);
    }
  }
  .slide {
    fill: none;
    outline: none;
    pointer-events: none;
  }
  .ring,
  .toward {
    fill: none;
    stroke: var(--focus);
    stroke-width: 2.2;
  }
  .slide.vertically:focus {
    marker-mid: url(#toward-vertically);
  }
  .slide.sideways:focus {
    marker-mid: url(#toward-sideways);
  }
  .slide.vertically:focus-visible {
    marker-mid: url(#at-vertically);
  }
  .slide.sideways:focus-visible {
    marker-mid: url(#at-sideways);
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
    .grip {
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
