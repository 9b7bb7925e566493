/**
 * The one place that holds Biot and Savart's law, against its closed forms: J. Katz and A. Plotkin, Low-Speed
 * Aerodynamics, 2nd ed. 2001, section 2.12.
 */
import { describe, expect, it } from 'vitest';
import {
  addComponent,
  addComponents,
  addMirroredWake,
  addVelocities,
  addVelocity,
  addWakeComponent,
  type BoundLine,
  MEAN_DISTANCE,
} from '../../../src/solver/vortex/filament.ts';
import { forcePlace } from '../../../src/solver/vortex/force-place.ts';
import { expectClose } from '../../support/close.ts';

type Point = [number, number, number];

const EXACT = { share: 1e-12 };
const line: BoundLine = { node: 0, column: 0, count: 1, surface: 0, core: 0 };

function velocity(nodes: Point[], point: Point, core = 0, signs: Point = [1, 1, 1], spread = 0): Point {
  const count = nodes.length - 1;
  const out = new Float64Array(3 * count);
  addVelocity(out, 0, { ...line, count }, inTurn(nodes), ...point, ...signs, core, spread);
  return total(out);
}

const inTurn = (points: readonly Point[]) => Float64Array.from(points.flat());

function total(velocities: Float64Array): Point {
  const sum: Point = [0, 0, 0];
  for (const [k, value] of velocities.entries()) sum[k % 3]! += value;
  return sum;
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

  it('is the same component by component along any axis across the legs', () => {
    const nodes: Point[] = [
      [0, 0, 0],
      [0.1, 0.4, 0],
      [0.2, 1, -0.1],
    ];
    const out = new Float64Array(2);
    const axis: Point = [0, -0.5, 0.8];
    addComponent(out, 0, { ...line, count: 2 }, inTurn(nodes), 0.6, 0.1, 0.3, axis[1], axis[2]);
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

describe('velocity on the own surface, where vorticity is spread over the chord', () => {
  const swept: Point[] = [
    [0, 0, 0],
    [0.3, 1, 0],
  ];
  const signs: Point = [1, 1, 1];

  it('is the plain one far away, but for the x-velocity of the bound segments, which is left out', () => {
    const kinked: Point[] = [...swept, [0.9, 2, -0.4]];
    const point: Point = [-3, 8, 5];
    const [plain, spread] = [velocity(kinked, point), velocity(kinked, point, 0, signs, 1e-5)];
    expect(plain[0]).not.toBe(0);
    expect(spread[0]).toBe(0);
    for (const k of [1, 2]) expectClose(`component ${k}`, spread[k]!, plain[k]!, { share: 1e-8 });
  });

  it('does not change when a segment is cut in two, but for the leg between', () => {
    const point: Point = [0.1, 0.4, 0.05];
    const halfway: Point = [0.15, 0.5, 0];
    const once = velocity(swept, point, 0, signs, 0.03);
    const twice = velocity([swept[0]!, halfway, swept[1]!], point, 0, signs, 0.03);
    once.forEach((value, k) => {
      expectClose(`component ${k}`, twice[k]!, value, { within: 1e-12 });
    });
  });

  /** Mean over two elements of a flat plate's load, sqrt((1 - t)/(1 + t))/pi each, of `of` their distance; chord 1. */
  function meanOverLoad(of: (distance: number) => number): number {
    const count = 400; // at the angles t = cos(theta) the load is (1 - cos(theta))/pi; the two sets of angles never meet
    let mean = 0;
    for (let i = 0; i < count; i++)
      for (let j = 0; j < count; j++) {
        const [one, other] = [i + 0.5, j + 0.75].map((k) => Math.cos((Math.PI * k) / count)) as [
          number,
          number,
        ];
        mean += ((1 - one) * (1 - other) * of(0.5 * Math.abs(one - other))) / count ** 2;
      }
    return mean;
  }

  it('has for its core the mean distance across the load that thin-airfoil theory gives a flat plate', () => {
    expectClose('mean distance', Math.exp(meanOverLoad(Math.log)), MEAN_DISTANCE, { share: 0.003 });
  });

  it('leaves along a line of little sweep what legs from all over the chord leave', () => {
    // Legs at both sides of a point bring (1 + dx/|r|)/dy: the ones cancel, dx/|r| does not. Its sum from 0 to `length`
    // along the line, for legs that begin `eta` behind or before theirs, is in first order of the sweep the closed form.
    const [sweep, chord, length] = [1e-4, 0.1, 40];
    const shifted = (eta: number) =>
      sweep * (Math.asinh(length / eta) - length / Math.sqrt(length * length + eta * eta));
    const exact = meanOverLoad((distance) => shifted(chord * distance));
    const [near, steps] = [1e-9, 4000];
    const step = Math.log(length / near) / steps;
    const leg: Point[] = [
      [0, 0, 0],
      [0, 0, 1e9], // its bound segment moves nothing up or down
    ];
    let sum = 0;
    for (let k = 0; k < steps; k++) {
      const y = near * Math.exp((k + 0.5) * step);
      const [one, other] = [1, -1].map(
        (side) => velocity(leg, [side * sweep * y, side * y, 0], 0, signs, MEAN_DISTANCE * chord)[2],
      ) as [number, number];
      sum -= 2 * Math.PI * (one + other) * y * step;
    }
    expectClose('sum along the line', sum, exact, { share: 0.002 });
  });
});

describe('the place of a force on its segment', () => {
  it('is abreast of the control station, on the segment, whichever way the foil is turned', () => {
    const [a, b] = [
      [0.1, -0.02],
      [0.3, -0.08],
    ] as const;
    const share = forcePlace(a[0], a[1], b[0], b[1], 0.21, -0.04);
    const [y, z] = [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
    expectClose('square to the segment', (0.21 - y) * (b[0] - a[0]), (0.04 + z) * (b[1] - a[1]), {
      within: 1e-15,
    });
    expectClose('turned by a right angle', forcePlace(-a[1], a[0], -b[1], b[0], 0.04, 0.21), share, EXACT);
  });
});

describe('a line with its mirror', () => {
  const bent: Point[] = [
    [0, 0, 0],
    [0.1, 0.4, 0.05],
    [0.2, 1, -0.1],
  ];
  const count = 2;
  const at: Point = [0.3, 0.2, 0.15];
  const across: Point = [0.3, -0.2, 0.15];

  it.each([
    ['plainly', 0, 0],
    ['with a core', 0.04, 0],
    ['on its own surface', 0, 0.02],
  ])('moves the water as each does by itself, %s', (_, core, spread) => {
    for (const way of [1, -1] as const) {
      const [own, mirrored] = [new Float64Array(3 * count), new Float64Array(3 * count)];
      addVelocities(own, 0, mirrored, 0, { ...line, count }, inTurn(bent), ...at, way, core, spread);
      const alone = velocity(bent, at, core, [way, way, 1], spread);
      const beyond = velocity(bent, across, core, [way, -way, 1], spread);
      total(own).forEach((value, axis) => {
        expectClose(`own, axis ${axis}`, value, alone[axis]!, EXACT);
      });
      total(mirrored).forEach((value, axis) => {
        expectClose(`mirrored, axis ${axis}`, value, beyond[axis]!, EXACT);
      });
    }
  });

  it('does so component by component, into two rows or into one', () => {
    const single = (point: Point, ay: number) => {
      const out = new Float64Array(count);
      addComponent(out, 0, { ...line, count }, inTurn(bent), ...point, ay, 0.8);
      return out;
    };
    const [own, mirrored, both] = [1, 2, 3].map(() => new Float64Array(count)) as [
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    addComponents(own, 0, mirrored, 0, { ...line, count }, inTurn(bent), ...at, -0.6, 0.8);
    addComponents(both, 0, both, 0, { ...line, count }, inTurn(bent), ...at, -0.6, 0.8);
    for (let j = 0; j < count; j++) {
      const [alone, beyond] = [single(at, -0.6)[j]!, single(across, 0.6)[j]!];
      expectClose(`own ${j}`, own[j]!, alone, EXACT);
      expectClose(`mirrored ${j}`, mirrored[j]!, beyond, EXACT);
      expectClose(`both ${j}`, both[j]!, alone + beyond, EXACT);
    }
  });
});

describe('velocity far behind', () => {
  const level: Point[] = [
    [0, -0.5, 0],
    [0, 0.5, 0],
  ];
  const leaning: Point[] = [
    [0, 0, 0],
    [0.1, 0.7, -0.2],
  ];

  it('is that of two whole vortex lines', () => {
    const out = new Float64Array(1);
    addWakeComponent(out, 0, line, inTurn(level), 0.1, 0, 0, 1);
    expectClose('downwash', -out[0]!, (1 / 0.6 + 1 / 0.4) / (2 * Math.PI), EXACT);
  });

  it('is what the horseshoe tends to downstream', () => {
    const out = new Float64Array(1);
    addWakeComponent(out, 0, line, inTurn(leaning), 0.4, 0.3, 0.6, 0.8);
    const [, v, w] = velocity(leaning, [1e4, 0.4, 0.3]);
    expectClose('component', 0.6 * v + 0.8 * w, out[0]!, { share: 1e-6 });
  });

  it('of a pair with its mirror is that of both, the mirror turning the other way', () => {
    const mirror: Point[] = leaning.map(([x, y, z]) => [x, -y, z]);
    const [both, mirrored, own] = [new Float64Array(1), new Float64Array(1), new Float64Array(1)];
    addMirroredWake(both, 0, line, inTurn(leaning), 0.4, 0.3, 0.6, 0.8);
    addWakeComponent(own, 0, line, inTurn(leaning), 0.4, 0.3, 0.6, 0.8);
    addWakeComponent(mirrored, 0, line, inTurn(mirror), 0.4, 0.3, 0.6, 0.8);
    expectClose('component', both[0]!, own[0]! - mirrored[0]!, EXACT);
  });
});
