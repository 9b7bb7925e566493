import { describe, expect, it } from 'vitest';
import { blendOutlines } from '../../../src/solver/geometry/outline.ts';
import { sectionBlend } from '../../../src/solver/section/blend.ts';
import { createPolarTable } from '../../../src/solver/section/table.ts';

const code = (digits: string) => ({ kind: 'naca4', code: digits }) as const;

describe('polars between a root and a tip section', () => {
  const blend = sectionBlend(code('3412'), code('2410'), 'coastal');

  it('are kept: the same ends in the same water are the same polars', () => {
    expect(sectionBlend(code('3412'), code('2410'), 'coastal')).toBe(blend);
    expect(sectionBlend(code('3412'), code('2410'), 'silty')).not.toBe(blend);
  });

  it('are those of the two sections at the ends', { timeout: 60_000 }, () => {
    for (const [eta, digits] of [
      [0, '3412'],
      [1, '2410'],
    ] as const) {
      const own = createPolarTable(code(digits), 'coastal');
      expect(blend.drag(eta, 0.4, 4e5)).toBe(own.drag(0.4, 4e5));
      expect(blend.limit(eta, 4e5)).toBe(own.limit(4e5));
      expect(blend.line(eta, 4e5)).toEqual(own.viscousLine(4e5));
    }
  });

  it('lie close to the polars of the outline that stands there', { timeout: 60_000 }, () => {
    const own = createPolarTable(blendOutlines(code('3412'), code('2410'), 0.4, 241), 'coastal');
    for (const cl of [0, 0.3, 0.6])
      expect(Math.abs(blend.drag(0.4, cl, 4e5) / own.drag(cl, 4e5) - 1)).toBeLessThan(0.04);
    expect(blend.limit(0.4, 4e5)).toBeCloseTo(own.limit(4e5), 1);
    expect(blend.line(0.4, 4e5).zeroLift).toBeCloseTo(own.viscousLine(4e5).zeroLift, 3);
  });

  it('need one table where root and tip are the same', { timeout: 60_000 }, () => {
    const same = sectionBlend(code('3412'), code('3412'), 'coastal');
    expect(same.drag(0.7, 0.4, 4e5)).toBe(same.drag(0, 0.4, 4e5));
  });
});

describe('a polar table', () => {
  it('lets drag grow as a laminar layer does below its lowest Reynolds number', () => {
    const table = createPolarTable(code('0010'), 'clean');
    // H. Blasius: friction of a laminar plate goes with Re^-1/2
    expect(table.drag(0, 2.5e4)).toBeCloseTo(2 * table.drag(0, 1e5), 10);
  });

  it('reads the drag of a symmetric section without lift from the branch or by itself alike', () => {
    const table = createPolarTable(code('0010'), 'clean');
    expect(table.drag(0, 5e5) / table.drag(1e-9, 5e5)).toBeCloseTo(1, 3);
  });
});
