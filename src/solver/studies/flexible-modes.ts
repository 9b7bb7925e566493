/**
 * Modes of the craft with the strut's bending and twist as states: sideways motion, roll, yaw and roll angle as in
 * motion.ts, and the first two swings of box, strut and strut joint with the foil at their end. Quasi-steady forces
 * (elastic.ts) with the water's added mass; the strut's own damping is left out, so that only the flow damps it.
 *
 * Generalised coordinates: motions of the whole foil about the balance point in stability senses, then the swings at
 * unit stiffness. Forces of motion on swing and back are work of the flow's forces; a swing also moves and turns the lift
 * against the weight above it.
 */
import type { Design } from '../design/document.ts';
import { mixAlpha } from '../forces/loads.ts';
import type { ProfileModel } from '../forces/profile.ts';
import type { Resolution } from '../geometry/craft.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import type { ConditionOptions } from '../report.ts';
import { type Lump, lumpsOf, product, weigh } from '../structure/masses.ts';
import type { Part } from '../structure/parts.ts';
import { type Shape, shapesOf } from '../structure/shapes.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import type { Triple } from '../structure/triple.ts';
import { massMatrix, swingsOf } from '../structure/vibration.ts';
import { FlowPool } from '../vortex/flow.ts';
import { addedMass } from './added-mass.ts';
import { type Condition, conditionOf } from './condition.ts';
import { couplingOf } from './coupling.ts';
import { craftFor } from './craft-for.ts';
import { ElasticFlow } from './elastic.ts';
import type { Answer, Total } from './flow-answers.ts';
import { inertiaOf } from './inertia.ts';
import { modesOfMatrix, type RawMode } from './modes.ts';
import { lateralBalance, lateralMotion } from './motion.ts';
import { profileFor } from './profile-for.ts';
import { type RunningFoil, runFoil } from './running.ts';
import { sumOf } from './sums.ts';

export type FlexibleState = 'v' | 'p' | 'r' | 'phi' | 'first' | 'second' | 'firstRate' | 'secondRate';

const STATES: readonly FlexibleState[] = ['v', 'p', 'r', 'phi', 'first', 'second', 'firstRate', 'secondRate'];
const SWINGING: ReadonlySet<Part> = new Set(['box', 'strut', 'strutJoint']);

export interface FlexibleMode {
  flexible: Omit<RawMode<FlexibleState>, 'shape'>;
  /** The mode of the foil with a stiff strut that lies nearest; null for swings of the strut itself. */
  rigid: Omit<RawMode<FlexibleState>, 'shape'> | null;
}

export interface FlexibleModes {
  speed: number; // m/s
  modes: FlexibleMode[]; // fastest growth first
}

/** Null without a strut. Throws an Error with one sentence where no angle carries the weight. */
export function flexibleModes(
  design: Design,
  options: Omit<ConditionOptions, 'alpha'> = {},
  resolution: Resolution = { strips: 24, stabilizerStrips: 12, rows: 1 },
): FlexibleModes | null {
  if (!design.strut) return null;
  const pool = new FlowPool();
  const condition = conditionOf(design.brief, options);
  const craft = craftFor(design, condition.depth, resolution);
  const foil = runFoil(pool, 'flexible', craft, condition, 'whole');
  const rig = new FlexibleRig(pool, design, condition, foil, profileFor(design, resolution.sections));
  const turn = (2 * condition.speed) / craft.wing.span;
  const scale: Record<FlexibleState, number> = {
    v: condition.speed,
    p: turn,
    r: turn,
    phi: 1,
    first: 1,
    second: 1,
    firstRate: 100,
    secondRate: 100,
  };
  const bare = ({ shape: _shape, ...mode }: RawMode<FlexibleState>) => mode;
  const flexible = modesOfMatrix(rig.matrix(), STATES, scale).map(bare);
  const rigid = modesOfMatrix(rig.rigidMatrix(), ['v', 'p', 'r', 'phi'] as const, scale).map((mode) => {
    const { shape: _shape, ...rest } = mode;
    return rest;
  });
  return { speed: condition.speed, modes: pair(flexible, rigid) };
}

/** Each stiff mode goes to the flexible one nearest to it that none nearer has taken. */
function pair(
  flexible: ReadonlyArray<FlexibleMode['flexible']>,
  rigid: ReadonlyArray<FlexibleMode['flexible']>,
): FlexibleMode[] {
  const modes: FlexibleMode[] = flexible.map((mode) => ({ flexible: mode, rigid: null }));
  const distance = (one: FlexibleMode['flexible'], other: FlexibleMode['flexible']) =>
    Math.hypot(one.real - other.real, one.imaginary - other.imaginary);
  const pairs = modes
    .flatMap((mode) => rigid.map((stiff) => ({ mode, stiff, gap: distance(mode.flexible, stiff) })))
    .sort((a, b) => a.gap - b.gap);
  const taken = new Set<FlexibleMode['flexible']>();
  for (const { mode, stiff } of pairs)
    if (mode.rigid === null && !taken.has(stiff)) {
      mode.rigid = stiff;
      taken.add(stiff);
    }
  return modes;
}

class FlexibleRig {
  private readonly skeleton: Skeleton;
  private readonly lumps: Lump[];
  private readonly dry: Lump[];
  private readonly elastic: ElasticFlow;
  private readonly swings: Float64Array[]; // motions of the two swings
  private readonly balance;

  constructor(
    private readonly pool: FlowPool,
    private readonly design: Design,
    private readonly condition: Condition,
    private readonly foil: RunningFoil,
    private readonly profile: ProfileModel,
  ) {
    const { craft, flow, alpha } = foil;
    this.balance = this.rigid();
    mixAlpha(flow.symmetric, alpha, flow.base);
    this.skeleton = skeletonOf(design, craft);
    this.lumps = lumpsOf(design, craft, this.skeleton, condition.density);
    this.dry = lumpsOf(design, craft, this.skeleton, 0);
    const shapes = shapesOf(this.skeleton, 'antisymmetric').filter(({ part }) => SWINGING.has(part));
    const mixed = swingsOf(this.skeleton.frame, shapes, massMatrix(this.lumps, shapes)).slice(0, 2);
    const swings = mixed.map(({ mix }) => mixShapes(shapes, mix));
    this.elastic = new ElasticFlow(flow, alpha, craft, this.skeleton, 'antisymmetric', true, swings);
    this.swings = swings.map(({ motion }) => motion);
  }

  rigidMatrix(): Float64Array {
    const { running, own, water, by, reference } = this.balance.given;
    return lateralMotion(running, own, water, by, reference);
  }

  /** d/dt of the eight states, row after row. */
  matrix(): Float64Array {
    const n = 3 + this.swings.length;
    const masses = new Float64Array(n * n);
    const rows = [...this.motions(), ...this.swings].map((motion) => weigh(this.lumps, motion));
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        masses[i * n + j] = i < 3 && j < 3 ? this.balance.masses[3 * i + j]! : product(rows[i]!, rows[j]!);
    const forces = this.forces(n);
    const size = STATES.length;
    const pivots = new Int32Array(n);
    factor(masses, n, pivots);
    const matrix = new Float64Array(size * size);
    const rowOf = [0, 1, 2, 6, 7]; // of v, p, r and the two rates
    STATES.forEach((_, column) => {
      const right = Float64Array.from(forces, (row) => row[column]!);
      solveFactored(masses, n, pivots, right);
      right.forEach((value, i) => {
        matrix[rowOf[i]! * size + column] = value;
      });
    });
    matrix[3 * size + 1] = 1; // phi by p and r
    matrix[3 * size + 2] = Math.tan(this.foil.alpha);
    matrix[4 * size + 6] = 1;
    matrix[5 * size + 7] = 1;
    return matrix;
  }

  /** Forces on sway, roll, yaw and the swings by each state. */
  private forces(n: number): number[][] {
    const { speed, density } = this.condition;
    const pressure = density * speed ** 2;
    const rate = pressure / speed; // a rate of one counts 1/V at a stream of 1 m/s
    const { elastic, swings } = this;
    const moving = swings.map((motion) => elastic.inMotion(motion));
    const causes = this.causes();
    const [sway] = this.motions();
    const heavy = weigh(this.dry, sway!);
    const rows = this.balance.forces.map((row, i) => [
      ...row,
      ...elastic.answers.map((answer) => pressure * this.about(answer.total)[i]!),
      ...moving.map((answer) => rate * this.about(answer.total)[i]!),
    ]);
    for (let i = 0; i + 3 < n; i++) {
      const motion = swings[i]!;
      // Turning at r, the foil's own mass is thrown outward with V r.
      const thrown = product(heavy, weigh(this.dry, motion)) * speed;
      const [byV, byP, byR] = causes.map((forces) => rate * elastic.workOn(motion, forces));
      rows.push([
        byV!,
        byP!,
        byR! - thrown,
        0,
        ...swings.map((_, j) => pressure * elastic.matrix[i * swings.length + j]! - (i === j ? 1 : 0)),
        ...moving.map(({ forces }) => rate * elastic.workOn(motion, forces)),
      ]);
    }
    return rows;
  }

  /** Side force, roll and yaw about the balance point, in the stability senses. */
  private about({ force, moment }: Total): Triple {
    const { x, height } = this.design.brief.balance;
    return [force[1], -(moment[0] + height * force[1]), -(moment[2] - x * force[1])];
  }

  /** Segment forces by v, p, r about the balance point, at a stream of 1 m/s. */
  private causes(): Float64Array[] {
    const { flow } = this.foil;
    const { x, height } = this.design.brief.balance;
    const [beta, roll, yaw] = [flow.craft.beta, flow.craft.rollRate, flow.craft.yawRate].map(
      (unit): Answer => this.elastic.ofCause(unit),
    );
    const plus = (one: Float64Array, share: number) =>
      one.map((value, k) => value + share * beta!.forces[k]!);
    return [beta!.forces, plus(roll!.forces, -height), plus(yaw!.forces, x)];
  }

  /** The foil moved as a whole: to starboard, starboard down, nose to starboard about the balance point. */
  private motions(): Float64Array[] {
    const { x, height } = this.design.brief.balance;
    const all = (turn: Triple, drift: Triple) => {
      const motion = new Float64Array(6 * this.skeleton.frame.count);
      for (let j = 0; j < motion.length; j += 6) motion.set([...turn, ...drift], j);
      return motion;
    };
    // Drift of the origin: minus the turn crossed with the balance point.
    return [all([0, 0, 0], [0, 1, 0]), all([-1, 0, 0], [0, -height, 0]), all([0, 0, -1], [0, x, 0])];
  }

  private rigid() {
    const { design, condition, foil, pool } = this;
    const { balance } = design.brief;
    const { projectedArea: area, span } = foil.craft.wing;
    const coupling = couplingOf(pool, foil, condition, this.profile, balance);
    const by = sumOf([coupling.craft.vortex.total, coupling.craft.profile.total]);
    const running = { ...condition, alpha: foil.alpha };
    const own = inertiaOf(design, span);
    const water = addedMass(foil.craft, condition.density, balance);
    const reference = { area, span };
    const given = { running, own, water, by, reference };
    return { given, ...lateralBalance(running, own, water, by, reference) };
  }
}

function mixShapes(shapes: readonly Shape[], mix: Float64Array): Shape {
  const size = Math.sqrt(mix.reduce((sum, value) => sum + value * value, 0));
  const sum = (key: 'turns' | 'motion') =>
    shapes[0]![key].map((_, k) =>
      shapes.reduce((total, shape, i) => total + (mix[i]! / size) * shape[key][k]!, 0),
    );
  return { part: 'strut', turns: sum('turns'), motion: sum('motion') };
}
