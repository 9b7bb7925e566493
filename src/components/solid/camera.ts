/**
 * The eye that looks at the foil: where it stands, the named views, and its way from one to the next. No drawing.
 * Lengths in m, angles in radians; x aft, y starboard, z up. Yaw 0 is ahead of the foil, positive towards starboard.
 */
import type { Triple } from '../../solver/geometry/skin.ts';
import { follow, isSettled, type Spring } from './motion.ts';

/** What the eye looks at, and from where: `range` is the logarithm of its distance. */
export interface Pose {
  yaw: number;
  pitch: number; // up positive
  range: number;
  x: number;
  y: number;
  z: number;
}

/** What has to be in sight: points about a middle. */
export interface Frame {
  middle: Triple;
  points: readonly Triple[];
}

export interface NamedView {
  name: string;
  label: string;
  yaw: number;
  pitch: number;
}

const RADIANS = Math.PI / 180;
const STRAIGHT = Math.PI / 2;

/** In the order of the keys 1 to 6. From above the bow is at the top, from the side at the left, as in the flat views. */
export const NAMED_VIEWS: readonly NamedView[] = [
  { name: 'three-quarter', label: 'Three-quarter', yaw: -38 * RADIANS, pitch: 20 * RADIANS },
  { name: 'head-on', label: 'Head-on', yaw: 0, pitch: 0 },
  { name: 'above', label: 'From above', yaw: Math.PI, pitch: STRAIGHT },
  { name: 'side', label: 'From the side', yaw: -STRAIGHT, pitch: 0 },
  { name: 'below', label: 'From below', yaw: -38 * RADIANS, pitch: -24 * RADIANS },
  { name: 'behind', label: 'From behind', yaw: Math.PI + 32 * RADIANS, pitch: 24 * RADIANS },
];

/** Half the angle of sight up and down: narrow, so that little is foreshortened. */
export const HALF_SIGHT = 12 * RADIANS;

const MARGIN = 1.06;
const NEAREST = 0.12; // m
const FURTHEST = 40;
const RATE = 11; // per second: a view is reached within half a second
const ANGLE_LEFT = 2e-4; // rad, not to be seen
const LENGTH_LEFT = 1e-5; // of the distance

/** Right, up and back of the eye as unit vectors. */
export function axesOf({ yaw, pitch }: Pick<Pose, 'yaw' | 'pitch'>): {
  right: Triple;
  up: Triple;
  back: Triple;
} {
  const [c, s] = [Math.cos(yaw), Math.sin(yaw)];
  const [cp, sp] = [Math.cos(pitch), Math.sin(pitch)];
  return { right: [-s, -c, 0], up: [sp * c, -sp * s, cp], back: [-c * cp, s * cp, sp] };
}

export function eyeOf(pose: Pose): Triple {
  const { back } = axesOf(pose);
  const distance = Math.exp(pose.range);
  return [pose.x + distance * back[0], pose.y + distance * back[1], pose.z + distance * back[2]];
}

/**
 * The nearest pose in this direction that shows all points of the frame, in the middle of a picture `aspect` times as wide as
 * high.
 */
export function fitted(frame: Frame, direction: Pick<Pose, 'yaw' | 'pitch'>, aspect: number): Pose {
  const { right, up, back } = axesOf(direction);
  const tangent = Math.tan(HALF_SIGHT) / MARGIN;
  const seen = frame.points.map((point) => {
    const from: Triple = [point[0] - frame.middle[0], point[1] - frame.middle[1], point[2] - frame.middle[2]];
    return { across: dot(from, right), high: dot(from, up), near: dot(from, back) };
  });
  // Each side of the picture asks for a distance; two opposite sides agree where the middle between them stands.
  const side = (of: (point: (typeof seen)[number]) => number, slope: number) =>
    Math.max(...seen.map((point) => of(point) / slope + point.near));
  const [east, west] = [1, -1].map((sign) => side(({ across }) => sign * across, tangent * aspect)) as [
    number,
    number,
  ];
  const [north, south] = [1, -1].map((sign) => side(({ high }) => sign * high, tangent)) as [number, number];
  const distance = Math.max(NEAREST, 0.5 * (east + west), 0.5 * (north + south));
  const x = 0.5 * (east - west) * tangent * aspect;
  const y = 0.5 * (north - south) * tangent;
  const at = (axis: 0 | 1 | 2) => frame.middle[axis] + x * right[axis] + y * up[axis];
  const { yaw, pitch } = direction;
  return { yaw, pitch, range: Math.log(distance), x: at(0), y: at(1), z: at(2) };
}

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export function orbited(pose: Pose, yaw: number, pitch: number): Pose {
  return { ...pose, yaw: pose.yaw + yaw, pitch: Math.max(-STRAIGHT, Math.min(STRAIGHT, pose.pitch + pitch)) };
}

/** Nearer by a factor above 1, within what can be looked at. */
export function nearer(pose: Pose, factor: number): Pose {
  const range = pose.range - Math.log(factor);
  return { ...pose, range: Math.max(Math.log(NEAREST), Math.min(Math.log(FURTHEST), range)) };
}

/** Moves what is looked at across the picture, by shares of its height; the foil goes right and up with positive ones. */
export function shifted(pose: Pose, right: number, up: number): Pose {
  const axes = axesOf(pose);
  const size = 2 * Math.tan(HALF_SIGHT) * Math.exp(pose.range);
  const move = (axis: 0 | 1 | 2) => size * (right * axes.right[axis] + up * axes.up[axis]);
  return { ...pose, x: pose.x - move(0), y: pose.y - move(1), z: pose.z - move(2) };
}

/** The named view that a pose looks along; null for one of the user's own. */
export function namedView({ yaw, pitch }: Pose): NamedView | null {
  const apart = (a: number, b: number) => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
  return NAMED_VIEWS.find((view) => apart(view.yaw, yaw) < 1e-3 && apart(view.pitch, pitch) < 1e-3) ?? null;
}

const KEYS = ['yaw', 'pitch', 'range', 'x', 'y', 'z'] as const;

/** The eye on its way to a goal. */
export class Motion {
  #springs: Record<keyof Pose, Spring>;
  #goal: Pose;

  constructor(pose: Pose) {
    this.#goal = pose;
    this.#springs = atRest(pose);
  }

  get goal(): Pose {
    return this.#goal;
  }

  get pose(): Pose {
    const { yaw, pitch, range, x, y, z } = this.#springs;
    return { yaw: yaw.value, pitch: pitch.value, range: range.value, x: x.value, y: y.value, z: z.value };
  }

  get isMoving(): boolean {
    return KEYS.some((key) => !isSettled(this.#springs[key], this.#goal[key], leastOf(key, this.#goal)));
  }

  /** Towards a pose, the short way round. */
  goTo(pose: Pose): void {
    const from = this.#springs.yaw.value;
    const way = Math.atan2(Math.sin(pose.yaw - from), Math.cos(pose.yaw - from));
    this.#goal = { ...pose, yaw: from + way };
  }

  /** Towards a pose step by step the way it is turned, where the goal moves on before it is reached. */
  lead(pose: Pose): void {
    this.#goal = pose;
  }

  /** At a pose at once. */
  jump(pose: Pose): void {
    this.#goal = pose;
    this.#springs = atRest(pose);
  }

  /** Further by some seconds; true while it moves. */
  advance(seconds: number): boolean {
    if (!this.isMoving) {
      this.#springs = atRest(this.#goal);
      return false;
    }
    for (const key of KEYS) this.#springs[key] = follow(this.#springs[key], this.#goal[key], seconds, RATE);
    return true;
  }
}

function atRest(pose: Pose): Record<keyof Pose, Spring> {
  const still = (value: number): Spring => ({ value, speed: 0 });
  const { yaw, pitch, range, x, y, z } = pose;
  return { yaw: still(yaw), pitch: still(pitch), range: still(range), x: still(x), y: still(y), z: still(z) };
}

function leastOf(key: keyof Pose, { range }: Pose): number {
  return key === 'yaw' || key === 'pitch'
    ? ANGLE_LEFT
    : key === 'range'
      ? 1e-4
      : LENGTH_LEFT * Math.exp(range);
}
