import { describe, expect, it } from 'vitest';
import { chordAs, droopLawAs, sweepAs, twistAs } from '../../src/session/law-conversion.ts';
import {
  describeThickness,
  fuselageLength,
  fuselageLengthChanges,
  newPart,
} from '../../src/session/parts.ts';
import {
  chordForArea,
  droopAs,
  droopFor,
  isBent,
  lengthAs,
  lengthFor,
  surfaceFor,
} from '../../src/session/planform-edits.ts';
import type { ChordLaw, DroopLaw, Planform, SweepLaw, TwistLaw } from '../../src/solver/design/document.ts';
import { surfaceOf } from '../../src/solver/geometry/surface.ts';
import { demo } from './designs.ts';

const DEGREES = 180 / Math.PI;
const wing = (change: Partial<Planform> = {}): Planform => ({ ...demo().wing, ...change });
const arc = (tipAngle: number): DroopLaw => ({ kind: 'arc', tipAngle });
const write = (area: number) => `${Math.round(area * 1e4)} cm²`;

describe('lengths both ways', () => {
  it('says the same arc the other way: chord of a circular arc', () => {
    // Arc of unrolled half length h bent by G at the tip: radius h/G, tip-to-tip 2 (h/G) sin G (plane geometry).
    const bend = 26 / DEGREES;
    const tipToTip = lengthAs(wing({ droop: arc(26) }), 'tipToTip');
    expect(tipToTip.value).toBeCloseTo((0.74 / bend) * Math.sin(bend), 6);
    const back = lengthAs(wing({ droop: arc(26), length: tipToTip }), 'unrolled');
    expect(back.value).toBeCloseTo(0.74, 6);
  });

  it('sets the length that is not kept, through the one that is', () => {
    const planform = wing({ droop: arc(26) });
    const length = lengthFor(planform, 'tipToTip', 0.7);
    expect(length.kind).toBe('unrolled');
    expect(surfaceOf({ ...planform, length }).span).toBeCloseTo(0.7, 6);
  });
});

describe('tip measures', () => {
  it('says the same arc by its drop: sagitta of a circular arc', () => {
    const droop = droopAs(wing(), { kind: 'arc', tipAngle: 26 }, 'tipDrop');
    const bend = 26 / DEGREES;
    expect(droop).toEqual({ kind: 'arc', tipDrop: expect.closeTo((0.37 / bend) * (1 - Math.cos(bend)), 6) });
    expect(droopAs(wing(), droop, 'tipAngle')).toEqual({ kind: 'arc', tipAngle: expect.closeTo(26, 3) });
  });

  it('sets a drop on a design that keeps the angle', () => {
    const droop = droopFor(wing(), { kind: 'late', tipAngle: 10, from: 0.4, power: 1.4 }, 'tipDrop', 0.05);
    expect(droop.tipAngle).toBeDefined();
    expect(droop.tipDrop).toBeUndefined();
    expect(surfaceOf(wing({ droop })).tipDrop).toBeCloseTo(0.05, 6);
  });

  it('says when no bend reaches a drop', () => {
    expect(() => droopFor(wing(), { kind: 'vee', tipAngle: 10 }, 'tipDrop', 0.6)).toThrow('tipDrop');
  });
});

describe('chord by area', () => {
  const taper = wing({ droop: { kind: 'flat' }, chord: { kind: 'taper', root: 0.1, tip: 0.05 } });

  it('solves the tip chord of a taper: mean of two chords times the span', () => {
    expect(chordForArea(taper, 0.74 * 0.08, write)).toEqual({ kind: 'taper', root: 0.1, tip: 0.06 });
  });

  it('says which areas a root chord allows', () => {
    expect(chordForArea(taper, 0.01, write)).toBe(
      'No tip chord gives 100 cm²: with this span and root chord the area lies between 370 cm² (pointed tip) and 4070 cm².',
    );
  });

  it.each<ChordLaw>([
    { kind: 'elliptic', root: 0.1 },
    { kind: 'superelliptic', root: 0.1, n: 2.4, m: 2 },
    {
      kind: 'points',
      at: [
        [0, 0.1],
        [1, 0.05],
      ],
    },
    { kind: 'formula', expression: '0.1 - 0.05 * eta' },
  ])('scales a $kind chord', (chord) => {
    const planform = wing({ chord });
    const scaled = chordForArea(planform, 0.06, write) as ChordLaw;
    expect(surfaceOf({ ...planform, chord: scaled }).projectedArea).toBeCloseTo(0.06, 6);
  });

  it('does not nest the factor when a formula is scaled twice', () => {
    const chord: ChordLaw = { kind: 'formula', expression: '2 * (0.05 - 0.02 * eta) + (0.01)' };
    const once = chordForArea(wing({ chord }), 0.06, write) as ChordLaw;
    const twice = chordForArea(wing({ chord: once }), 0.05, write) as Extract<ChordLaw, { kind: 'formula' }>;
    expect(twice.expression.match(/2 \* \(0\.05/g)).toHaveLength(1);
    expect(twice.expression).toMatch(/^[\d.]+ \* \(2 \* \(0\.05 - 0\.02 \* eta\) \+ \(0\.01\)\)$/);
  });
});

const CHORDS: ChordLaw[] = [
  { kind: 'taper', root: 0.11, tip: 0.05 },
  { kind: 'elliptic', root: 0.11 },
  { kind: 'superelliptic', root: 0.11, n: 2.6, m: 2 },
  {
    kind: 'points',
    at: [
      [0, 0.11],
      [0.6, 0.1],
      [1, 0.04],
    ],
  },
  { kind: 'formula', expression: '0.11 - 0.06 * eta^2' },
];
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
const DROOPS: DroopLaw[] = [
  { kind: 'flat' },
  { kind: 'vee', tipAngle: 9 },
  { kind: 'arc', tipDrop: 0.06 },
  { kind: 'late', tipAngle: 30, from: 0.4, power: 1.5 },
  { kind: 'gull', rootAngle: 6, tipAngle: 24, knee: 0.35 },
  {
    kind: 'points',
    at: [
      [0, 0],
      [0.5, 8],
      [1, 25],
    ],
  },
  { kind: 'formula', expression: '25 * eta^2' },
];
const TWISTS: TwistLaw[] = [
  { kind: 'linear', tip: -1.5 },
  {
    kind: 'points',
    at: [
      [0, 0],
      [0.6, -0.5],
      [1, -2],
    ],
  },
  { kind: 'formula', expression: '-2 * eta^2' },
];
const STATIONS = [0, 0.1, 0.25, 0.4, 0.5, 0.65, 0.8, 0.9];
const pairs = <T extends { kind: string }>(laws: T[]) =>
  laws.flatMap((from) =>
    laws.map((to) => ({ from, kind: to.kind as T['kind'], name: `${from.kind} to ${to.kind}` })),
  );

/** Largest difference between two curves over the stations. */
const gap = (one: (eta: number) => number, other: (eta: number) => number) =>
  Math.max(...STATIONS.map((eta) => Math.abs(one(eta) - other(eta))));

describe('changing the kind of a law', () => {
  it.each(pairs(CHORDS))('chord: $name', ({ from, kind }) => {
    const before = surfaceOf(wing({ chord: from }));
    const after = surfaceOf(wing({ chord: chordAs(wing({ chord: from }), kind) }));
    if (kind === 'taper' || kind === 'elliptic')
      expect(after.unrolledArea).toBeCloseTo(before.unrolledArea, 5);
    // Points follow the curve; kinds of one or two numbers keep the area and may differ near the tip.
    expect(gap(before.chord, after.chord)).toBeLessThan(
      kind === 'points' || kind === from.kind ? 0.004 : 0.03,
    );
  });

  it.each(pairs(SWEEPS))('sweep: $name', ({ from, kind }) => {
    const before = surfaceOf(wing({ sweep: from }));
    const after = surfaceOf(wing({ sweep: sweepAs(wing({ sweep: from }), kind) }));
    if (kind === 'straight') expect(after.x(1)).toBeCloseTo(before.x(1), 6);
    else expect(gap(before.x, after.x)).toBeLessThan(0.003);
  });

  it.each(pairs(DROOPS))('droop: $name', ({ from, kind }) => {
    const before = surfaceOf(wing({ droop: from }));
    const law = droopLawAs(wing({ droop: from }), kind);
    const after = surfaceOf(wing({ droop: law }));
    if (kind === 'points' || kind === 'formula')
      expect(gap(before.droop, after.droop) * DEGREES).toBeLessThan(3);
    else if (kind !== 'flat') expect(after.tipDrop).toBeCloseTo(before.tipDrop, 4);
    if (isBent(from) && isBent(law)) expect(law.tipDrop === undefined).toBe(from.tipDrop === undefined);
  });

  it.each(pairs(TWISTS))('twist: $name', ({ from, kind }) => {
    const before = surfaceOf(wing({ twist: from }));
    const after = surfaceOf(wing({ twist: twistAs(wing({ twist: from }), kind) }));
    expect(gap(before.twist, after.twist) * DEGREES).toBeLessThan(kind === 'linear' ? 0.6 : 0.1);
  });
});

describe('parts', () => {
  it('measures the fuselage from nose to trailing edge and sets the arm by it', () => {
    const design = demo();
    const chord = surfaceFor(design.stabilizer!)!.chord(0);
    expect(fuselageLength(design)).toBeCloseTo(0.15 + 0.61 + 0.75 * chord, 9);
    const changes = fuselageLengthChanges(design, fuselageLength(design)! + 0.05, 'workshop');
    expect(changes).toEqual([{ path: 'stabilizer.arm', value: expect.closeTo(0.66, 6) }]);
    expect(fuselageLengthChanges(design, 0.1, 'workshop')).toContain('is out of range');
    expect(fuselageLength({ ...design, stabilizer: null })).toBeNull();
  });

  it('begins a stabilizer that can be drawn', () => {
    const stabilizer = newPart('stabilizer', demo()) as Planform;
    expect(surfaceFor(stabilizer)?.projectedArea).toBeGreaterThan(0.005);
  });

  it('says how thick a strut is', () => {
    expect(describeThickness(demo().strut!)).toBe('11.3 % of the chord');
  });
});
