/**
 * Polars kept by Reynolds number and looked up by lift coefficient or angle: what strips of a wing ask for. Angles in
 * radians.
 *
 * Lines of constant Reynolds number (table-lines.ts) are solved when first asked for, or ahead of that in slices
 * (`prepare`), each branch for itself, outward in equal steps until lift has fallen: the upper one from a step below zero
 * lift, so that tips that hardly lift do not need the other. Along a line figures run on monotone cubics. Below the lowest
 * line drag grows as a laminar layer's would, with Re^-1/2, and the rest stands still.
 */

import { finish, type Sliced } from '../numeric/sliced.ts';
import { Branch, emptySample, FIGURES, mirrored, type PolarSample, type Row, rowOf } from './branch.ts';
import type { SectionFigures } from './drag.ts';
import { SectionLayer } from './layer.ts';
import { March, stallIndex, type Water } from './polar.ts';
import { type LiftLine, liftLine } from './pressure.ts';
import type { MassResponse } from './response.ts';
import { type SectionShape, sectionFlow, shapeKey } from './section.ts';
import { between, MOST_INDEX, type Place, place, reynoldsOf, towardsLimit } from './table-lines.ts';
import type { Clarity } from './transition.ts';

export { emptySample, type PolarSample } from './branch.ts';

const STEP = (1.5 * Math.PI) / 180;
const MOST_STEPS = 17;
const STEPS_PAST_STALL = 2;
const LINEAR_LIFT = 0.5; // up to which the mean lift slope is taken

/** How a section lifts in real water: what a lifting line needs to know of it. */
export interface ViscousLine extends LiftLine {
  moment: number; // coefficient about the quarter chord at zero lift, nose up
}

/** Tables come from `createPolarTable`. */
export class PolarTable {
  /** Inviscid lift slope (per rad) and zero-lift angle (rad). */
  readonly line: LiftLine;
  /** Reynolds numbers at which nothing settled; the next line above answers for them. */
  readonly unsettled = new Set<number>();
  private readonly atZero: Float64Array[] = []; // mass defects at zero lift, by line
  private readonly branches: Branch[] = [];
  private readonly leastDrags: number[] = [];
  private readonly viscousLines: ViscousLine[] = [];
  private readonly levelSlopes: number[] = [];
  private readonly isSymmetric: boolean;
  private readonly low = emptySample();
  private readonly high = emptySample();
  private readonly at: Place = { index: 0, share: 0, thickening: 1 };
  private readonly lifts = { low: 0, high: 0 };

  constructor(
    readonly flow: MassResponse,
    readonly water: Water,
  ) {
    this.isSymmetric = isSymmetric(flow) && water.tripUpper === water.tripLower;
    const line = liftLine(flow.flow);
    this.line = this.isSymmetric ? { ...line, zeroLift: 0 } : line;
  }

  /** Solves ahead, in slices, what a strip that lifts at a chord Reynolds number will ask for. */
  *prepare(reynolds: number): Sliced<void> {
    const { index } = place(reynolds, this.at);
    for (const line of [index, index + 1]) if (!(keyOf(line, 1) in this.branches)) yield* this.make(line, 1);
  }

  /** The same for a strut: drag without lift. */
  *prepareLevel(reynolds: number): Sliced<void> {
    const { index } = place(reynolds, this.at);
    for (const line of [index, index + 1]) {
      if (this.isSymmetric && !(line in this.leastDrags)) this.leastDrag(line);
      yield 0;
    }
  }

  /** The same for a strut: how steeply it begins to lift. */
  *prepareSlope(reynolds: number): Sliced<void> {
    const { index } = place(reynolds, this.at);
    for (const line of [index, index + 1]) if (!(line in this.levelSlopes)) yield* this.makeSlope(line);
  }

  /** Fills `out` for a lift coefficient at a chord Reynolds number. */
  lookup(cl: number, reynolds: number, out: PolarSample): void {
    const { index, share, thickening } = place(reynolds, this.at);
    const low = this.branchFor(index, cl);
    const high = this.branchFor(index + 1, cl);
    const limit = readAt(cl, share, low, high, this.lifts);
    low.atLift(this.lifts.low, this.low);
    high.atLift(this.lifts.high, this.high);
    this.blend(share, thickening, out);
    if (out.state === 'inside' && cl * Math.sign(limit) > Math.abs(limit)) out.state = 'beyond';
  }

  /** Drag coefficient at a lift coefficient; beyond stall the one at stall. NaN where nothing settled. */
  drag(cl: number, reynolds: number): number {
    const { index, share, thickening } = place(reynolds, this.at);
    if (cl === 0 && this.isSymmetric) {
      const value = between(this.leastDrag(index), this.leastDrag(index + 1), share);
      if (Number.isFinite(value)) return thickening * value;
    }
    const low = this.branchFor(index, cl);
    const high = this.branchFor(index + 1, cl);
    readAt(cl, share, low, high, this.lifts);
    return thickening * between(low.dragAt(this.lifts.low), high.dragAt(this.lifts.high), share);
  }

  /** Greatest lift coefficient at a Reynolds number, or the least (negative) with a sign of -1. */
  limit(reynolds: number, sign: 1 | -1 = 1): number {
    const { index, share } = place(reynolds, this.at);
    const low = this.branch(index, sign).limit;
    return low + share * (this.branch(index + 1, sign).limit - low);
  }

  /** Angle (rad) of the greatest lift. */
  stallAngle(reynolds: number): number {
    const { index, share } = place(reynolds, this.at);
    const low = this.branch(index, 1).stallAngle;
    return low + share * (this.branch(index + 1, 1).stallAngle - low);
  }

  /** Lift coefficient at an angle to the stream, rad; past stall as `lookupAngle` has it. */
  lift(alpha: number, reynolds: number): number {
    const { index, share } = place(reynolds, this.at);
    const sign = alpha >= this.line.zeroLift ? 1 : -1;
    const low = this.branch(index, sign).liftAt(alpha);
    return low + share * (this.branch(index + 1, sign).liftAt(alpha) - low);
  }

  /** Fills `out` for an angle to the stream, rad; past stall lift falls as far as it was solved, then stays. */
  lookupAngle(alpha: number, reynolds: number, out: PolarSample): void {
    const { index, share, thickening } = place(reynolds, this.at);
    const sign = alpha >= this.line.zeroLift ? 1 : -1;
    this.branch(index, sign).atAngle(alpha, this.low);
    this.branch(index + 1, sign).atAngle(alpha, this.high);
    this.blend(share, thickening, out);
    if (out.state === 'inside' && out.cl / out.clLimit > 0.999) out.state = 'beyond';
  }

  /**
   * Viscous zero-lift angle, moment there, and the mean slope to a lift coefficient of 0.5 (or to the limit, if less);
   * the inviscid line without moment where nothing settled.
   */
  viscousLine(reynolds: number): ViscousLine {
    const { index, share } = place(reynolds, this.at);
    return mixLines(this.viscousLineAt(index), this.viscousLineAt(index + 1), share);
  }

  /**
   * The slope of `viscousLine` for a symmetric section, solved no further than it reaches: a strut does not ask for stall.
   * That is some third of a whole branch's work.
   */
  levelSlope(reynolds: number): number {
    const { index, share } = place(reynolds, this.at);
    const [low, high] = [this.levelSlopeAt(index), this.levelSlopeAt(index + 1)];
    return low + share * (high - low);
  }

  private levelSlopeAt(index: number): number {
    return this.levelSlopes[index] ?? finish(this.makeSlope(index));
  }

  private *makeSlope(index: number): Sliced<number> {
    const rows = yield* this.solve(index, 1, LINEAR_LIFT);
    let slope = this.meanSlope(new Branch(rows, 1, this.line), 0);
    if (!(slope > 0))
      slope =
        index < MOST_INDEX
          ? (this.levelSlopes[index + 1] ?? (yield* this.makeSlope(index + 1)))
          : this.line.slope;
    this.levelSlopes[index] = slope;
    return slope;
  }

  /** From zero lift (rad) to a lift coefficient of 0.5, or to the limit; NaN where nothing settled. */
  private meanSlope(branch: Branch, zeroLift: number): number {
    branch.atLift(LINEAR_LIFT, this.low);
    return this.low.cl / Math.sin(this.low.alpha - zeroLift);
  }

  private viscousLineAt(index: number): ViscousLine {
    const known = this.viscousLines[index];
    if (known) return known;
    const sample = this.low;
    this.branchFor(index, 0).atLift(0, sample);
    const { alpha: zeroLift, cm: moment } = sample;
    const slope = this.meanSlope(this.branch(index, 1), zeroLift);
    const isKnown = Number.isFinite(zeroLift) && slope > 0;
    const made = isKnown ? { zeroLift, slope, moment } : { ...this.line, moment: 0 };
    this.viscousLines[index] = made;
    return made;
  }

  private blend(share: number, thickening: number, out: PolarSample): void {
    const { low, high } = this;
    for (const figure of FIGURES) out[figure] = low[figure] + share * (high[figure] - low[figure]);
    out.cd = thickening * between(low.cd, high.cd, share);
    out.clLimit = low.clLimit + share * (high.clLimit - low.clLimit);
    out.state = low.state === 'unknown' || high.state === 'unknown' ? 'unknown' : 'inside';
  }

  /** Drag coefficient of a symmetric section without lift, which needs no branch; NaN where it does not settle. */
  private leastDrag(index: number): number {
    let known = this.leastDrags[index];
    if (known === undefined) {
      known = this.march(index).step(0)?.cd ?? Number.NaN;
      this.leastDrags[index] = known;
    }
    return known;
  }

  private branchFor(index: number, cl: number): Branch {
    if (this.isSymmetric) return this.branch(index, cl >= 0 ? 1 : -1);
    const upper = this.branch(index, 1);
    return cl < upper.first ? this.branch(index, -1) : upper;
  }

  private branch(index: number, sign: 1 | -1): Branch {
    return this.branches[keyOf(index, sign)] ?? finish(this.make(index, sign));
  }

  /** Solves a branch angle by angle, and keeps it once it is whole; a line where nothing settles takes the next one's. */
  private *make(index: number, sign: 1 | -1): Sliced<Branch> {
    const key = keyOf(index, sign);
    let made: Branch;
    if (this.isSymmetric && sign < 0) {
      const upper = this.branches[keyOf(index, 1)] ?? (yield* this.make(index, 1));
      made = new Branch(upper.rows.map(mirrored), sign, this.line);
    } else made = new Branch(yield* this.solve(index, sign), sign, this.line);
    if (!made.isSolved) {
      this.unsettled.add(reynoldsOf(index));
      if (index < MOST_INDEX)
        made = this.branches[keyOf(index + 1, sign)] ?? (yield* this.make(index + 1, sign));
    }
    const known = this.branches[key]; // made by another meanwhile
    if (!known) this.branches[key] = made;
    return known ?? made;
  }

  /** A walk outward from zero lift, on a layer of its own: others may be under way in slices. */
  private march(index: number): March {
    const march = new March(new SectionLayer(this.flow), reynoldsOf(index), this.water);
    const known = this.atZero[index] ?? null;
    const found = march.begin(this.line.zeroLift, known);
    if (found && !known) this.atZero[index] = found;
    return march;
  }

  /** Outward until lift has fallen, or has reached `enough`. */
  private *solve(index: number, sign: 1 | -1, enough = Number.POSITIVE_INFINITY): Sliced<Row[]> {
    const rows: Row[] = [];
    const solved = (march: March, alpha: number) => {
      const figures = march.step(alpha);
      if (figures) rows.push(alpha === 0 && this.isSymmetric ? levelRow(figures) : rowOf(alpha, figures));
      return figures !== null;
    };
    if (sign > 0 && !this.isSymmetric) {
      solved(this.march(index), this.line.zeroLift - STEP);
      yield 0;
    }
    const march = this.march(index);
    for (let k = 0, misses = 0; k <= MOST_STEPS && misses < 2; k++) {
      misses = solved(march, this.line.zeroLift + sign * k * STEP) ? 0 : misses + 1;
      if (rows.length - stallIndex(rows, this.line) > STEPS_PAST_STALL) break;
      if (sign * (rows.at(-1)?.cl ?? 0) >= enough) break;
      yield k / MOST_STEPS;
    }
    return rows;
  }
}

/** The line at a share of the way from one to another. */
export function mixLines(from: ViscousLine, to: ViscousLine, share: number): ViscousLine {
  return {
    zeroLift: from.zeroLift + share * (to.zeroLift - from.zeroLift),
    slope: from.slope + share * (to.slope - from.slope),
    moment: from.moment + share * (to.moment - from.moment),
  };
}

/** The lift coefficients at which two neighbouring lines are read for `cl`, into `lifts`; the blended limit. */
function readAt(
  cl: number,
  share: number,
  low: Branch,
  high: Branch,
  lifts: { low: number; high: number },
): number {
  const limit = low.limit + share * (high.limit - low.limit);
  lifts.low = towardsLimit(cl, limit, low.limit);
  lifts.high = towardsLimit(cl, limit, high.limit);
  return limit;
}

const keyOf = (index: number, sign: 1 | -1): number => 2 * index + (sign > 0 ? 1 : 0);

/** A symmetric section along the stream lifts nothing: what its flow solved to within its tolerance is put right. */
function levelRow(figures: SectionFigures): Row {
  return { ...rowOf(0, figures), cl: 0, cm: 0 };
}

const tables = new Map<string, PolarTable>();
const KEPT = 48;

/** The polar table of a section in water of a given clarity or kind of transition; the same one for the same request. */
export function createPolarTable(shape: SectionShape, water: Clarity | Water): PolarTable {
  const kind = typeof water === 'string' ? { clarity: water } : water;
  const key = `${JSON.stringify(kind)} ${shapeKey(shape)}`;
  const known = tables.get(key);
  if (known) return known;
  const made = new PolarTable(sectionFlow(shape), kind);
  if (tables.size >= KEPT) tables.delete(tables.keys().next().value!);
  tables.set(key, made);
  return made;
}

function isSymmetric({ flow }: MassResponse): boolean {
  const { x, y, count } = flow.panels;
  return x.every(
    (value, k) => Math.abs(value - x[count - k]!) < 1e-9 && Math.abs(y[k]! + y[count - k]!) < 1e-9,
  );
}
