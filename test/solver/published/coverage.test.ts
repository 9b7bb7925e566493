/** The accuracy report can be trusted only if it asks enough, and if what it writes is what it computed. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check, strain } from '../../published/check.ts';
import { FAULTS } from '../../published/faults.ts';
import { GROUPS } from '../../published/groups.ts';
import type { PublishedRow } from '../../published/row.ts';

const row = (compute: () => number[]): PublishedRow => ({
  quantities: ['length'],
  conditions: 'a test',
  published: [2],
  tolerance: [{ share: 0.1 }],
  source: 'none',
  status: 'derived',
  method: 'none',
  compute,
});

describe('published checks', () => {
  it.each(GROUPS.map((group) => [group.title, group.rows] as const))(
    '%s has ten rows or more',
    (_title, rows) => {
      expect(rows.length).toBeGreaterThanOrEqual(10);
    },
  );

  it('name every quantity once, with a value and a tolerance each', () => {
    for (const { rows } of GROUPS)
      for (const { quantities, published, tolerance, conditions } of rows) {
        expect(new Set(quantities).size, conditions).toBe(quantities.length);
        expect([published.length, tolerance.length], conditions).toEqual([
          quantities.length,
          quantities.length,
        ]);
      }
  });
});

describe('a check', () => {
  it('says what was found and whether that is within the tolerance', () => {
    expect(check(row(() => [2.1]))[0]).toMatchObject({ found: 2.1, isMissed: false, trouble: null });
    expect(check(row(() => [2.3]))[0]).toMatchObject({ isMissed: true, trouble: null });
    expect(strain(check(row(() => [2.1]))[0]!)).toBeCloseTo(0.5, 12);
  });

  it('that cannot be computed is a miss and says why', () => {
    const refuse = () => {
      throw new Error('no such wing');
    };
    expect(check(row(refuse))[0]).toMatchObject({ isMissed: true, trouble: 'no such wing' });
    expect(check(row(() => [Number.NaN]))[0]).toMatchObject({ isMissed: true, trouble: 'computed NaN' });
    expect(check(row(() => []))[0]!.isMissed).toBe(true);
  });
});

describe('a deliberate fault', () => {
  it.each(FAULTS.map((fault) => [fault.name, fault] as const))(
    'has its line in the solver, once: %s',
    (_, fault) => {
      const code = readFileSync(new URL(`../../../src/solver/${fault.file}`, import.meta.url), 'utf8');
      expect(code.split(fault.find)).toHaveLength(2);
      expect(fault.put).not.toBe(fault.find);
    },
  );
});
