/**
 * A solved flow: the vortex system of one foil at one depth with its unit solutions.
 * A pool keeps the arrays of each role (the design, its twin ...) and refills them while the strip counts stay the
 * same; what a flow holds is therefore overwritten by the next flow of the same role.
 */
import type { Craft } from '../geometry/craft.ts';
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
}

/** What to solve: the angle alone; also pitch rate and incidence; also sideslip, roll and yaw. */
export type Scope = 'angle' | 'pitch' | 'lateral' | 'whole';

export class FlowPool {
  private readonly kept = new Map<string, Flow & { key: string }>();

  solve(role: string, craft: Craft, scope: Scope): Flow {
    const { parts } = craft;
    const strut = scope === 'whole' ? parts.strut : null;
    const flow = this.take(
      role,
      parts.wing.count,
      parts.stabilizer?.count ?? 0,
      strut?.count ?? 0,
      parts.wing.rows,
    );
    const { system } = flow;
    const lateral = scope === 'lateral' || scope === 'whole';
    system.load({ ...parts, strut }, craft.depth);
    system.fillInfluence(lateral);
    system.factorise(lateral);
    solveSymmetricUnits(system, flow.symmetric, scope === 'pitch' || scope === 'whole');
    if (lateral) solveAntisymmetricUnits(system, flow.foil, false);
    if (scope === 'whole') solveAntisymmetricUnits(system, flow.craft, true);
    return flow;
  }

  private take(role: string, wing: number, stabilizer: number, strut: number, rows: number): Flow {
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
    };
    this.kept.set(role, flow);
    return flow;
  }
}
