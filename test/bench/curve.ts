/** Times what Curve asks for on every demo: the sweep with its prices, the method's band, the map and its longest step. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { curveStudy } from '../../src/solver/studies/curve-study.ts';
import { droopMap } from '../../src/solver/studies/droop-map.ts';
import { priceBand } from '../../src/solver/studies/price-band.ts';
import { compareSections } from '../../src/solver/studies/section-choice.ts';
import { finish, type Study } from '../../src/solver/studies/study.ts';
import { keep, measure, printer, sayYardstick, spreadOf } from './yardstick.ts';

const RUNS = 7;
const demos = new URL('../../web/demos/', import.meta.url);

/** Longest time between two yields, ms: how long a cancel may have to wait. */
function longestStep(study: Study<unknown>): number {
  let longest = 0;
  for (;;) {
    const start = performance.now();
    const { done } = study.next();
    longest = Math.max(longest, performance.now() - start);
    if (done) return longest;
  }
}

export function bench(): void {
  const { line, unit } = printer(0);
  for (const file of readdirSync(demos)) {
    const design = JSON.parse(readFileSync(new URL(file, demos), 'utf8')) as Design;
    const timed = (name: string, make: (fresh: Design) => Study<unknown>) =>
      line(
        `${file}, ${name}`,
        // A new design each time, as during a drag: nothing kept for the old one helps.
        measure(() => void finish(make(structuredClone(design))), RUNS),
      );
    const sweep = finish(curveStudy(design)).sweep;
    keep(sweep.columns.totalDrag.at(-1)!);
    for (const kept of ['unrolled', 'tipToTip', 'projectedArea'] as const)
      timed(`41 droops, ${kept} kept (goal: below 250 ms)`, (fresh) => curveStudy(fresh, { kept }));
    timed('the method’s band', (fresh) => priceBand(fresh, { to: sweep.largest }));
    timed('three sections', (fresh) => compareSections(fresh, { codes: ['1411', '2411', '4411'] }));
    if (!design.stabilizer) continue;
    for (const by of ['area', 'arm', 'droop'] as const)
      timed(`map of 41 by 31 by ${by} (goal: below 3000 ms)`, (fresh) => droopMap(fresh, { measure: by }));
    const steps = (name: string, make: () => Study<unknown>) =>
      line(`${file}, longest step of the ${name}`, spreadOf([1, 2, 3].map(() => longestStep(make()))));
    steps('map', () => droopMap(design, { measure: 'area' }));
    steps('sweep', () => curveStudy(design));
    steps('band', () => priceBand(design, { to: sweep.largest }));
    steps('sections', () => compareSections(design, { codes: ['1411', '2411', '4411'] }));
  }
  sayYardstick(unit);
}
