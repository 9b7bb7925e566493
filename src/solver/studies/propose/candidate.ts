/**
 * One design tried by a proposal, its figures worked out when first asked for. Candidates of one bench share the work
 * arrays: ask a candidate before the next one is made.
 */
import type { Design } from '../../design/document.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../../forces/loads.ts';
import type { ProfileModel } from '../../forces/profile.ts';
import type { Resolution } from '../../geometry/craft.ts';
import { FlowPool } from '../../vortex/flow.ts';
import { type Condition, conditionOf, depthAtSpeed } from '../condition.ts';
import { derivativesOf, lateralLoads } from '../derivatives.ts';
import type { Fix, RunningState } from '../level-running.ts';
import { neutralPoint } from '../pitch.ts';
import { type Rig, rigAt } from '../rig.ts';
import { LevelRunner } from '../speed.ts';

/** What the candidates of one search share. */
export interface Bench {
  resolution: Resolution;
  profileOf: (design: Design) => ProfileModel;
  pools: Map<string, FlowPool>;
}

export function makeBench(resolution: Resolution, profileOf: (design: Design) => ProfileModel): Bench {
  return { resolution, profileOf, pools: new Map() };
}

function poolFor(bench: Bench, role: string): FlowPool {
  const pool = bench.pools.get(role) ?? new FlowPool();
  bench.pools.set(role, pool);
  return pool;
}

export type SpeedName = 'takeOff' | 'cruise' | 'top';
export const SPEED_NAMES: readonly SpeedName[] = ['takeOff', 'cruise', 'top'];

/** Level running that keeps the flow of every depth it was asked for. */
class CandidateRunner extends LevelRunner {
  private readonly rigs = new Map<number | null, Rig>();

  constructor(
    design: Design,
    private readonly bench: Bench,
  ) {
    super(design, bench.resolution, bench.profileOf(design));
  }

  override rigFor(depth: number | null): Rig {
    const known = this.rigs.get(depth);
    if (known) return known;
    const pool = poolFor(this.bench, `depth ${this.rigs.size}`);
    const rig = rigAt(pool, this.design, depth, this.bench.resolution);
    this.rigs.set(depth, rig);
    return rig;
  }
}

export class Candidate {
  readonly runner: LevelRunner;
  readonly condition: Condition; // cruise, as `solve` has it
  private readonly states = new Map<string, RunningState>();

  constructor(
    readonly design: Design,
    private readonly bench: Bench,
  ) {
    this.runner = new CandidateRunner(design, bench);
    this.condition = conditionOf(design.brief, {});
  }

  /** The flow at cruise. Throws where the foil cannot be drawn or does not fit its water. */
  get rig(): Rig {
    return this.runner.rigFor(this.condition.depth);
  }

  /** Level running at a speed; `depth` left out: as the brief has it. */
  running(speed: number, fix: Fix, depth = depthAtSpeed(this.design.brief, speed)): RunningState {
    const key = `${speed} ${fix} ${depth}`;
    const state = this.states.get(key) ?? this.runner.run(speed, fix, depth);
    this.states.set(key, state);
    return state;
  }

  at(name: SpeedName, fix: Fix = 'incidence'): RunningState {
    return this.running(this.design.brief.speeds[name], fix);
  }

  /** On the projected area, carrying the weight at cruise. */
  get liftCoefficient(): number {
    const { density, speed, lift } = this.condition;
    return lift / (0.5 * density * speed ** 2 * this.rig.craft.wing.projectedArea);
  }

  /** As `solve` has it: angle alone carries the weight, stabilizer as drawn. */
  get staticMargin(): number {
    const { flow, craft } = this.rig;
    const { density, speed, lift } = this.condition;
    const loads = alphaLoads(flow.system, flow.symmetric);
    const point = neutralPoint(loads, alphaForLift(loads, lift / (density * speed ** 2)));
    return (point - this.design.brief.balance.x) / craft.wing.meanChord;
  }

  /** Clr/|Clp| of the foil about the origin, as `solve` has it. */
  get rollFromYaw(): number {
    const { craft } = this.rig;
    const { density, speed, lift } = this.condition;
    const flow = poolFor(this.bench, 'sideways').solve('sideways', craft, 'lateral');
    const loads = alphaLoads(flow.system, flow.symmetric);
    mixAlpha(flow.symmetric, alphaForLift(loads, lift / (density * speed ** 2)), flow.base);
    const { projectedArea: area, span } = craft.wing;
    const lateral = lateralLoads(flow.system, flow.base, flow.foil);
    const { Clr, Clp } = derivativesOf(lateral, { area, span, x: 0, z: 0 });
    return Clr / Math.abs(Clp);
  }
}
