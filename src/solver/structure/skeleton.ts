/**
 * The frame of a design: box, strut, fuselage, wing and stabilizer as hinges, and on which body each strip of the vortex
 * system sits. Beams run along the elastic axes of the surfaces; strips give the cuts, so that the flow's forces need no
 * sharing out. Without a strut the foil is held where the fuselage would meet it.
 */
import type { Design } from '../design/document.ts';
import type { Craft } from '../geometry/craft.ts';
import type { Strips } from '../geometry/strips.ts';
import type { Surface } from '../geometry/surface.ts';
import { type BeamLaw, type BeamPoint, fuselageBeam, strutBeam, surfaceBeam } from './beam.ts';
import { Frame } from './frame.ts';
import { type HalfBodies, HingeChain } from './hinge-chain.ts';
import type { Part } from './parts.ts';
import type { Triple } from './triple.ts';

export interface Skeleton {
  frame: Frame;
  wing: { starboard: HalfBodies; port: HalfBodies };
  stabilizer: { starboard: HalfBodies; port: HalfBodies } | null;
  strut: HalfBodies | null; // wetted strips, as the vortex system cuts them, foot first
  dry: HalfBodies | null; // the rest, from the water to the board
  foot: number; // body at the strut's end, before the joint
  junction: number; // body behind the strut joint: the middle of the fuselage
  wingRoot: number; // bodies behind the joints
  stabilizerRoot: number;
  places: { box: Triple; foot: Triple; wing: Triple; stabilizer: Triple | null };
  fuselage: { front: number; aft: number; beam: BeamPoint | null }; // bodies at its two ends, before the joints
}

/**
 * The drawn surfaces at the strips of `craft`. The craft must hold the strut wherever the design does. `cuts`: other heights
 * above the foot at which the strut is cut, rising from 0 to the water.
 */
export function skeletonOf(design: Design, craft: Craft, cuts?: readonly number[]): Skeleton {
  return new Builder(design, craft, cuts).build();
}

class Builder {
  private readonly chain: HingeChain;

  constructor(
    private readonly design: Design,
    private readonly craft: Craft,
    private readonly cuts?: readonly number[],
  ) {
    this.chain = new HingeChain(design.joints);
  }

  build(): Skeleton {
    const { design, craft } = this;
    const { laminate } = design;
    const { parts } = craft;
    const strut = this.addStrut();
    const junction = strut ? this.chain.addJoint(strut.foot, 'strut', 'strutJoint', strut.places.foot) : -1;
    const wingBeam = surfaceBeam(design.wing, craft.wing, laminate?.wing);
    const wingPlace = rootPlace(craft.wing, wingBeam);
    const footPlace: Triple = strut?.places.foot ?? [design.strut?.x ?? wingPlace[0], 0, 0];
    const rod = fuselageBeam(design);
    const front = this.chain.addRod(junction, rod, footPlace, wingPlace);
    const wingRoot = this.chain.addJoint(front, 'wing', 'wingJoint', wingPlace);
    const wing = {
      starboard: this.addHalf(wingRoot, craft.wing, parts.wing, wingBeam, 'wing', 1),
      port: this.addHalf(wingRoot, craft.wing, parts.wing, wingBeam, 'wing', -1),
    };
    const tail = this.addTail(junction, rod, footPlace);
    return {
      frame: new Frame(this.chain.hinges),
      wing,
      stabilizer: tail?.halves ?? null,
      strut: strut?.wet ?? null,
      dry: strut?.dry ?? null,
      foot: strut?.foot ?? -1,
      junction,
      wingRoot,
      stabilizerRoot: tail?.root ?? -1,
      places: {
        box: strut?.places.box ?? footPlace,
        foot: footPlace,
        wing: wingPlace,
        stabilizer: tail?.place ?? null,
      },
      fuselage: { front, aft: tail?.end ?? junction, beam: rod },
    };
  }

  private addTail(junction: number, rod: BeamPoint | null, foot: Triple) {
    const { stabilizer: planform, laminate } = this.design;
    const { stabilizer: surface, parts } = this.craft;
    if (!planform || !surface || !parts.stabilizer) return null;
    const beam = surfaceBeam(planform, surface, laminate?.stabilizer);
    const place = rootPlace(surface, beam);
    const end = this.chain.addRod(junction, rod, foot, place);
    const root = this.chain.addJoint(end, 'stabilizer', 'stabilizerJoint', place);
    const half = (side: 1 | -1) => this.addHalf(root, surface, parts.stabilizer!, beam, 'stabilizer', side);
    return { halves: { starboard: half(1), port: half(-1) }, root, place, end };
  }

  private addHalf(
    root: number,
    surface: Surface,
    strips: Strips,
    beam: BeamLaw,
    part: Part,
    side: 1 | -1,
  ): HalfBodies {
    const edges = edgePlaces(surface, strips, beam, side);
    return this.chain.addSegments(root, edges, part, (k, share) => {
      // Shares of a strip in eta are those of its length.
      const [from, to] = [edges.eta[k]!, edges.eta[k + 1]!];
      return beam(from + share * (to - from));
    });
  }

  /** From the board down: dry part, then the wetted strips from the water to the foot. */
  private addStrut() {
    const { design, craft } = this;
    const { strut, laminate } = design;
    if (!strut) return null;
    const beam = strutBeam(strut, laminate?.strut);
    const strips = craft.parts.strut;
    const wet = this.cuts ? [...this.cuts] : strips ? [...strips.nodeZ.subarray(0, strips.count + 1)] : [0];
    const top = wet[wet.length - 1]!;
    const air = strut.length - top;
    const steps = air > 1e-6 ? Math.max(1, Math.ceil((air / strut.length) * 12)) : 0;
    const heights = Array.from({ length: steps }, (_, k) => strut.length - (air * k) / steps);
    const levels = [...heights, ...wet.reverse()];
    const places = levels.map((z): Triple => {
      const { chord, axis } = beam(z / strut.length);
      return [(strut.x ?? 0) + (axis - 0.25) * chord, 0, z];
    });
    const box = this.chain.addJoint(-1, 'box', 'box', places[0]!);
    const all = this.chain.addSegments(box, { places }, 'strut', (k, share) =>
      beam((levels[k]! + share * (levels[k + 1]! - levels[k]!)) / strut.length),
    );
    const foot = all.edges[levels.length - 1]!;
    return {
      foot,
      wet: strips ? reversed(slice(all, steps, levels.length - 1)) : null,
      dry: steps > 0 ? slice(all, 0, steps) : null,
      places: { box: places[0]!, foot: places[places.length - 1]! },
    };
  }
}

function slice(half: HalfBodies, from: number, to: number): HalfBodies {
  return {
    strips: half.strips.slice(from, to),
    edges: half.edges.slice(from, to + 1),
    middle: half.middle.slice(from, to),
    beam: half.beam.slice(from, to),
  };
}

/** Foot first, as the vortex system counts. */
function reversed(half: HalfBodies): HalfBodies {
  return {
    strips: half.strips.slice().reverse(),
    edges: half.edges.slice().reverse(),
    middle: half.middle.slice().reverse(),
    beam: half.beam.slice().reverse(),
  };
}

/** Root of a surface's elastic axis. */
function rootPlace(surface: Surface, beam: BeamLaw): Triple {
  const { chord, axis } = beam(0);
  const { y, z } = surface.point(0);
  return [surface.x(0) + (axis - 0.25) * chord, y, z];
}

/** Elastic axis at the edges of the strips of one half. */
function edgePlaces(surface: Surface, strips: Strips, beam: BeamLaw, side: 1 | -1) {
  const eta = new Float64Array(strips.count + 1);
  let run = 0;
  const length = strips.width.reduce((sum, width) => sum + width, 0);
  for (let k = 1; k <= strips.count; k++) {
    run += strips.width[k - 1]!;
    eta[k] = run / length;
  }
  const places = Array.from(eta, (at, k): Triple => {
    const { chord, axis } = beam(at);
    return [
      strips.nodeX[k]! + (axis - 0.25) * chord + rowShift(strips, surface, at),
      side * strips.nodeY[k]!,
      strips.nodeZ[k]!,
    ];
  });
  return { eta, places };
}

/** The first row of bound vortices lies ahead of the quarter chord where there are several rows. */
function rowShift({ rows }: Strips, surface: Surface, eta: number): number {
  return surface.chord(eta) * (0.25 - 0.25 / rows);
}
