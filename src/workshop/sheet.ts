/** What stands on the printed sheet, the same on paper from the browser and in the PDF. Workshop units. */

import { CAUTION } from '../solver/design/caution.ts';
import type { Design } from '../solver/design/document.ts';
import { choicesOf } from './choices.ts';
import { briefEntries, type Entry } from './entries.ts';
import type { Mark } from './fingerprint.ts';
import { COLUMNS, cellText, type Station, stationTable } from './stations.ts';
import { type Foil, threeViews, type View } from './three-views.ts';

export interface Table {
  title: string;
  head: string[];
  rows: string[][];
}

export interface Sheet {
  name: string;
  fingerprint: string;
  date: string; // 2027-03-21
  shape: string; // which shape the measures are of
  brief: Entry[];
  figures: Entry[];
  views: [View, View, View];
  tables: Table[];
  masses: Entry[]; // of the parts, where they are known
  notes: string; // the builder's own
  caution: string;
}

const AS_DRAWN = 'Stations and views are of the shape as drawn.';
const TO_BUILD =
  'Stations and views are of the shape to build: its load at cruise bends it to the drawn one, whose figures these are.';

export function sheetOf(
  design: Design,
  foil: Foil,
  figures: readonly Entry[],
  masses: readonly Entry[],
  mark: Mark,
): Sheet {
  const { spacing } = choicesOf(design);
  const tables = [tableOf('Wing', stationTable(foil.wing, spacing))];
  if (foil.stabilizer) tables.push(tableOf('Stabilizer', stationTable(foil.stabilizer, spacing)));
  return {
    name: design.name,
    fingerprint: mark.fingerprint,
    date: mark.day,
    shape: mark.isToBuild ? TO_BUILD : AS_DRAWN,
    brief: briefEntries(design),
    figures: [...figures],
    views: threeViews(design, foil),
    tables,
    masses: [...masses],
    notes: design.notes?.laminate ?? '',
    caution: CAUTION,
  };
}

export function tableOf(part: string, stations: readonly Station[]): Table {
  return {
    title: `${part}: stations, root to tip (offsets aft of the root's leading edge)`,
    head: COLUMNS.map(({ head, unit }) => (unit ? `${head}, ${unit}` : head)),
    rows: stations.map((station) => COLUMNS.map((column) => cellText(station, column))),
  };
}
