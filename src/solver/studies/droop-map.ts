/**
 * Wing droop against stabilizer size: hold index, induced drag, lost lift and static margin over both, at the same lift,
 * the stabilizer at its drawn incidence. Fields are row after row: value k of column i and row j is j * columns + i, the
 * droop running along a row. NaN where a case does not fit the water or carries the lift at no angle.
 */
import type { Design, Stabilizer } from '../design/document.ts';
import { farField } from '../forces/ledger.ts';
import { type AlphaLoads, addLoads, alphaLoads, type Load, loadsAt } from '../forces/loads.ts';
import { Bender, type Kept } from '../geometry/bend.ts';
import { assemble, depthProblem, type Lifts, type Resolution } from '../geometry/craft.ts';
import { resizedStabilizer, type StabilizerMeasure, stabilizerSize } from '../geometry/stabilizer-size.ts';
import { type Surface, surfaceOf } from '../geometry/surface.ts';
import type { ConditionOptions } from '../report.ts';
import { FlowPool } from '../vortex/flow.ts';
import { type Condition, conditionOf, resolutionOf } from './condition.ts';
import { liftsFor } from './craft-for.ts';
import { holdTerms } from './hold.ts';
import { neutralPoint } from './pitch.ts';
import { settleFoil } from './running.ts';
import type { Study } from './study.ts';

export interface DroopMapOptions {
  measure: StabilizerMeasure;
  kept?: Kept;
  columns?: number; // default 41
  rows?: number; // default 31
  to?: number; // degrees of wing droop at the end; default 45
  condition?: Omit<ConditionOptions, 'alpha'>;
}

export interface DroopMap {
  measure: StabilizerMeasure;
  kept: Kept;
  droop: Float64Array; // degrees, along a row
  size: Float64Array; // m2, m or degrees, from row to row
  present: { droop: number; size: number };
  holdIndex: Float64Array;
  inducedDrag: Float64Array; // N
  lostFraction: Float64Array; // of the unrolled twin's lift, at the same angle
  staticMargin: Float64Array; // in mean chords
}

/** Null for a foil without a stabilizer. */
export function* droopMap(design: Design, options: DroopMapOptions): Study<DroopMap | null> {
  const { stabilizer } = design;
  if (!stabilizer) return null;
  const { measure, kept = 'unrolled', columns = 41, rows = 31, to = 45 } = options;
  const mapper = new Mapper(design, stabilizer, measure, kept, options.condition ?? {});
  const field = () => new Float64Array(columns * rows).fill(Number.NaN);
  const map: DroopMap = {
    measure,
    kept,
    droop: Float64Array.from({ length: columns }, (_, i) => (to * i) / (columns - 1)),
    size: mapper.sizes(rows),
    present: { droop: mapper.presentDroop, size: mapper.presentSize },
    holdIndex: field(),
    inducedDrag: field(),
    lostFraction: field(),
    staticMargin: field(),
  };
  const wings = [...map.droop].map((amplitude) => mapper.wing(amplitude));
  for (let j = 0; j < rows; j++) {
    const behind = mapper.stabilizer(map.size[j]!);
    const twin = mapper.twinOf(wings, behind);
    for (let i = 0; i < columns; i++) {
      const found = mapper.solve(wings[i] ?? null, behind, twin);
      if (found) {
        const k = j * columns + i;
        for (const name of ['holdIndex', 'inducedDrag', 'lostFraction', 'staticMargin'] as const)
          map[name][k] = found[name];
      }
      yield (j * columns + i + 1) / (rows * columns);
    }
  }
  return map;
}

class Mapper {
  readonly presentDroop: number;
  readonly presentSize: number;
  private readonly pool = new FlowPool();
  private readonly condition: Condition;
  private readonly resolution: Resolution;
  private readonly lifts: Partial<Lifts> | undefined;
  private readonly bender: Bender;

  constructor(
    private readonly design: Design,
    private readonly drawn: Stabilizer,
    private readonly measure: StabilizerMeasure,
    kept: Kept,
    options: Omit<ConditionOptions, 'alpha'>,
  ) {
    this.condition = conditionOf(design.brief, options);
    this.resolution = resolutionOf(options);
    this.lifts = liftsFor(design, this.condition.depth, this.resolution.sections);
    this.bender = new Bender(design.wing, kept);
    this.presentDroop = this.bender.present;
    this.presentSize = stabilizerSize(drawn, measure);
  }

  /** Sizes from bottom to top: half to one and a half of the present area or arm; droop from 30 degrees up to 30 down. */
  sizes(rows: number): Float64Array {
    const [low, high] =
      this.measure === 'droop' ? [-30, 30] : [0.5 * this.presentSize, 1.5 * this.presentSize];
    return Float64Array.from({ length: rows }, (_, j) => low + ((high - low) * j) / (rows - 1));
  }

  wing(amplitude: number): Surface | null {
    try {
      return surfaceOf(this.bender.at(amplitude), undefined, this.lifts?.wing);
    } catch {
      return null; // folded further than this length allows
    }
  }

  stabilizer(size: number): Surface {
    const resized = resizedStabilizer(this.drawn, this.measure, size);
    return surfaceOf(resized, { arm: resized.arm, height: resized.height }, this.lifts?.stabilizer);
  }

  /** Null where the case has no answer. `twin`: loads of the unrolled twin by its length. */
  solve(wing: Surface | null, stabilizer: Surface, twin: (length: number) => AlphaLoads) {
    const { depth } = this.condition;
    if (!wing || depthProblem(wing, stabilizer, null, depth)) return null;
    const craft = assemble(wing, stabilizer, null, depth, this.resolution);
    try {
      const flow = this.pool.solve('mapped', craft, 'angle');
      const foil = settleFoil(craft, flow, this.condition);
      const flatLift = loadsAt(twin(wing.unrolledLength), foil.alpha)[0].z;
      const vertical = loadsAt(foil.loads, foil.alpha)[0].z;
      const ahead = neutralPoint(foil.loads, foil.alpha) - this.design.brief.balance.x;
      return {
        holdIndex: holdTerms(wing, stabilizer, foil.CL).index ?? Number.NaN,
        inducedDrag: farField(flow, foil.alpha) * foil.pressure,
        lostFraction: flatLift > 0 ? (flatLift - vertical) / flatLift : Number.NaN,
        staticMargin: ahead / wing.meanChord,
      };
    } catch {
      return null; // no angle carries the lift
    }
  }

  /**
   * Loads of the unrolled twins of a row of wings. Their lengths differ where the span is kept: the loads are smooth in
   * the length, so four twins between the shortest and the longest serve all by cubic interpolation.
   */
  twinOf(wings: ReadonlyArray<Surface | null>, stabilizer: Surface): (length: number) => AlphaLoads {
    const lengths = wings.flatMap((wing) => (wing ? [wing.unrolledLength] : []));
    const low = Math.min(...lengths);
    const high = Math.max(...lengths);
    if (!(high - low > 1e-9)) {
      const loads = this.flatLoads(low, stabilizer);
      return () => loads;
    }
    const nodes = [0, 1, 2, 3].map((k) => low + ((high - low) * k) / 3);
    const known = nodes.map((length) => this.flatLoads(length, stabilizer));
    return (length) => mixed(known, lagrange(nodes, length));
  }

  private flatLoads(length: number, stabilizer: Surface): AlphaLoads {
    const { depth } = this.condition;
    const flat = {
      ...this.design.wing,
      droop: { kind: 'flat' },
      length: { kind: 'unrolled', value: length },
    } as const;
    const wing = surfaceOf(flat, undefined, this.lifts?.wing);
    const craft = assemble(wing, stabilizer, null, depth, this.resolution);
    const flow = this.pool.solve('twin', craft, 'angle');
    return alphaLoads(flow.system, flow.symmetric);
  }
}

/** Weights of the values at the nodes for the value at x. */
function lagrange(nodes: readonly number[], x: number): number[] {
  return nodes.map((node, i) =>
    nodes.reduce((weight, other, j) => (i === j ? weight : (weight * (x - other)) / (node - other)), 1),
  );
}

function mixed(known: readonly AlphaLoads[], weights: readonly number[]): AlphaLoads {
  const total = (key: keyof AlphaLoads): [Load, Load] => {
    const sum: [Load, Load] = [
      { x: 0, z: 0, pitch: 0 },
      { x: 0, z: 0, pitch: 0 },
    ];
    known.forEach((loads, k) => {
      addLoads(sum, loads[key], weights[k]!);
    });
    return sum;
  };
  return { ahead: total('ahead'), mixed: total('mixed'), up: total('up') };
}
