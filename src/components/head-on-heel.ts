/**
 * The head-on drawing heeled under a level surface: how near the upper tip comes to it, and the heel at which it breaks
 * it. The origin stays at cruise depth; heel is positive starboard down, as in the solver.
 */
import { css, html, nothing, svg } from 'lit';
import { live } from 'lit/directives/live.js';
import { stabilizerSurface } from '../session/foil-surfaces.ts';
import { surfaceFor } from '../session/planform-edits.ts';
import { formatWithUnit, type UnitSystem } from '../session/units.ts';
import type { Design } from '../solver/design/document.ts';
import { breachHeel, upperTipDepth } from '../solver/geometry/heel.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import { cruiseDepth, drawGhost, drawStrut, drawSurfaces, drawWater } from './head-on-parts.ts';
import { type HeadOnLayout, quarterLine, xOf, yOf } from './head-on-shapes.ts';

const DEGREES = 180 / Math.PI;
export const MOST_HEEL = 60; // degrees
const TOP = 22; // px over what stands highest
const LOW = 14; // px under what hangs lowest

export const heelStyles = css`
  .heel {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.2rem 0.7rem;
    margin-top: 0.35rem;
    font-size: var(--step--1);
    color: var(--soft);
    font-variant-numeric: tabular-nums;
  }
  .heel input {
    width: 11rem;
    max-width: 50%;
    accent-color: var(--carry);
    min-height: 1.5rem;
  }
  .heel output {
    flex: 1 1 14rem;
  }
  .heel .value {
    min-width: 2.6rem;
    color: var(--ink);
  }
  .heel .out {
    color: var(--thrown);
    font-weight: 600;
  }
  .heel button {
    font: inherit;
    color: inherit;
    background: none;
    border: 1px solid var(--edge);
    border-radius: var(--radius);
    padding: 0.1rem 0.55rem;
    cursor: pointer;
  }
  .heel :is(input, button):focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 1px;
  }
  .heel button:disabled {
    visibility: hidden;
  }
  path.out {
    fill: var(--thrown);
    stroke: var(--thrown);
  }
  .tip-mark {
    fill: none;
    stroke: var(--thrown);
    stroke-width: 1.5;
  }
  @media (pointer: coarse) {
    .heel :is(input, button) {
      min-height: 2.5rem;
    }
  }
  @media (forced-colors: active) {
    path.out {
      fill: Highlight;
    }
    .tip-mark {
      stroke: CanvasText;
    }
  }
`;

/** A foil at a heel, with what is worth knowing of it. Lengths in m, angles in degrees. */
export interface HeeledFoil {
  design: Design;
  wing: Surface;
  stabilizer: Surface | null;
  depth: number;
  heel: number;
  isHeeled: boolean;
  tipDepth: number; // of the wing's upper tip; negative out of the water
  boardHeel: number | null; // from which the board is in the water; null without a strut
  breach: { heel: number; part: 'wing' | 'stabilizer' } | null; // the first to break the surface
  ghost: Pick<HeeledFoil, 'wing' | 'stabilizer' | 'breach'> | null; // heeled with it, at the same depth
}

/** Null in deep water, where there is no surface to break. */
export function heeledFoil(
  design: Design,
  wing: Surface,
  stabilizer: Surface | null,
  heel: number,
  ghost: Design | null = null,
): HeeledFoil | null {
  const depth = cruiseDepth(design);
  if (depth === null) return null;
  return {
    design,
    wing,
    stabilizer,
    depth,
    heel,
    isHeeled: heel !== 0,
    tipDepth: upperTipDepth(wing, depth, heel / DEGREES),
    boardHeel: design.strut ? Math.acos(Math.min(1, depth / design.strut.length)) * DEGREES : null,
    breach: firstBreach(wing, stabilizer, depth),
    ghost: ghost && ghostFoil(ghost, depth),
  };
}

function ghostFoil(design: Design, depth: number): HeeledFoil['ghost'] {
  const wing = surfaceFor(design.wing);
  if (!wing) return null;
  const stabilizer = stabilizerSurface(design);
  return { wing, stabilizer, breach: firstBreach(wing, stabilizer, depth) };
}

function firstBreach(wing: Surface, stabilizer: Surface | null, depth: number): HeeledFoil['breach'] {
  const ofWing = breachHeel(wing, depth);
  const ofStabilizer = stabilizer && breachHeel(stabilizer, depth);
  if (ofWing === null && ofStabilizer === null) return null;
  return ofStabilizer !== null && ofStabilizer < (ofWing ?? Number.POSITIVE_INFINITY)
    ? { heel: ofStabilizer * DEGREES, part: 'stabilizer' }
    : { heel: ofWing! * DEGREES, part: 'wing' };
}

/** In the frame of the level drawing, at a scale at which any heel fits: it does not move as the slide does. */
export function layOutHeeled({ wing, depth, ghost }: HeeledFoil, level: HeadOnLayout): HeadOnLayout {
  const wings = ghost ? [wing, ghost.wing] : [wing];
  const swing = Math.max(...wings.map(({ halfSpan }) => halfSpan)) * Math.sin(MOST_HEEL / DEGREES);
  const drop = Math.max(...wings.map(({ tipDrop }) => Math.abs(tipDrop)));
  const halfLength = Math.max(...wings.map((each) => each.halfLength));
  const above = Math.max(depth, swing + drop);
  const below = swing + drop;
  const fitting = Math.min(
    (level.height - TOP - LOW) / (above + below),
    (level.width - 2 * LOW) / (2 * halfLength),
  );
  const scale = Math.min(level.scale, fitting);
  const originY = TOP + above * scale;
  return { ...level, scale, originY, surfaceY: originY - depth * scale, breakY: null };
}

export function drawHeeled(foil: HeeledFoil, level: HeadOnLayout, units: UnitSystem) {
  const { design, wing, stabilizer, heel, breach, ghost } = foil;
  const layout = layOutHeeled(foil, level);
  const { originX, originY, surfaceY, width } = layout;
  const turn = (degrees: number) => `rotate(${degrees.toFixed(2)} ${originX} ${originY.toFixed(1)})`;
  const upper = upperTip(foil, layout);
  return svg`<defs><clipPath id="air"><rect width=${width} height=${surfaceY ?? 0}></rect></clipPath></defs>
    <g role="img" aria-label=${heelReading(foil, units)}>
      ${drawWater(design, layout, units, heel > 0 ? 'right' : 'left')}
      ${
        breach && breach.heel <= MOST_HEEL
          ? svg`<path class="measure thin" transform=${turn(Math.sign(heel) * breach.heel)}
              d=${quarterLine(breach.part === 'wing' ? wing : stabilizer!, layout)}></path>`
          : nothing
      }
      <g transform=${turn(heel)}>${drawStrut(design, layout)} ${ghost ? drawGhost(ghost, layout) : nothing} ${drawSurfaces(design, wing, stabilizer, layout)}</g>
      <g clip-path="url(#air)"><g transform=${turn(heel)}>
        <path class="out" d=${quarterLine(wing, layout)} fill="none" stroke-width="5"></path>
      </g></g>
      <circle class="tip-mark" cx=${upper.x} cy=${upper.y} r="7"></circle>
    </g>`;
}

/** Where the upper tip stands, px. */
function upperTip({ wing, heel }: HeeledFoil, layout: HeadOnLayout) {
  const { y, z } = wing.point(1);
  const [cos, sin] = [Math.cos(heel / DEGREES), Math.abs(Math.sin(heel / DEGREES))];
  const out = heel > 0 ? -1 : 1; // starboard down: the port tip is the upper one
  return { x: xOf(layout, out * (y * cos - z * sin)), y: yOf(layout, z * cos + y * sin) };
}

export function heelReading(
  { heel, tipDepth, breach, boardHeel, isHeeled, ghost }: HeeledFoil,
  units: UnitSystem,
): string {
  const length = (value: number) => formatWithUnit(Math.abs(value), 'length', units);
  const angle = (value: number) => formatWithUnit(value, 'angle', units, { decimals: 0 });
  const own =
    breach === null
      ? 'No heel brings a tip to the surface at cruise depth.'
      : `The upper ${breach.part} tip breaks the surface at ${angle(breach.heel)} of heel.`;
  const limit = ghost ? `${own} ${ghostLimit(ghost, breach, angle)}` : own;
  if (!isHeeled) return limit;
  const side = heel > 0 ? 'port' : 'starboard';
  const place = tipDepth < 0 ? 'out of the water' : 'below the surface';
  const board = boardHeel !== null && Math.abs(heel) > boardHeel ? ' The board is in the water.' : '';
  return `The ${side} wing tip is ${length(tipDepth)} ${place}. ${limit}${board}`;
}

/** At the depth of the open design, as it is drawn. */
function ghostLimit(
  ghost: NonNullable<HeeledFoil['ghost']>,
  own: HeeledFoil['breach'],
  angle: (value: number) => string,
): string {
  if (!ghost.breach) return 'The ghost’s tips stay below at any heel.';
  const { part, heel } = ghost.breach;
  const apart = own ? Math.round(heel) - Math.round(own.heel) : 0;
  const later = apart === 0 ? '' : `, ${angle(Math.abs(apart))} ${apart > 0 ? 'later' : 'sooner'}`;
  return `The ghost’s ${part} does at ${angle(heel)}${later}.`;
}

export function heelControl(foil: HeeledFoil, units: UnitSystem, set: (heel: number) => void) {
  const { heel, isHeeled, tipDepth } = foil;
  const side = heel === 0 ? 'level' : heel > 0 ? 'starboard down' : 'port down';
  return html`<div class="heel">
    <label for="heel">Heel</label>
    <input
      id="heel"
      type="range"
      min=${-MOST_HEEL}
      max=${MOST_HEEL}
      step="1"
      .value=${live(String(heel))}
      aria-valuetext=${`${Math.abs(heel)} degrees, ${side}`}
      @input=${(event: Event) => set(Number((event.target as HTMLInputElement).value))}
    />
    <span class="value">${formatWithUnit(Math.abs(heel), 'angle', units, { decimals: 0 })}</span>
    <output for="heel" class=${isHeeled && tipDepth < 0 ? 'out' : ''}>${heelReading(foil, units)}</output>
    <button type="button" ?disabled=${!isHeeled} @click=${() => set(0)}>Level</button>
  </div>`;
}
