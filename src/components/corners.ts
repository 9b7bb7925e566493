/** Lines of the drawings: corners in pixels, no more of them than can be seen. */

export interface Corner {
  x: number;
  y: number;
}

const SEEN = 0.1; // px: a corner nearer than this to the line that leaves it out is not drawn

/** The corners of an open line, first and last among them, without those that nobody would miss. */
export function sparse(corners: readonly Corner[]): Corner[] {
  const kept = corners.slice(0, 1);
  let from = 0;
  for (let to = 2; to < corners.length; to++) {
    if (isStraight(corners, from, to)) continue;
    from = to - 1;
    kept.push(corners[from]!);
  }
  return corners.length > 1 ? [...kept, corners.at(-1)!] : kept;
}

/** Whether what lies between two corners keeps to the stretch that joins them. */
function isStraight(corners: readonly Corner[], from: number, to: number): boolean {
  const [start, end] = [corners[from]!, corners[to]!];
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  const square = dx * dx + dy * dy;
  for (let k = from + 1; k < to; k++) {
    const { x, y } = corners[k]!;
    const along = square > 0 ? ((x - start.x) * dx + (y - start.y) * dy) / square : 0;
    const nearest = Math.min(1, Math.max(0, along));
    if (Math.hypot(start.x + nearest * dx - x, start.y + nearest * dy - y) > SEEN) return false;
  }
  return true;
}

/** The same corners on the other side of an upright line. */
export const mirrored = (corners: readonly Corner[], axis: number): Corner[] =>
  corners.map(({ x, y }) => ({ x: 2 * axis - x, y }));

/** A place or a length as drawings write it. */
export const px = (value: number): string => value.toFixed(1);

/** As the text of a path, without its M and Z. */
export const lineText = (corners: readonly Corner[]): string =>
  corners.map(({ x, y }) => `${px(x)} ${px(y)}`).join('L');
