/**
 * The head-on drawing as plain shapes: from surfaces and strips in metres and newtons to pixels, y to starboard drawn
 * to the right, z up. No page needed.
 */
import { stationsOf } from '../session/foil-surfaces.ts';
import { nextPreferred } from '../session/rounding.ts';
import type { Outline, Planform } from '../solver/design/document.ts';
import { outlinePoints } from '../solver/geometry/outline.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import type { StripFigures } from '../solver/report.ts';
import { type Corner, lineText, mirrored, sparse } from './corners.ts';

/** Where the drawing puts things, px; `scale` is px per metre, both ways. */
export interface HeadOnLayout {
  width: number;
  height: number;
  scale: number;
  originX: number;
  originY: number;
  surfaceY: number | null; // the water surface; null in deep water
  breakY: number | null; // where the strut is broken because its length does not fit
  arrowRoom: number; // px for the longest arrows
}

export interface HeadOnSize {
  width: number;
  scale: number;
  top: number; // m, highest station above the origin
  low: number; // m, lowest station below it
  depth: number | null; // m
  strutLength: number; // m above the origin, 0 without a strut
}

const SURFACE_Y = 24; // px, of a surface that does not fit
const LABEL_ROOM = 34; // px for a line of text and air around it
const WORTH_DRAWING = 1.3; // how much taller a drawing may get so that the depth is to scale

export function layOutHeadOn({ width, scale, top, low, depth, strutLength }: HeadOnSize): HeadOnLayout {
  const arrowRoom = Math.min(150, Math.max(64, 0.17 * width));
  const above = arrowRoom + LABEL_ROOM + Math.max(0, top) * scale;
  const below = Math.max(70, Math.max(0, low) * scale + LABEL_ROOM);
  const toScale = depth === null ? 0 : depth * scale + SURFACE_Y;
  const fits = depth !== null && toScale <= WORTH_DRAWING * above;
  const originY = Math.round(fits ? Math.max(above, toScale) : depth === null ? above : above + LABEL_ROOM);
  const surfaceY = depth === null ? null : fits ? originY - depth * scale : SURFACE_Y;
  const isCut = depth === null ? strutLength * scale > originY : !fits;
  return {
    width,
    height: originY + Math.ceil(below / 24) * 24,
    scale,
    originX: width / 2,
    originY,
    surfaceY,
    breakY: isCut ? SURFACE_Y + 22 : null,
    arrowRoom,
  };
}

export const xOf = (layout: HeadOnLayout, y: number): number => layout.originX + y * layout.scale;
export const yOf = (layout: HeadOnLayout, z: number): number => layout.originY - z * layout.scale;

/** Where a handle stands on the line at eta, and its mirror image to port, px. */
export function placed(surface: Surface, eta: number, layout: HeadOnLayout) {
  const { y, z } = surface.point(eta);
  return { x: xOf(layout, y), y: yOf(layout, z), mirrorAt: xOf(layout, -y) };
}

/** Both halves of a surface with its true thickness, as one path. */
export function silhouette(surface: Surface, section: Planform['section'], layout: HeadOnLayout): string {
  const over: Corner[] = [];
  const under: Corner[] = [];
  for (const { eta, y, z, chord, droop } of stationsOf(surface)) {
    const { above, below } = rise(section, eta);
    const edge = (height: number): Corner => ({
      x: xOf(layout, y + Math.sin(droop) * height),
      y: yOf(layout, z + Math.cos(droop) * height),
    });
    over.push(edge(above * chord));
    under.push(edge(below * chord));
  }
  const half = sparse([...over, ...under.reverse()]);
  return `M${lineText(half)}ZM${lineText(mirrored(half, layout.originX))}Z`;
}

/** The line of quarter chords from tip to tip. */
export function quarterLine(surface: Surface, layout: HeadOnLayout): string {
  const half = sparse(stationsOf(surface).map(({ y, z }) => ({ x: xOf(layout, y), y: yOf(layout, z) })));
  return `M${lineText([...mirrored(half, layout.originX).reverse(), ...half])}`;
}

const heights = new WeakMap<Outline, { above: number; below: number }>();

/** Highest and lowest point of the section at eta over its chord line, as shares of the chord. */
function rise({ root, tip }: Planform['section'], eta: number): { above: number; below: number } {
  const from = riseOf(root);
  const to = riseOf(tip);
  const blend = (a: number, b: number) => a + (b - a) * eta;
  return { above: blend(from.above, to.above), below: blend(from.below, to.below) };
}

function riseOf(outline: Outline): { above: number; below: number } {
  const known = heights.get(outline);
  if (known) return known;
  const { y } = outlinePoints(outline, 61);
  const found = { above: Math.max(...y), below: Math.min(...y) };
  heights.set(outline, found);
  return found;
}

/** Stations a side that stay apart in a drawing of this width. */
export const stationCount = (width: number): number => Math.min(9, Math.max(6, Math.round(width / 64)));

/** The force on a station per metre of unrolled length, starboard half. */
export interface StationForce {
  eta: number;
  up: number; // N/m, carries
  aside: number; // N/m to starboard
  normal: number; // N/m along the untwisted normal
}

/** Forces at evenly spaced stations, read between the strips' middles. */
export function stationForces(strips: readonly StripFigures[], count: number): StationForce[] {
  if (strips.length === 0) return [];
  return Array.from({ length: count }, (_, k) => {
    const eta = (k + 0.5) / count;
    const read = (figure: (strip: StripFigures) => number) => between(strips, eta, figure);
    return {
      eta,
      up: read(({ forceZ, width }) => forceZ / width),
      aside: read(({ forceY, width }) => forceY / width),
      normal: read(({ normalForce, width }) => normalForce / width),
    };
  });
}

function between(
  strips: readonly StripFigures[],
  eta: number,
  figure: (strip: StripFigures) => number,
): number {
  const above = strips.findIndex((strip) => strip.eta >= eta);
  if (above === 0) return figure(strips[0]!);
  if (above === -1) return figure(strips.at(-1)!);
  const [low, high] = [strips[above - 1]!, strips[above]!];
  const share = (eta - low.eta) / (high.eta - low.eta);
  return figure(low) + share * (figure(high) - figure(low));
}

/**
 * One station's arrow, px. The force leans from (x, y) to (tipX, tipY): its upright part ends at (x, tipY), where the
 * sideways part begins. Swung upright, the whole normal force would reach (x, fullY): what is missing between tipY and
 * fullY is leaned away, to the same scale.
 */
export interface Arrow {
  x: number;
  y: number;
  tipX: number;
  tipY: number;
  fullY: number;
}

/** Arrows of both halves standing on the line of a surface; `perLoad` is px per N/m. */
export function arrowsOf(
  stations: readonly StationForce[],
  surface: Surface,
  layout: HeadOnLayout,
  perLoad: number,
): Arrow[] {
  return stations.flatMap(({ eta, up, aside, normal }) => {
    const { y, z } = surface.point(eta);
    return ([1, -1] as const).map((side) => {
      const x = xOf(layout, side * y);
      const foot = yOf(layout, z);
      return {
        x,
        y: foot,
        tipX: x + side * aside * perLoad,
        tipY: foot - up * perLoad,
        fullY: foot - normal * perLoad,
      };
    });
  });
}

/** px per N/m, so that a wing of usual loading fills the room; in steps, so that a heavier one has longer arrows. */
export function arrowScale(weight: number, length: number, arrowRoom: number): number {
  return arrowRoom / nextPreferred((1.35 * weight) / length);
}
