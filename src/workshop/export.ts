/** One file to hand out for what was asked: the file itself, or an archive of several. */
import { zipSync } from 'fflate';
import type { Design } from '../solver/design/document.ts';
import { builtDesign } from '../solver/studies/built-shape.ts';
import { type BuildFile, buildFiles, fileStem, type Order, type Progress } from './build.ts';

export interface ExportOrder extends Order {
  fliesAsDrawn: boolean; // the shape to build, so that loads bring it to the drawn one
}

export async function exportFile(design: Design, order: ExportOrder, progress: Progress): Promise<BuildFile> {
  const shape = order.fliesAsDrawn ? builtDesign(design) : design;
  const files = await buildFiles(shape, order, progress);
  if (files.length === 1) return files[0]!;
  const name = `${fileStem(design.name)}-${order.part === 'mould' ? 'mould' : order.kind}.zip`;
  return { name, bytes: zipSync(Object.fromEntries(files.map((file) => [file.name, file.bytes]))) };
}
