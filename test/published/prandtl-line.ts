/**
 * Prandtl's lifting line, built from the program's own strips and wake: the check of another theory's numbers against
 * this program's geometry, spacing and far-field velocities. Tangency is on the line itself, where the trailing legs
 * induce half of what they do far behind: 2 Gamma/(a0 c) = angle + w/2, stream speed 1.
 */
import type { Design } from '../../src/solver/design/document.ts';
import { craftOf } from '../../src/solver/geometry/craft.ts';
import { factor, solveFactored } from '../../src/solver/numeric/dense.ts';
import { addWakeComponent } from '../../src/solver/vortex/filament.ts';

export interface LineLoading {
  y: Float64Array; // control stations, m
  circulation: Float64Array; // m2/s per m/s
  liftCoefficient: number; // symmetric
  spanEfficiency: number; // symmetric
  rollCoefficient: number; // antisymmetric; positive starboard down
}

export interface LineOptions {
  /** Angle of attack of the starboard half, rad, by y/(b/2); the port half has the same or, odd, the opposite. */
  angle?: (fraction: number) => number;
  odd?: boolean;
  slope?: number; // section lift slope, per rad
  strips?: number;
}

/** Loading of a flat, unswept wing by Prandtl's line; by default at an angle of 1 rad. */
export function prandtlLine(design: Design, options: LineOptions = {}): LineLoading {
  const { angle = () => 1, odd = false, slope = 2 * Math.PI, strips = 100 } = options;
  const craft = craftOf(design, null, { strips, stabilizerStrips: 1, rows: 1 });
  const { nodeX, nodeY, nodeZ, controlY, chord, width, count } = craft.parts.wing;
  const { projectedArea, span, aspectRatio } = craft.wing;
  const line = { node: 0, column: 0, count, surface: 0, core: 0 };
  const nodes = Float64Array.from([...nodeX].flatMap((x, k) => [x, nodeY[k]!, nodeZ[k]!]));
  const wash = new Float64Array(count * count);
  const other = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    addWakeComponent(wash, i * count, line, nodes, controlY[i]!, 0, 0, 0.5);
    addWakeComponent(other, i * count, line, nodes, -controlY[i]!, 0, 0, 0.5);
  }
  for (let k = 0; k < wash.length; k++) wash[k]! += odd ? -other[k]! : other[k]!;
  const a = wash.map((w) => -w);
  for (let i = 0; i < count; i++) a[i * count + i]! += 2 / (slope * chord[i]!);
  const pivots = new Int32Array(count);
  const circulation = controlY.map((y) => angle((2 * y) / span));
  factor(a, count, pivots);
  solveFactored(a, count, pivots, circulation);

  let [lift, drag, roll] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    let up = 0;
    for (let j = 0; j < count; j++) up += wash[i * count + j]! * circulation[j]!;
    lift += circulation[i]! * width[i]!;
    drag -= circulation[i]! * up * width[i]!;
    roll -= circulation[i]! * controlY[i]! * width[i]!;
  }
  const liftCoefficient = (4 * lift) / projectedArea;
  return {
    y: controlY,
    circulation,
    liftCoefficient,
    spanEfficiency: liftCoefficient ** 2 / (Math.PI * aspectRatio * ((4 * drag) / projectedArea)),
    rollCoefficient: (4 * roll) / (projectedArea * span),
  };
}

/** Roll damping C_lp: a roll of p b/2V = 1 gives the strips an angle of 2 y/b. */
export function prandtlRollDamping(design: Design, slope?: number): number {
  return prandtlLine(design, { odd: true, angle: (fraction) => fraction, ...(slope && { slope }) })
    .rollCoefficient;
}

/** C_lbeta per radian of upward dihedral: sideslip gives the two halves opposite, even angles. */
export function prandtlDihedralEffect(design: Design, slope?: number): number {
  return prandtlLine(design, { odd: true, ...(slope && { slope }) }).rollCoefficient;
}
