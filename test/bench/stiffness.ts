/**
 * Times the whole coupled flying solve of every demo at the default resolution (goal: below 30 ms), the flying shape with
 * its figures, and all that Stiffness shows first. Run by `npm run bench`; prints medians in milliseconds.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { conditionOf, resolutionOf } from '../../src/solver/studies/condition.ts';
import { flyFoil } from '../../src/solver/studies/flying-foil.ts';
import { flyingShape } from '../../src/solver/studies/flying-shape.ts';
import { stiffness } from '../../src/solver/studies/stiffness.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';
import { measure, printer, sayYardstick } from './yardstick.ts';

const RUNS = 40;
const demos = new URL('../../web/demos/', import.meta.url);

export function bench(): void {
  const { line, unit } = printer(1);
  for (const file of readdirSync(demos)) {
    const design = JSON.parse(readFileSync(new URL(file, demos), 'utf8')) as Design;
    // A new design each time, as during a drag: nothing kept for the old one helps.
    const each = (run: (fresh: Design) => void) => measure(() => run(structuredClone(design)), RUNS);
    const pool = new FlowPool();
    let steps = 0;
    const coupled = each((fresh) => {
      steps = flyFoil(pool, fresh, conditionOf(fresh.brief, {}), resolutionOf({})).steps;
    });
    line(`flying foil of ${file} in ${steps} steps`, coupled);
    line(
      '  with the figures of both shapes',
      each((fresh) => void flyingShape(fresh)),
    );
    line(
      '  all that Stiffness shows first',
      each((fresh) => void stiffness(fresh)),
    );
  }
  sayYardstick(unit);
}
