/**
 * Running against a sideways pull of the rig: lift, side force, roll and pitch balanced at once by angle, leeway, heel
 * and the stance or the stabilizer's incidence. The whole heeled system is solved, since port and starboard differ. Level
 * frame: y to starboard, z up; heel positive starboard down, leeway positive with water from starboard. SI; degrees where
 * handed out.
 *
 * Three ways to close the balance: `roll` - rider in the plane of the strut, heel and leeway both follow; `heel` - the
 * heel is given, leeway follows from the side force and the rider shifts sideways to balance roll; `strut` - the strut runs
 * without side force, heel follows and the rider shifts. Drags other than the induced one are those of upright running.
 */
import type { Craft, Resolution } from '../geometry/craft.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import { findRoot } from '../numeric/roots.ts';
import { STABILIZER, STRUT, WING } from '../vortex/system.ts';
import { solveWhole, type UnitStream, type WholeSolution, wholeFoil } from '../vortex/whole.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { heeledStream } from './depth-heel.ts';
import type { Fix, RunningState } from './level-running.ts';
import { camberMoment } from './pitch.ts';
import type { LevelRunner } from './speed.ts';

const RADIANS = Math.PI / 180;
const MOST_HEEL = 60 * RADIANS;
const STEP = 1e-4; // rad, of the differences behind Newton's matrix

export type SideRule = { by: 'roll' } | { by: 'heel'; heel: number } | { by: 'strut' };

/** A strip of the strut: what cavitation and air ask of it. */
export interface StrutStrip {
  depth: number; // m; in deep water from the strut's upper end
  cl: number; // size of its lift coefficient
}

export interface SideTrim {
  alpha: number; // degrees
  leeway: number; // degrees
  heel: number; // degrees
  incidence: number; // degrees, stabilizer
  stance: number; // m, balance point aft of the origin
  strutForce: number; // N along the strut's own normal, to starboard
  foilSideForce: number; // N in the level frame, wing and stabilizer
  riderShift: number; // m to starboard that balances roll; 0 for `roll`
  inducedDrag: number; // N, strut included
  totalDrag: number; // N
  strut: StrutStrip[]; // foot to surface
  residual: { lift: number; side: number; pitch: number }; // of the weight; of weight times mean chord
}

/** Throws an Error with one sentence when no heel within 60 degrees or no leeway balances the pull. */
export function sideTrim(
  runner: LevelRunner,
  speed: number,
  rule: SideRule,
  fix: Fix,
  resolution: Resolution,
): SideTrim {
  const problem = new SideProblem(runner, speed, fix, resolution);
  if (rule.by === 'heel') return problem.report(problem.at(rule.heel * RADIANS));
  const miss = (heel: number) => {
    const state = problem.at(heel);
    return rule.by === 'strut' ? problem.strutForce(state) : problem.rollMoment(state);
  };
  const heel = findRoot(miss, -MOST_HEEL, MOST_HEEL, 1e-6);
  if (heel === null) throw new Error('no heel within 60 degrees balances this pull at this speed');
  return problem.report(problem.at(heel));
}

/** Angle, leeway and turn of the stabilizer, rad. */
type Unknowns = [number, number, number];

interface SideState {
  heel: number;
  unknowns: Unknowns;
  stance: number;
  stream: UnitStream;
  solution: WholeSolution;
}

class SideProblem {
  private readonly craft: Craft;
  private readonly upright: RunningState;
  private readonly pressure: number;
  private readonly pull: number;
  private readonly pullHeight: number;
  private readonly keepsStance: boolean;

  constructor(
    private readonly runner: LevelRunner,
    speed: number,
    fix: Fix,
    resolution: Resolution,
  ) {
    const { design } = runner;
    const { sidePull, allUpMass, balance } = design.brief;
    this.craft = craftFor(design, depthAtSpeed(design.brief, speed), resolution);
    this.upright = runner.run(speed, fix);
    this.pressure = runner.density * speed * speed;
    this.pull = (sidePull?.share ?? 0) * allUpMass * GRAVITY;
    this.pullHeight = sidePull?.height ?? balance.height;
    this.keepsStance = fix === 'stance' && this.craft.stabilizer !== null;
  }

  /** What carries the weight, holds the pull and balances pitch at a heel: Newton in angle, leeway and turn. */
  at(heel: number): SideState {
    const solveAt = solveWhole(wholeFoil(this.craft, heel), this.craft.depth);
    const stance = this.runner.design.brief.balance.x;
    const stateAt = (unknowns: Unknowns): SideState => {
      const stream = heeledStream(unknowns[0], unknowns[1], heel);
      return { heel, unknowns, stance, stream, solution: solveAt(stream, unknowns[2]) };
    };
    const count = this.keepsStance ? 3 : 2;
    const unknowns: Unknowns = [0.03, 0, 0];
    for (let i = 0; i < 30; i++) {
      const state = stateAt(unknowns);
      const step = this.newtonStep(state, stateAt, count);
      let moved = 0;
      for (let k = 0; k < count; k++) {
        unknowns[k as 0 | 1 | 2] += step[k]!;
        moved += Math.abs(step[k]!);
      }
      if (!unknowns.every((angle) => Math.abs(angle) < 0.8)) break;
      if (moved < 1e-9) return this.withStance(stateAt([...unknowns]));
    }
    throw new Error('no angle and leeway carry this weight against this pull at this speed');
  }

  /** The feet balance pitch where the stabilizer does not. */
  private withStance(state: SideState): SideState {
    if (this.keepsStance) return state;
    return { ...state, stance: state.stance - this.pitchMoment(state) / this.across(state) };
  }

  private newtonStep(
    state: SideState,
    stateAt: (unknowns: Unknowns) => SideState,
    count: number,
  ): Float64Array {
    const misses = (at: SideState) => [...this.forcesMissed(at), count > 2 ? this.pitchMoment(at) : 0];
    const here = misses(state);
    const matrix = new Float64Array(count * count);
    for (let k = 0; k < count; k++) {
      const shifted: Unknowns = [...state.unknowns];
      shifted[k as 0 | 1 | 2] += STEP;
      const there = misses(stateAt(shifted));
      for (let i = 0; i < count; i++) matrix[i * count + k] = (there[i]! - here[i]!) / STEP;
    }
    const step = Float64Array.from({ length: count }, (_, i) => -here[i]!);
    const pivots = new Int32Array(count);
    factor(matrix, count, pivots);
    solveFactored(matrix, count, pivots, step);
    return step;
  }

  /** What is missing of balance: across the stream upward and sideways, N. */
  private forcesMissed({ stream, solution }: SideState): [number, number] {
    const sum = (pick: 'x' | 'y' | 'z') =>
      solution.loads.reduce((total, load) => total + load[pick], 0) * this.pressure;
    const up = sum('z') * stream[0] - sum('x') * stream[2] - this.runner.weight;
    return [up, sum('y') + this.pull];
  }

  /** Force along the foil's own upright axis, N. */
  private across({ heel, solution }: SideState): number {
    const { loads } = solution;
    const own = (load: (typeof loads)[0]) => load.z * Math.cos(heel) + load.y * Math.sin(heel);
    return loads.reduce((total, load) => total + own(load), 0) * this.pressure;
  }

  /**
   * Nose-up moment about the balance point along the foil's own axes, N m. Near-field drag is taken out surface by surface
   * and the upright drags put in, their induced part brought up to the heeled one at the origin's height.
   */
  private pitchMoment({ heel, unknowns, stance, solution }: SideState): number {
    const { balance, driveHeight } = this.runner.design.brief;
    const [ahead, up] = [Math.cos(unknowns[0]), Math.sin(unknowns[0])];
    let moment = camberMoment(this.craft);
    for (const surface of [WING, STABILIZER, STRUT] as const) {
      const load = solution.loads[surface];
      const z = load.z * Math.cos(heel) + load.y * Math.sin(heel);
      const nearDrag = load.x * ahead + z * up;
      const lever = this.heightOf(surface) - balance.height;
      moment += load.my * Math.cos(heel) - load.mz * Math.sin(heel);
      moment += stance * z - balance.height * load.x - nearDrag * lever * ahead;
    }
    const more = this.inducedDrag(solution) - this.uprightInduced;
    return moment * this.pressure + this.upright.dragMoment - more * (driveHeight ?? balance.height);
  }

  private heightOf(surface: typeof WING | typeof STABILIZER | typeof STRUT): number {
    if (surface === WING) return 0;
    if (surface === STABILIZER) return this.craft.stabilizer?.height ?? 0;
    return 0.5 * (this.craft.depth ?? this.craft.strut?.length ?? 0);
  }

  private get uprightInduced(): number {
    return this.upright.drag.wingInduced + this.upright.drag.stabilizerInduced;
  }

  private inducedDrag(solution: WholeSolution): number {
    return solution.inducedDrag() * this.pressure;
  }

  /** Roll moment about the balance point, which leans with the foil; N m about x aft. */
  rollMoment({ heel, solution }: SideState): number {
    const { height } = this.runner.design.brief.balance;
    const y = Math.sin(heel) * height;
    const z = Math.cos(heel) * height;
    let moment = 0;
    for (const load of solution.loads) moment += load.mx - (y * load.z - z * load.y);
    return moment * this.pressure - (this.pullHeight - height) * Math.cos(heel) * this.pull;
  }

  /** Side force of the strut along its own normal, N to starboard. */
  strutForce({ heel, solution }: SideState): number {
    const load = solution.loads[STRUT];
    return (load.y * Math.cos(heel) - load.z * Math.sin(heel)) * this.pressure;
  }

  report(state: SideState): SideTrim {
    const { heel, unknowns, solution } = state;
    const [wing, stabilizer] = solution.loads;
    const [up, side] = this.forcesMissed(state);
    const { weight, design } = this.runner;
    const inducedDrag = this.inducedDrag(solution);
    return {
      alpha: unknowns[0] / RADIANS,
      leeway: unknowns[1] / RADIANS,
      heel: heel / RADIANS,
      incidence: (design.stabilizer?.incidence ?? 0) + unknowns[2] / RADIANS,
      stance: state.stance,
      strutForce: this.strutForce(state),
      foilSideForce: (wing.y + stabilizer.y) * this.pressure,
      riderShift: this.rollMoment(state) / weight,
      inducedDrag,
      totalDrag: this.upright.totalDrag - this.uprightInduced + inducedDrag,
      strut: this.strutStrips(solution),
      residual: {
        lift: up / weight,
        side: side / weight,
        pitch: this.pitchMoment(state) / (weight * this.craft.wing.meanChord),
      },
    };
  }

  private strutStrips({ foil, circulation }: WholeSolution): StrutStrip[] {
    const waterLine = this.craft.depth ?? this.craft.strut?.length ?? 0;
    return foil.stations.flatMap(({ surface }, i) =>
      surface === STRUT
        ? [
            {
              depth: waterLine - foil.controls.z[i]!,
              cl: Math.abs((2 * circulation[i]!) / foil.chord[i]!),
            },
          ]
        : [],
    );
  }
}
