/** Taking a stabilizer that was sized: the edit, as a builder would write it down. */
import { describe, expect, it } from 'vitest';
import { stabilizerTaken } from '../../src/session/parts.ts';
import { withValueAt } from '../../src/session/paths.ts';
import type { ChordLaw, Design, Stabilizer } from '../../src/solver/design/document.ts';
import { readDesignValue } from '../../src/solver/design/read.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { goodDesign } from '../support/designs.ts';

const CHORDS: ChordLaw[] = [
  { kind: 'taper', root: 0.05, tip: 0.03 },
  { kind: 'elliptic', root: 0.055 },
  { kind: 'superelliptic', root: 0.055, n: 2.4, m: 2 },
  {
    kind: 'points',
    at: [
      [0, 0.05],
      [0.4, 0.047],
      [1, 0.02],
    ],
  },
  { kind: 'formula', expression: '0.05 * sqrt(1 - 0.8 * eta^2)' },
];

const drawn = (chord: ChordLaw): Design => {
  const design = goodDesign('curved-race');
  return { ...design, stabilizer: { ...design.stabilizer!, chord } };
};
const areaOf = (stabilizer: Stabilizer) => surfaceOf(stabilizer).projectedArea;

describe('a stabilizer taken', () => {
  it.each(CHORDS)('$kind chord: is a valid design of the size asked for, shape and angles kept', (chord) => {
    const design = drawn(chord);
    const [change] = stabilizerTaken(design, { arm: 0.68432, incidence: -1.23456, scale: 1.2345678 });
    const reading = readDesignValue(withValueAt(design, change!.path, change!.value));
    expect(reading).toMatchObject({ ok: true });
    const taken = change!.value as Stabilizer;
    expect([taken.arm, taken.incidence]).toEqual([0.6843, -1.23]);
    // lengths in tenths of a millimetre: a chord of 25 mm may be off by a five-hundredth
    const ratio = areaOf(taken) / areaOf(design.stabilizer!);
    expect(Math.abs(ratio / 1.2345678 ** 2 - 1)).toBeLessThan(0.003);
    expect(taken.droop).toEqual(design.stabilizer!.droop);
    expect(taken.section).toEqual(design.stabilizer!.section);
    expect(taken.length.value * 1e4).toBeCloseTo(Math.round(taken.length.value * 1e4), 6);
  });

  it('of the same size changes nothing but what was asked, to the last digit', () => {
    const design = drawn({ kind: 'taper', root: 0.0512345, tip: 0.0301234 });
    const { arm, incidence } = design.stabilizer!;
    const [change] = stabilizerTaken(design, { arm, incidence: incidence + 0.5, scale: 1 });
    expect(change!.value).toEqual({ ...design.stabilizer, incidence: incidence + 0.5 });
  });

  it('is no edit where there is none', () => {
    const bare = { ...goodDesign('curved-race'), stabilizer: null };
    expect(stabilizerTaken(bare, { arm: 0.6, incidence: 0, scale: 1 })).toEqual([]);
  });
});
