/**
 * Running against a sideways pull of the rig: leeway and heel that balance side force and roll while the foil carries the
 * weight. The whole heeled system is solved, since port and starboard differ. Level frame: y to starboard, z up; heel
 * positive starboard down, leeway positive with water from starboard. SI; degrees where handed out.
 *
 * Three ways to close the balance: `roll` - rider in the plane of the strut, heel and leeway both follow; `heel` - the
 * heel is given, leeway follows from the side force and the rider shifts sideways to balance roll; `strut` - the strut runs
 * without side force, heel follows.
 */

import type { Design } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { findRoot } from '../numeric/roots.ts';
import { STRUT } from '../vortex/system.ts';
import { solveWhole, type UnitStream, type WholeSolution, wholeFoil } from '../vortex/whole.ts';
import { depthAtSpeed, GRAVITY } from './condition.ts';
import { heeledStream } from './depth-heel.ts';

const RADIANS = Math.PI / 180;
const MOST_HEEL = 60 * RADIANS;

export type SideRule = { by: 'roll' } | { by: 'heel'; heel: number } | { by: 'strut' };

export interface SideTrim {
  alpha: number; // degrees
  leeway: number; // degrees
  heel: number; // degrees
  strutForce: number; // N along the strut's own normal, to starboard
  foilSideForce: number; // N in the level frame, wing and stabilizer
  riderShift: number; // m to starboard that balances roll; 0 for `roll`
  inducedDrag: number; // N
  residual: { lift: number; side: number }; // of the weight
}

/** Throws an Error with one sentence when no heel within 60 degrees or no leeway balances the pull. */
export function sideTrim(design: Design, speed: number, rule: SideRule, resolution: Resolution): SideTrim {
  const problem = new SideProblem(design, speed, resolution);
  if (rule.by === 'heel') return problem.report(problem.at(rule.heel * RADIANS));
  const miss = (heel: number) => {
    const state = problem.at(heel);
    return rule.by === 'strut' ? problem.strutForce(state) : problem.rollMoment(state);
  };
  const heel = findRoot(miss, -MOST_HEEL, MOST_HEEL, 1e-6);
  if (heel === null) throw new Error('no heel within 60 degrees balances this pull at this speed');
  return problem.report(problem.at(heel));
}

interface SideState {
  heel: number;
  alpha: number;
  leeway: number;
  stream: UnitStream;
  solution: WholeSolution;
}

class SideProblem {
  private readonly craft;
  private readonly pressure: number;
  private readonly weight: number;
  private readonly pull: number;
  private readonly pullHeight: number;
  private readonly balance: { x: number; height: number };

  constructor(design: Design, speed: number, resolution: Resolution) {
    const { brief } = design;
    const { density } = waterProperties(brief.water.kind, brief.water.temperature);
    this.craft = craftOf(design, depthAtSpeed(brief, speed), resolution);
    this.pressure = density * speed * speed;
    this.weight = (1 - brief.upwardPull) * brief.allUpMass * GRAVITY;
    this.pull = (brief.sidePull?.share ?? 0) * brief.allUpMass * GRAVITY;
    this.pullHeight = brief.sidePull?.height ?? brief.balance.height;
    this.balance = brief.balance;
  }

  /** Angle and leeway that carry the weight and hold the pull at a heel: Newton in both. */
  at(heel: number): SideState {
    const { depth } = this.craft;
    const solveAt = solveWhole(wholeFoil(this.craft, heel), depth);
    const force = (alpha: number, leeway: number) => {
      const stream: UnitStream = heeledStream(alpha, leeway, heel);
      const solution = solveAt(stream);
      return { solution, ...this.miss(solution, stream) };
    };
    let alpha = 0.03;
    let leeway = 0;
    const step = 1e-4;
    for (let i = 0; i < 30; i++) {
      const here = force(alpha, leeway);
      const byAlpha = force(alpha + step, leeway);
      const byLeeway = force(alpha, leeway + step);
      const a = (byAlpha.up - here.up) / step;
      const b = (byLeeway.up - here.up) / step;
      const c = (byAlpha.side - here.side) / step;
      const d = (byLeeway.side - here.side) / step;
      const determinant = a * d - b * c;
      const alphaStep = -(here.up * d - b * here.side) / determinant;
      const leewayStep = -(a * here.side - c * here.up) / determinant;
      alpha += alphaStep;
      leeway += leewayStep;
      if (!(Math.abs(alpha) < 0.8 && Math.abs(leeway) < 0.8)) break;
      if (Math.abs(alphaStep) + Math.abs(leewayStep) < 1e-9)
        return {
          heel,
          alpha,
          leeway,
          stream: heeledStream(alpha, leeway, heel),
          solution: force(alpha, leeway).solution,
        };
    }
    throw new Error('no angle and leeway carry this weight against this pull at this speed');
  }

  /** What is missing of balance across the stream, upward and sideways, N. */
  private miss({ loads }: WholeSolution, stream: UnitStream): { up: number; side: number } {
    const sum = (pick: 'x' | 'y' | 'z') =>
      loads.reduce((total, load) => total + load[pick], 0) * this.pressure;
    return { up: sum('z') * stream[0] - sum('x') * stream[2] - this.weight, side: sum('y') + this.pull };
  }

  /** Roll moment about the balance point, which leans with the foil; N m about x aft. */
  rollMoment({ heel, solution }: SideState): number {
    const y = Math.sin(heel) * this.balance.height;
    const z = Math.cos(heel) * this.balance.height;
    const total = { y: 0, z: 0, mx: 0 };
    for (const load of solution.loads) {
      total.y += load.y * this.pressure;
      total.z += load.z * this.pressure;
      total.mx += load.mx * this.pressure;
    }
    const aboutBalance = total.mx - (y * total.z - z * total.y);
    const arm = (this.pullHeight - this.balance.height) * Math.cos(heel);
    return aboutBalance - arm * this.pull;
  }

  /** Side force of the strut along its own normal, N to starboard. */
  strutForce({ heel, solution }: SideState): number {
    const load = solution.loads[STRUT];
    return (load.y * Math.cos(heel) - load.z * Math.sin(heel)) * this.pressure;
  }

  report(state: SideState): SideTrim {
    const { up, side } = this.miss(state.solution, state.stream);
    const [wing, stabilizer] = state.solution.loads;
    return {
      alpha: state.alpha / RADIANS,
      leeway: state.leeway / RADIANS,
      heel: state.heel / RADIANS,
      strutForce: this.strutForce(state),
      foilSideForce: (wing.y + stabilizer.y) * this.pressure,
      riderShift: this.rollMoment(state) / this.weight,
      inducedDrag: state.solution.inducedDrag * this.pressure,
      residual: { lift: up / this.weight, side: side / this.weight },
    };
  }
}
