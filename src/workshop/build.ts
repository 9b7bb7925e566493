/** Every file for the workshop: what is asked for in, names and bytes out. Only the PDF library is loaded when needed. */
import type { Design } from '../solver/design/document.ts';
import { solve } from '../solver/solve.ts';
import { partMasses, plyList } from '../solver/studies/mass.ts';
import { choicesOf } from './choices.ts';
import { stationsCsv } from './csv.ts';
import { type Drawing, stamped } from './drawing.ts';
import { type Entry, figureEntries, massEntries } from './entries.ts';
import {
  type BuildFile,
  type Kind,
  type Order,
  openWorkshop,
  type Progress,
  type Workshop,
} from './order.ts';
import { fuselageSide, strutSection } from './part-drawings.ts';
import { droopJig, projectedPlan, unrolledPlan } from './plan-drawings.ts';
import { plySheet } from './ply-drawings.ts';
import { ribSheet } from './rib-drawings.ts';
import { type Sheet, sheetOf } from './sheet.ts';
import { makeSolids } from './solids.ts';
import { stationTable } from './stations.ts';
import { svgOf } from './svg.ts';

/** Throws an Error with a sentence when the design has no such part, or the kind cannot show it. */
export async function buildFiles(
  design: Design,
  order: Order,
  progress: Progress = () => {},
): Promise<BuildFile[]> {
  const files = await MAKERS[order.kind](openWorkshop(design, order), progress);
  if (files.length === 0) throw new Error(`part: found ${order.part}, of which there is no ${order.kind}`);
  progress(1);
  const stem = orderStem(design, order);
  return files.map(({ name, bytes }) => ({ name: `${stem}-${name}`, bytes }));
}

/** How the names of an order's files begin: the shape to build is told from the drawn one. */
export function orderStem({ name }: Design, { fliesAsDrawn }: Order): string {
  return fliesAsDrawn ? `${fileStem(name)}-to-build` : fileStem(name);
}

/** "Harbour sprint 74, curved" to "harbour-sprint-74-curved". */
export function fileStem(name: string): string {
  const stem = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  return stem || 'design';
}

type Maker = (workshop: Workshop, progress: Progress) => Promise<BuildFile[]>;

const MAKERS: Readonly<Record<Kind, Maker>> = {
  csv: makeCsv,
  svg: async (workshop, progress) =>
    makeDrawings(workshop, progress, 'svg', (drawing) => svgOf(drawing, workshop.mark.remark)),
  dxf: async (workshop, progress) => {
    const { dxfOf } = await import('./dxf.ts');
    return makeDrawings(workshop, progress, 'dxf', dxfOf);
  },
  stl: makeSolids,
  pdf: makePdf,
};

async function makeCsv({ shape, order, surfaces }: Workshop): Promise<BuildFile[]> {
  if (order.part === 'mould') return [];
  const { spacing } = choicesOf(shape);
  return surfaces.map(({ part, skin }) =>
    textFile(`${part}-stations.csv`, stationsCsv(stationTable(skin, spacing))),
  );
}

/** Every drawing of the parts asked for. */
function drawingsOf({ shape, order, foil, surfaces }: Workshop): Drawing[] {
  const { part: asked } = order;
  if (asked === 'mould') return [];
  const choices = choicesOf(shape);
  const drawings = surfaces.flatMap(({ part, skin }) => {
    const subject = { part, skin, spacing: choices.spacing };
    const plies = plySheet(skin, plyList(shape, part, skin));
    return [
      unrolledPlan(subject),
      projectedPlan(subject),
      droopJig(subject),
      ribSheet({ part, skin, choices }),
      ...(plies ? [plies] : []),
    ];
  });
  if (shape.strut && (asked === null || asked === 'strut')) drawings.push(strutSection(shape.strut));
  const fuselage = asked === null || asked === 'fuselage' ? fuselageSide(shape, foil.stabilizer) : null;
  return fuselage ? [...drawings, fuselage] : drawings;
}

function makeDrawings(
  workshop: Workshop,
  progress: Progress,
  ending: string,
  write: (drawing: Drawing) => string,
): BuildFile[] {
  const drawings = drawingsOf(workshop);
  return drawings.map((drawing, k) => {
    progress(k / drawings.length);
    return textFile(`${drawing.name}.${ending}`, write(stamped(drawing, workshop.mark.remark)));
  });
}

/** The printed sheet where everything is asked for, and the templates. */
async function makePdf(workshop: Workshop, progress: Progress): Promise<BuildFile[]> {
  const { order, mark } = workshop;
  const drawings = drawingsOf(workshop);
  if (drawings.length === 0) return [];
  const { pdfTemplates } = await import('./pdf-templates.ts');
  const templates = await pdfTemplates(drawings, order.paper, mark, progress);
  const files = [{ name: `templates-${order.paper}.pdf`, bytes: templates }];
  if (order.part !== null) return files;
  const { pdfSheet } = await import('./pdf-sheet.ts');
  return [{ name: 'sheet.pdf', bytes: await pdfSheet(wholeSheet(workshop), order.paper, mark) }, ...files];
}

/** Headline figures of the design as drawn, which is how it flies; or why there are none. */
function flyingFigures(design: Design): Entry[] {
  try {
    return figureEntries(design, solve(design, { neutralDroop: false }));
  } catch (error) {
    return [['None', error instanceof Error ? error.message : String(error)]];
  }
}

/** The printed sheet of an order, masses included. */
export function wholeSheet({ design, shape, foil, mark }: Workshop): Sheet {
  const masses = massEntries(partMasses(shape, foil.wing, foil.stabilizer));
  return sheetOf(shape, foil, flyingFigures(design), masses, mark);
}

function textFile(name: string, text: string): BuildFile {
  return { name, bytes: new TextEncoder().encode(text) };
}
