/** What the screen shows of the workshop: the sheet, the findings, stations, plies, and the wing as built. */
import type { Design } from '../solver/design/document.ts';
import type { Draw } from '../solver/geometry/parting.ts';
import type { Skin } from '../solver/geometry/skin.ts';
import { type AsBuilt, asBuilt } from '../solver/studies/as-built.ts';
import { buildChecks, type Finding } from '../solver/studies/build-checks.ts';
import { type PartMass, partMasses, plyList } from '../solver/studies/mass.ts';
import { wholeSheet } from './build.ts';
import { choicesOf } from './choices.ts';
import { openWorkshop, USUAL_ORDER } from './order.ts';
import type { Sheet } from './sheet.ts';
import { type Station, stationPlaces, stationTable } from './stations.ts';

type SurfaceName = 'wing' | 'stabilizer';

export interface PlySummary {
  part: SurfaceName;
  count: number; // a side at most
  cloth: number; // m2 of both sides
  fibre: number; // kg
  bareEdge: { distance: number; width: number } | null; // m: widest strip at the trailing edge that no ply reaches
}

export interface Overview {
  sheet: Sheet;
  findings: Finding[];
  stations: Array<{ part: SurfaceName; rows: Station[] }>;
  masses: PartMass[];
  plies: PlySummary[];
  asBuilt: AsBuilt | string; // or why there is none
}

export interface OverviewOptions {
  draw: Draw;
  fliesAsDrawn: boolean; // the shape to build instead of the drawn one
  date: string; // 2027-03-21
}

export function workshopOverview(design: Design, { draw, fliesAsDrawn, date }: OverviewOptions): Overview {
  const order = { ...USUAL_ORDER, kind: 'pdf', draw, fliesAsDrawn, date: new Date(date) } as const;
  const workshop = openWorkshop(design, order);
  const { shape, foil, surfaces } = workshop;
  const { spacing } = choicesOf(shape);
  return {
    sheet: wholeSheet(workshop),
    findings: buildChecks(shape, foil, { draw }),
    stations: surfaces.map(({ part, skin }) => ({ part, rows: stationTable(skin, spacing) })),
    masses: partMasses(shape, foil.wing, foil.stabilizer),
    plies: surfaces.map(({ part, skin }) => plySummary(shape, part, skin)),
    asBuilt: tryAsBuilt(shape, stationPlaces(foil.wing, spacing)),
  };
}

function plySummary(shape: Design, part: SurfaceName, skin: Skin): PlySummary {
  const { plies, cloth, fibre, bareEdge } = plyList(shape, part, skin);
  const bare = bareEdge && { distance: bareEdge.eta * skin.surface.halfLength, width: bareEdge.width };
  return { part, count: plies.length, cloth, fibre, bareEdge: bare };
}

function tryAsBuilt(design: Design, stations: readonly number[]): AsBuilt | string {
  try {
    return asBuilt(design, { stations });
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
