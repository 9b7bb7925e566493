/**
 * Least induced drag of any lines in the far-field plane, through the program's wake: a curve is a polyline of the
 * starboard half, cut into strips bunched at every corner. k = flat elliptic drag of the same span and lift over the least.
 */
import { emptyStrips, type Strips } from '../../src/solver/geometry/strips.ts';
import { factor, solveFactored } from '../../src/solver/numeric/dense.ts';
import { VortexSystem } from '../../src/solver/vortex/system.ts';

export type Corner = [y: number, z: number];

/** Strips along a polyline, `each` to a side, bunched at both ends of every side (but not where it crosses the middle). */
export function stripsAlong(corners: Corner[], each: number): Strips {
  const sides = corners.length - 1;
  const strips = emptyStrips(sides * each, 1);
  for (let side = 0; side < sides; side++) {
    const [fromY, fromZ] = corners[side]!;
    const [toY, toZ] = corners[side + 1]!;
    const bunch = bunching(fromY === 0, toY === 0);
    const at = (t: number): Corner => [fromY + (toY - fromY) * bunch(t), fromZ + (toZ - fromZ) * bunch(t)];
    for (let k = 0; k <= each; k++) {
      const node = side * each + k;
      [strips.nodeY[node], strips.nodeZ[node]] = at(k / each);
      if (k < each) [strips.controlY[node], strips.controlZ[node]] = at((k + 0.5) / each);
    }
  }
  return strips;
}

function bunching(startsInMiddle: boolean, endsInMiddle: boolean): (t: number) => number {
  if (startsInMiddle) return (t) => Math.sin(0.5 * Math.PI * t);
  if (endsInMiddle) return (t) => 1 - Math.cos(0.5 * Math.PI * t);
  return (t) => 0.5 * (1 - Math.cos(Math.PI * t));
}

/** k of one or two lines together: the loading whose normalwash is proportional to the share of lift (Munk). */
export function leastFactor(span: number, first: Strips, second: Strips | null = null): number {
  const system = new VortexSystem(first.count, second?.count ?? 0, 0, 1);
  system.load({ wing: first, stabilizer: second, strut: null }, null);
  const n = system.strips;
  const a = system.fillWakes().free.map((flow) => -flow);
  const circulation = system.alongY.slice();
  const pivots = new Int32Array(n);
  factor(a, n, pivots);
  solveFactored(a, n, pivots, circulation);
  const measure = circulation.reduce((sum, value, k) => sum + value * system.alongY[k]!, 0);
  return (8 * measure) / (Math.PI * span * span);
}

/** Half a closed curve, opened by a slit at the top: a whole loop may carry any constant circulation for nothing. */
export const SLIT = 1e-5;
