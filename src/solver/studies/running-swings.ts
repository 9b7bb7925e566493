/**
 * What speed does to swings: bending and torsion drawn together or apart, and the static divergence speed, with the
 * quasi-steady answers of the flow (elastic.ts) and the water's added mass (structure/masses.ts). Hz, m/s.
 */
import type { Design } from '../design/document.ts';
import { alphaForLift, alphaLoads, mixAlpha } from '../forces/loads.ts';
import type { Craft, Resolution } from '../geometry/craft.ts';
import { factor, solveFactored } from '../numeric/dense.ts';
import { eigenvalues } from '../numeric/eigen.ts';
import { findRoot } from '../numeric/roots.ts';
import { type Lump, lumpsOf } from '../structure/masses.ts';
import type { Part } from '../structure/parts.ts';
import { type Shape, type Symmetry, shapesOf } from '../structure/shapes.ts';
import { type Skeleton, skeletonOf } from '../structure/skeleton.ts';
import { massMatrix, type Swing, swingsOf } from '../structure/vibration.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf } from './condition.ts';
import { craftFor } from './craft-for.ts';
import { ElasticFlow } from './elastic.ts';

export const FASTEST = 60; // m/s, end of the search for divergence

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

/** A foil with its water and the shapes it swings in. */
export interface SwingSetting {
  design: Design;
  condition: Condition;
  craft: Craft;
  skeleton: Skeleton;
  lumps: Lump[];
  shapes: Record<Symmetry, Shape[]>;
}

export function settingOf(design: Design, resolution: Resolution): SwingSetting {
  const condition = conditionOf(design.brief, {});
  const craft = craftFor(design, condition.depth, resolution);
  const skeleton = skeletonOf(design, craft);
  return {
    design,
    condition,
    craft,
    skeleton,
    lumps: lumpsOf(design, craft, skeleton, condition.density),
    shapes: {
      symmetric: shapesOf(skeleton, 'symmetric'),
      antisymmetric: shapesOf(skeleton, 'antisymmetric'),
    },
  };
}

export class RunningSwings {
  private readonly pool = new FlowPool();

  constructor(private readonly setting: SwingSetting) {}

  /** The flow's answers at a speed, lift carried by angle. */
  private elasticAt(speed: number, symmetry: Symmetry): ElasticFlow {
    const { pool } = this;
    const { design, craft, skeleton, condition, shapes } = this.setting;
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
      shapes[symmetry],
    );
  }

  /** Squares of the angular frequencies of some parts at a speed. */
  private squaresAt(speed: number, symmetry: Symmetry, parts: ReadonlySet<Part>) {
    const elastic = this.elasticAt(speed, symmetry);
    const chosen = elastic.chosen(parts);
    const shapes = chosen.map((k) => elastic.shapes[k]!);
    const n = shapes.length;
    const { condition, lumps } = this.setting;
    const pressure = condition.density * speed ** 2;
    const masses = massMatrix(lumps, shapes);
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
    const { skeleton, lumps, shapes } = this.setting;
    const own = shapes[symmetry].filter(({ part }) => parts.has(part));
    const swings = swingsOf(skeleton.frame, own, massMatrix(lumps, own));
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
        return (
          this.setting.condition.density * speed ** 2 * this.elasticAt(speed, symmetry).growth(parts) - 1
        );
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
export function firstOf(swings: readonly Swing[], isTwist: boolean, bending: string): number | null {
  const found = swings.find(({ energies }) => {
    const twisted = Object.entries(energies).reduce(
      (sum, [group, share]) => sum + (/\.(twist|yaw)$/.test(group) ? share : 0),
      0,
    );
    return isTwist ? twisted > 0.5 : (energies[bending] ?? 0) > 0.3 && twisted < 0.5;
  });
  return found?.frequency ?? null;
}
