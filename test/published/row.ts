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
}

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
