import { expect, it } from 'vitest';
import { misses, type PublishedRow } from '../../published/row.ts';

/** One test a row; a row that misses says what was found and what is published. */
export function runRows(rows: readonly PublishedRow[]): void {
  for (const row of rows)
    it(`${row.quantities.join('; ')}: ${row.conditions}`, () => {
      expect(misses(row)).toEqual([]);
    });
}
