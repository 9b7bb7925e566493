/**
 * Loads of wing and stabilizer as exact quadratics in the angle of attack and the stabilizer's incidence, from the unit
 * solutions: F = sum over causes of u_a u_b F(a, b), u = (cos alpha, sin alpha, turn). `turn` (rad) is the change of
 * stabilizer incidence from the drawn one. Per rho V^2: forces m2, moments m3.
 */
import type { SymmetricUnits, Unit } from '../vortex/causes.ts';
import type { Flow } from '../vortex/flow.ts';
import { gatherStrips } from '../vortex/wake.ts';
import { addLoads, type Load, sumLoads } from './loads.ts';

export interface PitchLoads {
  /** [wing, stabilizer] at an angle and turn (rad). */
  at(alpha: number, turn: number): [Load, Load];
  /** Strip circulations, wing then stabilizer, into `to`. */
  circulation(alpha: number, turn: number, to: Float64Array): void;
  /** Strip circulations of each cause by itself: what quadratic forms are made of. */
  readonly causes: readonly Float64Array[];
  /** A quadratic form of the causes at an angle and turn (rad). */
  quadratic(form: Float64Array, alpha: number, turn: number): number;
}

/** The flow must have been solved with scope 'pitch' or 'whole'. Copies what it needs; the flow may be refilled. */
export function pitchLoads(flow: Flow): PitchLoads {
  const units = unitsOf(flow.symmetric);
  const pairs = units.map((a) => units.map((b) => sumLoads(flow.system, a, b)));
  const strips = units.map((unit) => {
    const gathered = new Float64Array(flow.system.strips);
    gatherStrips(flow.system, unit.circulation, gathered);
    return gathered;
  });
  const weight = new Float64Array(3);
  const weigh = (alpha: number, turn: number) => {
    weight[0] = Math.cos(alpha);
    weight[1] = Math.sin(alpha);
    weight[2] = turn;
  };
  return {
    at(alpha, turn) {
      weigh(alpha, turn);
      const total: [Load, Load] = [
        { x: 0, z: 0, pitch: 0 },
        { x: 0, z: 0, pitch: 0 },
      ];
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) addLoads(total, pairs[a]![b]!, weight[a]! * weight[b]!);
      return total;
    },
    circulation(alpha, turn, to) {
      weigh(alpha, turn);
      for (let i = 0; i < to.length; i++)
        to[i] = weight[0]! * strips[0]![i]! + weight[1]! * strips[1]![i]! + weight[2]! * strips[2]![i]!;
    },
    causes: strips,
    quadratic(form, alpha, turn) {
      weigh(alpha, turn);
      let total = 0;
      for (let a = 0; a < 3; a++)
        for (let b = 0; b < 3; b++) total += form[3 * a + b]! * weight[a]! * weight[b]!;
      return total;
    },
  };
}

function unitsOf({ ahead, up, incidence }: SymmetricUnits): [Unit, Unit, Unit] {
  return [ahead, up, incidence];
}
