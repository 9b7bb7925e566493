/**
 * How a foil swings, and when its own speed would bend it away: first bending and torsion of strut and wing in water and
 * in air, how the flow moves them together or apart as speed grows, and the static divergence speed. Quasi-steady forces
 * (elastic.ts); added mass by strips (structure/masses.ts). Hz, m/s.
 *
 * No mark for flutter: formulas and tests for aircraft know wings far heavier than the air they move (T. Theodorsen,
 * NACA Report 496, 1935); foils are lighter than the water they move, where those fail (P. K. Besch, Y.-N. Liu, David
 * Taylor reports on strut flutter, 1970s, from memory).
 */
import type { Design } from '../design/document.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../forces/loads.ts';
import { craftOf, type Resolution } from '../geometry/craft.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import { eigenvalues } from '../numeric/eigen.ts';
import { findRoot } from '../numeric/roots.ts';
import { lumpsOf, type MassSums, massSums } from '../structure/masses.ts';
import { type Shape, type Symmetry, shapesOf } from '../structure/shapes.ts';
import { type Part, skeletonOf } from '../structure/skeleton.ts';
import { massMatrix, type Swing, swingsOf } from '../structure/vibration.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf } from './condition.ts';
import { ElasticFlow } from './elastic.ts';
import type { Study } from './study.ts';

export interface WaterAndAir {
  water: number | null; // Hz; null where there is no such swing
  air: number | null;
}

export interface BendingAndTwist {
  bending: WaterAndAir;
  twist: WaterAndAir;
}

export interface NamedSwing {
  symmetry: Symmetry;
  frequency: number; // Hz in water
  shares: Array<{ group: string; share: number }>; // of the strain energy, largest first, above a tenth
}

/** Bending and torsion against speed; null where the two have run together. */
export interface Spacing {
  bending: Array<number | null>;
  twist: Array<number | null>;
  meet: number | null; // m/s at which they meet, within the range
}

export interface Divergence {
  what: 'wing' | 'pitching' | 'sideways'; // wing by itself; the foil on its strut, lengthwise and sideways
  speed: number | null; // m/s; null: none below the fastest looked at
}

export interface FrequencyStudy {
  masses: MassSums; // kg
  wingMassRatio: number; // own mass over the water it moves
  strut: BendingAndTwist | null; // on its box, the foil at its end
  wing: BendingAndTwist; // held at its root
  whole: NamedSwing[]; // the slowest of each symmetry
  speeds: number[];
  spacing: { wing: Spacing; strut: Spacing | null };
  divergence: Divergence[];
  fastest: number; // m/s, end of the search
}

export interface FrequencyOptions {
  strips?: number;
}

const FASTEST = 60; // m/s
const STRUT: ReadonlySet<Part> = new Set(['box', 'strut', 'strutJoint']);
const WING: ReadonlySet<Part> = new Set(['wing']);

export function* frequencyStudy(
  design: Design,
  { strips = 24 }: FrequencyOptions = {},
): Study<FrequencyStudy> {
  const swinging = new Swinging(design, { strips, stabilizerStrips: Math.round(strips / 2), rows: 1 });
  const still = swinging.still();
  yield 0.2;
  const { takeOff, top } = design.brief.speeds;
  const speeds = [0, ...Array.from({ length: 12 }, (_, k) => takeOff + ((1.5 * top - takeOff) * k) / 11)];
  const wing = swinging.spacing('symmetric', WING, speeds);
  yield 0.5;
  const strut = design.strut ? swinging.spacing('antisymmetric', STRUT, speeds) : null;
  yield 0.7;
  const from = Math.min(takeOff, 1);
  const divergence: Divergence[] = [];
  for (const [what, symmetry, parts] of [
    ['wing', 'symmetric', WING],
    ['pitching', 'symmetric', undefined],
    ['sideways', 'antisymmetric', undefined],
  ] as const) {
    divergence.push({ what, speed: swinging.divergence(symmetry, parts, from) });
    yield 0.7 + 0.1 * divergence.length;
  }
  return { ...still, speeds, spacing: { wing, strut }, divergence, fastest: FASTEST };
}

class Swinging {
  private readonly pool = new FlowPool();
  private readonly condition: Condition;
  private readonly craft;
  private readonly skeleton;
  private readonly lumps;
  private readonly shapes: Record<Symmetry, Shape[]>;

  constructor(
    private readonly design: Design,
    resolution: Resolution,
  ) {
    this.condition = conditionOf(design.brief, {});
    this.craft = craftOf(design, this.condition.depth, resolution);
    this.skeleton = skeletonOf(design, this.craft);
    this.lumps = lumpsOf(design, this.craft, this.skeleton, this.condition.density);
    this.shapes = {
      symmetric: shapesOf(this.skeleton, 'symmetric'),
      antisymmetric: shapesOf(this.skeleton, 'antisymmetric'),
    };
  }

  still(): Pick<FrequencyStudy, 'masses' | 'wingMassRatio' | 'strut' | 'wing' | 'whole'> {
    const { skeleton, lumps, design } = this;
    const dry = lumpsOf(design, this.craft, skeleton, 0);
    const { symmetric: even, antisymmetric: odd } = this.shapes;
    const pair = (shapes: readonly Shape[], parts: ReadonlySet<Part>, bending: string): BendingAndTwist => {
      const own = shapes.filter(({ part }) => parts.has(part));
      const [wet, air] = [lumps, dry].map((list) => swingsOf(skeleton.frame, own, massMatrix(list, own)));
      const first = (isTwist: boolean): WaterAndAir => ({
        water: firstOf(wet!, isTwist, bending),
        air: firstOf(air!, isTwist, bending),
      });
      return { bending: first(false), twist: first(true) };
    };
    const wingLumps = lumps.filter(({ body }) => skeleton.wing.starboard.strips.includes(body));
    const half = massSums(wingLumps);
    return {
      masses: massSums(lumps),
      wingMassRatio: half.own / half.water,
      strut: design.strut ? pair(odd, STRUT, 'strut.flap') : null,
      wing: pair(even, WING, 'wing.flap'),
      whole: [...this.named('symmetric', even), ...this.named('antisymmetric', odd)],
    };
  }

  private named(symmetry: Symmetry, shapes: readonly Shape[]): NamedSwing[] {
    const swings = swingsOf(this.skeleton.frame, shapes, massMatrix(this.lumps, shapes));
    return swings.slice(0, 4).map(({ frequency, energies }) => ({
      symmetry,
      frequency,
      shares: Object.entries(energies)
        .map(([group, share]) => ({ group, share }))
        .filter(({ share }) => share > 0.1)
        .sort((a, b) => b.share - a.share),
    }));
  }

  /** The flow's answers at a speed, lift carried by angle. */
  private elasticAt(speed: number, symmetry: Symmetry): ElasticFlow {
    const { design, craft, skeleton, pool, condition } = this;
    const flow = pool.solve('swinging', craft, symmetry === 'symmetric' ? 'angle' : 'whole');
    const lift = condition.lift / (condition.density * speed ** 2);
    const alpha = alphaForLift(alphaLoads(flow.system, flow.symmetric), lift);
    mixAlpha(flow.symmetric, alpha, flow.base);
    return new ElasticFlow(
      flow,
      alpha,
      craft,
      skeleton,
      symmetry,
      design.strut !== null && symmetry === 'antisymmetric',
      this.shapes[symmetry],
    );
  }

  /** Squares of the angular frequencies of some parts at a speed. */
  private squaresAt(speed: number, symmetry: Symmetry, parts: ReadonlySet<Part>) {
    const elastic = this.elasticAt(speed, symmetry);
    const chosen = elastic.chosen(parts);
    const shapes = chosen.map((k) => elastic.shapes[k]!);
    const n = shapes.length;
    const pressure = this.condition.density * speed ** 2;
    const masses = massMatrix(this.lumps, shapes);
    const pivots = new Int32Array(n);
    factor(masses, n, pivots);
    const system = new Float64Array(n * n);
    for (let j = 0; j < n; j++) {
      const column = Float64Array.from(
        chosen,
        (row, i) => (i === j ? 1 : 0) - pressure * elastic.matrix[row * elastic.shapes.length + chosen[j]!]!,
      );
      solveFactored(masses, n, pivots, column);
      for (let i = 0; i < n; i++) system[i * n + j] = column[i]!;
    }
    return eigenvalues(system, n);
  }

  /** First bending and first torsion followed from rest as the speed grows. */
  spacing(symmetry: Symmetry, parts: ReadonlySet<Part>, speeds: readonly number[]): Spacing {
    const shapes = this.shapes[symmetry].filter(({ part }) => parts.has(part));
    const swings = swingsOf(this.skeleton.frame, shapes, massMatrix(this.lumps, shapes));
    const group = parts.has('wing') ? 'wing.flap' : 'strut.flap';
    let bending = firstOf(swings, false, group);
    let twist = firstOf(swings, true, group);
    const result: Spacing = { bending: [], twist: [], meet: null };
    for (const speed of speeds) {
      if (speed > 0 && bending !== null && twist !== null) {
        const roots = this.rootsAt(speed, symmetry, parts);
        const follow = (from: number) =>
          roots.reduce((best, root) =>
            Math.abs(root.frequency - from) < Math.abs(best.frequency - from) ? root : best,
          );
        const [low, high] = roots.length > 0 ? [follow(bending), follow(twist)] : [null, null];
        const isJoined = !low || !high || low.isPair || high.isPair || low === high;
        bending = isJoined ? null : low.frequency;
        twist = isJoined ? null : high.frequency;
        if (isJoined) result.meet ??= speed;
      }
      result.bending.push(bending);
      result.twist.push(twist);
    }
    return result;
  }

  private rootsAt(speed: number, symmetry: Symmetry, parts: ReadonlySet<Part>) {
    return this.squaresAt(speed, symmetry, parts)
      .filter(({ real, imaginary }) => real > 0 && imaginary >= 0)
      .map(({ real, imaginary }) => ({
        frequency: Math.sqrt(Math.hypot(real, imaginary)) / (2 * Math.PI),
        isPair: imaginary > 1e-6 * real,
      }));
  }

  /** Speed at which the foil, held at the board, gives way; null where none is found up to FASTEST. */
  divergence(symmetry: Symmetry, parts: ReadonlySet<Part> | undefined, from: number): number | null {
    const excess = (speed: number) => {
      try {
        return this.condition.density * speed ** 2 * this.elasticAt(speed, symmetry).growth(parts) - 1;
      } catch {
        return Number.NaN; // too slow to carry the weight
      }
    };
    const steps = 12;
    let [low, atLow] = [Number.NaN, Number.NaN];
    for (let k = 0; k <= steps; k++) {
      const speed = from + ((FASTEST - from) * k) / steps;
      const value = excess(speed);
      if (atLow < 0 && value >= 0) return findRoot(excess, low, speed, 1e-2, atLow, value);
      if (Number.isFinite(value)) [low, atLow] = [speed, value];
    }
    return null;
  }
}

/** Frequency of the first swing whose energy is mostly torsion, or mostly bending of the named group. */
function firstOf(swings: readonly Swing[], isTwist: boolean, bending: string): number | null {
  const found = swings.find(({ energies }) => {
    const twisted = Object.entries(energies).reduce(
      (sum, [group, share]) => sum + (/\.(twist|yaw)$/.test(group) ? share : 0),
      0,
    );
    return isTwist ? twisted > 0.5 : (energies[bending] ?? 0) > 0.3 && twisted < 0.5;
  });
  return found?.frequency ?? null;
}
