/**
 * Polars along a surface whose section changes from root to tip. The outline in between is their blend, so its polars
 * would be a table of their own at every station: instead a few blends, closer together the more the two ends differ,
 * have tables, and stations between two of them read both. A dragged chord or span finds its tables made.
 */
import type { Outline } from '../design/document.ts';
import { blendOutlines, type OutlinePoints } from '../geometry/outline.ts';
import type { Sliced } from '../numeric/sliced.ts';
import type { Water } from './polar.ts';
import { shapeKey } from './section.ts';
import { createPolarTable, mixLines, type PolarTable, type ViscousLine } from './table.ts';
import type { Clarity } from './transition.ts';

const POINTS = 241; // of a blend's outline
/** Largest distance between neighbouring blends, in chords; found to keep drag within 1 % of a blend's own table. */
const APART = 0.025;
const MOST_SPANS = 4;

export class SectionBlend {
  private readonly made: Array<PolarTable | undefined>;

  /** `make` gives the table of a station, root (0) to tip (count - 1); each is made when first asked for. */
  constructor(
    private readonly count: number,
    private readonly make: (k: number) => PolarTable,
  ) {
    this.made = new Array<PolarTable | undefined>(count);
  }

  /** Makes ahead, in slices, what a strip there that lifts will ask for. */
  *prepare(eta: number, reynolds: number): Sliced<void> {
    for (const k of this.tablesAt(eta)) {
      if (!this.made[k]) yield 0;
      yield* this.table(k).prepare(reynolds);
    }
  }

  /** The same for a strut: drag without lift. */
  *prepareLevel(eta: number, reynolds: number): Sliced<void> {
    for (const k of this.tablesAt(eta)) {
      if (!this.made[k]) yield 0;
      yield* this.table(k).prepareLevel(reynolds);
    }
  }

  /** The same for a strut: how steeply it begins to lift. */
  *prepareSlope(eta: number, reynolds: number): Sliced<void> {
    for (const k of this.tablesAt(eta)) {
      if (!this.made[k]) yield 0;
      yield* this.table(k).prepareSlope(reynolds);
    }
  }

  /** Drag coefficient at eta for a lift coefficient at a chord Reynolds number; NaN where no flow settled. */
  drag(eta: number, cl: number, reynolds: number): number {
    return this.mix(eta, (table) => table.drag(cl, reynolds));
  }

  /** Greatest lift coefficient, or the least (negative) with a sign of -1. */
  limit(eta: number, reynolds: number, sign: 1 | -1 = 1): number {
    return this.mix(eta, (table) => table.limit(reynolds, sign));
  }

  /** Angle (rad) of the greatest lift. */
  stallAngle(eta: number, reynolds: number): number {
    return this.mix(eta, (table) => table.stallAngle(reynolds));
  }

  /** Zero-lift angle (rad), lift slope (per rad) and moment coefficient at zero lift. */
  line(eta: number, reynolds: number): ViscousLine {
    const at = this.at(eta);
    const k = Math.min(this.count - 1, Math.floor(at));
    const near = this.table(k).viscousLine(reynolds);
    return at === k ? near : mixLines(near, this.table(k + 1).viscousLine(reynolds), at - k);
  }

  /** Lift slope (per rad) of symmetric sections, without the rest of their polars. */
  levelSlope(eta: number, reynolds: number): number {
    return this.mix(eta, (table) => table.levelSlope(reynolds));
  }

  /** Lift coefficient at an angle to the stream, rad; past stall as far as it was solved. */
  lift(eta: number, alpha: number, reynolds: number): number {
    return this.mix(eta, (table) => table.lift(alpha, reynolds));
  }

  /** Reynolds numbers at which no flow settled so far, rising. */
  get unsettled(): number[] {
    return [...new Set(this.made.flatMap((table) => [...(table?.unsettled ?? [])]))].sort((a, b) => a - b);
  }

  private mix(eta: number, read: (table: PolarTable) => number): number {
    const at = this.at(eta);
    const k = Math.min(this.count - 1, Math.floor(at));
    const near = read(this.table(k));
    return at === k ? near : near + (at - k) * (read(this.table(k + 1)) - near);
  }

  /** The tables read at a station: one that stands there, or its two neighbours. */
  private tablesAt(eta: number): number[] {
    const at = this.at(eta);
    const k = Math.min(this.count - 1, Math.floor(at));
    return at === k ? [k] : [k, k + 1];
  }

  private at(eta: number): number {
    return Math.min(1, Math.max(0, eta)) * (this.count - 1);
  }

  private table(k: number): PolarTable {
    let table = this.made[k];
    if (!table) {
      table = this.make(k);
      this.made[k] = table;
    }
    return table;
  }
}

const blends = new Map<string, SectionBlend>();
const KEPT = 16;

/** The polars from a root to a tip section in water of a clarity or kind of transition; the same ones for the same request. */
export function sectionBlend(root: Outline, tip: Outline, water: Clarity | Water): SectionBlend {
  const kind = typeof water === 'string' ? { clarity: water } : water;
  const key = `${JSON.stringify(kind)} ${shapeKey(root)} to ${shapeKey(tip)}`;
  const known = blends.get(key);
  if (known) return known;
  const spans = shapeKey(root) === shapeKey(tip) ? 0 : spansBetween(root, tip);
  const made = new SectionBlend(spans + 1, (k) => {
    const shape = k === 0 ? root : k === spans ? tip : blendOutlines(root, tip, k / spans, POINTS);
    return createPolarTable(shape, kind);
  });
  if (blends.size >= KEPT) blends.delete(blends.keys().next().value!);
  blends.set(key, made);
  return made;
}

function spansBetween(root: Outline, tip: Outline): number {
  const ends: OutlinePoints[] = [0, 1].map((eta) => blendOutlines(root, tip, eta, POINTS));
  const [a, b] = [ends[0]!, ends[1]!];
  const furthest = a.x.reduce((most, x, k) => Math.max(most, Math.hypot(b.x[k]! - x, b.y[k]! - a.y[k]!)), 0);
  return Math.min(MOST_SPANS, Math.max(1, Math.ceil(furthest / APART)));
}
