/** A published check: what someone else found, how closely it must be met, and how this program computes it. */
import { miss, type Tolerance } from '../support/close.ts';

export type Status =
  | 'read' // seen in a copy of the document
  | 'read (second-hand copy)' // seen as copied by someone else
  | 'derived' // computed independently of this program
  | 'from memory'
  | 'from memory + derived'
  | 'common practice';

export interface PublishedRow {
  quantities: readonly string[];
  conditions: string;
  published: readonly number[]; // one a quantity
  tolerance: readonly Tolerance[]; // one a quantity
  source: string;
  status: Status;
  method: string; // which model of the program answers, and how
  compute: () => number[]; // one a quantity
  missed?: string; // the program misses this row: why, as far as known
  series?: { name: string; axis: string; x: number }; // rows of one name and quantity make a curve
}

/** The row as a point of a curve. */
export const along = (row: PublishedRow, name: string, axis: string, x: number): PublishedRow => ({
  ...row,
  series: { name, axis, x },
});

/** One sentence for every quantity of the row that the program misses. */
export function misses(row: PublishedRow): string[] {
  const found = row.compute();
  if (found.length !== row.published.length || row.tolerance.length !== row.published.length)
    return [`${row.conditions}: ${row.published.length} values published, ${found.length} computed`];
  const sentences = row.quantities.map((quantity, k) =>
    miss(`${quantity} (${row.conditions})`, found[k]!, row.published[k]!, row.tolerance[k]!),
  );
  return sentences.filter((sentence) => sentence !== null);
}
