/**
 * What faults of the skin cost at cruise and at top speed: common ones at a place to compare, and the document's own where
 * they are. Newtons against a perfect surface. SI.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { type Fault, type FaultDrag, faultDrag } from './defect-drag.ts';
import { type Place, Stations } from './section-station.ts';
import type { Study } from './study.ts';
import { type SideName, TripCost } from './trip-cost.ts';

export interface FaultOptions extends Place {
  side: SideName;
  at: number; // x/c
}

/** Common faults by name; sizes as met in workshops (common practice), the film's by its source. */
export const COMMON_FAULTS = {
  pinhole: { kind: 'cavity', height: 0.001, width: 0.001 },
  filler: { kind: 'bump', height: 0.0002, width: 0.008 },
  step: { kind: 'step', height: 0.0001, width: 0.06 },
  wave: { kind: 'wave', height: 0.0003, length: 0.04, width: 0.1 },
  scratchAlong: { kind: 'cavity', height: 0.0001, width: 0.0002 },
  scratchAcross: { kind: 'groove', height: 0.0001, length: 0.0002, width: 0.05 },
} as const satisfies Record<string, Omit<Fault, 'side' | 'at' | 'wedge'>>;

/**
 * Roughness all over the part, m: texture of cloth or spray that shows through (common practice); a film of light slime,
 * as rough as 0.1 mm of sand: M. P. Schultz, Biofouling 23 (2007) 331 (from memory).
 */
export const COMMON_TEXTURES = { texture: 0.00002, film: 0.0001 } as const;

export type FaultName = keyof typeof COMMON_FAULTS | keyof typeof COMMON_TEXTURES;
export type SpeedName = 'cruise' | 'top';

export interface FaultRow {
  name: FaultName;
  height: number; // m
  width: number | null; // m across the flow; null: all over the part
  length: number | null; // m along the flow
  drag: Record<SpeedName, FaultDrag | null>; // null: no flow there
}

export interface FaultStudy {
  total: Record<SpeedName, number | null>; // N, the perfect foil
  faults: FaultRow[];
  defects: Array<Record<SpeedName, FaultDrag | null>>; // in the order of the document
}

const SPEEDS: readonly SpeedName[] = ['cruise', 'top'];
const NOSE = 0.02; // of the chord: where grains all over trip the layer first
const WEDGE = RANGES['defects.*.wedge'].default;

export function* faultStudy(design: Design, { side, at, ...place }: FaultOptions): Study<FaultStudy> {
  const costs = new Costs(design);
  const total = both((name) => costs.total(name));
  const faults: FaultRow[] = [];
  const list = Object.entries(COMMON_FAULTS) as Array<
    [keyof typeof COMMON_FAULTS, Omit<Fault, 'side' | 'at' | 'wedge'>]
  >;
  const defects: FaultStudy['defects'] = [];
  const count = list.length + (design.defects?.length ?? 0);
  for (const [name, sizes] of list) {
    const drag = both((speed) =>
      costs.of(place, speed, (cost) => faultDrag(cost, { ...sizes, side, at, wedge: WEDGE })),
    );
    faults.push({ name, height: sizes.height, width: sizes.width, length: sizes.length ?? null, drag });
    yield faults.length / count;
  }
  for (const [name, height] of Object.entries(COMMON_TEXTURES) as Array<
    [keyof typeof COMMON_TEXTURES, number]
  >) {
    const drag = both((speed) =>
      costs.of(place, speed, (cost) => textureDrag(cost, height, costs.length(place, speed))),
    );
    faults.push({ name, height, width: null, length: null, drag });
  }
  for (const defect of design.defects ?? []) {
    const fault: Fault = { ...defect, side: defect.side ?? 'upper', wedge: defect.wedge ?? WEDGE };
    const where: Place = { part: defect.on, eta: defect.eta };
    defects.push(both((speed) => costs.of(where, speed, (cost) => faultDrag(cost, fault))));
    yield (list.length + defects.length) / count;
  }
  return { total, faults, defects };
}

/** All over a part that is everywhere like the section looked at; null where the flow does not settle. */
function textureDrag(cost: TripCost, height: number, length: number): FaultDrag | null {
  const limits = (['upper', 'lower'] as const).map(
    (side) => cost.criticalBump(side, NOSE) ?? Number.POSITIVE_INFINITY,
  );
  const critical = Math.min(...limits);
  const isTripped = height >= critical;
  const cd = isTripped ? cost.textured(height, NOSE, NOSE) : cost.textured(height, 1, 1);
  if (cd === null) return null;
  const drag = cd * cost.station.pressure * cost.station.chord * length;
  const layer = isTripped ? 'tripped' : 'calm';
  return { low: drag, high: drag, critical: Number.isFinite(critical) ? critical : null, layer };
}

/** Costs of trips by place and speed, each section solved once. */
class Costs {
  private readonly stations: Stations;
  private readonly known = new Map<string, TripCost | null>();

  constructor(private readonly design: Design) {
    this.stations = new Stations(design);
  }

  total(speed: SpeedName): number | null {
    try {
      return this.stations.running(this.design.brief.speeds[speed]).totalDrag;
    } catch {
      return null;
    }
  }

  length({ part }: Place, speed: SpeedName): number {
    return this.stations.length(part, this.design.brief.speeds[speed]);
  }

  /** Null where the part is missing, the foil does not run level or no flow settles. */
  of<Value>(place: Place, speed: SpeedName, read: (cost: TripCost) => Value): Value | null {
    const key = `${place.part} ${place.eta} ${speed}`;
    let cost = this.known.get(key);
    if (cost === undefined) {
      try {
        const station = this.stations.at(place, this.design.brief.speeds[speed]);
        cost = new TripCost(station);
      } catch {
        cost = null;
      }
      this.known.set(key, cost);
    }
    return cost && read(cost);
  }
}

function both<Value>(read: (speed: SpeedName) => Value): Record<SpeedName, Value> {
  const [cruise, top] = SPEEDS.map(read) as [Value, Value];
  return { cruise, top };
}
