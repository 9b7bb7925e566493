/** One wing bent to any droop with a measure kept, and planforms drawn larger. */
import { describe, expect, it } from 'vitest';
import type { Planform } from '../../../src/solver/design/document.ts';
import { Bender, largestAmplitude } from '../../../src/solver/geometry/bend.ts';
import { scaledPlanform } from '../../../src/solver/geometry/scale.ts';
import { surfaceOf } from '../../../src/solver/geometry/surface.ts';
import { expectClose } from '../../support/close.ts';
import { goodDesigns, plainWing } from '../../support/designs.ts';

const EXACT = { share: 1e-9 };

const wings: Array<[string, Planform]> = goodDesigns().map(([name, { wing }]) => [name, wing]);

describe('a bent wing', () => {
  it.each(wings)('%s keeps the measure that is kept at every droop', (_name, wing) => {
    const before = surfaceOf(wing);
    for (const amplitude of [0, 10, 35, 60]) {
      const unrolled = surfaceOf(new Bender(wing, 'unrolled').at(amplitude));
      const tipToTip = surfaceOf(new Bender(wing, 'tipToTip').at(amplitude));
      const area = surfaceOf(new Bender(wing, 'projectedArea').at(amplitude));
      expectClose('unrolled length', unrolled.unrolledLength, before.unrolledLength, EXACT);
      expectClose('tip-to-tip span', tipToTip.span, before.span, EXACT);
      expectClose('projected area', area.projectedArea, before.projectedArea, EXACT);
    }
  });

  it.each(wings)('%s is itself at its own amplitude', (_name, wing) => {
    const before = surfaceOf(wing);
    const bender = new Bender(wing, 'unrolled');
    const after = surfaceOf(bender.at(bender.present));
    expectClose('tip drop', after.tipDrop, before.tipDrop, { within: 1e-9 });
    expectClose('effective droop', after.effectiveDroop, before.effectiveDroop, { within: 1e-9 });
  });

  it('circular arc: span and length are 2 R sin and 2 R times the tip angle', () => {
    const bender = new Bender(plainWing(), 'unrolled');
    for (const degrees of [10, 45, 90]) {
      const angle = (degrees * Math.PI) / 180;
      expectClose('span', surfaceOf(bender.at(degrees)).span, Math.sin(angle) / angle, { share: 1e-9 });
    }
  });

  it('is written back the way the document says it: kind of length, tip drop where it gives one', () => {
    const dropped = plainWing({
      droop: { kind: 'arc', tipDrop: 0.05 },
      length: { kind: 'tipToTip', value: 0.8 },
    });
    const { droop, length } = new Bender(dropped, 'unrolled').document(30);
    const bent = surfaceOf({ ...dropped, droop, length });
    expect(droop).toHaveProperty('tipDrop');
    expect(droop).not.toHaveProperty('tipAngle');
    expect(length.kind).toBe('tipToTip');
    expectClose('amplitude', (bent.amplitude * 180) / Math.PI, 30, { within: 0.05 });
    expectClose('unrolled length', bent.unrolledLength, surfaceOf(dropped).unrolledLength, { share: 1e-3 });
  });

  it('without any shape of bend, by points or formula, bends as an arc', () => {
    const flatPoints = plainWing({ droop: { kind: 'points', at: [[0, 0], [1, 0]] } }); // biome-ignore format: one line
    expect(new Bender(flatPoints, 'unrolled').at(20).droop).toEqual({ kind: 'arc', tipAngle: 20 });
  });
});

describe('the largest droop', () => {
  it('is found to a tenth of a degree from below', () => {
    expect(largestAmplitude((x) => x <= 37.04)).toBe(37);
    expect(largestAmplitude(() => true)).toBe(90);
    expect(largestAmplitude(() => false)).toBe(0);
  });

  it('of a vee with its span kept ends where the wing is a folded blade', () => {
    const bender = new Bender(plainWing({ droop: { kind: 'vee', tipAngle: 10 } }), 'tipToTip');
    const largest = largestAmplitude((amplitude) => {
      try {
        surfaceOf(bender.at(amplitude));
        return true;
      } catch {
        return false;
      }
    });
    expect(largest).toBeGreaterThan(88);
    expect(largest).toBeLessThan(89.5);
  });
});

describe('a planform drawn larger', () => {
  it.each(wings)('%s: lengths by the factor, areas by its square, angles as they were', (_name, wing) => {
    const factor = 1.37;
    const before = surfaceOf(wing);
    const after = surfaceOf(scaledPlanform(wing, factor));
    expectClose('span', after.span, factor * before.span, EXACT);
    expectClose('tip drop', after.tipDrop, factor * before.tipDrop, { within: 1e-9 });
    expectClose('mean chord', after.meanChord, factor * before.meanChord, EXACT);
    expectClose('area', after.projectedArea, factor ** 2 * before.projectedArea, EXACT);
    expectClose('sweep', after.x(0.8), factor * before.x(0.8), { within: 1e-9 });
    expectClose('droop', after.effectiveDroop, before.effectiveDroop, { within: 1e-9 });
  });
});
