/**
 * Why a foil whistles: vortices leave a blunt trailing edge at about 0.2 V over the thickness of the wake that sheds them,
 * and where that tone meets a swing of the part it sings (W. K. Blake, Mechanics of Flow-Induced Sound and Vibration,
 * 1986, ch. 11, from memory). Estimates: which edge and which speed to look at, no prediction of a sound. Hz, m.
 *
 * Wake thickness: the edge and the displacement thicknesses of both sides, a turbulent plate's
 * 0.37/8 x Re_x^-1/5 (H. Schlichting, Boundary-Layer Theory). Local swings: the part's own bending and torsion, and the
 * tail behind 70 % chord as a wedge held there, first root 5.315 (G. Kirchhoff 1879), with the water it moves.
 */
import type { Design, Outline } from '../design/document.ts';
import { waterProperties } from '../design/water.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { outlinePoints, surfacePoint } from '../geometry/outline.ts';
import { strutSize } from '../structure/beam.ts';
import { type LaminatePart, materialOf } from '../structure/laminate.ts';
import { lumpsOf } from '../structure/masses.ts';
import { type Shape, shapesOf } from '../structure/shapes.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import { massMatrix, swingsOf } from '../structure/vibration.ts';

const STROUHAL = 0.2;
const TAIL = 0.7; // share of the chord where the tail counts as held
const TAIL_WATER = 0.4; // water a tail moves, in tail lengths over its area (estimate)
const WEDGE = 5.315; // first root of a wedge, square of its wave number
const SURE = 4; // swings of a kind that so few shapes still give well
const QUIET = 0.3; // edge over displacement thickness of both sides below which no tone is expected (from memory)
const RESOLUTION: Resolution = { strips: 20, stabilizerStrips: 12, rows: 1 };

export interface WhistlePlace {
  part: Exclude<LaminatePart, 'fuselage'>;
  where: string; // "root", "mid-span", "tip", "at the water"
  edge: number; // m, thickness of the trailing edge
  layer: number; // m, displacement thickness of both sides at cruise
  tone: { takeOff: number; cruise: number; top: number }; // Hz
  tail: number; // Hz of the tail as a wedge, in water
  swings: Array<{ name: string; frequency: number }>; // of the part that the tone passes between take-off and top speed
  quietEdge: number; // m: an edge so thin is not expected to sing
  mayWhistle: boolean;
}

export function whistle(design: Design): WhistlePlace[] {
  const craft = craftOf(design, null, RESOLUTION);
  const skeleton = skeletonOf(design, craft);
  const { density } = waterProperties(design.brief.water.kind, design.brief.water.temperature);
  const lumps = lumpsOf(design, craft, skeleton, density);
  const ladder = (part: LaminatePart, symmetry: 'symmetric' | 'antisymmetric') => {
    const own: Shape[] = shapesOf(skeleton, symmetry, 8).filter((shape) => shape.part === part);
    return nameSwings(skeleton, own, massMatrix(lumps, own), part);
  };
  const { wing, stabilizer, strut } = design;
  const places: WhistlePlace[] = [];
  const add = (
    part: WhistlePlace['part'],
    where: string,
    chord: number,
    outline: { edge: number; tailThickness: number },
    swings: WhistlePlace['swings'],
  ) => places.push(placeOf(design, part, where, chord, outline, swings));
  for (const [part, planform, surface] of [
    ['wing', wing, craft.wing],
    ['stabilizer', stabilizer, craft.stabilizer],
  ] as const) {
    if (!planform || !surface) continue;
    const swings = ladder(part, 'symmetric');
    const { root, tip } = planform.section;
    for (const [where, eta] of [
      ['root', 0],
      ['mid-span', 0.5],
      ['near the tip', 0.85],
    ] as const)
      add(part, where, surface.chord(eta), blendTails(tailOf(root), tailOf(tip), eta), swings);
  }
  if (strut) {
    const { chord, thickness } = strutSize(strut, 0);
    const { edge, tailThickness } = tailOf({ kind: 'naca4', code: '0010' });
    const scale = thickness / chord / 0.1;
    add(
      'strut',
      'along it',
      chord,
      { edge: edge * scale, tailThickness: tailThickness * scale },
      ladder('strut', 'antisymmetric'),
    );
  }
  return places;
}

/** Thickness at the trailing edge and where the tail begins, on a unit chord. */
function tailOf(outline: Outline): { edge: number; tailThickness: number } {
  const at = surfacePoint(outline);
  const between = (x: number) => {
    const [up, down] = [at(x, 1), at(x, -1)];
    return Math.hypot(up[0] - down[0], up[1] - down[1]);
  };
  const { x } = outlinePoints(outline, 5);
  return { edge: between(Math.min(1, x[0]!)), tailThickness: between(TAIL) };
}

function blendTails(a: ReturnType<typeof tailOf>, b: ReturnType<typeof tailOf>, share: number) {
  return {
    edge: a.edge + share * (b.edge - a.edge),
    tailThickness: a.tailThickness + share * (b.tailThickness - a.tailThickness),
  };
}

function placeOf(
  design: Design,
  part: WhistlePlace['part'],
  where: string,
  chord: number,
  unit: { edge: number; tailThickness: number },
  swings: WhistlePlace['swings'],
): WhistlePlace {
  const { water, speeds } = design.brief;
  const { density, viscosity } = waterProperties(water.kind, water.temperature);
  const edge = Math.max(unit.edge * chord, design.build?.leastEdge ?? 0);
  const layerAt = (speed: number) => (2 * 0.37 * chord * ((speed * chord) / viscosity) ** -0.2) / 8;
  const toneAt = (speed: number) => (STROUHAL * speed) / (edge + layerAt(speed));
  const tone = { takeOff: toneAt(speeds.takeOff), cruise: toneAt(speeds.cruise), top: toneAt(speeds.top) };
  const tail = tailFrequency(design, part, (1 - TAIL) * chord, unit.tailThickness * chord, density);
  const layer = layerAt(speeds.cruise);
  const [low, high] = [Math.min(tone.takeOff, tone.top), Math.max(tone.takeOff, tone.top)];
  const passed = swings.filter(({ frequency }) => frequency >= low && frequency <= high);
  const quietEdge = QUIET * layer;
  const isNearTail = tail >= low && tail <= high;
  return {
    part,
    where,
    edge,
    layer,
    tone,
    tail,
    swings: passed,
    quietEdge,
    mayWhistle: edge > quietEdge && (passed.length > 0 || isNearTail),
  };
}

/** A wedge `length` long and `thickness` thick where it is held, flapping in water on both sides. */
export function tailFrequency(
  design: Design,
  part: LaminatePart,
  length: number,
  thickness: number,
  density: number,
): number {
  const { across, density: own } = materialOf(design.laminate?.[part]);
  const stiffness = (across * thickness ** 3) / 12;
  const mass = own * thickness + density * TAIL_WATER * length;
  return ((WEDGE / (2 * Math.PI)) * Math.sqrt(stiffness / mass)) / length ** 2;
}

/** Swings of one part by itself, numbered: "2nd bending", "1st torsion". */
function nameSwings(skeleton: Skeleton, shapes: readonly Shape[], masses: Float64Array, part: LaminatePart) {
  const counts = { bending: 0, torsion: 0 };
  return swingsOf(skeleton.frame, shapes, masses).flatMap(({ frequency, energies }) => {
    const kind = (energies[`${part}.twist`] ?? 0) > 0.5 ? 'torsion' : 'bending';
    const number = ++counts[kind];
    const ordinal = number === 1 ? '1st' : number === 2 ? '2nd' : number === 3 ? '3rd' : `${number}th`;
    return number > SURE ? [] : [{ name: `${ordinal} ${kind}`, frequency }];
  });
}
