/**
 * The one place that holds Biot and Savart's law, against its closed forms: J. Katz and A. Plotkin, Low-Speed
 * Aerodynamics, 2nd ed. 2001, section 2.12.
 */
import { describe, expect, it } from 'vitest';
import {
  addComponent,
  addVelocity,
  addWakeComponent,
  type BoundLine,
  NO_BOUND_X,
} from '../../../src/solver/vortex/filament.ts';
import { expectClose } from '../../support/close.ts';

type Point = [number, number, number];

const EXACT = { share: 1e-12 };
const line: BoundLine = { node: 0, column: 0, count: 1, surface: 0, core: 0 };

function velocity(nodes: Point[], point: Point, core = 0, signs: Point = [1, 1, 1]): Point {
  const of = (k: number) => Float64Array.from(nodes, (node) => node[k]!);
  const count = nodes.length - 1;
  const [x, y, z] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  addVelocity(x, y, z, 0, { ...line, count }, of(0), of(1), of(2), ...point, ...signs, core);
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  return [sum(x), sum(y), sum(z)];
}

describe('velocity of a horseshoe', () => {
  it('is the two legs and the bound segment of the textbook, a chord behind the middle', () => {
    // a horseshoe of span b: downwash at the middle, x behind, is (1/(2 pi)) (1/h + ...) summed from its three pieces
    const [b, x] = [1.2, 0.3];
    const half = b / 2;
    const reach = Math.hypot(x, half);
    const bound = (2 * half) / (4 * Math.PI * x * reach);
    const legs = (2 * (1 + x / reach)) / (4 * Math.PI * half);
    const [, , w] = velocity(
      [
        [0, -half, 0],
        [0, half, 0],
      ],
      [x, 0, 0],
    );
    expectClose('downwash', -w, bound + legs, EXACT);
  });

  it('is that of an endless straight vortex when the span is long', () => {
    const [, , w] = velocity(
      [
        [0, -1e4, 0],
        [0, 1e4, 0],
      ],
      [0.5, 0, 0],
    );
    expectClose('downwash', -w, 1 / (2 * Math.PI * 0.5), { share: 1e-4 });
  });

  it('turns right-handed: above a lifting segment the flow runs aft', () => {
    const [u] = velocity(
      [
        [0, -1, 0],
        [0, 1, 0],
      ],
      [0, 0, 0.1],
    );
    expect(u).toBeGreaterThan(0);
  });

  it('gives nothing on the filament itself or on its line', () => {
    const nodes: Point[] = [
      [0, -1, 0],
      [0, 1, 0],
    ];
    const legsOnly = velocity(nodes, [0, 0.25, 0]);
    expectClose('downwash of the legs', -legsOnly[2], (1 / 1.25 + 1 / 0.75) / (4 * Math.PI), EXACT);
    expect(velocity(nodes, [0, 2, 0]).every(Number.isFinite)).toBe(true);
    expect(velocity(nodes, [3, 1, 0]).every(Number.isFinite)).toBe(true);
  });

  it('does not change when a segment is cut in two', () => {
    const point: Point = [0.3, 0.2, 0.4];
    const one = velocity(
      [
        [0, -1, 0.1],
        [0.4, 1, 0.5],
      ],
      point,
    );
    const two = velocity(
      [
        [0, -1, 0.1],
        [0.1, -0.5, 0.2],
        [0.4, 1, 0.5],
      ],
      point,
    );
    one.forEach((value, k) => {
      expectClose(`component ${k}`, two[k]!, value, EXACT);
    });
  });

  it('multiplies its components by the signs of a mirrored copy', () => {
    const nodes: Point[] = [
      [0, 0, 0],
      [0.2, 1, -0.1],
    ];
    const plain = velocity(nodes, [0.5, -0.3, 0.2]);
    const mirrored = velocity(nodes, [0.5, -0.3, 0.2], 0, [-1, 1, -1]);
    expect(mirrored).toEqual([-plain[0], plain[1], -plain[2]]);
  });

  it('is the same component by component along any axis', () => {
    const nodes: Point[] = [
      [0, 0, 0],
      [0.1, 0.4, 0],
      [0.2, 1, -0.1],
    ];
    const of = (k: number) => Float64Array.from(nodes, (node) => node[k]!);
    const out = new Float64Array(2);
    const axis: Point = [0.3, -0.5, 0.8];
    addComponent(out, 0, { ...line, count: 2 }, of(0), of(1), of(2), 0.6, 0.1, 0.3, ...axis);
    const whole = velocity(nodes, [0.6, 0.1, 0.3]);
    const along = whole.reduce((sum, value, k) => sum + value * axis[k]!, 0);
    expectClose('component', out[0]! + out[1]!, along, EXACT);
  });
});

describe('the softened x-velocity of a bound segment', () => {
  const nodes: Point[] = [
    [0, -100, 0],
    [0, 100, 0],
  ];

  it('is left out altogether where asked', () => {
    const kept = velocity(nodes, [0.2, 0, 0.1]);
    const left = velocity(nodes, [0.2, 0, 0.1], NO_BOUND_X);
    expect(left[0]).toBe(0);
    expect(left.slice(1)).toEqual(kept.slice(1));
  });

  it('is 1/(2 chord) at the middle of an even sheet as long as the chord', () => {
    // Just above a sheet of strength 1/chord the flow runs at half of it; the core chord/pi gives the same close by.
    const chord = 0.12;
    const [u] = velocity(nodes, [0, 0, 1e-3], chord / Math.PI);
    expectClose('x-velocity', u, 1 / (2 * chord), { share: 1e-3 }); // a bound line of 200 m and 1 mm above it
  });

  it('fades from the plain one by (core/distance)^2/2', () => {
    const [plain, soft] = [velocity(nodes, [0, 0, 1]), velocity(nodes, [0, 0, 1], 0.1)];
    expectClose('softened over plain', soft[0] / plain[0], 1 / Math.sqrt(1 + 0.01), { share: 1e-9 });
    expect(soft.slice(1)).toEqual(plain.slice(1));
  });
});

describe('velocity far behind', () => {
  it('is that of two whole vortex lines', () => {
    const out = new Float64Array(1);
    addWakeComponent(out, 0, line, Float64Array.of(-0.5, 0.5), Float64Array.of(0, 0), 0.1, 0, 0, 1);
    expectClose('downwash', -out[0]!, (1 / 0.6 + 1 / 0.4) / (2 * Math.PI), EXACT);
  });

  it('is what the horseshoe tends to downstream', () => {
    const out = new Float64Array(1);
    addWakeComponent(out, 0, line, Float64Array.of(0, 0.7), Float64Array.of(0, -0.2), 0.4, 0.3, 0.6, 0.8);
    const [, v, w] = velocity(
      [
        [0, 0, 0],
        [0.1, 0.7, -0.2],
      ],
      [1e4, 0.4, 0.3],
    );
    expectClose('component', 0.6 * v + 0.8 * w, out[0]!, { share: 1e-6 });
  });
});
