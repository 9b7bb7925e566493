/** The still parts of the head-on drawing: water, strut, surfaces, ghost, tip. */
import { nothing, svg } from 'lit';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import { type HeadOnLayout, quarterLine, silhouette, xOf, yOf } from './head-on-shapes.ts';

export const cruiseDepth = ({ brief }: Design): number | null => brief.depths?.cruise ?? brief.depth;

export function drawWater(
  design: Design,
  layout: HeadOnLayout,
  units: UnitSystem,
  labelAt: 'left' | 'right' = 'left',
) {
  const { width, height, surfaceY } = layout;
  const depth = cruiseDepth(design);
  const isLeft = labelAt === 'left';
  if (surfaceY === null || depth === null)
    return svg`<rect class="water" width=${width} height=${height}></rect>
      <text x="8" y="18">deep water: the surface is too far to matter</text>`;
  return svg`<rect class="water" y=${surfaceY} width=${width} height=${height - surfaceY}></rect>
    <path class="surface" d="M0 ${surfaceY}H${width}"></path>
    <path class="level" d="M14 ${surfaceY}l-5 -8h10Z"></path>
    <text x=${isLeft ? 8 : width - 8} y=${surfaceY + 16} text-anchor=${isLeft ? 'start' : 'end'}>surface; depth ${formatWithUnit(depth, 'length', units)}</text>`;
}

export function drawStrut({ strut, fuselage }: Design, layout: HeadOnLayout) {
  const { scale, originX, originY, breakY } = layout;
  const wide = strut ? Math.max(2.5, strut.thickness * scale) : 0;
  const top = strut && breakY === null ? originY - strut.length * scale : -4;
  const across = wide / 2 + 5;
  const slant = (y: number) => `M${originX - across} ${y + 3}L${originX + across} ${y - 3}`;
  return svg`${strut ? svg`<rect class="strut" x=${originX - wide / 2} y=${top} width=${wide} height=${originY - top}></rect>` : nothing}
    ${strut && breakY !== null ? svg`<path class="gap" d=${slant(breakY)}></path><path class="cut" d="${slant(breakY - 3)}${slant(breakY + 3)}"></path>` : nothing}
    ${fuselage ? svg`<circle class="body" cx=${originX} cy=${originY} r=${Math.max(3, (fuselage.diameter / 2) * scale)}></circle>` : nothing}`;
}

/** Wing and stabilizer of the ghost as lines. */
export function drawGhost(
  { wing, stabilizer }: { wing: Surface | null; stabilizer: Surface | null },
  layout: HeadOnLayout,
) {
  return [wing, stabilizer].map((surface) =>
    surface ? svg`<path class="ghost" d=${quarterLine(surface, layout)}></path>` : nothing,
  );
}

export function drawSurfaces(
  design: Design,
  wing: Surface,
  stabilizer: Surface | null,
  layout: HeadOnLayout,
) {
  const tail =
    stabilizer && design.stabilizer
      ? svg`<path class="tail before" d=${silhouette(stabilizer, design.stabilizer.section, layout)}></path>`
      : nothing;
  // Seen from ahead the wing would hide the stabilizer; it is drawn in front so that both can be judged.
  return svg`<path class="wing" d=${silhouette(wing, design.wing.section, layout)}></path>${tail}`;
}

const NAMES = 104; // px that the longer of the tip's two figures takes
const BESIDE_TIP = 18; // px from the tip to a figure between the tips
const BESIDE_MEASURE = 26; // px to one beside the line that measures the drop

/** How far the tip hangs, and at what angle: between the tips, one under the other where both do not fit, else outside. */
export function drawTip(wing: Surface, layout: HeadOnLayout, units: UnitSystem) {
  const { y, z } = wing.point(1);
  const [tipX, portX, tipY] = [xOf(layout, y), xOf(layout, -y), yOf(layout, z)];
  const angle = formatWithUnit((wing.tipAngle * 180) / Math.PI, 'angle', units, { decimals: 1 });
  if (Math.abs(wing.tipDrop) < 0.0005)
    return svg`<text x=${tipX - 18} y=${tipY + 24} text-anchor="end">flat</text>`;
  const line = tipY + (wing.tipDrop > 0 ? 14 : -8);
  const between = tipX - portX - 2 * BESIDE_TIP;
  const isOutside = between < NAMES;
  const next = isOutside || between >= 2 * NAMES ? line : line + (wing.tipDrop > 0 ? 14 : -14);
  const side = tipX + 17;
  return svg`<path class="measure thin" d="M${layout.originX} ${layout.originY}H${side + 4}"></path>
    <path class="measure" d="M${side - 4} ${layout.originY}h8M${side} ${layout.originY}V${tipY}M${side - 4} ${tipY}h8"></path>
    <text x=${isOutside ? tipX + BESIDE_MEASURE : tipX - BESIDE_TIP} y=${line} text-anchor=${isOutside ? 'start' : 'end'}>tip drop ${formatWithUnit(wing.tipDrop, 'length', units)}</text>
    <text x=${isOutside ? portX - BESIDE_TIP : portX + BESIDE_TIP} y=${next} text-anchor=${isOutside ? 'end' : 'start'}>${angle} at the tip</text>`;
}
