/** The front of least drag against hold. */
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../../src/solver/design/document.ts';
import { solve } from '../../../../src/solver/solve.ts';
import { frontChain, frontEnds, frontOf } from '../../../../src/solver/studies/propose/front.ts';
import { benchOf, COARSE, problemFor, searchFrom } from '../../../../src/solver/studies/propose/search.ts';
import { finish } from '../../../../src/solver/studies/study.ts';
import { goodDesign } from '../../../support/designs.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const drawn = goodDesign('curved-race');
const design: Design = {
  ...drawn,
  wanted: {
    free: {
      length: { least: 0.6, most: 0.86 },
      area: { least: 0.045, most: 0.085 },
      droop: { least: 0, most: 45 },
      stabilizerArea: { least: 0.009, most: 0.025 },
    },
  },
};

describe('the front', () => {
  const ends = finish(frontEnds(design, { near: drawn, variant: 0 }))!;
  const chains = ends.chains.map((options) => finish(frontChain(design, options)));
  const front = frontOf(ends, chains);

  it('has ten points or more, drag rising with hold', () => {
    expect(front.points.length).toBeGreaterThanOrEqual(10);
    for (const [k, point] of front.points.slice(1).entries()) {
      expect(point.holdIndex).toBeGreaterThan(front.points[k]!.holdIndex);
      expect(point.drag).toBeGreaterThan(front.points[k]!.drag);
    }
  });

  it('has the hold that a separate solve finds', () => {
    for (const { holdIndex, design: wing } of front.points.slice(0, 3))
      expect(holdIndex / solve(wing).stability.holdIndex!).toBeCloseTo(1, 6);
  });

  it('meets the search of one hold alone', () => {
    const { holdIndex, drag } = front.points[5]!;
    // Without limits of its own the document keeps the drawn hold; here it is asked for by a copy of the drawn limits.
    const alone = finish(
      searchFrom(
        { ...design, wanted: { ...design.wanted, limits: keptWith(holdIndex) } },
        { seed: 1, start: 0 },
      ),
    );
    expect(alone!.drag / drag).toBeCloseTo(1, 2);
  });

  it('has as many where the lightest wing holds more than twice what is drawn', () => {
    const loose: Design = { ...design, wing: { ...drawn.wing, droop: { kind: 'arc', tipAngle: 2 } } };
    const limits = { takeOffSpeed: { most: 4.8 }, rollFromYaw: { most: 0.02 } };
    const bound = { ...loose, wanted: { ...design.wanted, limits } };
    const far = finish(frontEnds(bound, { near: bound, variant: 0 }))!;
    expect(far.lightest.holdIndex).toBeGreaterThan(2 * far.drawn!.holdIndex);
    expect(far.firmest.holdIndex).toBeGreaterThan(1.5 * far.lightest.holdIndex);
    expect(far.chains.flatMap(({ levels }) => levels).length).toBeGreaterThanOrEqual(10);
  });

  it('says how far the drawn wing is from it', () => {
    const over = front.over!;
    expect(over).toBeGreaterThan(0);
    expect(over).toBeLessThan(front.drawn!.drag);
    expect(frontOf({ ...ends, drawn: front.points[4]! }, chains).over).toBeCloseTo(0, 6);
  });
});

/** What the document keeps of the drawn design when it names no limits, with another hold. */
function keptWith(holdIndex: number) {
  const { limits } = problemFor(design, 0, benchOf(design, COARSE));
  const kept = limits.filter(({ figure }) => figure !== 'holdIndex' && figure !== 'stallMarginOnStance');
  return {
    ...Object.fromEntries(kept.map(({ figure, side, value }) => [figure, { [side]: value }])),
    holdIndex: { least: holdIndex },
  };
}
