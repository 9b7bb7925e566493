/**
 * One wing bent to any droop at one condition: the figures of each member, the same lift carried by all. Lost lift is the
 * ledger's: at the same angle, against the bent wing's own unrolled twin. Everything with "extra" is at the same lift,
 * against the flat member (amplitude 0).
 */
import type { Design } from '../design/document.ts';
import { loadsAt, mixAlpha } from '../forces/loads.ts';
import type { ProfileModel } from '../forces/profile.ts';
import { Bender, type Kept, largestAmplitude } from '../geometry/bend.ts';
import { assemble, type Craft, type Resolution, withoutStrut } from '../geometry/craft.ts';
import { surfaceOf } from '../geometry/surface.ts';
import type { ConditionOptions, Derivatives } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf, resolutionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { derivativesOf, lateralLoads } from './derivatives.ts';
import { holdTerms } from './hold.ts';
import { profileLoads, stripDrags } from './profile-derivatives.ts';
import { profileFor } from './profile-for.ts';
import { dragOf, type RunningFoil, runFoil, settleFoil } from './running.ts';

/** Lift coefficient above which no section of this trade carries: where a sweep stops. Common practice. */
export const GREATEST_LIFT_COEFFICIENT = 1.2;

export const COLUMNS = [
  'amplitude', // degrees of tip angle (or what the law calls its amplitude)
  'effectiveDroop', // degrees
  'tipDrop', // m
  'span', // m, tip to tip
  'unrolledLength', // m
  'projectedArea', // m2
  'unrolledArea', // m2
  'CL',
  'alpha', // degrees
  'extraAlpha', // degrees
  'lostFraction', // of the unrolled twin's lift at the same angle
  'inducedDrag', // N
  'extraInducedDrag', // N
  'profileDrag', // N, of wing, stabilizer and strut
  'extraProfileDrag', // N
  'totalDrag', // N, every source
  'extraTotalDrag', // N
  'holdIndex',
  'rollTerm', // G_w / C_L
  'Clp',
  'Clr',
  'Cnp',
  'Cnr', // vortex part
  'CnrProfile', // strip drag's part
  'rollFromYaw', // Clr/|Clp|
  'yawFromRoll', // Cnp/|Cnr|, NaN where not resolved
  'Cnbeta',
  'Clbeta',
] as const;

export type DroopColumn = (typeof COLUMNS)[number];

/** Roll-from-yaw along the same droops at another speed, the rider and the depth unchanged. */
export interface LoadingLine {
  speed: number; // m/s
  CL: number; // of the flat end
  Clr: Float64Array;
}

export type DroopRow = Record<DroopColumn, number>;

const DEGREES = 180 / Math.PI;

/** One family of bent wings at one condition. */
export class DroopFamily {
  readonly condition: Condition;
  readonly bender: Bender;
  private readonly pool = new FlowPool();
  private readonly resolution: Resolution;
  readonly profile: ProfileModel;
  private flat: DroopRow | null = null;

  constructor(
    private readonly design: Design,
    readonly kept: Kept,
    private readonly options: Omit<ConditionOptions, 'alpha'>,
  ) {
    this.condition = conditionOf(design.brief, options);
    this.resolution = resolutionOf(options);
    this.bender = new Bender(design.wing, kept);
    this.profile = profileFor(design, this.resolution.sections);
  }

  /** The largest amplitude that can be drawn, runs below the surface and still carries the lift. */
  limit(): { largest: number; by: 'geometry' | 'lift' } {
    const shape = largestAmplitude((amplitude) => this.isDrawn(amplitude));
    const carried = largestAmplitude((amplitude) => amplitude <= shape && this.isCarried(amplitude));
    return carried < shape ? { largest: carried, by: 'lift' } : { largest: shape, by: 'geometry' };
  }

  /** Empty lines for the three speeds of the brief, each speed once. */
  loadings(count: number): LoadingLine[] {
    const { takeOff, cruise, top } = this.design.brief.speeds;
    const speeds = [...new Set([takeOff, this.options.speed ?? cruise, top])];
    return speeds.map((speed) => ({ speed, CL: 0, Clr: new Float64Array(count) }));
  }

  /** All figures at an amplitude (degrees). `also` sees the running foil before its arrays are reused. */
  row(amplitude: number, also: (foil: RunningFoil) => void = () => {}): DroopRow {
    const craft = this.craftAt(amplitude);
    const foil = runFoil(this.pool, 'bent', craft, this.condition, 'whole');
    const drag = dragOf(this.design, foil, this.condition, this.profile);
    const coupling = this.lateralAt(foil);
    also(foil);
    const vertical = loadsAt(foil.loads, foil.alpha)[0].z;
    const flatLift = this.twinLift(craft, foil.alpha);
    const hold = holdTerms(craft.wing, craft.stabilizer, foil.CL);
    const row: DroopRow = {
      amplitude,
      effectiveDroop: craft.wing.effectiveDroop * DEGREES,
      tipDrop: craft.wing.tipDrop,
      span: craft.wing.span,
      unrolledLength: craft.wing.unrolledLength,
      projectedArea: craft.wing.projectedArea,
      unrolledArea: craft.wing.unrolledArea,
      CL: foil.CL,
      alpha: foil.alpha * DEGREES,
      extraAlpha: 0,
      lostFraction: flatLift > 0 ? (flatLift - vertical) / flatLift : Number.NaN,
      inducedDrag: drag.induced,
      extraInducedDrag: 0,
      profileDrag: drag.profile,
      extraProfileDrag: 0,
      totalDrag: drag.total,
      extraTotalDrag: 0,
      holdIndex: hold.index ?? Number.NaN,
      rollTerm: hold.roll ?? Number.NaN,
      ...coupling,
    };
    if (amplitude === 0) this.flat = row;
    const flat = this.flat ?? this.row(0);
    row.extraAlpha = row.alpha - flat.alpha;
    row.extraInducedDrag = row.inducedDrag - flat.inducedDrag;
    row.extraProfileDrag = row.profileDrag - flat.profileDrag;
    row.extraTotalDrag = row.totalDrag - flat.totalDrag;
    return row;
  }

  /** C_lr of the foil about its origin at another speed, the same lift carried; its unit solutions serve any speed. */
  rollFromYawAt(foil: RunningFoil, speed: number): number {
    try {
      return this.derivativesAt(settleFoil(foil.craft, foil.flow, { ...this.condition, speed })).Clr;
    } catch {
      return Number.NaN; // no angle carries it
    }
  }

  private craftAt(amplitude: number): Craft {
    const bent = { ...this.design, wing: this.bender.at(amplitude) };
    return withoutStrut(craftFor(bent, this.condition.depth, this.resolution));
  }

  private isDrawn(amplitude: number): boolean {
    try {
      this.craftAt(amplitude);
      return true;
    } catch {
      return false;
    }
  }

  private isCarried(amplitude: number): boolean {
    try {
      const { CL } = runFoil(this.pool, 'bent', this.craftAt(amplitude), this.condition, 'angle');
      return CL <= GREATEST_LIFT_COEFFICIENT;
    } catch {
      return false;
    }
  }

  private derivativesAt({ craft, flow, alpha }: RunningFoil): Derivatives {
    mixAlpha(flow.symmetric, alpha, flow.base);
    const { projectedArea: area, span } = craft.wing;
    return derivativesOf(lateralLoads(flow.system, flow.base, flow.foil), { area, span, x: 0, z: 0 });
  }

  private lateralAt(foil: RunningFoil) {
    const { craft, flow, alpha } = foil;
    const { Clp, Clr, Cnp, Cnr, Cnbeta, Clbeta } = this.derivativesAt(foil);
    const { projectedArea: area, span } = craft.wing;
    const drags = stripDrags(craft, flow, this.condition, this.profile);
    const loads = profileLoads(craft, flow, flow.foil, alpha, drags, false);
    const profile = derivativesOf(loads, { area, span, x: 0, z: 0 });
    const isResolved = Math.abs(Cnr) > Math.abs(profile.Cnr);
    return {
      Clp,
      Clr,
      Cnp,
      Cnr,
      CnrProfile: profile.Cnr,
      rollFromYaw: Clr / Math.abs(Clp),
      yawFromRoll: isResolved ? Cnp / Math.abs(Cnr) : Number.NaN,
      Cnbeta,
      Clbeta,
    };
  }

  /** Vertical force per rho V^2 of the wing of the unrolled twin at an angle, the stabilizer present. */
  private twinLift(craft: Craft, alpha: number): number {
    const length = { kind: 'unrolled', value: craft.wing.unrolledLength } as const;
    const drawn = { ...this.design.wing, droop: { kind: 'flat' }, length } as const;
    const flat = surfaceOf(drawn, undefined, craft.wing.lift);
    const twin = assemble(flat, craft.stabilizer, null, craft.depth, this.resolution);
    const condition = { ...this.condition, alpha };
    return loadsAt(runFoil(this.pool, 'twin', twin, condition, 'angle').loads, alpha)[0].z;
  }
}
