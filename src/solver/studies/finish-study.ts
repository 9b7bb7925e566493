/**
 * What a finish costs over the whole foil, against a perfect surface, at cruise and at top speed. Grains as high as the
 * finish leaves them trip the layer where a lone bump of their height would (A. L. Braslow and E. C. Knox, NACA TN 4363,
 * 1958, found the same limit for strips of grains), and behind transition they add friction like sand (rough-wall.ts). A
 * few sections of each part stand for the rest. SI.
 */
import type { Design } from '../design/document.ts';
import { RANGES } from '../design/ranges.ts';
import { turbulentLength } from '../forces/profile.ts';
import { grainOf } from '../section/grit.ts';
import { criticalBump, wallFlow } from '../section/skin.ts';
import { type FoilPart, Stations } from './section-station.ts';
import type { Study } from './study.ts';
import { type SideName, TripCost } from './trip-cost.ts';

export interface FinishDrag {
  extra: number; // N
  share: number; // of the perfect foil's whole drag
  isTripping: boolean; // somewhere the layer turns sooner
  parts: Record<FoilPart, number>; // N
}

export interface FinishRow {
  name: string; // "P400", or "as chosen"
  height: number; // m
  cruise: FinishDrag | null; // null: a flow did not settle, or the foil does not run level
  top: FinishDrag | null;
}

export interface FinishStudy {
  share: number; // height over median grain
  rows: FinishRow[];
  chosen: FinishRow | null; // the document's finish
}

export const SHOWN_GRADES = [80, 120, 180, 240, 320, 400, 600, 1000, 2000] as const;

/** Nodes and weights of Gauss and Legendre on [0, 1]: Abramowitz and Stegun, table 25.4. */
type Nodes = ReadonlyArray<readonly [eta: number, weight: number]>;
const NODES: Record<'wing' | 'stabilizer', Nodes> = {
  wing: [
    [0.1127016653792583, 5 / 18],
    [0.5, 8 / 18],
    [0.8872983346207417, 5 / 18],
  ],
  stabilizer: [
    [0.2113248654051871, 0.5],
    [0.7886751345948129, 0.5],
  ],
};
const AHEAD = 0.005; // of the chord: nearer the nose a layer is not tripped

const PARTS: readonly FoilPart[] = ['wing', 'stabilizer', 'strut'];

/** One place in each part of the strut: the one left alone, and the one that spray and waves keep turbulent. */
function strutNodes(stations: Stations, speed: number): Nodes {
  const { depth } = stations.running(speed);
  const upper = depth === null ? 0 : turbulentLength(stations.design.strut!, depth) / depth;
  const nodes = [
    [0.5 * (1 - upper), 1 - upper],
    [1 - 0.5 * upper, upper],
  ] as const;
  return nodes.filter(([, weight]) => weight > 0);
}

/** Height of the roughness a document's finish leaves, m; null where it names none. */
export function finishHeight({ finish }: Design): number | null {
  if (!finish) return null;
  if (finish.roughness !== undefined) return finish.roughness;
  const share = finish.grainShare ?? RANGES['finish.grainShare'].default;
  return finish.grade === undefined ? null : share * grainOf(finish.grade);
}

export function* finishStudy(design: Design): Study<FinishStudy> {
  const stations = new Stations(design);
  const share = design.finish?.grainShare ?? RANGES['finish.grainShare'].default;
  const wanted = SHOWN_GRADES.map((grade) => ({ name: `P${grade}`, height: share * grainOf(grade) }));
  const own = finishHeight(design);
  if (own !== null) wanted.push({ name: 'as chosen', height: own });
  const rows: FinishRow[] = wanted.map((each) => ({ ...each, cruise: null, top: null }));
  for (const name of ['cruise', 'top'] as const) {
    const foil = attempt(() => new FoilSkin(stations, design.brief.speeds[name]));
    for (const [k, row] of rows.entries()) {
      row[name] = foil?.drag(row.height) ?? null;
      yield (name === 'top' ? 0.5 : 0) + (0.5 * (k + 1)) / rows.length;
    }
  }
  const chosen = own === null ? null : rows.pop()!;
  return { share, rows, chosen };
}

/** The foil's sections left alone, at one speed. */
class FoilSkin {
  private readonly sections: Section[] = [];
  private readonly total: number;

  constructor(stations: Stations, speed: number) {
    this.total = stations.running(speed).totalDrag;
    for (const part of PARTS) {
      if (!stations.design[part]) continue;
      const length = stations.length(part, speed);
      for (const [eta, weight] of part === 'strut' ? strutNodes(stations, speed) : NODES[part]) {
        const station = stations.at({ part, eta }, speed);
        const area = weight * length * station.chord;
        this.sections.push(new Section(new TripCost(station), area));
      }
    }
  }

  drag(height: number): FinishDrag | null {
    const parts = { wing: 0, stabilizer: 0, strut: 0 };
    let isTripping = false;
    for (const section of this.sections) {
      const found = section.drag(height);
      if (!found) return null;
      parts[section.part] += found.extra;
      isTripping ||= found.isTripped;
    }
    const extra = parts.wing + parts.stabilizer + parts.strut;
    return { extra, share: extra / this.total, isTripping, parts };
  }
}

class Section {
  readonly part: FoilPart;
  private readonly limits: Record<SideName, Array<[x: number, height: number]>>;

  constructor(
    private readonly cost: TripCost,
    private readonly area: number, // m2
  ) {
    this.part = cost.station.part;
    this.limits = { upper: this.bumps('upper'), lower: this.bumps('lower') };
  }

  drag(height: number): { extra: number; isTripped: boolean } | null {
    const upper = this.tripAt('upper', height);
    const lower = this.tripAt('lower', height);
    const extra = this.cost.textured(height, upper, lower);
    if (extra === null) return null;
    return { extra: extra * this.cost.station.pressure * this.area, isTripped: upper < 1 || lower < 1 };
  }

  private tripAt(side: SideName, height: number): number {
    return this.limits[side].find(([, limit]) => height >= limit)?.[0] ?? 1;
  }

  private bumps(side: SideName): Array<[number, number]> {
    const { state } = this.cost.read(side, AHEAD);
    const { speed, viscosity } = this.cost.station;
    const nose = state.x.indexOf(Math.min(...state.x));
    return Array.from(state.x.keys())
      .filter((k) => k > nose && state.x[k]! >= AHEAD && !state.isTurbulent[k])
      .map((k) => [
        state.x[k]!,
        criticalBump(wallFlow(Math.max(1e-3, state.speed[k]!) * speed, state.friction[k]!, viscosity)),
      ]);
  }
}

function attempt<Value>(work: () => Value): Value | null {
  try {
    return work();
  } catch {
    return null;
  }
}
