import { expect, it } from 'vitest';
import { misses, type PublishedRow } from '../../published/row.ts';

/**
 * One test a row; a row that misses says what was found and what is published. A row known to miss must still do so:
 * one that comes within its tolerance has to lose its explanation.
 */
export function runRows(rows: readonly PublishedRow[]): void {
  for (const row of rows)
    it(`${row.missed ? 'still missed: ' : ''}${row.quantities.join('; ')}: ${row.conditions}`, () => {
      if (row.missed) expect(misses(row)).not.toEqual([]);
      else expect(misses(row)).toEqual([]);
    });
}
