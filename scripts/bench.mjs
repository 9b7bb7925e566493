// Runs every bench in test/bench, then those of the page: frame, map, page and proposal. Names on the command
// line choose some of them:
// `npm run bench -- solve frame`. Figures are medians with a tenth of the runs either way, beside their ratio to a
// yardstick timed in the same run.
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { benchFrame } from './bench-frame.mjs';
import { benchMap } from './bench-map.mjs';
import { benchPage, pageLines } from './bench-page.mjs';
import { benchProposal } from './bench-proposal.mjs';
import { importBundled, root } from './bundle.mjs';
import { watchStolen } from './stolen.mjs';

const FIRST = 'solve'; // its first line is the time of a full solve
const wanted = process.argv.slice(2);
const isWanted = (name) => wanted.length === 0 || wanted.includes(name);

const benches = readdirSync(join(root, 'test', 'bench'))
  .map((file) => basename(file, '.ts'))
  .filter((name) => name !== 'yardstick')
  .sort((one, other) => Number(other === FIRST) - Number(one === FIRST) || one.localeCompare(other));
const IN_BROWSER = ['frame', 'map', 'page', 'proposal'];
const unknown = wanted.filter((name) => !IN_BROWSER.includes(name) && !benches.includes(name));
if (unknown.length > 0)
  throw new Error(
    `no bench is called ${unknown.join(', ')}: there are ${[...benches, ...IN_BROWSER].join(', ')}`,
  );

for (const name of benches.filter(isWanted)) {
  const { bench } = await importBundled(`test/bench/${name}.ts`);
  await bench();
}
const { printer, sayYardstick, spreadOf } = await importBundled('test/bench/yardstick.ts');
const { line, unit } = printer(1);
if (isWanted('frame')) {
  const stolen = watchStolen();
  const { p95, ...times } = await benchFrame();
  const share = stolen();
  line(`pointer move to painted frame, 95th percentile ${p95.toFixed(1)} ms`, times);
  if (share !== null) console.log(`  processor time the host kept for others: ${(100 * share).toFixed(1)} %`);
}
if (isWanted('map')) {
  const { times, longest, cancels } = await benchMap();
  line('map of 41 by 31 on the page (goal: below 3000 ms)', spreadOf(times));
  line('  cancelled (goal: below 100 ms)', spreadOf(cancels));
  line('  longest task of the page meanwhile (0: none above 50)', longest);
}
if (isWanted('proposal')) {
  const { searches, free, front, points, longest } = await benchProposal();
  line(`proposal on the page, ${free} free quantities (goal: below 30 s)`, spreadOf(searches));
  line(`  front of ${points} points (goal: below 180 s)`, front);
  line('  longest task of the page meanwhile (0: none above 50)', longest);
}
if (isWanted('page')) {
  const found = await benchPage();
  for (const text of pageLines(found)) console.log(text);
  line('  the largest paint, spread of the visits', spreadOf(found.times.paint));
  line('  first figures, spread of the visits', spreadOf(found.times.figures));
}
if (IN_BROWSER.some(isWanted)) sayYardstick(unit);
