/**
 * Polars kept by Reynolds number and looked up by lift coefficient or angle: what strips of a wing ask for. Angles in
 * radians.
 *
 * Lines of constant Reynolds number stand five to the decade and are solved when first asked for, each branch (above
 * and below zero lift) for itself, outward in equal steps until lift has fallen. Along a line figures run on monotone
 * cubics; between lines they vary linearly with the logarithm of the Reynolds number.
 */
import { Branch, emptySample, FIGURES, mirrored, type PolarSample, type Row, rowOf } from './branch.ts';
import { SectionLayer } from './layer.ts';
import { March, stallIndex, type Water } from './polar.ts';
import { type LiftLine, liftLine } from './pressure.ts';
import type { MassResponse } from './response.ts';
import { type SectionShape, sectionFlow, shapeKey } from './section.ts';
import type { Clarity } from './transition.ts';

export { emptySample, type PolarSample } from './branch.ts';

const PER_DECADE = 5;
const STEP = (1.25 * Math.PI) / 180;
const MOST_STEPS = 20;
const STEPS_PAST_STALL = 2;
const [LEAST_REYNOLDS, MOST_REYNOLDS] = [2e4, 2e7];

/** Tables come from `createPolarTable`. */
export class PolarTable {
  /** Inviscid lift slope (per rad) and zero-lift angle (rad). */
  readonly line: LiftLine;
  private readonly layer: SectionLayer;
  private readonly branches = new Map<number, Branch>();
  private readonly starts = new Map<number, number>(); // lift coefficient at the inviscid zero-lift angle
  private readonly isSymmetric: boolean;
  private readonly low = emptySample();
  private readonly high = emptySample();

  constructor(
    readonly flow: MassResponse,
    readonly water: Water,
  ) {
    this.line = liftLine(flow.flow);
    this.layer = new SectionLayer(flow);
    this.isSymmetric = isSymmetric(flow) && water.tripUpper === water.tripLower;
  }

  /** Fills `out` for a lift coefficient at a chord Reynolds number. */
  lookup(cl: number, reynolds: number, out: PolarSample): void {
    const { index, share } = place(reynolds);
    const low = this.branch(index, cl >= this.start(index) ? 1 : -1);
    const high = this.branch(index + 1, cl >= this.start(index + 1) ? 1 : -1);
    const limit = low.limit + share * (high.limit - low.limit);
    low.atLift(towardsLimit(cl, limit, low.limit), this.low);
    high.atLift(towardsLimit(cl, limit, high.limit), this.high);
    this.blend(share, out);
    if (out.state === 'inside' && cl * Math.sign(limit) > Math.abs(limit)) out.state = 'beyond';
  }

  /** Fills `out` for an angle to the stream, rad; past stall lift falls as far as it was solved, then stays. */
  lookupAngle(alpha: number, reynolds: number, out: PolarSample): void {
    const { index, share } = place(reynolds);
    const sign = alpha >= this.line.zeroLift ? 1 : -1;
    this.branch(index, sign).atAngle(alpha, this.low);
    this.branch(index + 1, sign).atAngle(alpha, this.high);
    this.blend(share, out);
    if (out.state === 'inside' && out.cl / out.clLimit > 0.999) out.state = 'beyond';
  }

  /** Viscous zero-lift angle and the mean slope from there to a lift coefficient of 0.5 (or to the limit, if less). */
  viscousLine(reynolds: number): LiftLine {
    const sample = emptySample();
    this.lookup(0, reynolds, sample);
    const zeroLift = sample.alpha;
    this.lookup(0.5, reynolds, sample);
    return { zeroLift, slope: sample.cl / Math.sin(sample.alpha - zeroLift) };
  }

  private blend(share: number, out: PolarSample): void {
    const { low, high } = this;
    for (const figure of FIGURES) out[figure] = low[figure] + share * (high[figure] - low[figure]);
    out.clLimit = low.clLimit + share * (high.clLimit - low.clLimit);
    out.state = low.state === 'unknown' || high.state === 'unknown' ? 'unknown' : 'inside';
  }

  private start(index: number): number {
    let known = this.starts.get(index);
    if (known === undefined) {
      const march = this.march(index);
      known = this.isSymmetric ? 0 : (march.step(this.line.zeroLift)?.cl ?? 0);
      this.starts.set(index, known);
    }
    return known;
  }

  private branch(index: number, sign: 1 | -1): Branch {
    const key = 2 * index + (sign > 0 ? 1 : 0);
    let known = this.branches.get(key);
    if (!known) {
      const isMirrored = this.isSymmetric && sign < 0;
      const rows = this.solve(index, isMirrored ? 1 : sign);
      known = new Branch(isMirrored ? rows.map(mirrored) : rows, sign, this.line);
      this.branches.set(key, known);
    }
    return known;
  }

  private march(index: number): March {
    const march = new March(this.layer, 10 ** (index / PER_DECADE), this.water);
    march.begin(this.line.zeroLift);
    return march;
  }

  private solve(index: number, sign: 1 | -1): Row[] {
    const march = this.march(index);
    const rows: Row[] = [];
    for (let k = 0, misses = 0; k <= MOST_STEPS && misses < 2; k++) {
      const alpha = this.line.zeroLift + sign * k * STEP;
      const figures = march.step(alpha);
      misses = figures ? 0 : misses + 1;
      if (figures) rows.push(rowOf(alpha, figures));
      if (rows.length - stallIndex(rows, this.line) > STEPS_PAST_STALL) break;
    }
    return rows;
  }
}

/** The line below a Reynolds number, and how far it stands towards the next one. */
function place(reynolds: number): { index: number; share: number } {
  const at = PER_DECADE * Math.log10(Math.min(MOST_REYNOLDS, Math.max(LEAST_REYNOLDS, reynolds)));
  const index = Math.floor(at);
  return { index, share: at - index };
}

/**
 * Where to read a line whose limit differs from the blended one: at the same lift coefficient far from stall, at the
 * same share of the limit close to it.
 */
function towardsLimit(cl: number, limit: number, own: number): number {
  const closeness = Math.min(1, Math.max(0, (cl / limit - 0.6) / 0.4));
  return cl * (1 + closeness * closeness * (own / limit - 1));
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
