/** Solids and moulds of an order as STL files. */
import { fuselageBody, strutBody } from '../solver/geometry/bodies.ts';
import { type MeshOptions, meshSkin, type Side } from '../solver/geometry/mesh.ts';
import type { Mesh } from '../solver/geometry/triangles.ts';
import { choicesOf } from './choices.ts';
import { mouldsOf } from './mould.ts';
import type { BuildFile, Progress, Workshop } from './order.ts';
import { stlOf } from './stl.ts';

export async function makeSolids(workshop: Workshop, progress: Progress): Promise<BuildFile[]> {
  const { shape, order, foil, surfaces, mark } = workshop;
  const file = (name: string, mesh: Mesh): BuildFile => ({
    name: `${name}.stl`,
    bytes: stlOf(mesh, mark.remark),
  });
  if (order.part === 'strut') return [file('strut', strutBody(shape.strut!))];
  if (order.part === 'fuselage') return [file('fuselage', fuselageBody(shape, foil.stabilizer)!)];
  const { tolerance } = choicesOf(shape);
  const sides: Side[] = order.side === 'halves' ? ['starboard', 'port'] : [order.side];
  const files: BuildFile[] = [];
  for (const [k, { part, skin }] of surfaces.entries()) {
    const share = (inner: number) => progress((k + inner) / surfaces.length);
    if (order.part === 'mould')
      for (const { name, mesh } of run(mouldsOf(skin, tolerance, order.draw), share))
        files.push(file(`${part}-mould-${name}`, mesh));
    else
      for (const [j, side] of sides.entries()) {
        const options: MeshOptions = { tolerance, side };
        const mesh = run(meshSkin(skin, options), (inner) => share((j + inner) / sides.length));
        files.push(file(side === 'whole' ? part : `${part}-${side}`, mesh));
      }
  }
  return files;
}

function run<Result>(work: Generator<number, Result, void>, progress: Progress): Result {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    progress(step.value);
  }
}
