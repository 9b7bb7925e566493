/**
 * The hold index: this program's own closed measure of how a foil keeps its line, for comparing designs; checkable by
 * hand. Roll term G_w / C_L (a wing loaded to a higher lift coefficient needs more curve for the same hold), yaw term
 * V_Y, pitch term V_H; index = 1000 (G_w / C_L) V_Y. It counts droop because droop takes away roll-from-yaw. It is
 * zero for a flat or missing stabilizer and ignores strut and sweep. Angles in radians.
 */
import type { Surface } from '../geometry/surface.ts';

export interface HoldTerms {
  roll: number | null; // G_w / C_L, rad; null where C_L is not positive
  yaw: number; // V_Y
  pitch: number; // V_H
  index: number | null;
}

/** Stabilizer volume V_H = S_s l_s / (S cbar), on projected areas. */
export function stabilizerVolume(wing: Surface, stabilizer: Surface): number {
  return (stabilizer.projectedArea * stabilizer.arm) / (wing.projectedArea * wing.meanChord);
}

/** Sideways volume V_Y = X_s S_s l_s / (S b), the stabilizer's area unrolled and X_s its sideways share. */
export function sidewaysVolume(wing: Surface, stabilizer: Surface): number {
  const area = stabilizer.sidewaysShare * stabilizer.unrolledArea;
  return (area * stabilizer.arm) / (wing.projectedArea * wing.span);
}

export function holdTerms(wing: Surface, stabilizer: Surface | null, liftCoefficient: number): HoldTerms {
  const roll = liftCoefficient > 0 ? wing.effectiveDroop / liftCoefficient : null;
  const yaw = stabilizer ? sidewaysVolume(wing, stabilizer) : 0;
  const pitch = stabilizer ? stabilizerVolume(wing, stabilizer) : 0;
  return { roll, yaw, pitch, index: roll === null ? null : 1000 * roll * yaw };
}
