// Runs every bench in test/bench, then the frame bench. Names on the command line choose some of them:
// `npm run bench -- solve frame`. Figures are medians.
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { benchFrame } from './bench-frame.mjs';
import { importBundled, root } from './bundle.mjs';

const FIRST = 'solve'; // its first line is the time of a full solve
const wanted = process.argv.slice(2);
const isWanted = (name) => wanted.length === 0 || wanted.includes(name);

const benches = readdirSync(join(root, 'test', 'bench'))
  .map((file) => basename(file, '.ts'))
  .filter((name) => name !== 'yardstick')
  .sort((one, other) => Number(other === FIRST) - Number(one === FIRST) || one.localeCompare(other));
const unknown = wanted.filter((name) => name !== 'frame' && !benches.includes(name));
if (unknown.length > 0)
  throw new Error(`no bench is called ${unknown.join(', ')}: there are ${benches.join(', ')} and frame`);

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
