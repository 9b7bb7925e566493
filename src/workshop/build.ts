/** Every file for the workshop: what is asked for in, names and bytes out. Only the PDF library is loaded when needed. */
import type { Design } from '../solver/design/document.ts';
import { type MeshOptions, meshSkin, type Side } from '../solver/geometry/mesh.ts';
import { type Draw, partingOf } from '../solver/geometry/parting.ts';
import { type Skin, skinOf } from '../solver/geometry/skin.ts';
import type { Mesh } from '../solver/geometry/triangles.ts';
import type { Report } from '../solver/report.ts';
import { partMasses, plyList } from '../solver/studies/mass.ts';
import { choicesOf } from './choices.ts';
import { stationsCsv } from './csv.ts';
import type { Drawing } from './drawing.ts';
import { type Remark, remarkOf } from './fingerprint.ts';
import { mouldsOf } from './mould.ts';
import type { Paper } from './paper.ts';
import { fuselageSide, strutSection } from './part-drawings.ts';
import { droopJig, projectedPlan, unrolledPlan } from './plan-drawings.ts';
import { plySheet } from './ply-drawings.ts';
import { ribSheet } from './rib-drawings.ts';
import { massEntries, type Sheet, sheetOf } from './sheet.ts';
import { fuselageBody, strutBody } from './solid-parts.ts';
import { stationTable } from './stations.ts';
import { stlOf } from './stl.ts';
import { svgOf } from './svg.ts';
import type { Foil } from './three-views.ts';

export const KINDS = ['csv', 'svg', 'dxf', 'stl', 'pdf'] as const;
export const PARTS = ['wing', 'stabilizer', 'strut', 'fuselage', 'mould'] as const;
export type Kind = (typeof KINDS)[number];
export type Part = (typeof PARTS)[number];

export interface Order {
  kind: Kind;
  part: Part | null; // null: every part that the kind usually holds
  date: Date;
  paper: Paper;
  side: Side | 'halves'; // of solids
  draw: Draw; // of moulds
  report: Report | null; // for the printed sheet
}

export const USUAL_ORDER = {
  part: null,
  paper: 'a4',
  side: 'whole',
  draw: 'fitted',
  report: null,
  masses: [],
} as const;

export interface BuildFile {
  name: string;
  bytes: Uint8Array;
}

export type Progress = (share: number) => void;

/** Throws an Error with a sentence when the design has no such part, or the kind cannot show it. */
export async function buildFiles(
  design: Design,
  order: Order,
  progress: Progress = () => {},
): Promise<BuildFile[]> {
  const workshop = openWorkshop(design, order);
  const stem = fileStem(design.name);
  const files = await MAKERS[order.kind](workshop, progress);
  if (files.length === 0) throw new Error(`part: found ${order.part}, of which there is no ${order.kind}`);
  progress(1);
  return files.map(({ name, bytes }) => ({ name: `${stem}-${name}`, bytes }));
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

interface Workshop {
  design: Design;
  order: Order;
  foil: Foil;
  surfaces: Array<{ part: 'wing' | 'stabilizer'; skin: Skin }>; // those asked for
  remark: Remark;
}

export function foilOf(design: Design): Foil {
  const { leastEdge } = choicesOf(design);
  const { wing, stabilizer } = design;
  return {
    wing: skinOf(wing, undefined, leastEdge),
    stabilizer:
      stabilizer && skinOf(stabilizer, { arm: stabilizer.arm, height: stabilizer.height }, leastEdge),
  };
}

function openWorkshop(design: Design, order: Order): Workshop {
  const { part } = order;
  if (part === 'stabilizer' || part === 'strut' || part === 'fuselage')
    if (!design[part]) throw new Error(`part: found ${part}, which this design does not have`);
  const foil = foilOf(design);
  const surfaces: Workshop['surfaces'] = [];
  if (part === null || part === 'wing' || part === 'mould') surfaces.push({ part: 'wing', skin: foil.wing });
  if (foil.stabilizer && (part === null || part === 'stabilizer' || part === 'mould'))
    surfaces.push({ part: 'stabilizer', skin: foil.stabilizer });
  return { design, order, foil, surfaces, remark: remarkOf(design, order.date) };
}

type Maker = (workshop: Workshop, progress: Progress) => Promise<BuildFile[]>;

const MAKERS: Readonly<Record<Kind, Maker>> = {
  csv: makeCsv,
  svg: async (workshop, progress) => {
    const { remark } = workshop.remark;
    return makeDrawings(workshop, progress, 'svg', (drawing) => svgOf(drawing, remark));
  },
  dxf: async (workshop, progress) => {
    const { dxfOf } = await import('./dxf.ts');
    return makeDrawings(workshop, progress, 'dxf', dxfOf);
  },
  stl: makeSolids,
  pdf: makePdf,
};

async function makeCsv({ design, order, surfaces }: Workshop): Promise<BuildFile[]> {
  if (order.part === 'mould') return [];
  const { spacing } = choicesOf(design);
  return surfaces.map(({ part, skin }) =>
    textFile(`${part}-stations.csv`, stationsCsv(stationTable(skin, spacing))),
  );
}

/** Every drawing of the parts asked for. */
export function drawingsOf({ design, order, foil, surfaces }: Workshop): Drawing[] {
  const { part: asked } = order;
  if (asked === 'mould') return [];
  const choices = choicesOf(design);
  const drawings = surfaces.flatMap(({ part, skin }) => {
    const subject = { part, skin, spacing: choices.spacing };
    const plies = plySheet(skin, plyList(design, part, skin));
    return [
      unrolledPlan(subject),
      projectedPlan(subject),
      droopJig(subject),
      ribSheet({ part, skin, choices }),
      ...(plies ? [plies] : []),
    ];
  });
  if (design.strut && (asked === null || asked === 'strut')) drawings.push(strutSection(design.strut));
  const fuselage = asked === null || asked === 'fuselage' ? fuselageSide(design, foil.stabilizer) : null;
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
    return textFile(`${drawing.name}.${ending}`, write(drawing));
  });
}

async function makeSolids(
  { design, order, foil, surfaces, remark }: Workshop,
  progress: Progress,
): Promise<BuildFile[]> {
  const { part: asked, side } = order;
  const { tolerance } = choicesOf(design);
  const file = (name: string, mesh: Mesh): BuildFile => ({
    name: `${name}.stl`,
    bytes: stlOf(mesh, remark.remark),
  });
  if (asked === 'strut') return [file('strut', strutBody(design.strut!))];
  if (asked === 'fuselage') return [file('fuselage', fuselageBody(design, foil.stabilizer)!)];
  const files: BuildFile[] = [];
  const sides: Side[] = side === 'halves' ? ['starboard', 'port'] : [side];
  for (const [k, { part, skin }] of surfaces.entries()) {
    const share = (inner: number) => progress((k + inner) / surfaces.length);
    if (asked === 'mould')
      for (const { name, mesh } of run(mouldsOf(skin, tolerance, partingOf(skin, order.draw)), share))
        files.push(file(`${part}-mould-${name}`, mesh));
    else
      for (const [j, each] of sides.entries()) {
        const options: MeshOptions = { tolerance, side: each };
        const mesh = run(meshSkin(skin, options), (inner) => share((j + inner) / sides.length));
        files.push(file(each === 'whole' ? part : `${part}-${each}`, mesh));
      }
  }
  return files;
}

/** The printed sheet where everything is asked for, and the templates. */
async function makePdf(workshop: Workshop, progress: Progress): Promise<BuildFile[]> {
  const { design, order, foil, remark } = workshop;
  const drawings = drawingsOf(workshop);
  if (drawings.length === 0) return [];
  const { pdfTemplates } = await import('./pdf-templates.ts');
  const templates = await pdfTemplates(drawings, order.paper, remark, progress);
  const files = [{ name: `templates-${order.paper}.pdf`, bytes: templates }];
  if (order.part !== null) return files;
  const { pdfSheet } = await import('./pdf-sheet.ts');
  const sheet = wholeSheet(design, foil, order.report, order.date);
  return [{ name: 'sheet.pdf', bytes: await pdfSheet(sheet, order.paper, remark) }, ...files];
}

/** The printed sheet of a design, masses included. */
export function wholeSheet(design: Design, foil: Foil, report: Report | null, date: Date): Sheet {
  return sheetOf(design, foil, report, massEntries(partMasses(design, foil.wing, foil.stabilizer)), date);
}

function textFile(name: string, text: string): BuildFile {
  return { name, bytes: new TextEncoder().encode(text) };
}

function run<Result>(work: Generator<number, Result, void>, progress: Progress): Result {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    progress(step.value);
  }
}
