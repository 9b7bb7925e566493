/**
 * Times the flying shape of every demo at the default resolution, and what Stiffness shows first. Prints medians and, for busy
 * machines, the best of the runs.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { craftOf } from '../../src/solver/geometry/craft.ts';
import { conditionOf, resolutionOf } from '../../src/solver/studies/condition.ts';
import { flyFoil } from '../../src/solver/studies/flying-foil.ts';
import { flyingShape } from '../../src/solver/studies/flying-shape.ts';
import { stiffness } from '../../src/solver/studies/stiffness.ts';
import { FlowPool } from '../../src/solver/vortex/flow.ts';

const RUNS = 40;
const demos = new URL('../../web/demos/', import.meta.url);

export function bench(): void {
  for (const file of readdirSync(demos)) {
    const design = JSON.parse(readFileSync(new URL(file, demos), 'utf8')) as Design;
    const pool = new FlowPool();
    let steps = 0;
    const coupled = timesOf(design, (fresh) => {
      const condition = conditionOf(fresh.brief, {});
      const resolution = resolutionOf({});
      const craft = craftOf(fresh, condition.depth, resolution);
      steps = flyFoil(pool, fresh, condition, resolution, 'angle', craft).steps;
    });
    const shape = timesOf(design, (fresh) => void flyingShape(fresh));
    const all = timesOf(design, (fresh) => void stiffness(fresh));
    console.log(
      [
        `flying foil of ${file}: ${written(coupled)} in ${steps} steps (goal: below 30 ms)`,
        `  with its figures and the drawn foil's: ${written(shape)}`,
        `  all that Stiffness shows first: ${written(all)}`,
      ].join('\n'),
    );
  }
}

interface Times {
  median: number;
  least: number;
}

const written = ({ median, least }: Times) => `${median.toFixed(1)} ms, at best ${least.toFixed(1)}`;

/** A new design each time, as during a drag; the first fifth of the runs warms up and is not counted. */
function timesOf(design: Design, run: (fresh: Design) => void): Times {
  const times: number[] = [];
  for (let k = 0; k < 1.2 * RUNS; k++) {
    const fresh = structuredClone(design);
    const start = performance.now();
    run(fresh);
    if (k >= 0.2 * RUNS) times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { median: times[times.length >> 1]!, least: times[0]! };
}
