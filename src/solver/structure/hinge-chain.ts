/**
 * Joints, rods and tapering beams laid end to end as elastic hinges (frame.ts). Every call hangs something on a body and
 * gives back the body at its far end.
 */
import type { Joints } from '../design/document.ts';
import type { BeamPoint } from './beam.ts';
import type { Hinge } from './frame.ts';
import { type JointName, SPRING_AXES, springOf } from './joints.ts';
import type { Part } from './parts.ts';
import { cross, dot, plus, scale, subtract, type Triple, unit } from './triple.ts';

/** One half of a surface, root to tip; the strut from its foot to the surface of the water. */
export interface HalfBodies {
  strips: Int32Array; // body that carries each strip's forces
  edges: Int32Array; // body that carries each edge between strips, one more
  middle: Triple[]; // elastic axis at the middle of each strip
  beam: BeamPoint[]; // there
}

/** Two-point Gauss-Legendre on [0, 1]. */
const GAUSS = [0.5 - Math.sqrt(3) / 6, 0.5 + Math.sqrt(3) / 6];

export class HingeChain {
  readonly hinges: Hinge[] = [];

  constructor(private readonly joints: Joints | undefined) {}

  private push(parent: number, place: Triple, axis: Triple, give: number, group: string, strain = 0): number {
    this.hinges.push({ parent, place, axis, give, group, strain });
    return this.hinges.length - 1;
  }

  addJoint(parent: number, name: JointName, part: Part, place: Triple): number {
    let body = parent;
    SPRING_AXES.forEach((axis, k) => {
      const along: Triple = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0];
      body = this.push(body, place, along, 1 / springOf(this.joints, name, axis), `${part}.${axis}`);
    });
    return body;
  }

  /** One Gauss point of a beam segment of length `run`: torsion, flap and lag hinges. `across` lies along the chord. */
  private addHinges(
    parent: number,
    place: Triple,
    along: Triple,
    across: Triple,
    beam: BeamPoint,
    run: number,
    part: Part,
  ): number {
    const chordwise = unit(subtract(across, scale(along, dot(across, along))));
    const normal = cross(along, chordwise);
    let body = this.push(parent, place, along, run / beam.torsion, `${part}.twist`);
    body = this.push(body, place, chordwise, run / beam.flap, `${part}.flap`, beam.reach.flap / beam.flap);
    return this.push(body, place, normal, run / beam.lag, `${part}.lag`, beam.reach.lag / beam.lag);
  }

  /** A rod between two places as two segments; nothing where they coincide or it is rigid. */
  addRod(parent: number, beam: BeamPoint | null, from: Triple, to: Triple): number {
    const way = subtract(to, from);
    const length = Math.hypot(...way);
    if (!beam || length < 1e-6) return parent;
    let body = parent;
    for (const half of [0, 1])
      for (const share of GAUSS)
        body = this.addHinges(
          body,
          plus(from, scale(way, (half + share) / 2)),
          unit(way),
          [0, 1, 0],
          beam,
          length / 4,
          'fuselage',
        );
    return body;
  }

  /** Segments from a root outward; the strip's body lies between its two Gauss points. */
  addSegments(
    root: number,
    { places }: { places: Triple[] },
    part: Part,
    beamAt: (segment: number, share: number) => BeamPoint,
    across: Triple = [1, 0, 0],
  ): HalfBodies {
    const count = places.length - 1;
    const half: HalfBodies = {
      strips: new Int32Array(count),
      edges: new Int32Array(count + 1),
      middle: [],
      beam: [],
    };
    half.edges[0] = root;
    let body = root;
    for (let k = 0; k < count; k++) {
      const way = subtract(places[k + 1]!, places[k]!);
      const along = unit(way);
      const run = Math.hypot(...way) / 2;
      const at = (share: number) => plus(places[k]!, scale(way, share));
      body = this.addHinges(body, at(GAUSS[0]!), along, across, beamAt(k, GAUSS[0]!), run, part);
      half.strips[k] = body;
      half.middle.push(at(0.5));
      half.beam.push(beamAt(k, 0.5));
      body = this.addHinges(body, at(GAUSS[1]!), along, across, beamAt(k, GAUSS[1]!), run, part);
      half.edges[k + 1] = body;
    }
    return half;
  }
}
