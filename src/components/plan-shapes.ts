/** The foil from above as plain shapes: metres to pixels, y to starboard drawn to the right, x aft drawn downward. */
import { stationsOf } from '../session/foil-surfaces.ts';
import type { Design } from '../solver/design/document.ts';
import type { Surface } from '../solver/geometry/surface.ts';
import { lineText, mirrored, sparse } from './corners.ts';

export interface PlanLayout {
  width: number;
  height: number;
  scale: number; // px per metre
  originX: number;
  originY: number;
  cut: Cut | null; // the stretch of fuselage left out because it does not fit
}

/** The stretch of fuselage between two places is drawn shorter by `removed`. m */
export interface Cut {
  from: number;
  to: number;
  removed: number;
}

/** The drawing's reach fore and aft, m. */
export interface Reach {
  fore: number;
  aft: number;
}

const STUB = 0.02; // m of fuselage drawn on either side of a cut
const LEAST_CUT = 0.05; // m: less is not worth a cut
const EDGE = 18; // px around the drawing
const MOST_OFF = 0.3; // m behind the foil that a mark has the drawing reach
export const BEHIND_WING = 12; // px from the wing to the first name of a mark
export const NAME_LINE = 16; // px from one name to the next

export function reachOf(design: Design, wing: Surface, stabilizer: Surface | null): Reach {
  const { fuselage, strut } = design;
  const edges = [...edgesOf(wing), ...(stabilizer ? edgesOf(stabilizer) : [])];
  if (fuselage) edges.push(-fuselage.nose, fuselageTail(design));
  if (strut) edges.push(...strutEnds(strut));
  return { fore: Math.min(...edges), aft: Math.max(...edges) };
}

/** The reach with room aft for the marks that stand no further off and for their names, which stand behind the wing. */
export function withMarks(
  { fore, aft }: Reach,
  wing: Surface,
  marks: readonly number[],
  scale: number,
): Reach {
  const near = marks.filter((x) => x >= fore && x <= aft + MOST_OFF);
  const names = Math.max(sternOf(wing) + BEHIND_WING / scale, ...near) + (near.length * NAME_LINE) / scale;
  return { fore, aft: near.length ? Math.max(aft, names - EDGE / scale) : aft };
}

/** Where the fuselage ends, m aft. */
export const fuselageTail = ({ stabilizer }: Design): number => (stabilizer ? stabilizer.arm + 0.03 : 0.2);

/** The longest stretch of bare fuselage between what stands ahead and the stabilizer, if any is worth leaving out. */
export function cutOf(
  design: Design,
  wing: Surface,
  stabilizer: Surface | null,
  marks: readonly number[],
): Cut | null {
  if (!stabilizer) return null;
  const to = Math.min(...edgesOf(stabilizer)) - STUB;
  const ahead = [...edgesOf(wing), ...(design.strut ? strutEnds(design.strut) : []), ...marks];
  const from = Math.max(...ahead.filter((x) => x < to)) + STUB;
  const removed = to - from - STUB;
  return removed > LEAST_CUT ? { from, to, removed } : null;
}

export function layOutPlan(width: number, scale: number, { fore, aft }: Reach, cut: Cut | null): PlanLayout {
  const length = aft - fore - (cut?.removed ?? 0);
  return {
    width,
    height: Math.ceil((length * scale + 2 * EDGE) / 12) * 12,
    scale,
    originX: width / 2,
    originY: Math.round(EDGE - fore * scale),
    cut,
  };
}

export const acrossX = (layout: PlanLayout, y: number): number => layout.originX + y * layout.scale;

/** Pixels down for a place x; a cut moves everything behind it forward. */
export function alongY({ originY, scale, cut }: PlanLayout, x: number): number {
  if (!cut || x <= cut.from) return originY + x * scale;
  const kept = 1 - cut.removed / (cut.to - cut.from);
  const drawn = x >= cut.to ? x - cut.removed : cut.from + (x - cut.from) * kept;
  return originY + drawn * scale;
}

/** Where a handle stands at y and x (m), so many px outside, and its mirror image to port. */
export const placed = (layout: PlanLayout, y: number, x: number, beside = 0) => ({
  x: acrossX(layout, y) + beside,
  y: alongY(layout, x),
  ...(y > 0 && { mirrorAt: acrossX(layout, -y) - beside }),
});

/** Leading edge to starboard, back along the trailing edge and around to port: one closed path. */
export function outlinePath(surface: Surface, layout: PlanLayout): string {
  const edge = (share: number) =>
    stationsOf(surface).map(({ x, y, chord }) => ({
      x: acrossX(layout, y),
      y: alongY(layout, x + share * chord),
    }));
  const half = sparse([...edge(-0.25), ...edge(0.75).reverse()]);
  return `M${lineText([...half, ...mirrored(half, layout.originX).reverse()])}Z`;
}

/** Places of the leading and trailing edge along x, m. */
function edgesOf(surface: Surface): number[] {
  return stationsOf(surface).flatMap(({ x, chord }) => [x - 0.25 * chord, x + 0.75 * chord]);
}

/** The hindmost place of a surface, m. */
export const sternOf = (surface: Surface): number => Math.max(...edgesOf(surface));

const strutEnds = ({ x = 0, chord }: NonNullable<Design['strut']>): number[] => [
  x - 0.25 * chord,
  x + 0.75 * chord,
];

/** A streamlined outline of the strut in plan: round nose, pointed tail. */
export function strutPath(
  { x = 0, chord, thickness }: NonNullable<Design['strut']>,
  layout: PlanLayout,
): string {
  const nose = alongY(layout, x - 0.25 * chord);
  const widest = alongY(layout, x + 0.05 * chord);
  const tail = alongY(layout, x + 0.75 * chord);
  const half = Math.max(1.5, (thickness / 2) * layout.scale);
  const c = layout.originX;
  return `M${c} ${nose}C${c + half} ${nose} ${c + half} ${(nose + widest) / 2} ${c + half} ${widest}L${c} ${tail}L${c - half} ${widest}C${c - half} ${(nose + widest) / 2} ${c - half} ${nose} ${c} ${nose}Z`;
}

/** Labels pushed apart so that none covers another: places of their lines, px, in the order given. */
export function spacedLabels(places: readonly number[], least: number): number[] {
  const order = places.map((place, k) => ({ place, k })).sort((a, b) => a.place - b.place);
  const out = new Array<number>(places.length);
  let last = Number.NEGATIVE_INFINITY;
  for (const { place, k } of order) {
    last = Math.max(place, last + least);
    out[k] = last;
  }
  return out;
}
