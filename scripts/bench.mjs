// Runs every bench in test/bench, then those of the page: frame, map, page and proposal. Names on the command
// line choose some of them:
// `npm run bench -- solve frame`. Figures are medians.
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { benchFrame } from './bench-frame.mjs';
import { benchMap } from './bench-map.mjs';
import { benchPage, pageLines } from './bench-page.mjs';
import { benchProposal } from './bench-proposal.mjs';
import { importBundled, root } from './bundle.mjs';

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
if (isWanted('frame')) {
  const { median, p95 } = await benchFrame();
  console.log(
    `pointer move to painted frame: median ${median.toFixed(1)} ms, 95th percentile ${p95.toFixed(1)} ms`,
  );
}
if (isWanted('map')) {
  const { time, longest, cancel } = await benchMap();
  console.log(
    `map of 41 by 31 on the page: ${time.toFixed(0)} ms (goal: below 3000), longest task of the page meanwhile ${longest.toFixed(0)} ms (0: none above 50), cancelled in ${cancel.toFixed(0)} ms (goal: below 100)`,
  );
}
if (isWanted('proposal')) {
  const { search, free, front, points, longest } = await benchProposal();
  console.log(
    `proposal on the page, ${free} free quantities: ${(search / 1000).toFixed(1)} s (goal: below 30), front of ${points} points ${(front / 1000).toFixed(1)} s (goal: below 180), longest task of the page meanwhile ${longest.toFixed(0)} ms (0: none above 50)`,
  );
}
if (isWanted('page')) for (const line of pageLines(await benchPage())) console.log(line);
