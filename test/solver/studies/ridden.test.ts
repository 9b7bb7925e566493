import { describe, expect, it } from 'vitest';
import { goodBand } from '../../../src/solver/design/marks.ts';
import { rankPair, riddenStudy } from '../../../src/solver/studies/ridden.ts';
import { plainDesign } from '../../support/designs.ts';

const marksOf = (figures: readonly number[], marks: readonly number[]) =>
  figures.map((figure, k) => ({ figure, mark: marks[k]! }));

describe('ranks of ridden designs', () => {
  it('gives none with fewer than three, and no probability with fewer than eight', () => {
    expect(rankPair([1, 2], [3, 4])).toEqual({
      count: 2,
      correlation: null,
      probability: null,
      isExact: true,
    });
    const seven = rankPair([1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 3, 4, 4, 5]);
    expect(seven).toMatchObject({ count: 7, probability: null });
    expect(seven.correlation).toBeGreaterThan(0.9);
    const eight = rankPair([1, 2, 3, 4, 5, 6, 7, 8], [1, 2, 3, 3, 4, 4, 5, 5]);
    expect(eight.probability).toBeLessThan(0.01);
  });

  it('counts only designs with figure and mark', () => {
    expect(rankPair([1, null, 3, 4], [5, 4, null, 3]).count).toBe(2);
    expect(rankPair([1, null, 3, 4, 5], [5, 4, 3, 3, null])).toMatchObject({
      count: 3,
      correlation: expect.closeTo(-Math.sqrt(3) / 2, 12),
    });
  });

  it('gives none where every mark is the same', () => {
    expect(rankPair([1, 2, 3], [4, 4, 4])).toMatchObject({ count: 3, correlation: null });
  });

  it('pairs every figure with every mark', () => {
    const work = riddenStudy(plainDesign({}), {
      figures: [
        [1, 2, 3],
        [3, 2, 1],
      ],
      marks: [[1, 3, 5]],
    });
    let step = work.next();
    while (!step.done) step = work.next();
    expect(step.value.map((row) => row.map(({ correlation }) => correlation))).toEqual([[1], [-1]]);
  });
});

describe('where good marks begin', () => {
  const index = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];

  it('is between the last poor and the first good where they part cleanly', () => {
    expect(goodBand(marksOf(index, [1, 2, 2, 3, 4, 5, 4, 5]))).toEqual({
      low: 0.4,
      high: 0.5,
      least: 0.5,
      most: 0.8,
      against: 0,
      count: 8,
    });
  });

  it('has the fewest on the wrong side where they overlap', () => {
    expect(goodBand(marksOf(index, [1, 4, 2, 3, 4, 5, 3, 5]))).toMatchObject({
      low: 0.4,
      high: 0.5,
      against: 2,
    });
  });

  it('does not part designs of the same figure', () => {
    const level = [0.1, 0.2, 0.3, 0.5, 0.5, 0.6, 0.7, 0.8];
    const band = goodBand(marksOf(level, [1, 2, 2, 3, 4, 5, 4, 5]))!;
    expect([band.low, band.high]).toEqual([0.3, 0.5]);
  });

  it('is none with seven designs, marks of one kind, or good marks at the low end', () => {
    expect(goodBand(marksOf(index.slice(1), [1, 2, 3, 4, 5, 5, 5]))).toBeNull();
    expect(goodBand(marksOf(index, [4, 4, 5, 5, 4, 5, 4, 5]))).toBeNull();
    expect(goodBand(marksOf(index, [5, 5, 4, 4, 2, 2, 1, 1]))).toBeNull();
  });
});
