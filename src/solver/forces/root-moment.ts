/**
 * What one half of the wing does at its root: bending moment and second moment of its lift about the plane of symmetry, from
 * the vortex forces of an attitude. Per rho V^2: m3 and m4.
 */
import type { Flow } from '../vortex/flow.ts';
import { WING } from '../vortex/system.ts';

/** `turn` (rad) is the change of stabilizer incidence; the flow must have been solved with scope 'pitch' or 'whole'. */
export function rootMoment(
  { system, symmetric }: Flow,
  alpha: number,
  turn: number,
): { bending: number; second: number } {
  const [c, s] = [Math.cos(alpha), Math.sin(alpha)];
  const { ahead, up, incidence } = symmetric;
  const mix = (pick: (unit: typeof ahead) => Float64Array, i: number) =>
    c * pick(ahead)[i]! + s * pick(up)[i]! + turn * pick(incidence)[i]!;
  let bending = 0;
  let second = 0;
  for (let i = 0; i < system.foil; i++) {
    if (system.surfaceOf[i] !== WING) continue;
    const circulation = mix((unit) => unit.circulation, i);
    const x = mix(({ field }) => field.x, i);
    const y = mix(({ field }) => field.y, i);
    const z = mix(({ field }) => field.z, i);
    const across = circulation * (z * system.alongX[i]! - x * system.alongZ[i]!);
    const aloft = circulation * (x * system.alongY[i]! - y * system.alongX[i]!);
    const [outboard, height] = [system.placeY[i]!, system.placeZ[i]!];
    bending += outboard * aloft - height * across;
    second += outboard * outboard * aloft;
  }
  return { bending, second };
}
