/** What the screen shows of the workshop: the sheet, the findings, the plies, and the wing as built. */
import type { Design } from '../solver/design/document.ts';
import type { Draw } from '../solver/geometry/parting.ts';
import { type AsBuilt, asBuilt } from '../solver/studies/as-built.ts';
import { buildChecks, type Finding } from '../solver/studies/build-checks.ts';
import { plyList } from '../solver/studies/mass.ts';
import { foilOf, wholeSheet } from './build.ts';
import type { Sheet } from './sheet.ts';

export interface Overview {
  sheet: Sheet; // without the figures of the report
  findings: Finding[];
  plies: Array<{ part: string; count: number; cloth: number; fibre: number; bareEdge: number | null }>; // m2, kg, m
  asBuilt: AsBuilt | string; // or why there is none
}

export function workshopOverview(design: Design, { draw, date }: { draw: Draw; date: string }): Overview {
  const foil = foilOf(design);
  const parts = [['wing', foil.wing] as const, ['stabilizer', foil.stabilizer] as const];
  return {
    sheet: wholeSheet(design, foil, null, new Date(date)),
    findings: buildChecks(design, foil, { draw }),
    plies: parts.flatMap(([part, skin]) => {
      if (!skin) return [];
      const { plies, cloth, fibre, bareEdge } = plyList(design, part, skin);
      return [{ part, count: plies.length, cloth, fibre, bareEdge: bareEdge?.width ?? null }];
    }),
    asBuilt: tryAsBuilt(design),
  };
}

function tryAsBuilt(design: Design): AsBuilt | string {
  try {
    return asBuilt(design, { stations: [0, 0.25, 0.5, 0.75, 1] });
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
