import { svg } from 'lit';

/** Balance point: the quartered disc of engineering drawings. */
export function balanceMark(x: number, y: number) {
  return svg`<circle class="mark-ground" r="6" cx=${x} cy=${y}></circle>
    <path class="mark" d="M${x} ${y}v-6a6 6 0 0 1 6 6zv6a6 6 0 0 1 -6 -6z"></path>`;
}

/** Neutral point: a diamond. */
export function neutralMark(x: number, y: number) {
  return svg`<path class="mark-ground" d="M${x} ${y - 7}l6 7 -6 7 -6 -7z"></path>`;
}
