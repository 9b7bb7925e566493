/** The motion of the eye round the foil: pure functions, no graphics. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axesOf,
  eyeOf,
  type Frame,
  fitted,
  HALF_SIGHT,
  Motion,
  NAMED_VIEWS,
  namedView,
  nearer,
  orbited,
  type Pose,
  shifted,
} from '../../src/components/solid/camera.ts';
import { follow } from '../../src/components/solid/motion.ts';
import type { Triple } from '../../src/solver/geometry/skin.ts';

const [AFT, HALF, TOP] = [0.65, 0.37, 0.55];
const BOX: Frame = {
  middle: [0.2, 0, 0.1],
  points: [-0.15, AFT].flatMap((x) =>
    [-HALF, HALF].flatMap((y) => [-0.12, TOP].map((z): Triple => [x, y, z])),
  ),
};
const START = fitted(BOX, NAMED_VIEWS[0]!, 1.6);
const RATE = 11;

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

describe('damped motion', () => {
  it('never passes its goal, from any place and speed', () => {
    fc.assert(
      fc.property(
        real(-10, 10),
        real(-200, 200),
        real(-10, 10),
        fc.array(real(0, 0.5), { maxLength: 30 }),
        (value, speed, goal, steps) => {
          const side = Math.sign(value - goal);
          let spring = { value, speed };
          for (const step of steps) {
            spring = follow(spring, goal, step, RATE);
            // Rounding alone may put it on the other side.
            expect(side * (spring.value - goal)).toBeGreaterThanOrEqual(-1e-12 * (1 + Math.abs(goal)));
          }
        },
      ),
    );
  });

  it('ends at the same place whatever the steps', () => {
    fc.assert(
      fc.property(
        real(-10, 10),
        real(-50, 50),
        fc.array(real(1e-4, 0.3), { minLength: 1, maxLength: 20 }),
        (value, speed, steps) => {
          const whole = steps.reduce((sum, step) => sum + step, 0);
          const once = follow({ value, speed }, 1, whole, RATE);
          const often = steps.reduce((spring, step) => follow(spring, 1, step, RATE), { value, speed });
          expect(often.value).toBeCloseTo(once.value, 9);
          expect(often.speed).toBeCloseTo(once.speed, 8);
        },
      ),
    );
  });

  it('solves the equation of a critically damped spring', () => {
    // Small steps of x'' = -2 r x' - r^2 x by the midpoint rule, from rest.
    let [x, v] = [1, 0];
    const h = 1e-4;
    for (let k = 0; k < 2000; k++) {
      const [xm, vm] = [x + (h / 2) * v, v + (h / 2) * (-2 * RATE * v - RATE ** 2 * x)];
      x += h * vm;
      v += h * (-2 * RATE * vm - RATE ** 2 * xm);
    }
    const exact = follow({ value: 1, speed: 0 }, 0, 0.2, RATE);
    expect(exact.value).toBeCloseTo(x, 6);
    expect(exact.speed).toBeCloseTo(v, 5);
  });

  it('stands still over no time and arrives over a long one', () => {
    expect(follow({ value: 3, speed: 2 }, 5, 0, RATE)).toEqual({ value: 3, speed: 2 });
    expect(follow({ value: 3, speed: 2 }, 5, 60, RATE)).toEqual({ value: 5, speed: expect.closeTo(0, 12) });
  });
});

describe('the way from view to view', () => {
  it.each([1 / 240, 1 / 60, 1 / 7, 2])('ends at rest at the goal, in steps of %d s', (step) => {
    const motion = new Motion(START);
    const goal = fitted(BOX, NAMED_VIEWS[3]!, 1.6);
    motion.goTo(goal);
    let steps = 0;
    while (motion.advance(step)) expect(++steps).toBeLessThan(2 / step + 3); // within two seconds
    expect(motion.pose).toEqual({ ...goal, yaw: expect.closeTo(goal.yaw, 9) });
    expect(motion.isMoving).toBe(false);
    expect(motion.advance(step)).toBe(false);
  });

  it('takes the short way round', () => {
    fc.assert(
      fc.property(real(-20, 20), real(-20, 20), (from, to) => {
        const motion = new Motion({ ...START, yaw: from });
        motion.goTo({ ...START, yaw: to });
        expect(Math.abs(motion.goal.yaw - from)).toBeLessThanOrEqual(Math.PI + 1e-9);
        expect(Math.cos(motion.goal.yaw - to)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('is there at once when told to jump', () => {
    const motion = new Motion(START);
    motion.jump(orbited(START, 1, 0.2));
    expect(motion.isMoving).toBe(false);
    expect(motion.pose).toEqual(orbited(START, 1, 0.2));
  });
});

describe('the eye', () => {
  it('has square axes that make a right hand', () => {
    fc.assert(
      fc.property(real(-7, 7), real(-1.6, 1.6), (yaw, pitch) => {
        const { right, up, back } = axesOf({ yaw, pitch });
        for (const axis of [right, up, back]) expect(dot(axis, axis)).toBeCloseTo(1, 12);
        expect(dot(right, up)).toBeCloseTo(0, 12);
        expect(dot(right, back)).toBeCloseTo(0, 12);
        const cross = [
          right[1] * up[2] - right[2] * up[1],
          right[2] * up[0] - right[0] * up[2],
          right[0] * up[1] - right[1] * up[0],
        ];
        for (let k = 0; k < 3; k++) expect(cross[k]).toBeCloseTo(back[k]!, 12);
      }),
    );
  });

  it.each([
    ['head-on', [-1, 0, 0], [0, -1, 0]], // ahead of the bow, port to the right
    ['above', [0, 0, 1], [0, 1, 0]], // bow up, starboard to the right
    ['side', [0, -1, 0], [1, 0, 0]], // at port, bow to the left
  ] as const)('of "%s" stands and holds its head as the flat views do', (name, back, right) => {
    const axes = axesOf(NAMED_VIEWS.find((view) => view.name === name)!);
    for (let k = 0; k < 3; k++) {
      expect(axes.back[k]).toBeCloseTo(back[k]!, 12);
      expect(axes.right[k]).toBeCloseTo(right[k]!, 12);
    }
  });

  it('sees all of the frame from every named view, and would not from nearer', () => {
    for (const aspect of [0.7, 1, 1.6, 3])
      for (const view of NAMED_VIEWS) {
        const pose = fitted(BOX, view, aspect);
        expect(largest(pose, aspect)).toBeLessThanOrEqual(1);
        expect(largest(nearer(pose, 1.15), aspect)).toBeGreaterThan(1);
      }
  });

  it('is not lost: pitch stops overhead and underfoot, distance within bounds', () => {
    expect(orbited(START, 0, 9).pitch).toBe(Math.PI / 2);
    expect(orbited(START, 0, -9).pitch).toBe(-Math.PI / 2);
    expect(Math.exp(nearer(START, 1e9).range)).toBeCloseTo(0.12, 9);
    expect(Math.exp(nearer(START, 1e-9).range)).toBeCloseTo(40, 9);
  });

  it('shifts the picture by shares of its height', () => {
    const moved = shifted(START, 0.5, -0.25);
    const { right, up, back } = axesOf(START);
    const way: Triple = [moved.x - START.x, moved.y - START.y, moved.z - START.z];
    const height = 2 * Math.tan(HALF_SIGHT) * Math.exp(START.range);
    expect(dot(way, right)).toBeCloseTo(-0.5 * height, 12);
    expect(dot(way, up)).toBeCloseTo(0.25 * height, 12);
    expect(dot(way, back)).toBeCloseTo(0, 12);
  });

  it('knows a named view when it looks along one', () => {
    for (const view of NAMED_VIEWS)
      expect(namedView({ ...START, ...view, yaw: view.yaw + 4 * Math.PI })).toBe(view);
    expect(namedView(orbited(START, 0.1, 0))).toBeNull();
  });
});

/** The furthest point of the frame from the middle of the picture, as a share of its half. */
function largest(pose: Pose, aspect: number): number {
  const eye = eyeOf(pose);
  const { right, up, back } = axesOf(pose);
  let most = 0;
  for (const point of BOX.points) {
    const from: Triple = [point[0] - eye[0], point[1] - eye[1], point[2] - eye[2]];
    const depth = -dot(from, back) * Math.tan(HALF_SIGHT);
    most = Math.max(most, Math.abs(dot(from, right)) / depth / aspect, Math.abs(dot(from, up)) / depth);
  }
  return most;
}
