/** The bench fit against readings made up from known springs and moduli, and against readings no foil could give. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { BenchReading, Design } from '../../../src/solver/design/document.ts';
import { readDesign } from '../../../src/solver/design/read.ts';
import { dependentColumns, leastSquares, studentT } from '../../../src/solver/numeric/least-squares.ts';
import { randomFrom } from '../../../src/solver/numeric/random.ts';
import { materialOf } from '../../../src/solver/structure/laminate.ts';
import { READING_ERROR } from '../../../src/solver/studies/bench.ts';
import { benchFit } from '../../../src/solver/studies/bench-fit.ts';

const reading = readDesign(
  readFileSync(new URL('../../../web/demos/curved-race.json', import.meta.url), 'utf8'),
);
if (!reading.ok) throw new Error(reading.message);
const design = reading.design;
const L = design.strut!.length;
const G = 9.80665;

const withBench = (bench: BenchReading[], base: Design = design): Design => ({
  ...base,
  joints: { ...base.joints, bench },
});

interface Truth {
  EI: number; // N m2
  GJ: number;
  roll: number; // N m/rad
  yaw: number;
}

const present = benchFit(withBench([{ pull: 'side', mass: 10, at: L, station: L, deflection: 0.04 }]));
const I = 1190.854 / materialOf().modulus; // m4 of the demo's strut, from the section constants it is tested on
const J = 895.672 / materialOf().shear;

/** Closed form of Euler-Bernoulli for a load at a, read at x from the box: W/k a x + W x^2 (3 a - x)/6EI for x up to a. */
function sideways({ EI, roll }: Truth, mass: number, a: number, x: number): number {
  const [near, far] = [Math.min(a, x), Math.max(a, x)];
  return mass * G * ((a * x) / roll + (near * near * (3 * far - near)) / (6 * EI));
}

function twisted({ GJ, yaw }: Truth, mass: number, arm: number, a: number, x: number): number {
  return mass * G * arm * (1 / yaw + Math.min(a, x) / GJ) * (180 / Math.PI);
}

describe('a bench test of box and strut', () => {
  const truth: Truth = { EI: 900, GJ: 700, roll: 6000, yaw: 5000 };

  it('at three stations without error finds spring and modulus', () => {
    const fit = benchFit(
      withBench(
        [0.3, 0.6, 1].map((share) => ({
          pull: 'side',
          mass: 10,
          at: L,
          station: share * L,
          deflection: sideways(truth, 10, L, share * L),
        })),
      ),
    );
    const value = (key: string) => fit.fitted.find((link) => link.key === key)!.value;
    expect((value('strut.modulus') * I) / truth.EI).toBeCloseTo(1, 5);
    expect(value('box.roll') / truth.roll).toBeCloseTo(1, 5);
    expect(fit.advice).toBeNull();
  });

  it('twisted by weights at three places without error finds spring and shear modulus', () => {
    const places: Array<[at: number, station: number]> = [
      [1, 0.5],
      [0.6, 0.6],
      [1, 0.13],
    ];
    const { fitted } = benchFit(
      withBench(
        places.map(([at, station]) => ({
          pull: 'twist',
          mass: 10,
          arm: 0.3,
          at: at * L,
          station: station * L,
          turn: twisted(truth, 10, 0.3, at * L, station * L),
        })),
      ),
    );
    const value = (key: string) => fitted.find((link) => link.key === key)!.value;
    expect((value('strut.shear') * J) / truth.GJ).toBeCloseTo(1, 5);
    expect(value('box.yaw') / truth.yaw).toBeCloseTo(1, 5);
  });

  it('recovers known values within its own stated uncertainty, over 200 random cases', () => {
    const random = randomFrom(20);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let [inside, asked] = [0, 0];
    for (let round = 0; round < 200; round++) {
      const known: Truth = {
        EI: 500 + 1500 * random(),
        GJ: 400 + 900 * random(),
        roll: 4000 + 12000 * random(),
        yaw: 2000 + 6000 * random(),
      };
      const bench: BenchReading[] = [];
      for (const share of [0.25, 0.5, 0.75, 1])
        for (const mass of [8, 16])
          bench.push(
            {
              pull: 'side',
              mass,
              at: L,
              station: share * L,
              deflection: sideways(known, mass, L, share * L) + READING_ERROR.deflection * normal(),
            },
            {
              pull: 'twist',
              mass,
              at: L,
              arm: 0.3,
              station: share * L,
              turn:
                twisted(known, mass, 0.3, L, share * L) + ((READING_ERROR.turn * 180) / Math.PI) * normal(),
            },
          );
      const { fitted } = benchFit(withBench(bench));
      const truths: Record<string, number> = {
        'strut.modulus': known.EI / I,
        'strut.shear': known.GJ / J,
        'box.roll': known.roll,
        'box.yaw': known.yaw,
      };
      for (const { key, low, high } of fitted) {
        const wanted = truths[key]!;
        expect(wanted, key).toBeDefined();
        asked++;
        if (wanted >= low && wanted <= (high ?? Number.POSITIVE_INFINITY)) inside++;
      }
    }
    // 95 % intervals: three standard deviations of a share over some 800 answers are 2.5 %.
    expect(asked).toBeGreaterThan(600);
    expect(inside / asked).toBeGreaterThan(0.925);
    expect(inside / asked).toBeLessThan(0.99);
  });

  it('with one station says that box and strut cannot be told apart', () => {
    expect(present.advice).toContain('With one station, box and strut cannot be told apart');
    expect(present.held.map(({ key }) => key)).toEqual(['box.roll']);
    expect(present.fitted.map(({ key }) => key)).toEqual(['strut.modulus']);
  });

  it('used, gives the readings back', () => {
    const bench: BenchReading[] = [0.4, 0.7, 1].map((share) => ({
      pull: 'side',
      mass: 12,
      at: L,
      station: share * L,
      deflection: sideways(truth, 12, L, share * L),
    }));
    const { changes } = benchFit(withBench(bench));
    expect(changes.map(({ path }) => path).sort()).toEqual(['joints.box.roll', 'laminate.strut.modulus']);
    const used = withBench(bench, {
      ...design,
      laminate: { strut: { modulus: changes.find(({ path }) => path.endsWith('modulus'))!.value } },
      joints: { box: { roll: changes.find(({ path }) => path.endsWith('roll'))!.value } },
    });
    for (const { measured, before } of benchFit(used).readings) expect(before / measured).toBeCloseTo(1, 2);
  });

  it('tells loading from unloading', () => {
    const at = { pull: 'side', mass: 10, at: L, station: L } as const;
    const { hysteresis } = benchFit(
      withBench([
        { ...at, deflection: 0.04, order: 'loading' },
        { ...at, deflection: 0.044, order: 'unloading' },
      ]),
    );
    expect(hysteresis).toBeCloseTo(0.004 / 0.042, 9);
  });
});

describe('silly readings', () => {
  it.each<[string, BenchReading, string]>([
    [
      'a weight below the foot',
      { pull: 'side', mass: 5, at: 3, station: L, deflection: 0.01 },
      'strut is 0.95 m long',
    ],
    ['a weight at the box', { pull: 'side', mass: 5, at: 0, station: L, deflection: 0.01 }, 'moves nothing'],
    [
      'a twist read as a way',
      { pull: 'twist', mass: 5, at: L, station: L, deflection: 0.01 },
      'read as an angle',
    ],
    ['a pull read as an angle', { pull: 'side', mass: 5, at: L, station: L, turn: 1 }, 'read as a way'],
  ])('%s comes back with a message', (_name, odd, message) => {
    const fit = benchFit(withBench([odd]));
    expect(fit.problems).toEqual([{ index: 0, message: expect.stringContaining(message) }]);
    expect(fit.fitted).toEqual([]);
  });

  it('of the wrong sign fit no foil, and say so', () => {
    const fit = benchFit(withBench([{ pull: 'side', mass: 5, at: L, station: L, deflection: -0.02 }]));
    expect(fit.fitted).toEqual([]);
    expect(fit.changes).toEqual([]);
    expect(fit.advice).toContain('fit no foil');
  });

  it('never throw, whatever they are', () => {
    const random = randomFrom(7);
    for (let round = 0; round < 100; round++) {
      const bench = Array.from({ length: 1 + Math.floor(6 * random()) }, (): BenchReading => {
        const pull = (['side', 'aft', 'up', 'twist'] as const)[Math.floor(4 * random())]!;
        return {
          pull,
          mass: 0.1 + 100 * random(),
          at: 1.2 * random(),
          on: (['strut', 'wing', 'stabilizer'] as const)[Math.floor(3 * random())]!,
          readOn: (['strut', 'wing', 'stabilizer'] as const)[Math.floor(3 * random())]!,
          station: 1.2 * random(),
          ...(pull === 'twist' ? { turn: 180 * (random() - 0.5) } : { deflection: 4 * (random() - 0.5) }),
        };
      });
      const { fitted } = benchFit(withBench(bench));
      for (const { value, low } of fitted) expect(value > 0 && low > 0 && low <= value).toBe(true);
    }
  });

  it('are none at first', () => {
    expect(benchFit(design)).toMatchObject({ fitted: [], advice: null, changes: [] });
    expect(
      benchFit(withBench([{ pull: 'side', mass: 5, at: 1, station: 1 }], { ...design, strut: null })).advice,
    ).toContain('no strut');
  });
});

describe('least squares', () => {
  it('of a line are those worked by hand', () => {
    // y = 1, 2, 2, 4 over x = 0..3: slope 0.9, intercept 0.9; residual sum of squares 0.70 (0.01 + 0.04 + 0.49 + 0.16).
    const ones = Float64Array.of(1, 1, 1, 1);
    const x = Float64Array.of(0, 1, 2, 3);
    const { sizes, scatter } = leastSquares([ones, x], Float64Array.of(1, 2, 2, 4));
    expect([...sizes]).toEqual([expect.closeTo(0.9, 12), expect.closeTo(0.9, 12)]);
    expect(scatter ** 2 * 2).toBeCloseTo(0.7, 12);
  });

  it('know the points of Student’s t', () => {
    // M. Abramowitz, I. A. Stegun, table 26.10.
    for (const [freedom, t] of [
      [1, 12.706],
      [5, 2.571],
      [10, 2.228],
      [30, 2.042],
      [120, 1.98],
    ] as const)
      expect(Math.abs(studentT(freedom) - t)).toBeLessThan(0.002);
  });

  it('find a column that others make', () => {
    const a = Float64Array.of(1, 0, 0);
    const b = Float64Array.of(0, 1, 0);
    expect(dependentColumns([a, b, Float64Array.of(2, -3, 0)])).toEqual([0, 1, 2]);
    expect(dependentColumns([a, b, Float64Array.of(0, 0, 1e-3)])).toBeNull();
  });
});
