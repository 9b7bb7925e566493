/**
 * Speed: level running from take-off to top speed. Drag by source, lift to drag, power, angles, where the rider must
 * stand. SI; angles in degrees in what is handed out.
 */
import type { Design } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import type { ProfileModel } from '../forces/profile.ts';
import type { Resolution } from '../geometry/craft.ts';
import type { DragSources } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import { type Fix, type RunningState, runLevel } from './level-running.ts';
import { type Rig, rigAt } from './rig.ts';

const DEGREES = 180 / Math.PI;

/** How far from the drawn stance a rider can put the feet, m: about half a short board (common practice). */
export const REACH = 0.45;

export interface SpeedPoint {
  speed: number; // m/s
  depth: number | null; // m
  tipDepth: number | null; // m, of the wing's tips, level
  froude: { depth: number; span: number } | null; // V / sqrt(g depth), V / sqrt(g span); null in deep water
  alpha: number; // degrees, fuselage to the flow
  boardAngle: number; // degrees, deck to the flow
  incidence: number; // degrees, stabilizer
  stance: number; // m, balance point aft of the origin along the foil's own axis
  /** Where the feet of an upright rider stand on the deck, m aft of the origin: below the balance point, across the pitch. */
  feet: number;
  CLwing: number;
  CLstabilizer: number | null;
  stallMargin: number | null; // least clMax - cl over the wing; null where the sections are not known
  stabilizerMargin: number | null; // the same of the stabilizer, up or down; null without one or where not known
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
  const { wing } = rig.craft;
  return {
    speed: state.speed,
    depth: state.depth,
    tipDepth: state.depth === null ? null : state.depth + wing.tipDrop,
    froude:
      state.depth === null
        ? null
        : {
            depth: state.speed / Math.sqrt(GRAVITY * state.depth),
            span: state.speed / Math.sqrt(GRAVITY * wing.span),
          },
    alpha,
    boardAngle: alpha + (brief.boardAngle ?? 0),
    incidence: state.incidence,
    stance: state.stance,
    feet: state.stance + (brief.balance.height - deckHeight(runner.design)) * Math.sin(state.alpha),
    CLwing: state.liftCoefficients.wing,
    CLstabilizer: state.liftCoefficients.stabilizer,
    stallMargin: Number.isFinite(state.stallMargin) ? state.stallMargin : null,
    stabilizerMargin: Number.isFinite(state.stabilizerMargin) ? state.stabilizerMargin : null,
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

/** Speeds of best glide and least power among those of a series that a rider can stand at, by a parabola through the three points about the extreme. */
export function bestSpeeds(cases: readonly SpeedCase[]): BestSpeeds {
  const points = cases.flatMap(({ point }) => (point?.isReachable ? [point] : []));
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
