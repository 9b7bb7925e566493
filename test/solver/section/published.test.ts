/**
 * Published values of groups 6 to 8. Rows in the lists called missed lie outside their tolerance: they are kept in
 * view, and a row that comes within it must move to the met ones.
 */
import { describe, expect, it } from 'vitest';
import { friction, frictionMissed } from '../../published/friction.ts';
import { misses } from '../../published/row.ts';
import { sectionDrag, sectionDragMissed } from '../../published/section-drag.ts';
import { transition } from '../../published/transition.ts';
import { runRows } from '../published/run-rows.ts';

describe('published: friction of plates', () => runRows(friction));
describe('published: transition, roughness, finish', () => runRows(transition));
describe('published: drag, lift and pressure of sections', () => runRows(sectionDrag));

describe('published and missed', () => {
  for (const row of [...frictionMissed, ...sectionDragMissed])
    it(`still missed: ${row.quantities[0]}: ${row.conditions}`, () => {
      expect(misses(row)).not.toEqual([]);
    });
});
