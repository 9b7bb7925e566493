/**
 * Speed: level running from take-off to top speed. Drag by source, lift to drag, power, angles, where the rider must
 * stand; take-off; what a shim does. SI; angles in degrees in what is handed out.
 */
import type { Design } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import type { ProfileModel } from '../forces/profile.ts';
import type { Resolution } from '../geometry/craft.ts';
import { scaledChord } from '../geometry/scale.ts';
import { findRoot } from '../numeric/roots.ts';
import { FlowPool } from '../vortex/flow.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import type { DragSources } from './level-drag.ts';
import { type Fix, type RunningState, runLevel } from './level-running.ts';
import { type Rig, rigAt } from './rig.ts';

const DEGREES = 180 / Math.PI;

/** How far from the drawn stance a rider can put the feet, m: about half a short board (common practice). */
export const REACH = 0.45;

export interface SpeedPoint {
  speed: number; // m/s
  depth: number | null; // m
  alpha: number; // degrees, fuselage to the flow
  boardAngle: number; // degrees, deck to the flow
  incidence: number; // degrees, stabilizer
  stance: number; // m, balance point aft of the origin along the foil's own axis
  /** Where the feet of an upright rider stand on the deck, m aft of the origin: below the balance point, across the pitch. */
  feet: number;
  CLwing: number;
  CLstabilizer: number | null;
  stallMargin: number | null; // least clMax - cl over the wing; null where the sections are not known
  stallEta: number; // where that is
  drag: DragSources; // N
  total: number; // N
  liftToDrag: number; // (1-u) m g / drag
  power: number; // W
  glideAngle: number; // degrees
  isReachable: boolean; // a rider can stand there
}

/** One speed of a series: a point, or why there is none. */
export type SpeedCase =
  | { speed: number; point: SpeedPoint; problem: null }
  | { speed: number; point: null; problem: string };

export interface SpeedOptions {
  from: number;
  to: number;
  count: number;
  fix: Fix;
  resolution: Resolution;
  profile: ProfileModel;
}

/** Level running at any speed of one design; keeps the flow of the depth it ran at last. */
export class LevelRunner {
  private rig: Rig | null = null;
  readonly weight: number; // N, (1-u) m g
  readonly density: number; // kg/m3
  private readonly viscosity: number;

  /** Its own pool: two runners may be asked in turn and neither spoils the other's flow. */
  private readonly pool = new FlowPool();

  constructor(
    readonly design: Design,
    private readonly resolution: Resolution,
    private readonly profile: ProfileModel,
  ) {
    const { water, upwardPull, allUpMass } = design.brief;
    const properties = waterProperties(water.kind, water.temperature);
    this.density = properties.density;
    this.viscosity = properties.viscosity;
    this.weight = (1 - upwardPull) * allUpMass * GRAVITY;
  }

  /** Throws an Error with one sentence where level running is impossible. `depth` left out: as the brief has it. */
  run(
    speed: number,
    fix: Fix,
    depth = depthAtSpeed(this.design.brief, speed),
    weight = this.weight,
  ): RunningState {
    const stream = { speed, density: this.density, viscosity: this.viscosity };
    return runLevel(this.rigFor(depth), stream, weight, fix, this.profile);
  }

  rigFor(depth: number | null): Rig {
    if (!this.rig || this.rig.craft.depth !== depth)
      this.rig = rigAt(this.pool, this.design, depth, this.resolution);
    return this.rig;
  }
}

export function speedSeries(
  runner: LevelRunner,
  from: number,
  to: number,
  count: number,
  fix: Fix,
): SpeedCase[] {
  return Array.from({ length: count }, (_, k): SpeedCase => {
    const speed = count === 1 ? from : from + ((to - from) * k) / (count - 1);
    try {
      return { speed, point: speedPoint(runner, runner.run(speed, fix)), problem: null };
    } catch (error) {
      return { speed, point: null, problem: error instanceof Error ? error.message : String(error) };
    }
  });
}

export function speedPoint(runner: LevelRunner, state: RunningState): SpeedPoint {
  const { brief } = runner.design;
  const rig = runner.rigFor(state.depth);
  const alpha = state.alpha * DEGREES;
  return {
    speed: state.speed,
    depth: state.depth,
    alpha,
    boardAngle: alpha + (brief.boardAngle ?? 0),
    incidence: state.incidence,
    stance: state.stance,
    feet: state.stance + (brief.balance.height - deckHeight(runner.design)) * Math.sin(state.alpha),
    CLwing: state.liftCoefficients.wing,
    CLstabilizer: state.liftCoefficients.stabilizer,
    stallMargin: Number.isFinite(state.stallMargin) ? state.stallMargin : null,
    stallEta: rig.eta[state.stallStrip] ?? 0,
    drag: state.drag,
    total: state.totalDrag,
    liftToDrag: runner.weight / state.totalDrag,
    power: state.totalDrag * state.speed,
    glideAngle: Math.atan2(state.totalDrag, runner.weight) * DEGREES,
    isReachable: Math.abs(state.stance - brief.balance.x) <= REACH,
  };
}

/** The deck stands on the strut; without one it is taken at the balance point, and feet and stance are the same. */
function deckHeight({ strut, brief }: Design): number {
  return Math.min(strut?.length ?? brief.balance.height, brief.balance.height);
}

export interface BestSpeeds {
  bestGlide: { speed: number; liftToDrag: number } | null;
  leastPower: { speed: number; power: number } | null;
}

/** Speeds of best glide and least power inside a series, by a parabola through the three points about the extreme. */
export function bestSpeeds(cases: readonly SpeedCase[]): BestSpeeds {
  const points = cases.flatMap(({ point }) => (point ? [point] : []));
  const glide = interiorLeast(points, ({ total }) => total);
  const power = interiorLeast(points, (point) => point.power);
  return {
    bestGlide: glide && {
      speed: glide.at,
      liftToDrag: (points[0]!.liftToDrag * points[0]!.total) / glide.value,
    },
    leastPower: power && { speed: power.at, power: power.value },
  };
}

function interiorLeast(points: readonly SpeedPoint[], value: (point: SpeedPoint) => number) {
  if (points.length < 3) return null;
  let k = 0;
  for (let i = 1; i < points.length; i++) if (value(points[i]!) < value(points[k]!)) k = i;
  if (k === 0 || k === points.length - 1) return null;
  const [a, b, c] = [points[k - 1]!, points[k]!, points[k + 1]!];
  const left = (value(b) - value(a)) / (b.speed - a.speed);
  const right = (value(c) - value(b)) / (c.speed - b.speed);
  const curvature = (right - left) / (c.speed - a.speed);
  const slope = left + curvature * (b.speed - a.speed); // at b
  const step = -slope / (2 * curvature);
  return { at: b.speed + step, value: value(b) + 0.5 * slope * step };
}

export interface TakeOff {
  speed: number; // m/s, lowest with every wing strip inside its usable lift coefficient
  eta: number; // the strip that limits it
  alpha: number; // degrees
  CLwing: number;
  perTenKilograms: number; // m/s more for 10 kg more rider
  perTenPercentArea: number; // m/s for a wing with 10 % more chord everywhere
}

/** Depth at which a foil lifts off, m: the brief's take-off depth, or its depth. */
export function takeOffDepth(design: Design): number | null {
  return design.brief.depths?.takeOff ?? design.brief.depth;
}

/**
 * Lowest speed of level running with the surface near (the brief's take-off depth), stance free to follow. Null when
 * the profile model knows no greatest lift, or no speed from 0.5 to 30 m/s does it.
 */
export function takeOff(make: (design: Design) => LevelRunner, design: Design): TakeOff | null {
  const runner = make(design);
  const base = lowestSpeed(runner, runner.weight);
  if (base === null) return null;
  const state = runner.run(base, 'incidence', takeOffDepth(design));
  const heavier = lowestSpeed(runner, runner.weight + (1 - design.brief.upwardPull) * 10 * GRAVITY);
  const larger = make(withMoreChord(design, 1.1));
  const onLarger = lowestSpeed(larger, larger.weight);
  return {
    speed: base,
    eta: runner.rigFor(state.depth).eta[state.stallStrip] ?? 0,
    alpha: state.alpha * DEGREES,
    CLwing: state.liftCoefficients.wing,
    perTenKilograms: (heavier ?? Number.NaN) - base,
    perTenPercentArea: (onLarger ?? Number.NaN) - base,
  };
}

export function lowestSpeed(runner: LevelRunner, weight: number): number | null {
  const depth = takeOffDepth(runner.design);
  const margin = (speed: number) => {
    try {
      return runner.run(speed, 'incidence', depth, weight).stallMargin;
    } catch {
      return -1; // no angle carries it: slower than take-off
    }
  };
  const top = margin(30);
  if (!Number.isFinite(top) || top < 0) return null;
  return findRoot(margin, 0.5, 30, 1e-4, margin(0.5), top);
}

function withMoreChord(design: Design, factor: number): Design {
  return { ...design, wing: { ...design.wing, chord: scaledChord(design.wing.chord, factor) } };
}

export interface ShimRow {
  shim: number; // degrees added to the stabilizer's incidence
  trimSpeed: number | null; // m/s at which the drawn stance balances
  stance: number; // m, at cruise
  total: number; // N, at cruise
}

/** What a wedge under the stabilizer does: -1.5 to +1.5 degrees in quarters. Empty without a stabilizer. */
export function shimTable(make: (design: Design) => LevelRunner, design: Design): ShimRow[] {
  const { stabilizer, brief } = design;
  if (!stabilizer) return [];
  return Array.from({ length: 13 }, (_, k) => {
    const shim = -1.5 + 0.25 * k;
    const runner = make({ ...design, stabilizer: { ...stabilizer, incidence: stabilizer.incidence + shim } });
    const cruise = runner.run(brief.speeds.cruise, 'incidence');
    return { shim, trimSpeed: trimSpeed(runner), stance: cruise.stance, total: cruise.totalDrag };
  });
}

/** The speed at which the drawn stance balances with the incidence as it is; null outside take-off/2 to twice top. */
export function trimSpeed(runner: LevelRunner): number | null {
  const { speeds, balance } = runner.design.brief;
  const miss = (speed: number) => {
    try {
      return runner.run(speed, 'incidence').stance - balance.x;
    } catch {
      return Number.NEGATIVE_INFINITY; // slower than any lift: the stance goes far forward
    }
  };
  const low = Math.max(0.5, speeds.takeOff / 2);
  const high = Math.min(30, speeds.top * 2);
  const atLow = miss(low);
  return findRoot(miss, low, high, 1e-3, Number.isFinite(atLow) ? atLow : -10, miss(high));
}
