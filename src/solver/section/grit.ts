/**
 * Coated abrasives: the P scale of ISO 6344 (the former FEPA scale) and the height of roughness a grade leaves.
 * Grain sizes are medians in micrometres, from memory; those from P280 on were compared with a second-hand copy of the
 * table (test/solver/section/skin.test.ts).
 */
export interface Grade {
  name: string;
  median: number; // micrometres
}

const SIZES: ReadonlyArray<[number, number]> = [
  [80, 201],
  [100, 162],
  [120, 125],
  [150, 100],
  [180, 82],
  [220, 68],
  [240, 58.5],
  [280, 52.2],
  [320, 46.2],
  [360, 40.5],
  [400, 35],
  [500, 30.2],
  [600, 25.8],
  [800, 21.8],
  [1000, 18.3],
  [1200, 15.3],
  [1500, 12.6],
  [2000, 10.3],
  [2500, 8.4],
];

/** Coarse to fine. */
export const GRADES: readonly Grade[] = SIZES.map(([grade, median]) => ({ name: `P${grade}`, median }));

/** Median grain of any P number, m: between two grades of the scale by the ratio of both. */
export function grainOf(grade: number): number {
  const found = SIZES.findIndex(([number]) => number >= grade);
  const k = found < 0 ? SIZES.length - 1 : Math.max(1, found);
  const [[coarse, large], [fine, small]] = [SIZES[k - 1]!, SIZES[k]!];
  const share = Math.log(grade / coarse) / Math.log(fine / coarse);
  return large * (small / large) ** share * 1e-6;
}

/** Height of the roughness left over the median grain: an assumption, to be edited or replaced by a measured Rz. */
export const HEIGHT_SHARE = 0.2;

/** Height of roughness a grade leaves, m. */
export function gradeHeight(grade: Grade, share = HEIGHT_SHARE): number {
  return share * grade.median * 1e-6;
}

/** The coarsest grade that leaves no more than a height, m; null where even the finest leaves more. */
export function coarsestGrade(height: number, share = HEIGHT_SHARE): Grade | null {
  return GRADES.find((grade) => gradeHeight(grade, share) <= height) ?? null;
}
