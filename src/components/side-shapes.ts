/** The foil from the side as plain shapes: metres to pixels, x aft drawn to the right, z up. */
import { stationsOf } from '../session/foil-surfaces.ts';
import type { Design, Planform } from '../solver/design/document.ts';
import { blendOutlines } from '../solver/geometry/outline.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import { type Corner, lineText, sparse } from './corners.ts';

export interface SideLayout {
  width: number;
  height: number;
  scale: number; // px per metre
  originX: number;
  originY: number;
  fore: number; // m, foremost place of the foil
  depth: number | null; // m
  surfaceY: number | null;
  airY: number; // where the water begins in deep water
  boardY: number; // highest the strut is drawn
  balanceY: number;
  armY: number; // the line of the arm's dimension
  labelY: number; // the line of the neutral point's name
}

const SIDES = 30; // px free at either side
const MOST_SCALE_HEIGHT = 180; // px for the water above the foil
const AIR = 96; // px above the surface: board, balance point
const BELOW = 58; // px under the lowest tip: two lines of labels

/** `hold` keeps a figure as it was while an edit is moving. */
export function layOutSide(
  { brief, strut, fuselage }: Design,
  wing: Surface,
  stabilizer: Surface | null,
  width: number,
  hold: (name: string, value: number) => number,
): SideLayout {
  const depth = brief.depths?.cruise ?? brief.depth;
  const fore = Math.min(
    -0.25 * wing.chord(0),
    wing.x(1) - 0.25 * wing.chord(1),
    -(fuselage?.nose ?? 0),
    strut ? (strut.x ?? 0) - 0.25 * strut.chord : 0,
    brief.balance.x,
  );
  const aft = Math.max(
    brief.balance.x,
    wing.x(1) + 0.75 * wing.chord(1),
    stabilizer ? stabilizer.arm + stabilizer.chord(0) : 0.1,
    strut ? (strut.x ?? 0) + strut.chord : 0,
  );
  const above = depth ?? strut?.length ?? 0.5;
  const across = (width - 2 * SIDES) / (aft - fore);
  const scale = hold('scale', Math.min(across, MOST_SCALE_HEIGHT / above));
  const low = Math.max(0.02, wing.tipDrop, stabilizer ? stabilizer.tipDrop - stabilizer.height : 0);
  const water = AIR + hold('above', above) * scale;
  const lowest = water + hold('low', low) * scale;
  const middle = (width - (hold('fore', fore) + hold('aft', aft)) * scale) / 2;
  return {
    width,
    height: Math.round(lowest + BELOW),
    scale,
    originX: middle,
    originY: water,
    fore,
    depth,
    surfaceY: depth === null ? null : water - depth * scale,
    airY: AIR,
    boardY: 52,
    balanceY: 14,
    armY: lowest + 48,
    labelY: lowest + 26,
  };
}

const LETTER = 7.4; // px a letter of a label takes on average in a wide font

/** px that a label takes at most. */
export const lengthOf = (label: string): number => label.length * LETTER;

/**
 * Where a label goes beside what spans `left` to `right` (px): after it, or before it where there is
 * more room; within the drawing in any case.
 */
export function besidePlace(
  { width }: SideLayout,
  left: number,
  right: number,
  label: string,
): { x: number; anchor: 'start' | 'end' } {
  const long = lengthOf(label);
  const isAfter = right + long <= width || width - right >= left;
  return isAfter
    ? { x: Math.min(right, width - long), anchor: 'start' }
    : { x: Math.max(left, long), anchor: 'end' };
}

export const sideX = (layout: SideLayout, x: number): number => layout.originX + x * layout.scale;
export const sideY = (layout: SideLayout, z: number): number => layout.originY - z * layout.scale;

/** What is seen of the half towards its tip, and before it the root section: two paths. */
export function sideProfile(surface: Surface, planform: Planform, layout: SideLayout): [string, string] {
  const corner = (x: number, z: number): Corner => ({ x: sideX(layout, x), y: sideY(layout, z) });
  const edge = (share: number) => stationsOf(surface).map(({ x, z, chord }) => corner(x + share * chord, z));
  const closed = (corners: readonly Corner[]) => `M${lineText(sparse(corners))}Z`;
  const half = [...edge(-0.25), ...edge(0.75).reverse()];
  return [closed(half), closed(sectionCorners(surface, planform, corner))];
}

/** The root section at its incidence, turned about the quarter chord. */
function sectionCorners(
  surface: Surface,
  planform: Planform,
  corner: (x: number, z: number) => Corner,
): Corner[] {
  const { root, tip } = planform.section;
  const { x, y } = blendOutlines(root, tip, 0, 41);
  const chord = surface.chord(0);
  const angle = (planform.incidence * Math.PI) / 180;
  return Array.from(x, (at, k) => {
    const aft = (at - 0.25) * chord;
    const up = y[k]! * chord;
    return corner(
      surface.x(0) + aft * Math.cos(angle) + up * Math.sin(angle),
      surface.point(0).z + up * Math.cos(angle) - aft * Math.sin(angle),
    );
  });
}
