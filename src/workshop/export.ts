/** One file to hand out for what was asked: the file itself, or an archive of several. */
import { zipSync } from 'fflate';
import type { Design } from '../solver/design/document.ts';
import { buildFiles, orderStem } from './build.ts';
import type { BuildFile, Order, Progress } from './order.ts';

export async function exportFile(design: Design, order: Order, progress: Progress): Promise<BuildFile> {
  const files = await buildFiles(design, order, progress);
  if (files.length === 1) return files[0]!;
  const name = `${orderStem(design, order)}-${order.part === 'mould' ? 'mould' : order.kind}.zip`;
  return { name, bytes: zipSync(Object.fromEntries(files.map((file) => [file.name, file.bytes]))) };
}
