/**
 * Stabilizer sizing: which area at a given arm, or which arm at a given area, gives a wanted static margin or a wanted
 * hold index; and what each choice costs. A stabilizer of another area keeps its shape: every length of it is scaled.
 *
 * Every choice is run level with the stance kept and the stabilizer's incidence found (level-running.ts), so that the
 * drags compare trimmed foils. Lengths in m, areas in m2, forces in N, angles in degrees.
 */
import type { Design, Stabilizer } from '../design/document.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { scaledPlanform } from '../geometry/scale.ts';
import { type Surface, surfaceOf } from '../geometry/surface.ts';
import { findRoot } from '../numeric/roots.ts';
import type { ConditionOptions } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf, resolutionOf } from './condition.ts';
import { holdTerms } from './hold.ts';
import { runLevel } from './level-running.ts';
import { neutralPoint } from './pitch.ts';
import { profileFor } from './profile-for.ts';
import { rigAt } from './rig.ts';
import { runFoil } from './running.ts';
import type { Study } from './study.ts';

export interface SizingOptions {
  staticMargin?: number; // wanted, in mean chords; default: the present one
  holdIndex?: number; // wanted; default: the present one
  arm?: number; // m, at which areas are looked for; default: the present one
  area?: number; // m2 projected, at which arms are looked for; default: the present one
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export type SizingGoal = 'present' | 'marginByArea' | 'marginByArm' | 'holdByArea' | 'holdByArm';

export interface SizedStabilizer {
  arm: number;
  scale: number; // of every length of the present stabilizer
  area: number; // projected
  volume: number; // V_H
  staticMargin: number;
  holdIndex: number | null;
  incidence: number; // that balances the stance at the condition
  lift: number; // of the stabilizer, positive up: what it adds to the wing's or takes from it
  wingLift: number;
  inducedDrag: number;
  totalDrag: number;
}

/** A choice, or why there is none. */
export type SizingChoice =
  | { goal: SizingGoal; found: SizedStabilizer; problem: null }
  | { goal: SizingGoal; found: null; problem: string };

export interface Sizing {
  wanted: { staticMargin: number; holdIndex: number | null };
  given: { arm: number; area: number };
  choices: SizingChoice[];
}

const SMALLEST = 0.3; // of every length
const LARGEST = 3;
const SHORTEST = 0.15; // m
const LONGEST = 2;

/** Null for a foil without a stabilizer. */
export function* sizeStabilizer(design: Design, options: SizingOptions = {}): Study<Sizing | null> {
  const { stabilizer } = design;
  if (!stabilizer) return null;
  const sizer = new Sizer(design, stabilizer, options.condition ?? {});
  const present = sizer.measure(stabilizer.arm, 1);
  const staticMargin = options.staticMargin ?? present.staticMargin;
  const holdIndex = options.holdIndex ?? present.holdIndex;
  const arm = options.arm ?? stabilizer.arm;
  const area = options.area ?? present.area;
  const scale = Math.sqrt(area / present.area);
  const byMargin = (at: number, size: number) => sizer.measure(at, size).staticMargin - staticMargin;
  const byHold = (at: number, size: number) => (sizer.holdIndex(at, size) ?? 0) - (holdIndex ?? 0);
  const choices: SizingChoice[] = [sizer.choice('present', stabilizer.arm, 1)];
  yield 0.2;
  choices.push(sizer.findArea('marginByArea', arm, byMargin));
  yield 0.4;
  choices.push(sizer.findArm('marginByArm', scale, byMargin));
  yield 0.6;
  choices.push(sizer.findArea('holdByArea', arm, byHold));
  yield 0.8;
  choices.push(sizer.findArm('holdByArm', scale, byHold));
  return { wanted: { staticMargin, holdIndex }, given: { arm, area }, choices };
}

class Sizer {
  private readonly pool = new FlowPool();
  private readonly condition: Condition;
  private readonly resolution: Resolution;
  private readonly wing: Surface;

  constructor(
    private readonly design: Design,
    private readonly stabilizer: Stabilizer,
    options: Omit<ConditionOptions, 'alpha'>,
  ) {
    this.condition = conditionOf(design.brief, options);
    this.resolution = resolutionOf(options);
    this.wing = surfaceOf(design.wing);
  }

  findArea(goal: SizingGoal, arm: number, miss: (arm: number, scale: number) => number): SizingChoice {
    const scale = this.root(goal, (at) => miss(arm, at), SMALLEST, LARGEST);
    return typeof scale === 'number' ? this.choice(goal, arm, scale) : scale;
  }

  findArm(goal: SizingGoal, scale: number, miss: (arm: number, scale: number) => number): SizingChoice {
    const arm = this.root(goal, (at) => miss(at, scale), SHORTEST, LONGEST);
    return typeof arm === 'number' ? this.choice(goal, arm, scale) : arm;
  }

  /** The figures that need no balance. Throws where the foil does not fit the water. */
  measure(arm: number, scale: number) {
    const resized = this.resized(arm, scale);
    const craft = craftOf(resized, this.condition.depth, this.resolution);
    const foil = runFoil(this.pool, 'sized', craft, this.condition, 'angle');
    const ahead = neutralPoint(foil.loads, foil.alpha) - this.design.brief.balance.x;
    const hold = holdTerms(craft.wing, craft.stabilizer, foil.CL);
    return {
      area: craft.stabilizer?.projectedArea ?? 0,
      volume: hold.pitch,
      staticMargin: ahead / craft.wing.meanChord,
      holdIndex: hold.index,
    };
  }

  holdIndex(arm: number, scale: number): number | null {
    const { stabilizer } = this.resized(arm, scale);
    const { density, speed, lift } = this.condition;
    const CL = lift / (0.5 * density * speed ** 2 * this.wing.projectedArea);
    const surface = surfaceOf(stabilizer, { arm, height: stabilizer.height });
    return holdTerms(this.wing, surface, CL).index;
  }

  choice(goal: SizingGoal, arm: number, scale: number): SizingChoice {
    try {
      const resized = this.resized(arm, scale);
      const rig = rigAt(this.pool, resized, this.condition.depth, this.resolution);
      const state = runLevel(rig, this.condition, this.condition.lift, 'stance', profileFor(resized));
      const found: SizedStabilizer = {
        arm,
        scale,
        ...this.measure(arm, scale),
        incidence: state.incidence,
        lift: state.lift.stabilizer,
        wingLift: state.lift.wing,
        inducedDrag: state.drag.wingInduced + state.drag.stabilizerInduced,
        totalDrag: state.totalDrag,
      };
      return { goal, found, problem: null };
    } catch (error) {
      return { goal, found: null, problem: error instanceof Error ? error.message : String(error) };
    }
  }

  private resized(arm: number, scale: number): Design & { stabilizer: Stabilizer } {
    return { ...this.design, stabilizer: { ...scaledPlanform(this.stabilizer, scale), arm } };
  }

  private root(
    goal: SizingGoal,
    miss: (at: number) => number,
    low: number,
    high: number,
  ): number | SizingChoice {
    const problem =
      goal === 'marginByArm' || goal === 'holdByArm'
        ? `no arm from ${SHORTEST} to ${LONGEST} m gives it at this area`
        : `no area from ${SMALLEST ** 2} to ${LARGEST ** 2} times the present one gives it at this arm`;
    const isHold = goal === 'holdByArea' || goal === 'holdByArm';
    if (isHold && !(this.holdIndex(this.stabilizer.arm, 1) ?? 0))
      return {
        goal,
        found: null,
        problem: 'the hold index is nothing at any size: wing or stabilizer is flat',
      };
    try {
      return findRoot(miss, low, high, 1e-5) ?? { goal, found: null, problem };
    } catch (error) {
      return { goal, found: null, problem: error instanceof Error ? error.message : String(error) };
    }
  }
}
