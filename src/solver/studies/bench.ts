/**
 * The bench: what each link of the foil gives to a reading when a weight hangs on it. Links are the springs of the joints
 * about each axis and the moduli of strut and fuselage; wing and stabilizer are not tested.
 */
import type { BenchReading, Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { addForce, addMoment } from '../structure/frame.ts';
import { type JointName, SPRING_AXES, type SpringAxis, springOf } from '../structure/joints.ts';
import { type LaminatePart, materialOf } from '../structure/laminate.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import type { Triple } from '../structure/triple.ts';
import { GRAVITY } from './condition.ts';

/** What a reading is good for without better knowledge (common practice for a rule and a pointer on the bench). */
export const READING_ERROR = { deflection: 0.0005, turn: (0.1 * Math.PI) / 180 }; // m, rad

export const RADIANS = Math.PI / 180;
const USUAL_ARM = RANGES['joints.bench.*.arm'].default;
const RESOLUTION: Resolution = { strips: 10, stabilizerStrips: 10, rows: 1 }; // wing and stabilizer stay as drawn
const CUTS = 12; // of the strut, even ones
const SAME_PLACE = 1e-6; // m

/** One unknown: a joint's spring about an axis, or a modulus of a part. */
export interface Link {
  key: string; // "box.roll", "strut.modulus"
  label: string;
  groups: readonly string[]; // of the frame
  path: string; // where the document keeps it
  present: number; // N m/rad or Pa
}

/** One usable reading: what each link gives to it at present, in m or rad. */
export interface Row {
  index: number;
  isTurn: boolean;
  measured: number; // m or rad
  parts: Float64Array; // by link, m or rad
  rest: number; // of the links that are not fitted, m or rad
  error: number;
}

export class Bench {
  readonly links: Link[];
  private readonly skeleton: Skeleton;
  private readonly cuts: number[]; // heights of the strut's cuts above the foot, m

  constructor(private readonly design: Design) {
    this.cuts = cutsOf(design);
    this.skeleton = skeletonOf(design, craftOf(design, null, RESOLUTION), this.cuts);
    this.links = linksOf(design).filter(({ groups }) =>
      groups.some((group) => this.skeleton.frame.groups.includes(group)),
    );
  }

  /** The reading as a row of the fit, or why it cannot be used. */
  row(reading: BenchReading, index: number): Row | string {
    const isTurn = reading.pull === 'twist';
    const measured = isTurn ? reading.turn : reading.deflection;
    if (measured === undefined)
      return isTurn
        ? 'a twist is read as an angle: give the turn'
        : 'a pull is read as a way: give the deflection';
    const length = this.design.strut!.length;
    for (const [name, on, at] of [
      ['weight', reading.on, reading.at],
      ['reading', reading.readOn, reading.station],
    ] as const) {
      if ((on ?? 'strut') === 'strut' && at > length + 1e-9)
        return `the ${name} hangs ${at} m from the box, but the strut is ${length} m long`;
      if (on === 'stabilizer' && !this.design.stabilizer)
        return `the ${name} is on a stabilizer that the design has not`;
    }
    const { frame } = this.skeleton;
    const weight = reading.mass * GRAVITY;
    const load = this.moments(
      reading.pull,
      reading.on,
      reading.at,
      isTurn ? weight * (reading.arm ?? USUAL_ARM) : weight,
    );
    const probe = this.moments(reading.pull, reading.readOn, reading.station, 1);
    const byGroup = new Float64Array(frame.groups.length);
    for (let j = 0; j < frame.count; j++)
      byGroup[frame.groupOf[j]!]! += load[j]! * probe[j]! * frame.give[j]!;
    const all = byGroup.reduce((sum, value) => sum + value, 0);
    const parts = Float64Array.from(this.links, ({ groups }) =>
      groups.reduce((sum, group) => sum + (byGroup[frame.groups.indexOf(group)] ?? 0), 0),
    );
    const rest = all - parts.reduce((sum, value) => sum + value, 0);
    const error = isTurn ? READING_ERROR.turn : READING_ERROR.deflection;
    if (!(Math.abs(all) > 1e-3 * error))
      return 'a weight or a station at the box moves nothing that can be read';
    return { index, isTurn, measured: isTurn ? measured * RADIANS : measured, parts, rest, error };
  }

  /** Moments at the hinges under a unit of a pull at a place. */
  private moments(
    pull: BenchReading['pull'],
    on: BenchReading['on'],
    at: number,
    size: number,
  ): Float64Array {
    const { frame } = this.skeleton;
    const loads = frame.makeLoads();
    const { body, place } = this.placeOf(on ?? 'strut', at);
    const along: Triple = pull === 'side' ? [0, size, 0] : pull === 'aft' ? [size, 0, 0] : [0, 0, size];
    if (pull === 'twist') addMoment(loads, body, [0, 0, size]);
    else addForce(loads, body, place, along);
    return frame.carry(loads);
  }

  private placeOf(on: NonNullable<BenchReading['on']>, at: number): { body: number; place: Triple } {
    const { wingRoot, stabilizerRoot, places, strut } = this.skeleton;
    if (on === 'wing') return { body: wingRoot, place: places.wing };
    if (on === 'stabilizer') return { body: stabilizerRoot, place: places.stabilizer! };
    const z = this.design.strut!.length - at;
    const k = this.cuts.findIndex((cut) => cut > z - 2 * SAME_PLACE);
    const [x] = strut!.middle[Math.min(k, strut!.middle.length - 1)]!;
    return { body: strut!.edges[k]!, place: [x, 0, this.cuts[k]!] };
  }
}

/** The strut is cut evenly, and where weights hang and readings are taken: there the beam is exact. */
function cutsOf({ strut, joints }: Design): number[] {
  const length = strut?.length ?? 0;
  const even = Array.from({ length: CUTS + 1 }, (_, k) => (k * length) / CUTS);
  const asked = (joints?.bench ?? []).flatMap(({ at, station }) => [length - at, length - station]);
  return [...even, ...asked]
    .filter((cut) => cut >= 0 && cut <= length)
    .sort((a, b) => a - b)
    .filter((cut, k, list) => k === 0 || cut - list[k - 1]! > SAME_PLACE);
}

const JOINT_LABELS: Record<JointName, string> = {
  box: 'box',
  strut: 'strut joint',
  wing: 'wing joint',
  stabilizer: 'stabilizer joint',
};

function linksOf(design: Design): Link[] {
  const spring = (name: JointName, axis: SpringAxis): Link => ({
    key: `${name}.${axis}`,
    label: `${JOINT_LABELS[name]} in ${axis}`,
    groups: [`${name === 'box' ? 'box' : `${name}Joint`}.${axis}`],
    path: `joints.${name}.${axis}`,
    present: springOf(design.joints, name, axis),
  });
  const modulus = (part: LaminatePart, kind: 'modulus' | 'shear'): Link => ({
    key: `${part}.${kind}`,
    label: `${part}, modulus ${kind === 'modulus' ? 'along' : 'in shear'}`,
    groups: kind === 'modulus' ? [`${part}.flap`, `${part}.lag`] : [`${part}.twist`],
    path: `laminate.${part}.${kind}`,
    present: materialOf(design.laminate?.[part])[kind],
  });
  const springs = (name: JointName) => SPRING_AXES.map((axis) => spring(name, axis));
  // The order says which of two that cannot be told apart is fitted: the first.
  return [
    modulus('strut', 'modulus'),
    modulus('strut', 'shear'),
    ...springs('box'),
    ...springs('strut'),
    ...(design.fuselage ? [modulus('fuselage', 'modulus'), modulus('fuselage', 'shear')] : []),
    ...springs('wing'),
    ...(design.stabilizer ? springs('stabilizer') : []),
  ];
}
