/** A cantilever of elastic hinges, loaded along its span: what the closed forms of beams are compared with. */
import { addForce, Frame, type Hinge, moveOf } from '../../src/solver/structure/frame.ts';
import type { Triple } from '../../src/solver/structure/triple.ts';

export const GAUSS = [0.5 - Math.sqrt(3) / 6, 0.5 + Math.sqrt(3) / 6];
const ACROSS: Triple = [1, 0, 0]; // the axis a beam along y bends about

/** A cantilever along y from the origin; `stiffness` EI along it (m), `spring` at its root in N m/rad. */
export function cantilever(
  length: number,
  segments: number,
  stiffness: (y: number) => number,
  spring = Number.POSITIVE_INFINITY,
) {
  const hinges: Hinge[] = [
    { parent: -1, place: [0, 0, 0], axis: ACROSS, give: 1 / spring, strain: 0, group: 'root.flap' },
  ];
  const bodies: number[] = [];
  const run = length / segments;
  for (let k = 0; k < segments; k++)
    for (const [g, share] of GAUSS.entries()) {
      const y = (k + share) * run;
      const parent = hinges.length - 1;
      hinges.push({
        parent,
        place: [0, y, 0],
        axis: ACROSS,
        give: run / 2 / stiffness(y),
        strain: 0,
        group: 'beam.flap',
      });
      if (g === 0) bodies.push(hinges.length - 1);
    }
  return { frame: new Frame(hinges), bodies, tip: hinges.length - 1, run, length };
}

export type Beam = ReturnType<typeof cantilever>;

export function deflect({ frame }: Beam, loads: Float64Array) {
  const moments = frame.carry(loads);
  return { moments, motion: frame.motion(frame.turns(moments)) };
}

/** A load along the span, N/m of y, lumped at the middle of each segment. */
export function spreadLoad(beam: Beam, load: (y: number) => number): Float64Array {
  const loads = beam.frame.makeLoads();
  beam.bodies.forEach((body, k) => {
    const y = (k + 0.5) * beam.run;
    addForce(loads, body, [0, y, 0], [0, 0, load(y) * beam.run]);
  });
  return loads;
}

/** Deflection of the end, m, under given loads. */
export const tipUnder = (beam: Beam, loads: Float64Array): number =>
  moveOf(deflect(beam, loads).motion, beam.tip, [0, beam.length, 0])[2];

export function endLoad(beam: Beam, force: number): Float64Array {
  const loads = beam.frame.makeLoads();
  addForce(loads, beam.tip, [0, beam.length, 0], [0, 0, force]);
  return loads;
}
