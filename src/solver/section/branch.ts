/**
 * One branch of a polar, above or below zero lift, at one Reynolds number: figures by lift coefficient up to stall, and
 * by angle. Angles in radians.
 */
import { type Curve, monotoneCubic } from '../numeric/spline.ts';
import type { SectionFigures } from './drag.ts';
import { stallIndex } from './polar.ts';
import type { LiftLine } from './pressure.ts';

export interface PolarSample {
  alpha: number; // rad
  cl: number;
  cd: number;
  cm: number; // about the quarter chord, nose up
  cpMin: number;
  transitionUpper: number; // x/c
  transitionLower: number;
  /** Greatest lift coefficient on the side asked for; below zero lift the least one, negative. */
  clLimit: number;
  /** Beyond that limit the figures are those at it; unknown: nothing settled there, figures are NaN. */
  state: 'inside' | 'beyond' | 'unknown';
}

export const FIGURES = ['alpha', 'cl', 'cd', 'cm', 'cpMin', 'transitionUpper', 'transitionLower'] as const;
type Figure = (typeof FIGURES)[number];
export type Row = Record<Figure, number>;

export function emptySample(): PolarSample {
  const none = Number.NaN;
  return {
    alpha: none,
    cl: none,
    cd: none,
    cm: none,
    cpMin: none,
    transitionUpper: none,
    transitionLower: none,
    clLimit: none,
    state: 'unknown',
  };
}

/** One branch at one Reynolds number: figures by the size of lift up to stall, and by the distance from zero lift. */
export class Branch {
  readonly limit: number; // lift coefficient at stall; NaN where nothing settled
  readonly stallAngle: number; // rad, of the limit
  readonly first: number; // lift coefficient at which it begins; NaN likewise
  private readonly byLift: Record<Figure, Curve> | null;
  private readonly byAngle: Record<Figure, Curve> | null;

  constructor(
    readonly rows: readonly Row[],
    private readonly sign: 1 | -1,
    line: LiftLine,
  ) {
    const rising: Row[] = [];
    for (const row of rows.slice(0, stallIndex(rows, line) + 1))
      if (rising.length === 0 || sign * (row.cl - rising[rising.length - 1]!.cl) > 1e-4) rising.push(row);
    this.limit = rising[rising.length - 1]?.cl ?? Number.NaN;
    this.stallAngle = rising[rising.length - 1]?.alpha ?? Number.NaN;
    this.first = rising[0]?.cl ?? Number.NaN;
    this.byLift = curves(rising, ({ cl }) => sign * cl);
    this.byAngle = curves(rows, ({ alpha }) => sign * alpha);
  }

  get isSolved(): boolean {
    return this.byLift !== null;
  }

  dragAt(cl: number): number {
    return this.byLift ? this.byLift.cd(this.sign * cl) : Number.NaN;
  }

  /** Lift coefficient at an angle, rad. */
  liftAt(alpha: number): number {
    return this.byAngle ? this.byAngle.cl(this.sign * alpha) : Number.NaN;
  }

  atLift(cl: number, out: PolarSample): void {
    this.fill(this.byLift, this.sign * cl, out);
  }

  atAngle(alpha: number, out: PolarSample): void {
    this.fill(this.byAngle, this.sign * alpha, out);
  }

  private fill(from: Record<Figure, Curve> | null, at: number, out: PolarSample): void {
    for (const figure of FIGURES) out[figure] = from ? from[figure](at) : Number.NaN;
    out.clLimit = this.limit;
    out.state = from ? 'inside' : 'unknown';
  }
}

export function rowOf(alpha: number, figures: SectionFigures): Row {
  const { cl, cd, cm, cpMin, upper, lower } = figures;
  return { alpha, cl, cd, cm, cpMin, transitionUpper: upper.transition, transitionLower: lower.transition };
}

/** The row of a symmetric section at the opposite angle. */
export function mirrored(point: Row): Row {
  return {
    ...point,
    alpha: -point.alpha,
    cl: -point.cl,
    cm: -point.cm,
    transitionUpper: point.transitionLower,
    transitionLower: point.transitionUpper,
  };
}

function curves(points: ReadonlyArray<Row>, by: (point: Row) => number): Record<Figure, Curve> | null {
  if (points.length < 2) return null;
  const at = points.map(by);
  const through = (figure: Figure) =>
    monotoneCubic(
      at,
      points.map((point) => point[figure]),
    );
  return Object.fromEntries(FIGURES.map((figure) => [figure, through(figure)])) as Record<Figure, Curve>;
}
