/** The drawn surface against closed forms: arcs, vees, ellipses, and an independent quadrature where there is none. */
import { describe, expect, it } from 'vitest';
import type { DroopLaw, Planform } from '../../../src/solver/design/document.ts';
import { cutStrips } from '../../../src/solver/geometry/strips.ts';
import {
  etaAtY,
  GeometryError,
  type Surface,
  surfaceOf,
  tipDropOf,
} from '../../../src/solver/geometry/surface.ts';
import { expectClose } from '../../support/close.ts';
import { plainWing } from '../../support/designs.ts';

const NANOMETRE = { within: 1e-9 };
const EXACT = { share: 1e-10 };
const POINTED = { share: 1e-8 }; // areas under a square-root tip
const DEGREE = Math.PI / 180;
const STATIONS = [0, 0.1, 0.37, 0.5, 0.77, 0.95, 1];

const wing = (changes: Partial<Planform>): Surface => surfaceOf(plainWing(changes));
const bent = (droop: DroopLaw, value = 1, kind: 'unrolled' | 'tipToTip' = 'unrolled') =>
  wing({ droop, length: { kind, value } });

describe('the line', () => {
  it('of an arc is a circle', () => {
    for (const tipAngle of [5, 24, 60, 90, -30]) {
      const surface = bent({ kind: 'arc', tipAngle }, 0.74);
      const angle = tipAngle * DEGREE;
      const radius = 0.37 / angle;
      for (const eta of STATIONS) {
        const { y, z } = surface.point(eta);
        expectClose(`y at ${eta}`, y, radius * Math.sin(angle * eta), NANOMETRE);
        expectClose(`z at ${eta}`, z, -radius * (1 - Math.cos(angle * eta)), NANOMETRE);
      }
      expectClose('tip drop', surface.tipDrop, radius * (1 - Math.cos(angle)), NANOMETRE);
      const alone = tipDropOf(
        plainWing({ droop: { kind: 'arc', tipAngle }, length: { kind: 'unrolled', value: 0.74 } }),
      );
      expectClose('tip drop alone', alone, radius * (1 - Math.cos(angle)), NANOMETRE);
      expectClose('span', surface.span, 2 * radius * Math.sin(angle), NANOMETRE);
    }
  });

  it('of a vee is straight', () => {
    const surface = bent({ kind: 'vee', tipAngle: 12 }, 0.8);
    for (const eta of STATIONS) {
      const { y, z } = surface.point(eta);
      expectClose(`y at ${eta}`, y, 0.4 * eta * Math.cos(12 * DEGREE), NANOMETRE);
      expectClose(`z at ${eta}`, z, -0.4 * eta * Math.sin(12 * DEGREE), NANOMETRE);
    }
  });

  it('of a late droop agrees with a quadrature that shares nothing with the program', () => {
    for (const [from, power, tipAngle] of [
      [0.6, 1.5, 40],
      [0.35, 1.4, 32],
      [0.5, 1.1, 55],
      [0, 2.7, 80],
    ] as const) {
      const surface = bent({ kind: 'late', from, power, tipAngle }, 1);
      for (const eta of [0.3, 0.62, 0.9, 1]) {
        const { y, z } = surface.point(eta);
        const part = Math.max(0, (eta - from) / (1 - from));
        const straight = Math.min(eta, from) / 2;
        const integral = (f: (angle: number) => number) =>
          0.5 *
          (1 - from) *
          simpson((s) => 5 * s ** 4 * f(tipAngle * DEGREE * s ** (5 * power)), part ** 0.2);
        expectClose(`y at ${eta}`, y, straight + integral(Math.cos), NANOMETRE);
        expectClose(`z at ${eta}`, z, -integral(Math.sin), NANOMETRE);
      }
    }
  });

  it('of a gull passes through the angles it names, up inboard and down outboard', () => {
    const surface = bent({ kind: 'gull', rootAngle: 7, tipAngle: 22, knee: 0.35 });
    expectClose('at the root', surface.droop(0), -7 * DEGREE, { within: 1e-12 });
    expectClose('at the knee', surface.droop(0.35), 0, { within: 1e-12 });
    expectClose('at the tip', surface.droop(1), 22 * DEGREE, { within: 1e-12 });
    const top = Math.max(...Array.from({ length: 1001 }, (_, k) => surface.point(k / 1000).z));
    expectClose('highest at the knee', top, surface.point(0.35).z, { within: 1e-8 });
    expect(top).toBeGreaterThan(0);
  });

  it('of a formula and of an arc agree', () => {
    const formula = bent({ kind: 'formula', expression: '25 * eta' });
    const arc = bent({ kind: 'arc', tipAngle: 25 });
    for (const eta of STATIONS) expectClose(`y at ${eta}`, formula.point(eta).y, arc.point(eta).y, NANOMETRE);
    expectClose('tip angle', formula.tipAngle, arc.tipAngle, { within: 1e-12 });
  });

  it('stands where the surface stands: arm and height', () => {
    const surface = surfaceOf(plainWing({ sweep: { kind: 'straight', angle: 9 } }), {
      arm: 0.6,
      height: 0.018,
    });
    expect(surface.point(0)).toEqual({ y: 0, z: 0.018 });
    expectClose('x of the root', surface.x(0), 0.6, { within: 1e-12 });
    expectClose('x of the tip', surface.x(1), 0.6 + 0.5 * Math.tan(9 * DEGREE), { within: 1e-12 });
  });

  it('is found from y', () => {
    const surface = bent({ kind: 'late', tipAngle: 50, from: 0.4, power: 1.4 });
    for (const eta of STATIONS)
      expectClose(`eta ${eta}`, etaAtY(surface, surface.point(eta).y), eta, { within: 1e-10 });
    expect(etaAtY(surface, 5)).toBe(1);
    expect(etaAtY(surface, -1)).toBe(0);
  });

  it('is found from y beside a tip that stands upright, where y hardly grows', () => {
    for (const tipAngle of [90, -90]) {
      const surface = bent({ kind: 'arc', tipAngle });
      const radius = 0.5 / (90 * DEGREE);
      for (const share of [0.2, 0.9, 0.999999, 1 - 1e-12]) {
        const eta = etaAtY(surface, share * radius);
        expectClose(`y at ${share}`, surface.point(eta).y, share * radius, { within: 1e-12 });
        expectClose(`eta at ${share}`, eta, Math.asin(share) / (90 * DEGREE), { within: 1e-7 });
      }
    }
  });
});

/** Composite Simpson on [0, end]. */
function simpson(f: (s: number) => number, end: number, panels = 4000): number {
  let sum = f(0) + f(end);
  for (let k = 1; k < panels; k++) sum += (k % 2 === 1 ? 4 : 2) * f((end * k) / panels);
  return (sum * end) / (3 * panels);
}

describe('the line between the stations it is kept at', () => {
  const laws: Array<[DroopLaw, number[]]> = [
    [{ kind: 'arc', tipAngle: 90 }, []],
    [{ kind: 'late', from: 0.45, power: 1.4, tipAngle: 50 }, [0.45]],
    [{ kind: 'gull', knee: 0.4, rootAngle: 12, tipAngle: 40 }, [0.4]],
    [
      {
        kind: 'points',
        at: [
          [0, 0],
          [0.2, 5],
          [0.5, 3],
          [0.8, 30],
          [1, 45],
        ],
      },
      [0.2, 0.5, 0.8],
    ],
  ];

  it.each(laws)('is the integral of its angle to a nanometre: %j', (law, knots) => {
    const surface = bent(law);
    for (let k = 1; k <= 97; k++) {
      const eta = k / 97;
      const ends = [0, ...knots.filter((knot) => knot < eta), eta];
      const integral = (f: (angle: number) => number) => {
        let sum = 0;
        for (let piece = 0; piece + 1 < ends.length; piece++) {
          const from = ends[piece]!; // eta = from + w^3 takes a fractional power out of a knot
          const g = (w: number) => f(surface.droop(from + w ** 3)) * 3 * w * w;
          sum += simpson(g, Math.cbrt(ends[piece + 1]! - from), 800);
        }
        return 0.5 * sum;
      };
      const { y, z } = surface.point(eta);
      expectClose(`y at ${eta}`, y, integral(Math.cos), NANOMETRE);
      expectClose(`z at ${eta}`, -z, integral(Math.sin), NANOMETRE);
    }
  });
});

describe('lengths and tips solved from one another', () => {
  const laws: Array<(tip: { tipAngle: number } | { tipDrop: number }) => DroopLaw> = [
    (tip) => ({ kind: 'vee', ...tip }),
    (tip) => ({ kind: 'arc', ...tip }),
    (tip) => ({ kind: 'late', from: 0.45, power: 1.6, ...tip }),
    (tip) => ({ kind: 'gull', rootAngle: 6, knee: 0.4, ...tip }),
  ];

  for (const law of laws)
    for (const kind of ['unrolled', 'tipToTip'] as const)
      it(`${law({ tipAngle: 1 }).kind}, ${kind} length: tip drop to angle and back`, () => {
        for (const tipAngle of [-35, 4, 28, 65]) {
          const byAngle = bent(law({ tipAngle }), 0.9, kind);
          const byDrop = bent(law({ tipDrop: byAngle.tipDrop }), 0.9, kind);
          expectClose('tip drop', byDrop.tipDrop, byAngle.tipDrop, NANOMETRE);
          const drawn = { droop: law({ tipDrop: byAngle.tipDrop }), length: { kind, value: 0.9 } };
          expectClose('tip drop alone', tipDropOf(plainWing(drawn)), byAngle.tipDrop, NANOMETRE);
          expectClose('tip angle', byDrop.tipAngle, byAngle.tipAngle, { within: 1e-9 });
          expectClose('amplitude', byDrop.amplitude, tipAngle * DEGREE, { within: 1e-9 });
          expectClose('span', byDrop.span, byAngle.span, NANOMETRE);
        }
      });

  it('unrolled length and span lead to the same wing', () => {
    for (const law of laws) {
      const unrolled = bent(law({ tipAngle: 33 }), 1.05, 'unrolled');
      const spanned = bent(law({ tipAngle: 33 }), unrolled.span, 'tipToTip');
      expectClose('unrolled length', spanned.unrolledLength, 1.05, NANOMETRE);
      expectClose('span', spanned.span, unrolled.span, NANOMETRE);
      expectClose('tip drop', spanned.tipDrop, unrolled.tipDrop, NANOMETRE);
    }
  });

  it('a tip drop of nothing is flat', () => {
    expectClose('tip angle', bent({ kind: 'arc', tipDrop: 0 }).tipAngle, 0, { within: 1e-12 });
  });
});

describe('areas and chords', () => {
  it('an elliptic wing has pi/4 of its box, and a mean chord of 8/(3 pi) of its root', () => {
    const surface = wing({ chord: { kind: 'elliptic', root: 0.12 } });
    expectClose('area', surface.projectedArea, (Math.PI / 4) * 0.12, POINTED);
    expectClose('mean chord', surface.meanChord, (8 / (3 * Math.PI)) * 0.12, POINTED);
    expectClose('aspect ratio', surface.aspectRatio, 1 / ((Math.PI / 4) * 0.12), POINTED);
  });

  it('a superelliptic wing has the area of its curve: a squircle 0.92704 of its box', () => {
    const surface = wing({ chord: { kind: 'superelliptic', root: 1, n: 4, m: 4 } });
    // 8 Gamma(5/4)^2 / sqrt(pi) for all four quarters (Abramowitz & Stegun, ch. 6: Gamma(5/4) = 0.9064024771)
    expectClose('area', surface.projectedArea, (2 * 0.9064024771 ** 2) / Math.sqrt(Math.PI), { share: 1e-6 });
    const ellipse = wing({ chord: { kind: 'superelliptic', root: 0.1, n: 2, m: 2 } });
    expectClose('ellipse', ellipse.projectedArea, (Math.PI / 4) * 0.1, POINTED);
  });

  it('a tapered wing has the mean chord of the handbook, (2/3) root (1 + t + t^2)/(1 + t)', () => {
    const surface = wing({ chord: { kind: 'taper', root: 0.13, tip: 0.052 } });
    expectClose('area', surface.projectedArea, 0.091, EXACT);
    expectClose('mean chord', surface.meanChord, ((2 / 3) * 0.13 * (1 + 0.4 + 0.16)) / 1.4, EXACT);
  });

  it('bending leaves the unrolled area and takes the cosine off the projected one', () => {
    const surface = wing({ droop: { kind: 'vee', tipAngle: 35 }, chord: { kind: 'elliptic', root: 0.1 } });
    expectClose('unrolled area', surface.unrolledArea, (Math.PI / 4) * 0.1, POINTED);
    expectClose(
      'projected area',
      surface.projectedArea,
      (Math.PI / 4) * 0.1 * Math.cos(35 * DEGREE),
      POINTED,
    );
    const arc = wing({ droop: { kind: 'arc', tipAngle: 35 } });
    expectClose('projected area', arc.projectedArea, (0.1 * Math.sin(35 * DEGREE)) / (35 * DEGREE), EXACT);
  });

  it('points on a straight line are a straight taper', () => {
    const points = wing({
      chord: {
        kind: 'points',
        at: [
          [0, 0.12],
          [0.3, 0.099],
          [1, 0.05],
        ],
      },
    });
    const taper = wing({ chord: { kind: 'taper', root: 0.12, tip: 0.05 } });
    expectClose('area', points.projectedArea, taper.projectedArea, EXACT);
    expectClose('mean chord', points.meanChord, taper.meanChord, EXACT);
  });
});

describe('measures of droop', () => {
  it('of a vee are its angle', () => {
    const surface = wing({
      droop: { kind: 'vee', tipAngle: 17 },
      chord: { kind: 'taper', root: 0.1, tip: 0.03 },
    });
    expectClose('effective droop', surface.effectiveDroop, 17 * DEGREE, EXACT);
    expectClose('sideways share', surface.sidewaysShare, Math.sin(17 * DEGREE) ** 2, EXACT);
  });

  it('of an untapered arc have closed forms', () => {
    const a = 50 * DEGREE;
    const surface = wing({ droop: { kind: 'arc', tipAngle: 50 } });
    // y = sin(a eta)/a: integral(a eta sin(a eta))/integral(sin(a eta)) = (sin a - a cos a)/(1 - cos a)
    expectClose(
      'effective droop',
      surface.effectiveDroop,
      (Math.sin(a) - a * Math.cos(a)) / (1 - Math.cos(a)),
      EXACT,
    );
    expectClose('sideways share', surface.sidewaysShare, 0.5 - Math.sin(2 * a) / (4 * a), EXACT);
  });

  it('change sign with the bend', () => {
    const up = wing({ droop: { kind: 'arc', tipAngle: -20 } });
    const down = wing({ droop: { kind: 'arc', tipAngle: 20 } });
    expectClose('effective droop', up.effectiveDroop, -down.effectiveDroop, EXACT);
    expectClose('sideways share', up.sidewaysShare, down.sidewaysShare, EXACT);
  });
});

describe('pitch of the strips', () => {
  it('is incidence and twist less the zero-lift angle, blended from root to tip', () => {
    const surface = wing({
      incidence: 1,
      twist: { kind: 'linear', tip: -2 },
      section: { root: { kind: 'naca4', code: '2412' }, tip: { kind: 'naca4', code: '0010' } },
    });
    // NACA 2412 lifts nothing at -2.077 degrees by thin-airfoil theory (from memory; I. H. Abbott, A. E. von Doenhoff)
    const stations = { edges: Float64Array.of(0, 0.25, 0.75, 1), controls: Float64Array.of(0, 0.5, 1) };
    const { pitch } = cutStrips(surface, stations, 1);
    [1 + 2.077, 1 - 1 + 1.0385, 1 - 2].forEach((degrees, k) => {
      expectClose(`pitch of strip ${k}`, pitch[k]! / DEGREE, degrees, { within: 0.002 });
    });
  });
});

describe('what no surface can have', () => {
  const refuse = (changes: Partial<Planform>, message: string | RegExp) => {
    expect(() => wing(changes)).toThrow(GeometryError);
    expect(() => wing(changes)).toThrow(message);
  };

  it('a tip drop beyond its length', () => {
    refuse(
      { droop: { kind: 'vee', tipDrop: 0.6 } },
      'droop.tipDrop: found 0.6 m, allowed -0.500 to 0.500 m with this length',
    );
    refuse(
      { droop: { kind: 'arc', tipDrop: -0.4 } },
      'droop.tipDrop: found -0.4 m, allowed -0.318 to 0.318 m with this length',
    );
  });

  it('says a furthest tip drop that it takes, and takes its own furthest as it is written', () => {
    // arc: half length 0.37 m bent to a right angle drops 0.74 / pi m = 0.2355493 m; the last digit is rounded up
    const length = { kind: 'unrolled', value: 0.74 } as const;
    const arc = (tipDrop: number) => wing({ length, droop: { kind: 'arc', tipDrop } });
    expect(() => arc(0.3)).toThrow('allowed -0.235 to 0.235 m with this length');
    expect(arc(0.235).tipDrop).toBeCloseTo(0.235, 9);
    for (const sign of [1, -1]) expect(arc(sign * 0.2355494).tipAngle).toBeCloseTo((sign * Math.PI) / 2, 6);
  });

  it('a droop beyond a right angle', () => {
    refuse(
      {
        droop: {
          kind: 'points',
          at: [
            [0, 0],
            [1, 95],
          ],
        },
      },
      /droop: found 9\d\.\d degrees at eta .*, allowed -90 to 90 degrees/,
    );
  });

  it('a span when it is folded upright', () => {
    refuse(
      { droop: { kind: 'vee', tipAngle: 90 }, length: { kind: 'tipToTip', value: 0.8 } },
      'droop: found a wing folded straight up or down, so that no tip-to-tip length is left, allowed less droop, or an unrolled length',
    );
  });

  it('no area', () => {
    refuse(
      { chord: { kind: 'formula', expression: '0' } },
      'chord: found a wing without area, allowed a chord above 0 inside the span',
    );
  });
});
