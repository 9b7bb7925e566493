/**
 * The compliance account: how far the foil gives at the wing for standard loads, held at the board, which part gives what
 * share, and which single change stiffens it most. Still loads on the drawn shape; shares are those of the strain energy,
 * so they add up to the whole (B. P. E. Clapeyron).
 *
 * The loads are those a foil really takes: lift spread over the wing, a roll as lift to one side, a pitch or yaw as a pair
 * of forces at wing and stabilizer.
 */
import type { Design } from '../design/document.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { addForce, addMoment, moveOf, turnOf } from '../structure/frame.ts';
import type { HalfBodies } from '../structure/hinge-chain.ts';
import { PARTS, type Part } from '../structure/parts.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import { scale, type Triple } from '../structure/triple.ts';

export const TEST_FORCE = 100; // N
export const TEST_MOMENT = 10; // N m

export type LoadCase = 'side' | 'up' | 'aft' | 'roll' | 'pitch' | 'yaw';
export const LOAD_CASES: readonly LoadCase[] = ['side', 'up', 'aft', 'roll', 'pitch', 'yaw'];

export type PartShares = Record<Part, number>;

export interface CaseAccount {
  load: LoadCase;
  /** Give along the load: m per TEST_FORCE, degrees per TEST_MOMENT. */
  give: number;
  shares: PartShares; // adding up to 1
}

/** What the wing's root does under one case: m and degrees, in document axes (roll, pitch, yaw in the stability sense). */
export interface RootMotion {
  aft: number;
  side: number;
  up: number;
  roll: number;
  pitch: number;
  yaw: number;
}

export interface ComplianceAccount {
  cases: CaseAccount[];
  root: Record<LoadCase, RootMotion>;
  /** Mean of the cases' shares: one figure a part. */
  shares: PartShares;
}

const DEGREES = 180 / Math.PI;
const RESOLUTION: Resolution = { strips: 20, stabilizerStrips: 10, rows: 1 };

/** Throws an Error with one sentence when the design cannot be drawn. */
export function complianceAccount(design: Design): ComplianceAccount {
  const skeleton = skeletonOf(design, craftOf(design, null, RESOLUTION));
  const { frame } = skeleton;
  const root = {} as Record<LoadCase, RootMotion>;
  const cases = LOAD_CASES.map((load): CaseAccount => {
    const loads = testLoads(skeleton, load);
    const moments = frame.carry(loads);
    const energies = frame.energies(moments);
    root[load] = rootMotion(skeleton, frame.motion(frame.turns(moments)));
    const total = energies.reduce((sum, value) => sum + value, 0);
    const isMoment = load === 'roll' || load === 'pitch' || load === 'yaw';
    return {
      load,
      // Twice the energy is the work of the whole load on its own give.
      give: isMoment ? ((2 * total) / TEST_MOMENT) * DEGREES : (2 * total) / TEST_FORCE,
      shares: byPart(frame.groups, energies, total),
    };
  });
  const shares = Object.fromEntries(
    PARTS.map((part) => [part, cases.reduce((sum, account) => sum + account.shares[part], 0) / cases.length]),
  ) as PartShares;
  return { cases, root, shares };
}

function byPart(groups: readonly string[], energies: Float64Array, total: number): PartShares {
  const shares = Object.fromEntries(PARTS.map((part) => [part, 0])) as PartShares;
  groups.forEach((group, i) => {
    shares[group.slice(0, group.indexOf('.')) as Part] += total > 0 ? energies[i]! / total : 0;
  });
  return shares;
}

function rootMotion({ wingRoot, places }: Skeleton, motion: Float64Array): RootMotion {
  const [aft, side, up] = moveOf(motion, wingRoot, places.wing);
  const [x, y, z] = turnOf(motion, wingRoot);
  return { aft, side, up, roll: -x * DEGREES, pitch: y * DEGREES, yaw: -z * DEGREES };
}

/** A standard load as forces on the frame. */
export function testLoads(skeleton: Skeleton, load: LoadCase): Float64Array {
  const loads = skeleton.frame.makeLoads();
  const { wing, wingRoot, places } = skeleton;
  if (load === 'side') addForce(loads, wingRoot, places.wing, [0, TEST_FORCE, 0]);
  else if (load === 'aft') addForce(loads, wingRoot, places.wing, [TEST_FORCE, 0, 0]);
  else if (load === 'up') spread(loads, wing, [0, 0, TEST_FORCE]);
  else if (load === 'roll') spreadRoll(loads, wing, TEST_MOMENT);
  else addPair(loads, skeleton, load);
  return loads;
}

interface Halves {
  starboard: HalfBodies;
  port: HalfBodies;
}

/** Every strip of both halves: its body, its quarter chord and its share of the area. */
function eachStrip(
  { starboard, port }: Halves,
  act: (body: number, place: Triple, share: number) => void,
): void {
  const list: Array<[number, Triple, number]> = [];
  let area = 0;
  for (const { strips, middle, beam } of [starboard, port])
    strips.forEach((body, k) => {
      const [before, after] = [middle[Math.max(0, k - 1)]!, middle[Math.min(strips.length - 1, k + 1)]!];
      const { chord, axis } = beam[k]!;
      const piece = chord * Math.hypot(after[1] - before[1], after[2] - before[2]);
      const [x, y, z] = middle[k]!;
      list.push([body, [x - (axis - 0.25) * chord, y, z], piece]);
      area += piece;
    });
  for (const [body, place, piece] of list) act(body, place, piece / area);
}

/** A force spread over a surface as its chords are, on the quarter chords. */
function spread(loads: Float64Array, halves: Halves, force: Triple): void {
  eachStrip(halves, (body, place, share) => addForce(loads, body, place, scale(force, share)));
}

/** Lift up to port and down to starboard that rolls starboard down by `moment`. */
function spreadRoll(loads: Float64Array, halves: Halves, moment: number): void {
  let lever = 0;
  eachStrip(halves, (_body, [, y], share) => {
    lever += share * Math.abs(y);
  });
  eachStrip(halves, (body, place, share) =>
    addForce(loads, body, place, [0, 0, (-Math.sign(place[1]) * share * moment) / lever]),
  );
}

/** A pitch (nose up) or yaw (nose to starboard) as forces at stabilizer and wing; a pure moment without a stabilizer. */
function addPair(loads: Float64Array, skeleton: Skeleton, load: 'pitch' | 'yaw'): void {
  const { wing, stabilizer, wingRoot, places } = skeleton;
  const isPitch = load === 'pitch';
  if (!stabilizer || !places.stabilizer) {
    addMoment(loads, wingRoot, isPitch ? [0, TEST_MOMENT, 0] : [0, 0, -TEST_MOMENT]);
    return;
  }
  const force = TEST_MOMENT / (places.stabilizer[0] - places.wing[0]);
  const push = (size: number): Triple => (isPitch ? [0, 0, -size] : [0, -size, 0]);
  spread(loads, stabilizer, push(force));
  if (isPitch) spread(loads, wing, push(-force));
  else addForce(loads, wingRoot, places.wing, push(-force));
}
