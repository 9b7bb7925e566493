/**
 * A solved flow: the vortex system of one foil at one depth with its unit solutions.
 * A pool keeps the arrays of each role (the design, its twin ...) and refills them while the strip counts stay the
 * same; what a flow holds is therefore overwritten by the next flow of the same role.
 */
import type { Craft } from '../geometry/craft.ts';
import type { Parts } from '../geometry/strips.ts';
import {
  type AntisymmetricUnits,
  makeUnit,
  type SymmetricUnits,
  solveAntisymmetricUnits,
  solveSymmetricUnits,
  type Unit,
} from './causes.ts';
import { VortexSystem } from './system.ts';

export interface Flow {
  readonly system: VortexSystem;
  readonly symmetric: SymmetricUnits;
  readonly foil: AntisymmetricUnits; // without the strut
  readonly craft: AntisymmetricUnits; // with it
  readonly base: Unit; // scratch for the condition's mix of unit solutions
  readonly change: Unit; // scratch for its slope by the angle
  readonly stripCirculation: Float64Array; // scratch
  /** The same foil in deep water, solved for the angle alone; null where it was not asked for, or is this flow. */
  readonly deep: Flow | null;
}

/** What to solve: the angle alone; also pitch rate and incidence; also sideslip, roll and yaw. */
export type Scope = 'angle' | 'pitch' | 'lateral' | 'whole';

type Kept = Flow & { key: string; deep: Flow | null };

export class FlowPool {
  private readonly kept = new Map<string, Kept>();

  /** `besideDeep`: also what the foil does in deep water, at little more than its factorisation. */
  solve(role: string, craft: Craft, scope: Scope, besideDeep = false): Flow {
    const strut = scope === 'whole' ? craft.parts.strut : null;
    const flow = this.take(role, { ...craft.parts, strut });
    const deep = besideDeep && craft.depth !== null ? this.takeDeep(role, craft) : null;
    flow.deep = deep;
    const { system } = flow;
    const lateral = scope === 'lateral' || scope === 'whole';
    system.load({ ...craft.parts, strut }, craft.depth);
    system.fillInfluence(lateral, deep?.system);
    system.factorise(lateral);
    if (deep) {
      deep.system.factorise(false);
      solveSymmetricUnits(deep.system, deep.symmetric, false);
    }
    solveSymmetricUnits(system, flow.symmetric, scope === 'pitch' || scope === 'whole');
    if (lateral) solveAntisymmetricUnits(system, flow.foil, false);
    if (scope === 'whole') solveAntisymmetricUnits(system, flow.craft, true);
    return flow;
  }

  private takeDeep(role: string, craft: Craft): Flow {
    const parts = { ...craft.parts, strut: null };
    const deep = this.take(`${role} in deep water`, parts);
    deep.system.load(parts, null);
    return deep;
  }

  private take(role: string, parts: Parts): Kept {
    const { rows, count: wing } = parts.wing;
    const stabilizer = parts.stabilizer?.count ?? 0;
    const strut = parts.strut?.count ?? 0;
    const key = `${wing} ${stabilizer} ${strut} ${rows}`;
    const old = this.kept.get(role);
    if (old?.key === key) return old;
    const system = new VortexSystem(wing, stabilizer, strut, rows);
    const unit = () => makeUnit(system);
    const sideways = (): AntisymmetricUnits => ({ beta: unit(), rollRate: unit(), yawRate: unit() });
    const flow = {
      key,
      system,
      symmetric: { ahead: unit(), up: unit(), pitchRate: unit(), incidence: unit() },
      foil: sideways(),
      craft: sideways(),
      base: unit(),
      change: unit(),
      stripCirculation: new Float64Array(system.strips),
      deep: null,
    };
    this.kept.set(role, flow);
    return flow;
  }
}
