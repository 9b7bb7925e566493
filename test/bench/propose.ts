/**
 * Times a proposal with ten free quantities and a front, each demo, in one row on one thread; the page spreads the starts and
 * the chains over all cores. Prints the spread of twenty scattered starts too.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { Design } from '../../src/solver/design/document.ts';
import { frontChain, frontEnds, frontOf } from '../../src/solver/studies/propose/front.ts';
import { propose } from '../../src/solver/studies/propose/proposal.ts';
import { searchFrom } from '../../src/solver/studies/propose/search.ts';
import { finish } from '../../src/solver/studies/study.ts';
import { printer, sayYardstick, spreadOf, timed } from './yardstick.ts';

const STARTS = 20;
const SEEDS = [1, 2, 3];
const demos = new URL('../../web/demos/', import.meta.url);

export function bench(): void {
  const { line, unit } = printer(0);
  for (const file of readdirSync(demos)) {
    const design = JSON.parse(readFileSync(new URL(file, demos), 'utf8')) as Design;
    let wings = 0;
    let moved = 0;
    const whole = SEEDS.map((seed) =>
      timed(() => {
        const proposal = finish(propose(design, { seed }));
        wings = proposal.evaluations;
        if (proposal.outcome === 'found')
          moved = proposal.table.quantities.filter(({ range }) => range !== null).length;
      }),
    );
    line(
      `proposal of ${file}, ${moved} free quantities, ${wings} wings (goal: below 30 s on two cores)`,
      spreadOf(whole),
    );
    let points = 0;
    const front = timed(() => {
      const ends = finish(frontEnds(design, { near: design, variant: 0 }));
      if (!ends) return;
      const chains = ends.chains.map((chain) => finish(frontChain(design, chain)));
      points = frontOf(ends, chains).points.length;
    });
    line(`front of ${file}, ${points} points (goal: below 180 s on two cores)`, front);
    const ends = Array.from({ length: STARTS }, (_, k) =>
      finish(searchFrom(design, { seed: 100, start: k + 1 })),
    );
    const drags = ends.flatMap((end) => (end?.isHeld ? [end.drag] : []));
    const [least, most] = [Math.min(...drags), Math.max(...drags)];
    console.log(
      `${drags.length} of ${STARTS} scattered starts of ${file} hold every limit: drag ${least.toFixed(3)} N, spread ${((100 * (most - least)) / least).toFixed(3)} % (goal: within 1 %)`,
    );
  }
  sayYardstick(unit);
}
