/** Cutting surfaces into strips: spacing, shared edges, rows, the strut. */
import { describe, expect, it } from 'vitest';
import type { Planform } from '../../../src/solver/design/document.ts';
import {
  cutStrips,
  cutStrut,
  flatten,
  shareStations,
  spaceStations,
} from '../../../src/solver/geometry/strips.ts';
import { type Surface, surfaceOf } from '../../../src/solver/geometry/surface.ts';
import { expectClose } from '../../support/close.ts';
import { plainWing } from '../../support/designs.ts';

const wing = (changes: Partial<Planform> = {}) => surfaceOf(plainWing(changes));
const small = (value: number, changes: Partial<Planform> = {}) =>
  surfaceOf(plainWing({ length: { kind: 'unrolled', value }, ...changes }), { arm: 0.6, height: 0.02 });

const rising = (values: ArrayLike<number>) => {
  for (let k = 1; k < values.length; k++) expect(values[k]!).toBeGreaterThan(values[k - 1]!);
};

describe('spacing', () => {
  it('bunches at the tip as the sine of even angles, with controls at the mid-angles', () => {
    const { edges, controls } = spaceStations(3);
    [0, Math.sin(Math.PI / 6), Math.sin(Math.PI / 3), 1].forEach((value, k) => {
      expectClose(`edge ${k}`, edges[k]!, value, { within: 1e-15 });
    });
    [15, 45, 75].forEach((degrees, k) => {
      expectClose(`control ${k}`, controls[k]!, Math.sin((degrees * Math.PI) / 180), { within: 1e-15 });
    });
  });

  it('is even where worked examples ask for it', () => {
    expect([...spaceStations(4, 'equal').edges]).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect([...spaceStations(4, 'equal').controls]).toEqual([0.125, 0.375, 0.625, 0.875]);
  });
});

describe('shared edges', () => {
  const pairs: Array<[string, Surface, Surface]> = [
    ['a narrow stabilizer', wing(), small(0.36)],
    [
      'curved surfaces',
      wing({ droop: { kind: 'arc', tipAngle: 40 } }),
      small(0.4, { droop: { kind: 'vee', tipAngle: -15 } }),
    ],
    ['a late droop', wing({ droop: { kind: 'late', tipAngle: 60, from: 0.3, power: 1.4 } }), small(0.7)],
    ['a stabilizer wider than the wing', small(0.5), wing()],
    ['nearly equal spans', wing(), small(0.998)],
    ['equal spans', wing(), small(1)],
    ['a tiny stabilizer', wing(), small(0.05)],
  ];
  for (const [name, one, other] of pairs)
    for (const [wingCount, stabilizerCount] of [
      [40, 20],
      [40, 21],
      [40, 7],
      [24, 30],
    ] as const)
      it(`${name}, ${wingCount} and ${stabilizerCount} strips: the wider takes every edge and control of the narrower`, () => {
        const stations = shareStations(one, other, wingCount, stabilizerCount);
        const [wide, narrow, wideSurface, narrowSurface] =
          other.halfSpan <= one.halfSpan
            ? ([stations.wing, stations.stabilizer, one, other] as const)
            : ([stations.stabilizer, stations.wing, other, one] as const);
        for (const { edges, controls } of [wide, narrow]) {
          rising(edges);
          rising(controls);
          expect(edges[0]).toBe(0);
          expect(edges[edges.length - 1]).toBe(1);
          expect(edges.length).toBe(controls.length + 1);
          controls.forEach((control, k) => {
            expect(control).toBeGreaterThan(edges[k]!);
            expect(control).toBeLessThan(edges[k + 1]!);
          });
        }
        const yOf = (surface: Surface, etas: Float64Array) => [...etas].map((eta) => surface.point(eta).y);
        for (const key of ['edges', 'controls'] as const) {
          const taken = yOf(wideSurface, wide[key]);
          for (const y of yOf(narrowSurface, narrow[key]))
            expect(Math.min(...taken.map((value) => Math.abs(value - y)))).toBeLessThan(1e-9);
        }
        const wanted =
          other.halfSpan <= one.halfSpan ? [wingCount, stabilizerCount] : [stabilizerCount, wingCount];
        // Equal spans share every edge, so the count is the nearest odd multiple there.
        if (wideSurface.halfSpan > narrowSurface.halfSpan)
          expect(wide.controls.length).toBeGreaterThanOrEqual(wanted[0]!);
        expect(narrow.controls.length).toBe(wanted[1]!);
      });
});

describe('strips of a surface', () => {
  const surface = wing({
    chord: { kind: 'taper', root: 0.12, tip: 0.06 },
    sweep: { kind: 'straight', angle: 20 },
    droop: { kind: 'arc', tipAngle: 30 },
    incidence: 2,
  });

  it('carry the bound line at a quarter chord and tangency at three quarters', () => {
    const strips = cutStrips(surface, spaceStations(10), 1);
    for (let k = 0; k < 10; k++) {
      const eta = strips.eta[k]!;
      const { y, z } = surface.point(eta);
      expectClose('control x', strips.controlX[k]!, surface.x(eta) + surface.chord(eta) / 2, {
        within: 1e-12,
      });
      expectClose('control y', strips.controlY[k]!, y, { within: 1e-12 });
      expectClose('control z', strips.controlZ[k]!, z, { within: 1e-12 });
      expectClose('pitch', strips.pitch[k]!, (2 * Math.PI) / 180, { within: 1e-12 });
    }
    expect([strips.nodeX[0], strips.nodeY[0], strips.nodeZ[0]]).toEqual([0, 0, 0]);
    expectClose('tip node', strips.nodeX[10]!, surface.x(1), { within: 1e-12 });
    expectClose(
      'widths add up',
      strips.width.reduce((sum, value) => sum + value, 0),
      0.5,
      { within: 1e-12 },
    );
  });

  it('put each of several rows at its own quarter and three quarters', () => {
    const strips = cutStrips(wing({ chord: { kind: 'taper', root: 0.12, tip: 0.12 } }), spaceStations(2), 3);
    // rows of 0.04 from the leading edge at -0.03: bound at +0.01, tangency at +0.03
    [-0.02, 0.02, 0.06].forEach((x, row) => {
      expectClose(`bound row ${row}`, strips.nodeX[row * 3]!, x, { within: 1e-12 });
      expectClose(`control row ${row}`, strips.controlX[row * 2]!, x + 0.02, { within: 1e-12 });
    });
  });

  it('meet the flow further forward for a section with less lift slope: c/4 + (a0/2 pi) c/2', () => {
    const half = () => ({ zeroLift: 0, slope: Math.PI, moment: 0 });
    const strips = cutStrips({ ...wing(), lift: half }, spaceStations(4), 1);
    expectClose('control x', strips.controlX[0]!, 0.025, { within: 1e-12 }); // half of half a chord behind the quarter
  });

  it('lie flat in the same-span twin, at the same y, x, chord and pitch', () => {
    const strips = cutStrips(surface, spaceStations(10), 1);
    const flat = flatten(strips, 0.01);
    expect([...flat.nodeY]).toEqual([...strips.nodeY]);
    expect([...flat.controlX]).toEqual([...strips.controlX]);
    expect([...flat.chord]).toEqual([...strips.chord]);
    expect(new Set(flat.nodeZ)).toEqual(new Set([0.01]));
    expect(new Set(flat.droop)).toEqual(new Set([0]));
    expectClose(
      'widths add up',
      flat.width.reduce((sum, value) => sum + value, 0),
      surface.halfSpan,
      { within: 1e-12 },
    );
    expect(strips.nodeZ[10]).toBeLessThan(0); // the original is left alone
  });
});

describe('the strut', () => {
  const strut = (crossing: number | null) => cutStrut(0.15, 0.115, 0.55, 20, 1, crossing);

  it('stands upright from its foot to the surface, facing sideways', () => {
    const { nodeX, nodeY, nodeZ, controlX, droop, chord } = strut(null);
    expect(nodeZ[0]).toBe(0);
    expectClose('top', nodeZ[20]!, 0.55, { within: 1e-12 });
    rising(nodeZ);
    expect(new Set(nodeX)).toEqual(new Set([0.15]));
    expect(new Set(nodeY)).toEqual(new Set([0]));
    expectClose('control', controlX[0]!, 0.15 + 0.115 / 2, { within: 1e-12 });
    expect(droop[3]).toBe(Math.PI / 2);
    expect(chord[3]).toBe(0.115);
  });

  it('has a node where the wake of a raised stabilizer passes, between two controls', () => {
    for (const crossing of [0.004, 0.018, 0.2, 0.53]) {
      const { nodeZ, controlZ } = strut(crossing);
      expect([...nodeZ]).toContain(crossing);
      rising(nodeZ);
      rising(controlZ);
      controlZ.forEach((control, k) => {
        expect(control).toBeGreaterThan(nodeZ[k]!);
        expect(control).toBeLessThan(nodeZ[k + 1]!);
      });
    }
  });

  it.each([1, 3])('meets the flow as far aft as its section asks for at each height, %i rows', (rows) => {
    const slope = (from: number, to: number) => (0.5 * (from + to) < 0.1 ? 6 : 5);
    const { count, controlX, controlZ } = cutStrut(0.15, 0.115, 0.55, 20, rows, null, slope);
    for (let r = 0; r < rows; r++)
      for (let k = 0; k < count; k++) {
        const bound = 0.15 + 0.115 * ((r + 0.25) / rows - 0.25);
        // by Biot and Savart a vortex G turns the stream by G/(2 pi d) at a distance d; a row of chord c has G = c a alpha/2
        const distance = ((0.115 / rows) * (controlZ[k]! > 0.45 ? 6 : 5)) / (4 * Math.PI);
        expectClose(`row ${r}, strip ${k}`, controlX[r * count + k]!, bound + distance, { within: 1e-12 });
      }
  });

  it('is left as it is when the stabilizer stands at its foot or above the water', () => {
    for (const crossing of [0, -0.1, 0.55, 0.8])
      expect([...strut(crossing).nodeZ]).toEqual([...strut(null).nodeZ]);
  });
});
