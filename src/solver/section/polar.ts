/**
 * Section polars: lift, drag and moment at one Reynolds number over a row of angles. Angles in radians.
 *
 * Angles are taken outward from the one nearest to zero lift, each solved from its neighbour, so that a stalled flow
 * is reached the way a rising wing reaches it. A point that does not settle says so and carries no figures; behind two
 * such in a row the rest are not tried.
 */
import { figuresOf, type SectionFigures } from './drag.ts';
import { SectionLayer } from './layer.ts';
import { type LiftLine, liftLine } from './pressure.ts';
import { type SectionShape, sectionFlow } from './section.ts';
import { type Clarity, CRITICAL_N } from './transition.ts';

/** How the layer turns turbulent. `criticalN` goes before `clarity`; clean water where neither is given. */
export interface Water {
  clarity?: Clarity;
  criticalN?: number;
  criterion?: 'envelope' | 'michel';
  tripUpper?: number; // x/c
  tripLower?: number;
}

export interface PolarOptions extends Water {
  reynolds: number;
  alphas: readonly number[]; // rad, in any order
}

export type PolarState = 'converged' | 'did not settle' | 'not tried behind stall';

export interface PolarPoint {
  alpha: number; // rad
  state: PolarState;
  figures: SectionFigures | null; // null unless converged
}

/** Where lift stops growing on one branch. */
export interface LiftLimit {
  cl: number;
  alpha: number; // rad
  /** True where lift fell, stood still or did not settle further out; false where the angles asked for end before. */
  isStall: boolean;
}

export interface SectionPolar {
  points: PolarPoint[]; // in the order asked for
  line: LiftLine; // inviscid
  clMax: LiftLimit;
  clMin: LiftLimit;
}

/** Share of the greatest lift coefficient that is counted on: common practice. */
export const USABLE_SHARE = 0.9;

const LEAST_GAIN = 0.1;
const ALWAYS_ATTACHED = (5 * Math.PI) / 180;
const LONGEST_STEP = (3 * Math.PI) / 180; // between solved angles; longer gaps get angles of their own in between

export function sectionPolar(shape: SectionShape, options: PolarOptions): SectionPolar {
  const flow = sectionFlow(shape);
  const line = liftLine(flow.flow);
  const march = new March(new SectionLayer(flow), options.reynolds, options);
  const angles = [...new Set(options.alphas)].sort((a, b) => a - b);
  const distance = (alpha: number) => Math.abs(alpha - line.zeroLift);
  let start = 0;
  for (let k = 1; k < angles.length; k++) if (distance(angles[k]!) < distance(angles[start]!)) start = k;
  const atZero = march.begin(line.zeroLift);
  const up = march.along(angles.slice(start));
  march.begin(line.zeroLift, atZero);
  const down = march.along(angles.slice(0, start).reverse());
  const found = new Map([...up, ...down].map((point) => [point.alpha, point]));
  return {
    points: options.alphas.map((alpha) => found.get(alpha)!),
    line,
    clMax: limit(up, line),
    clMin: limit(up.slice(0, 1).concat(down), line),
  };
}

/** A walk outward from zero lift. */
export class March {
  private readonly good: Float64Array; // mass defect of the last angle that settled
  private at = 0; // that angle

  constructor(
    private readonly layer: SectionLayer,
    private readonly reynolds: number,
    private readonly water: Water,
  ) {
    this.good = new Float64Array(layer.stations.mass.length);
  }

  /**
   * Goes back to an angle and forgets what was solved, but for the mass defect that settled there before (`known`). Gives
   * that mass defect back, null where nothing settles; it is the caller's own.
   */
  begin(alpha: number, known: Float64Array | null = null): Float64Array | null {
    this.at = alpha;
    if (known) this.layer.resume(known);
    else this.layer.forget();
    if (this.settles(alpha)) {
      this.good.set(this.layer.stations.mass);
      return this.good.slice();
    }
    this.layer.forget();
    return null;
  }

  /** Solves angles one by one, each further out than the last, in one direction. */
  along(angles: readonly number[]): PolarPoint[] {
    let misses = 0;
    return angles.map((alpha) => {
      if (misses >= 2) return { alpha, state: 'not tried behind stall', figures: null };
      const figures = this.step(alpha);
      misses = figures ? 0 : misses + 1;
      return { alpha, state: figures ? 'converged' : 'did not settle', figures };
    });
  }

  /** Figures at an angle, or null; gaps longer than a step are crossed in equal parts. */
  step(alpha: number): SectionFigures | null {
    const from = this.at;
    const parts = Math.max(1, Math.ceil(Math.abs(alpha - from) / LONGEST_STEP - 1e-9));
    for (let k = 1; k <= parts; k++) {
      const angle = from + ((alpha - from) * k) / parts;
      if (this.settles(angle)) {
        this.good.set(this.layer.stations.mass);
        this.at = angle;
        if (k === parts) return figuresOf(this.layer, alpha);
      } else this.layer.resume(this.good);
    }
    return null;
  }

  private settles(alpha: number): boolean {
    const { clarity = 'clean', criticalN = CRITICAL_N[clarity], ...rest } = this.water;
    return this.layer.solve({ ...rest, reynolds: this.reynolds, alpha, criticalN });
  }
}

/**
 * Index of the last point of a branch, walked outward, up to which lift grows; -1 for an empty one. Stall is where a
 * further step gains less than a tenth of what inviscid flow would (a plateau of separated flow is no lift to count
 * on). Not asked within five degrees of zero lift, where laminar separation at low Reynolds numbers bends the curve.
 */
export function stallIndex(branch: ReadonlyArray<{ alpha: number; cl: number }>, line: LiftLine): number {
  for (let k = 1; k < branch.length; k++) {
    const [near, far] = [branch[k - 1]!, branch[k]!];
    const gain = (far.cl - near.cl) / (line.slope * (far.alpha - near.alpha));
    if (gain < LEAST_GAIN && Math.abs(near.alpha - line.zeroLift) > ALWAYS_ATTACHED) return k - 1;
  }
  return branch.length - 1;
}

function limit(branch: readonly PolarPoint[], line: LiftLine): LiftLimit {
  const settled = branch.flatMap(({ alpha, figures }) => (figures ? [{ alpha, cl: figures.cl }] : []));
  const best = settled[stallIndex(settled, line)];
  if (!best) return { cl: Number.NaN, alpha: Number.NaN, isStall: false };
  return { ...best, isStall: best.alpha !== branch[branch.length - 1]!.alpha };
}
