/**
 * One foil with other stabilizers behind it: margin, hold and, run level, what each costs. A stabilizer of another area
 * keeps its shape: every length of it is scaled. Lengths in m, areas in m2, forces in N, angles in degrees.
 */
import type { Design, Stabilizer } from '../design/document.ts';
import type { Resolution } from '../geometry/craft.ts';
import { scaledPlanform } from '../geometry/scale.ts';
import { type Surface, surfaceOf } from '../geometry/surface.ts';
import type { ConditionOptions } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { holdTerms } from './hold.ts';
import { type Fix, runLevel } from './level-running.ts';
import { neutralPoint } from './pitch.ts';
import { profileFor } from './profile-for.ts';
import { rigAt } from './rig.ts';
import { runFoil } from './running.ts';

export interface TriedStabilizer {
  arm: number;
  scale: number; // of every length of the present stabilizer
  area: number; // projected
  volume: number; // V_H
  neutralPoint: number; // aft of the origin
  staticMargin: number; // about the balance point as drawn, in mean chords
  holdIndex: number | null;
  incidence: number; // as it runs: found where the stance is kept
  stance: number; // of the balance point aft of the origin as it runs: found where the incidence is kept
  lift: number; // of the stabilizer, positive up: what it adds to the wing's or takes from it
  wingLift: number;
  inducedDrag: number;
  totalDrag: number;
}

export class StabilizerTrials {
  private readonly pool = new FlowPool();
  private readonly condition: Condition;
  private readonly resolution: Resolution;
  private readonly wing: Surface;

  constructor(
    private readonly design: Design,
    readonly drawn: Stabilizer,
    options: Omit<ConditionOptions, 'alpha'>,
  ) {
    this.condition = conditionOf(design.brief, options);
    this.resolution = resolutionOf(options);
    this.wing = surfaceOf(design.wing);
  }

  /** The figures that need no balance. Throws where the foil does not fit the water. */
  measure(arm: number, scale: number) {
    const craft = craftFor(this.resized(arm, scale), this.condition.depth, this.resolution);
    const foil = runFoil(this.pool, 'tried', craft, this.condition, 'angle');
    const neutral = neutralPoint(foil.loads, foil.alpha);
    const hold = holdTerms(craft.wing, craft.stabilizer, foil.CL);
    return {
      area: craft.stabilizer?.projectedArea ?? 0,
      volume: hold.pitch,
      neutralPoint: neutral,
      staticMargin: (neutral - this.design.brief.balance.x) / craft.wing.meanChord,
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

  /** Run level, the stance kept or the incidence. Throws one sentence where there is no such running state. */
  run(arm: number, scale: number, fix: Fix, incidence = this.drawn.incidence): TriedStabilizer {
    const resized = this.resized(arm, scale, incidence);
    const rig = rigAt(this.pool, resized, this.condition.depth, this.resolution);
    const profile = profileFor(resized, this.resolution.sections);
    const state = runLevel(rig, this.condition, this.condition.lift, fix, profile);
    return {
      arm,
      scale,
      ...this.measure(arm, scale),
      incidence: state.incidence,
      stance: state.stance,
      lift: state.lift.stabilizer,
      wingLift: state.lift.wing,
      inducedDrag: state.drag.wingInduced + state.drag.stabilizerInduced,
      totalDrag: state.totalDrag,
    };
  }

  private resized(
    arm: number,
    scale: number,
    incidence = this.drawn.incidence,
  ): Design & { stabilizer: Stabilizer } {
    return { ...this.design, stabilizer: { ...scaledPlanform(this.drawn, scale), arm, incidence } };
  }
}
