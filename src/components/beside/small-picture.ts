/** A design seen head-on, small: both surfaces with their true thickness, the strut, the fuselage. */
import { html, nothing, svg } from 'lit';
import { stabilizerSurface, stationsOf } from '../../session/foil-surfaces.ts';
import { surfaceFor } from '../../session/planform-edits.ts';
import { formatWithUnit, type UnitSystem } from '../../session/units.ts';
import type { Design } from '../../solver/design/document.ts';
import { type HeadOnLayout, silhouette } from '../head-on-shapes.ts';

const WIDTH = 220;
const ABOVE = 16; // px of strut

/** `extent`: metres that fit across, the same for all pictures that stand together. */
export function smallPicture(design: Design, extent: number, units: UnitSystem) {
  const wing = surfaceFor(design.wing);
  const tail = stabilizerSurface(design);
  if (!wing) return nothing;
  const surfaces = tail ? [wing, tail] : [wing];
  const heights = surfaces.flatMap((surface) => stationsOf(surface).map(({ z }) => z));
  const scale = WIDTH / extent;
  const top = Math.ceil(Math.max(ABOVE, Math.max(...heights) * scale + 6));
  const height = Math.ceil(top + Math.max(6, -Math.min(...heights) * scale + 6));
  const layout: HeadOnLayout = {
    width: WIDTH,
    height,
    scale,
    originX: WIDTH / 2,
    originY: top,
    surfaceY: null,
    breakY: null,
    arrowRoom: 0,
  };
  const { strut, fuselage } = design;
  const wide = strut ? Math.max(1.5, strut.thickness * scale) : 0;
  const name = `${design.name}, head-on: ${formatWithUnit(wing.span, 'length', units)} span, tips ${formatWithUnit(Math.abs(wing.tipDrop), 'length', units)} ${wing.tipDrop < 0 ? 'up' : 'down'}`;
  return html`<svg class="picture" viewBox="0 0 ${WIDTH} ${height}" width=${WIDTH} height=${height} role="img" aria-label=${name}>
    ${strut ? svg`<rect class="strut" x=${WIDTH / 2 - wide / 2} y="0" width=${wide} height=${top}></rect>` : nothing}
    ${fuselage ? svg`<circle class="body" cx=${WIDTH / 2} cy=${top} r=${Math.max(2, (fuselage.diameter / 2) * scale)}></circle>` : nothing}
    <path class="wing" d=${silhouette(wing, design.wing.section, layout)}></path>
    ${tail && design.stabilizer ? svg`<path class="tail" d=${silhouette(tail, design.stabilizer.section, layout)}></path>` : nothing}
  </svg>`;
}
