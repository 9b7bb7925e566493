import { svg } from 'lit';

/** Balance point: the quartered disc of engineering drawings. */
export function balanceMark(x: number, y: number) {
  return svg`<g transform="translate(${x} ${y})"><circle class="mark-ground" r="6"></circle>
    <path class="mark" d="M0 -6A6 6 0 0 1 6 0H0ZM0 6A6 6 0 0 1 -6 0H0Z"></path></g>`;
}

/** Neutral point: a diamond. */
export function neutralMark(x: number, y: number) {
  return svg`<path class="mark-ground" transform="translate(${x} ${y})" d="M0 -7 6 0 0 7 -6 0Z"></path>`;
}
