import { describe, expect, it } from 'vitest';
import {
  FULLNESS_AT,
  fullnessFor,
  rakedAngleFor,
  tipSweepFor,
  tipSweepOf,
  withRootChord,
  withSpan,
  withTipChord,
  withTipSweep,
} from '../../src/session/outline-drag.ts';
import { nextPreferred, roundTo } from '../../src/session/rounding.ts';
import type { ChordLaw, Planform, SweepLaw } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { demo } from './designs.ts';

const wingWith = (changes: Partial<Planform>): Planform => ({ ...demo().wing, ...changes });

const CHORDS: ChordLaw[] = [
  { kind: 'taper', root: 0.12, tip: 0.05 },
  { kind: 'elliptic', root: 0.12 },
  { kind: 'superelliptic', root: 0.12, n: 2.4, m: 2 },
  {
    kind: 'points',
    at: [
      [0, 0.12],
      [0.6, 0.1],
      [1, 0.04],
    ],
  },
  { kind: 'formula', expression: '0.12 * sqrt(1 - eta^2)' },
];

describe.each(CHORDS)('outline by law: $kind', (chord) => {
  it('takes a root chord', () => {
    const law = withRootChord(wingWith({ chord }), 0.135);
    expect(law.kind).toBe(chord.kind);
    expect(surfaceOf(wingWith({ chord: law })).chord(0)).toBeCloseTo(0.135, 6);
  });

  it('takes a tip chord only where it has one', () => {
    const law = withTipChord(wingWith({ chord }), 0.03);
    if (chord.kind === 'taper' || chord.kind === 'points')
      expect(surfaceOf(wingWith({ chord: law! })).chord(1)).toBeCloseTo(0.03, 6);
    else expect(law).toBeNull();
  });
});

describe('fullness', () => {
  it('finds the power that gives the chord, an ellipse being 2', () => {
    const ellipse = { kind: 'superelliptic' as const, root: 0.1, n: 4, m: 2 };
    // ellipse: c = root sqrt(1 - eta^2), at eta 0.8 exactly 0.6 of the root
    expect(fullnessFor(ellipse, 0.06)).toBe(2);
    expect(fullnessFor(ellipse, 1)).toBe(12);
    expect(fullnessFor(ellipse, 0)).toBe(0.5);
    expect(FULLNESS_AT).toBe(0.8);
  });
});

describe('span', () => {
  it.each(['unrolled', 'tipToTip'] as const)(
    'is reached with the %s length kept as the document’s own',
    (kind) => {
      const wing = wingWith({ length: { kind, value: 0.74 } });
      const length = withSpan(wing, 0.8);
      expect(length.kind).toBe(kind);
      expect(surfaceOf({ ...wing, length }).span).toBeCloseTo(0.8, 5);
    },
  );
});

const SWEEPS: SweepLaw[] = [
  { kind: 'straight', angle: 8 },
  { kind: 'rake', angle: 5, tip: 0.03, power: 3 },
  {
    kind: 'points',
    at: [
      [0, 0],
      [0.5, 0.01],
      [1, 0.05],
    ],
  },
  { kind: 'formula', expression: '0.05 * eta^2' },
];

describe.each(SWEEPS)('tip sweep by law: $kind', (sweep) => {
  it('puts the tip’s quarter chord where it is wanted', () => {
    const wing = wingWith({ sweep });
    const law = withTipSweep(wing, tipSweepFor(wing, 0.07));
    expect(surfaceOf({ ...wing, sweep: law }).x(1)).toBeCloseTo(0.07, 6);
    expect(tipSweepOf(wing)!.name).toBe(sweep.kind === 'straight' ? 'sweep' : 'rake');
  });
});

describe('a raked line', () => {
  it('takes its angle from a place on the way', () => {
    const wing = wingWith({ sweep: { kind: 'rake', angle: 5, tip: 0.03, power: 3 } });
    const angle = rakedAngleFor(wing, 0.5, 0.04)!;
    const sweep: SweepLaw = { kind: 'rake', angle, tip: 0.03, power: 3 };
    expect(surfaceOf({ ...wing, sweep }).x(0.5)).toBeCloseTo(0.04, 6);
    expect(rakedAngleFor(wingWith({ sweep: { kind: 'straight', angle: 8 } }), 0.5, 0.04)).toBeNull();
  });

  it('shows no tip handle for a formula without reach', () => {
    expect(tipSweepOf(wingWith({ sweep: { kind: 'formula', expression: '0' } }))).toBeNull();
  });
});

describe('rounding', () => {
  it('finds the next preferred number (ISO 3, series R40)', () => {
    expect([0.715, 1, 1.01, 1655, 9.6, 0.0951].map(nextPreferred)).toEqual([0.75, 1, 1.06, 1700, 10, 0.1]);
  });

  it('rounds to a step without dust', () => {
    expect(roundTo(0.7403, 0.001)).toBe(0.74);
    expect(Object.is(roundTo(-0.0001, 0.001), 0)).toBe(true);
  });
});
