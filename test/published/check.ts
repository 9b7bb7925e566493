/** Runs published checks and says of each quantity what was found, how far off, and whether that is within bounds. */
import type { Tolerance } from '../support/close.ts';
import type { PublishedRow } from './row.ts';

export interface Checked {
  row: PublishedRow;
  quantity: string;
  published: number;
  found: number; // NaN: could not be computed
  allowed: number; // largest difference
  tolerance: string;
  isMissed: boolean;
  trouble: string | null; // why it could not be computed
}

/** One for each quantity of the row. Never throws: a row that cannot be computed says so. */
export function check(row: PublishedRow): Checked[] {
  const { found, trouble } = computed(row);
  return row.quantities.map((quantity, k): Checked => {
    const published = row.published[k]!;
    const value = found[k] ?? Number.NaN;
    const tolerance = row.tolerance[k]!;
    const allowed = 'share' in tolerance ? tolerance.share * Math.abs(published) : tolerance.within;
    return {
      row,
      quantity,
      published,
      found: value,
      allowed,
      tolerance: sayTolerance(tolerance),
      isMissed: !(Math.abs(value - published) <= allowed),
      trouble: trouble ?? (Number.isFinite(value) ? null : `computed ${value}`),
    };
  });
}

function computed(row: PublishedRow): { found: number[]; trouble: string | null } {
  try {
    return { found: row.compute(), trouble: null };
  } catch (error) {
    return { found: [], trouble: error instanceof Error ? error.message : String(error) };
  }
}

const sayTolerance = (tolerance: Tolerance): string =>
  'share' in tolerance ? `${+(100 * tolerance.share).toPrecision(3)} %` : `${tolerance.within}`;

/** The difference as a share of what is allowed: above 1 is a miss. */
export const strain = ({ found, published, allowed }: Checked): number =>
  found === published ? 0 : Math.abs(found - published) / allowed;
