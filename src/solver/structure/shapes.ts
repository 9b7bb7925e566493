/**
 * Shapes in which a foil can give: for each part the turns of its hinges under a set of simple loads, made independent and
 * scaled so that a shape of size a stores a^2/2 J and no two shapes share energy. What the foil does under any load is
 * then a mix of shapes (W. Ritz 1909); the joints, and beams under loads at their ends, are exact.
 *
 * Port and starboard move alike (symmetric) or opposite (antisymmetric: to the side, rolling, yawing).
 */
import { addForce, addMoment } from './frame.ts';
import type { HalfBodies } from './hinge-chain.ts';
import type { Part } from './parts.ts';
import type { Skeleton } from './skeleton.ts';
import { cross, type Triple, unit } from './triple.ts';

export type Symmetry = 'symmetric' | 'antisymmetric';

export interface Shape {
  part: Part;
  turns: Float64Array; // of all hinges, rad per sqrt(J); nothing outside the part
  motion: Float64Array; // of all bodies, as Frame.motion
}

const SPREADS = 6; // polynomials of load along a surface
const SAME = 1e-5; // a load that adds less than this share of its own shape to those before it adds none

type Pattern = (loads: Float64Array) => void;

export function shapesOf(skeleton: Skeleton, symmetry: Symmetry, spreads = SPREADS): Shape[] {
  const { frame } = skeleton;
  const parts = frame.groups.map((group) => group.slice(0, group.indexOf('.')) as Part);
  const kept = new Map<Part, Float64Array[]>();
  for (const pattern of patternsOf(skeleton, symmetry, spreads)) {
    const loads = frame.makeLoads();
    pattern(loads);
    const moments = frame.carry(loads);
    for (const part of new Set(parts)) {
      const own = moments.map((moment, j) => (parts[frame.groupOf[j]!] === part ? moment : 0));
      const before = kept.get(part) ?? [];
      const shape = independent(own, before, frame.give);
      if (shape) kept.set(part, [...before, shape]);
    }
  }
  return [...kept].flatMap(([part, list]) =>
    list.map((moments) => {
      const turns = frame.turns(moments);
      return { part, turns, motion: frame.motion(turns) };
    }),
  );
}

/** What `moments` adds to the shapes before it, with unit energy (Gram-Schmidt, twice for roundoff); null for nothing. */
function independent(
  moments: Float64Array,
  before: readonly Float64Array[],
  give: Float64Array,
): Float64Array | null {
  const inner = (a: Float64Array, b: Float64Array) => {
    let sum = 0;
    for (let j = 0; j < a.length; j++) sum += give[j]! * a[j]! * b[j]!;
    return sum;
  };
  const size = Math.sqrt(inner(moments, moments));
  if (!(size > 0)) return null;
  const rest = moments.map((value) => value / size);
  for (let round = 0; round < 2; round++)
    for (const shape of before) {
      const share = inner(rest, shape);
      for (let j = 0; j < rest.length; j++) rest[j]! -= share * shape[j]!;
    }
  const left = Math.sqrt(inner(rest, rest));
  return left < SAME ? null : rest.map((value) => value / left);
}

function patternsOf(skeleton: Skeleton, symmetry: Symmetry, spreads: number): Pattern[] {
  const { wing, stabilizer, wingRoot, stabilizerRoot, places } = skeleton;
  const isOdd = symmetry === 'antisymmetric';
  const roots: Pattern[] = [];
  const push = (body: number, place: Triple, force: Triple, moment: Triple) =>
    roots.push((loads) => {
      addForce(loads, body, place, force);
      addMoment(loads, body, moment);
    });
  const at = (body: number, place: Triple) => {
    if (isOdd) {
      push(body, place, [0, 1, 0], [0, 0, 0]);
      push(body, place, [0, 0, 0], [1, 0, 0]);
      push(body, place, [0, 0, 0], [0, 0, 1]);
    } else {
      push(body, place, [0, 0, 1], [0, 0, 0]);
      push(body, place, [1, 0, 0], [0, 0, 0]);
      push(body, place, [0, 0, 0], [0, 1, 0]);
    }
  };
  at(wingRoot, places.wing);
  if (places.stabilizer) at(stabilizerRoot, places.stabilizer);
  return [
    ...roots,
    ...strutPatterns(skeleton, isOdd),
    ...pairPatterns(wing, isOdd, spreads),
    ...(stabilizer ? pairPatterns(stabilizer, isOdd, Math.min(spreads, 3)) : []),
  ];
}

/** Loads spread over both halves of a surface: across it, and turning it about its axis. */
function pairPatterns(
  pair: { starboard: HalfBodies; port: HalfBodies },
  isOdd: boolean,
  spreads: number,
): Pattern[] {
  return Array.from({ length: spreads }, (_, order) => order).flatMap((order): Pattern[] => [
    (loads) => spread(loads, pair, order, isOdd, 'across'),
    (loads) => spread(loads, pair, order, isOdd, 'twist'),
  ]);
}

function spread(
  loads: Float64Array,
  { starboard, port }: { starboard: HalfBodies; port: HalfBodies },
  order: number,
  isOdd: boolean,
  how: 'across' | 'twist',
): void {
  for (const [half, side] of [
    [starboard, 1],
    [port, isOdd ? -1 : 1],
  ] as const)
    spreadHalf(loads, half, (along, at) => {
      const weight = side * polynomial(order, at);
      // Along the half from root to tip: to port its cross products come out mirrored.
      const hand = half === port ? -1 : 1;
      const normal = unit(cross([1, 0, 0], along));
      return how === 'across'
        ? { force: normal.map((value) => hand * weight * value) as Triple, moment: [0, 0, 0] }
        : { force: [0, 0, 0], moment: along.map((value) => hand * weight * value) as Triple };
    });
}

/** The wetted strut and the dry one: to the side and turning, or fore and aft. */
function strutPatterns({ strut, dry }: Skeleton, isOdd: boolean): Pattern[] {
  const halves = [strut, dry].filter((half) => half !== null);
  return [0, 1, 2].flatMap((order): Pattern[] => {
    const all = (force: Triple, moment: Triple): Pattern => {
      return (loads) => {
        for (const half of halves)
          spreadHalf(loads, half, (_along, at) => {
            const weight = polynomial(order, at);
            return {
              force: force.map((value) => weight * value) as Triple,
              moment: moment.map((value) => weight * value) as Triple,
            };
          });
      };
    };
    return isOdd ? [all([0, 1, 0], [0, 0, 0]), all([0, 0, 0], [0, 0, 1])] : [all([1, 0, 0], [0, 0, 0])];
  });
}

function spreadHalf(
  loads: Float64Array,
  half: HalfBodies,
  load: (along: Triple, at: number) => { force: Triple; moment: Triple },
): void {
  const count = half.strips.length;
  for (let k = 0; k < count; k++) {
    const [before, after] = [half.middle[Math.max(0, k - 1)]!, half.middle[Math.min(count - 1, k + 1)]!];
    const way: Triple = [after[0] - before[0], after[1] - before[1], after[2] - before[2]];
    const length = Math.hypot(...way) / 2 || 1;
    const { force, moment } = load(count > 1 ? unit(way) : [0, 0, 1], (k + 0.5) / count);
    const chord = half.beam[k]!.chord;
    addForce(loads, half.strips[k]!, half.middle[k]!, force.map((value) => value * length * chord) as Triple);
    addMoment(loads, half.strips[k]!, moment.map((value) => value * length * chord ** 2) as Triple);
  }
}

/** Legendre polynomial of an order on [0, 1]. */
function polynomial(order: number, share: number): number {
  const t = 2 * share - 1;
  let [before, value] = [1, t];
  if (order === 0) return 1;
  for (let i = 1; i < order; i++) [before, value] = [value, ((2 * i + 1) * t * value - i * before) / (i + 1)];
  return value;
}
