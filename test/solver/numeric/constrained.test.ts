/**
 * Problems with known answers from W. Hock, K. Schittkowski, Test Examples for Nonlinear Programming Codes, Lecture Notes in
 * Economics and Mathematical Systems 187, 1981, by their numbers there; variables scaled to 0..1.
 */
import { describe, expect, it } from 'vitest';
import { type ConstrainedOptions, type Least, minimise } from '../../../src/solver/numeric/constrained.ts';

interface Known {
  number: number;
  bounds: [number, number];
  start: number[];
  f: (x: number[]) => number;
  g: (x: number[]) => number[]; // met at 0 or above
  least: number;
  at: number[];
}

const square = (v: number) => v * v;
const at = (x: number[]) => (i: number) => x[i - 1]!;

const KNOWN: Known[] = [
  {
    number: 43,
    bounds: [-5, 5],
    start: [0, 0, 0, 0],
    f: ([a, b, c, d]) => a! ** 2 + b! ** 2 + 2 * c! ** 2 + d! ** 2 - 5 * a! - 5 * b! - 21 * c! + 7 * d!,
    g: ([a, b, c, d]) => [
      8 - a! ** 2 - b! ** 2 - c! ** 2 - d! ** 2 - a! + b! - c! + d!,
      10 - a! ** 2 - 2 * b! ** 2 - c! ** 2 - 2 * d! ** 2 + a! + d!,
      5 - 2 * a! ** 2 - b! ** 2 - c! ** 2 - 2 * a! + b! + d!,
    ],
    least: -44,
    at: [0, 1, 2, -1],
  },
  {
    number: 71,
    bounds: [1, 5],
    start: [1, 5, 5, 1],
    f: ([a, b, c, d]) => a! * d! * (a! + b! + c!) + c!,
    g: (x) => {
      const sphere = x.reduce((sum, v) => sum + v * v, 0) - 40;
      return [x.reduce((product, v) => product * v, 1) - 25, sphere, -sphere];
    },
    least: 17.0140173,
    at: [1, 4.7429994, 3.8211503, 1.3794082],
  },
  {
    number: 100,
    bounds: [-10, 10],
    start: [1, 2, 0, 4, 0, 1, 1],
    f: (all) => {
      const x = at(all);
      return (
        square(x(1) - 10) +
        5 * square(x(2) - 12) +
        x(3) ** 4 +
        3 * square(x(4) - 11) +
        10 * x(5) ** 6 +
        7 * square(x(6)) +
        x(7) ** 4 -
        4 * x(6) * x(7) -
        10 * x(6) -
        8 * x(7)
      );
    },
    g: (all) => {
      const x = at(all);
      return [
        127 - 2 * square(x(1)) - 3 * x(2) ** 4 - x(3) - 4 * square(x(4)) - 5 * x(5),
        282 - 7 * x(1) - 3 * x(2) - 10 * square(x(3)) - x(4) + x(5),
        196 - 23 * x(1) - square(x(2)) - 6 * square(x(6)) + 8 * x(7),
        -4 * square(x(1)) - square(x(2)) + 3 * x(1) * x(2) - 2 * square(x(3)) - 5 * x(6) + 11 * x(7),
      ];
    },
    least: 680.6300573,
    at: [2.330499, 1.951372, -0.4775414, 4.365726, -0.624487, 1.038131, 1.594227],
  },
];

function run(
  { bounds: [low, high], start, f, g }: Omit<Known, 'number' | 'least' | 'at'>,
  options: ConstrainedOptions = {},
): { least: Least; x: number[]; values: number } {
  const scale = Math.max(1, Math.abs(f(start)));
  const real = (u: Float64Array) => Array.from(u, (v) => low + (high - low) * v);
  const search = minimise(
    (u) => ({ objective: f(real(u)) / scale, margins: Float64Array.from(g(real(u))) }),
    Float64Array.from(start, (v) => (v - low) / (high - low)),
    { tolerance: 1e-9, ...options },
  );
  let step = search.next();
  let values = 1;
  for (; !step.done; step = search.next()) values++;
  return { least: step.value, x: real(step.value.x), values };
}

describe('the constrained search', () => {
  it.each(KNOWN.map((known) => [known.number, known] as const))('solves problem %i', (_number, known) => {
    const { least, x } = run(known);
    expect(known.f(x)).toBeCloseTo(known.least, 3);
    expect(least.violation).toBeLessThan(1e-6);
    x.forEach((value, i) => {
      expect(value).toBeCloseTo(known.at[i]!, 1.5);
    });
  });

  it('gives multipliers that say what the least does when an inequality is eased', () => {
    const known = KNOWN[0]!;
    const scale = Math.max(1, Math.abs(known.f(known.start)));
    const { least, x } = run(known);
    const ease = 0.01;
    known.g(x).forEach((_, j) => {
      const eased = run({
        ...known,
        g: (p) => known.g(p).map((value, k) => (k === j ? value + ease : value)),
      });
      const saved = (known.f(x) - known.f(eased.x)) / ease;
      expect(saved).toBeCloseTo(least.multipliers[j]! * scale, 1);
    });
  });

  it('gives multipliers of bounds', () => {
    // Least of (a + 1)^2 + (b - 2)^2 on the unit square: the corner (0, 1), slopes 2 and -2 there.
    const { least } = run({
      bounds: [0, 1],
      start: [0.4, 0.4],
      f: ([a, b]) => (square(a! + 1) + square(b! - 2)) / 4,
      g: () => [],
    });
    expect(Array.from(least.x)).toEqual([0, 1]);
    const scale = Math.max(1, (square(1.4) + square(1.6)) / 4);
    expect(least.lower[0]! * scale).toBeCloseTo(0.5, 3);
    expect(least.upper[1]! * scale).toBeCloseTo(0.5, 3);
    expect([least.lower[1], least.upper[0]]).toEqual([0, 0]);
  });

  it('ends with slack shared by the inequalities that clash, and by no other', () => {
    const { least } = run({
      bounds: [0, 1],
      start: [0.5, 0.5],
      f: ([a, b]) => a! + b!,
      g: ([a, b]) => [a! - 0.8, 0.3 - a!, b! - 0.1],
    });
    expect(least.violation).toBeCloseTo(0.25, 4);
    const [one, other, met] = least.multipliers;
    expect(one! / other!).toBeCloseTo(1, 3);
    expect(met! / one!).toBeLessThan(1e-3);
  });

  it('steps round places without a value, and refuses a start without one', () => {
    const search = minimise(
      ([a]) => (a! > 0.5 ? null : { objective: -a!, margins: new Float64Array() }),
      Float64Array.of(0.1),
    );
    let step = search.next();
    while (!step.done) step = search.next();
    expect(step.value.x[0]).toBeCloseTo(0.5, 2);
    expect(() => minimise(() => null, Float64Array.of(0.1)).next()).toThrow('no value to start from');
  });

  it('takes some ten values a variable, and the same ones each time', () => {
    const counts = KNOWN.map(
      (known) => [known.start.length, run(known, { tolerance: 1e-6 }).values] as const,
    );
    for (const [n, values] of counts) expect(values).toBeLessThan(80 * n);
    expect(run(KNOWN[2]!).x).toEqual(run(KNOWN[2]!).x);
  });
});
