import { css } from 'lit';

export const contourStyles = css`
  :host {
    display: block;
    font-size: var(--step--1);
    font-variant-numeric: tabular-nums;
  }
  .frame {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    grid-template-rows: auto auto auto;
    gap: 0.15rem 0.4rem;
  }
  .map {
    position: relative;
    height: clamp(15rem, 34vw, 24rem);
    border: 1px solid var(--edge);
    cursor: crosshair;
    overflow: hidden;
    touch-action: manipulation;
  }
  .map:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
  }
  svg {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    display: block;
  }
  path,
  line {
    vector-effect: non-scaling-stroke;
  }
  .line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.3;
  }
  .limit {
    fill: none;
    stroke: var(--thrown);
    stroke-width: 2.5;
    stroke-dasharray: 8 4;
  }
  .cross {
    stroke: var(--focus);
    stroke-width: 1;
  }
  .tag {
    position: absolute;
    transform: translate(-50%, 50%);
    padding: 0 0.2rem;
    border-radius: var(--radius);
    background: var(--paper);
    color: var(--ink);
    line-height: 1.25;
    white-space: nowrap;
    pointer-events: none;
  }
  .tag.edge {
    color: var(--thrown);
    font-weight: 600;
  }
  .present {
    position: absolute;
    width: 0.9rem;
    height: 0.9rem;
    transform: translate(-50%, 50%);
    border: 3px solid var(--paper);
    outline: 2px solid var(--ink);
    border-radius: 50%;
    background: var(--ink);
    pointer-events: none;
  }
  .ghost {
    position: absolute;
    width: 1rem;
    height: 1rem;
    transform: translate(-50%, 50%);
    border: 3px dashed var(--ghost);
    outline: 2px solid var(--paper);
    border-radius: 50%;
    background: color-mix(in srgb, var(--paper) 55%, transparent);
    pointer-events: none;
  }
  .up,
  .across {
    position: relative;
    color: var(--soft);
  }
  .up {
    width: 3.2rem;
  }
  .up span {
    position: absolute;
    right: 0;
    transform: translateY(50%);
  }
  .across {
    grid-column: 2;
    height: 1.2em;
  }
  .across span {
    position: absolute;
    transform: translateX(-50%);
  }
  .across span:last-child {
    transform: translateX(-90%);
  }
  .name {
    grid-column: 2;
    display: flex;
    justify-content: space-between;
    gap: 1rem;
    flex-wrap: wrap;
    color: var(--soft);
  }
  .key {
    display: inline-flex;
    align-items: center;
    gap: 0.35rem;
  }
  .ramp {
    display: inline-flex;
    border: 1px solid var(--edge);
  }
  .ramp i {
    width: 0.8rem;
    height: 0.7rem;
  }
  output {
    display: block;
    min-height: 1.5em;
    margin-top: 0.2rem;
  }
`;
