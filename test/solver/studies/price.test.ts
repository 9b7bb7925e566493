/** The price of hold on sweeps whose answer is known by hand, with and without scatter, and on real ones. */
import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../../src/solver/numeric/random.ts';
import { solve } from '../../../src/solver/solve.ts';
import { COLUMNS, type DroopColumn } from '../../../src/solver/studies/droop-family.ts';
import { type DroopStudy, droopStudy } from '../../../src/solver/studies/droop-study.ts';
import { priceOf } from '../../../src/solver/studies/price.ts';
import { finish } from '../../../src/solver/studies/study.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesign } from '../../support/designs.ts';

/** Drag 60 + 4e-4 x^2, hold index 0.1 x, C_lr gone at 25 degrees; what differs is laid over it. */
function madeUp(change: Partial<Record<DroopColumn, (x: number) => number>> = {}): DroopStudy {
  const amplitude = Float64Array.from({ length: 41 }, (_, k) => (60 * k) / 40);
  const columns = Object.fromEntries(
    COLUMNS.map((name) => [name, new Float64Array(41)]),
  ) as DroopStudy['columns'];
  const fill: Partial<Record<DroopColumn, (x: number) => number>> = {
    totalDrag: (x) => 60 + 4e-4 * x * x,
    inducedDrag: (x) => 10 + 4e-4 * x * x,
    holdIndex: (x) => 0.1 * x,
    Clr: (x) => 0.0375 - 0.0015 * x,
    ...change,
  };
  columns.amplitude.set(amplitude);
  for (const [name, f] of Object.entries(fill)) columns[name as DroopColumn].set(amplitude.map(f));
  return {
    kept: 'unrolled',
    lift: 900,
    speed: 9,
    present: 0,
    largest: 60,
    largestBy: 'geometry',
    columns,
    loadings: [{ speed: 9, CL: 0.3, Clr: columns.Clr }],
    isProfileAssumed: true,
  };
}

describe('price of hold', () => {
  it('with drag as droop squared and hold as droop rises in a line: 2 a x / b a point', () => {
    const price = priceOf(madeUp());
    price.amplitude.forEach((x, k) => {
      expect(Math.abs(price.perPoint[k]! - (2 * 4e-4 * x) / 0.1)).toBeLessThan(1e-8);
      expect(Math.abs(price.perDegree[k]! - (x > 25 ? -1 : 1) * 2 * 4e-4 * x)).toBeLessThan(1e-8);
    });
    expect(price.goods).toBe('holdPoint');
  });

  it('passes 0.4 % where 0.008 x = 0.004 (60 + 4e-4 x^2), with the quarter of the price either way', () => {
    const { place } = priceOf(madeUp(), { perPoint: 0.004 });
    const wanted = (limit: number) => {
      // 4e-4 limit x^2 - 0.008 x + 60 limit = 0, the smaller root
      const a = 4e-4 * limit;
      return (0.008 - Math.sqrt(0.008 ** 2 - 4 * a * 60 * limit)) / (2 * a);
    };
    expect(place.why).toBe('passes');
    expectClose('place', place.at!, wanted(0.004), { within: 0.001 });
    expectClose('low', place.low!, wanted(0.003), { within: 0.001 });
    expectClose('high', place.high!, wanted(0.005), { within: 0.001 });
  });

  it('says when it never gets there and when it is there from the start', () => {
    expect(priceOf(madeUp(), { perPoint: 0.5 }).place).toMatchObject({ at: null, why: 'cheaperToTheEnd' });
    const steep = madeUp({ totalDrag: (x) => 60 + 0.3 * x });
    expect(priceOf(steep).place).toMatchObject({ at: null, low: null, why: 'dearerFromTheStart' });
  });

  it('is not led astray by the scatter of strip edges (0.15 % of the induced drag)', () => {
    const random = randomFrom(11);
    const rough = madeUp({ totalDrag: (x) => 60 + 4e-4 * x * x + 0.0075 * (2 * random() - 1) });
    const { place, scatter } = priceOf(rough, { perPoint: 0.004 });
    expectClose('place', place.at!, priceOf(madeUp(), { perPoint: 0.004 }).place.at!, { within: 4 });
    expect(scatter).toBeGreaterThan(0.002);
  });

  it('finds the neutral droop, here and at other speeds', () => {
    const price = priceOf(madeUp());
    expectClose('neutral', price.neutral!, 25, { within: 1e-4 });
    expectClose('neutral at speed', price.neutralAtSpeeds[0]!.neutral!, 25, { within: 1e-4 });
    expect(priceOf(madeUp({ Clr: () => 0.02 })).neutral).toBeNull();
  });

  it('behind a flat stabilizer is counted by the degree: no droop of the wing buys a point', () => {
    const price = priceOf(madeUp({ holdIndex: () => 0 }));
    expect(price.goods).toBe('degree');
    expect(price.perPoint.every(Number.isNaN)).toBe(true);
    // 8e-4 x = 0.0005 (60 + ...): within a hundredth of 37.9
    expectClose('place', priceOf(madeUp({ holdIndex: () => 0 }), { perDegree: 0.0005 }).place.at!, 38.2, {
      within: 0.5,
    });
  });

  it('sees the induced drag fall where the span is kept, and rise where the length is', () => {
    const design = goodDesign('curved-race');
    const kept = priceOf(finish(droopStudy(design, { kept: 'tipToTip', count: 21, to: 45 })));
    expect(kept.isInducedSaved).toBe(true);
    expect(kept.inducedPerDegree[20]!).toBeLessThan(0);
    const unrolled = priceOf(finish(droopStudy(design, { kept: 'unrolled', count: 21, to: 45 })));
    expect(unrolled.inducedPerDegree[20]!).toBeGreaterThan(0);
  });

  it('has the same neutral droop as the report, which solves for it', () => {
    const design = goodDesign('curved-race');
    const found = priceOf(finish(droopStudy(design, {}))).neutral;
    expectClose('neutral droop', found!, solve(design).stability.neutralDroop!, { within: 0.1 });
  });
});
