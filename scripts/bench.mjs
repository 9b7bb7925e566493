// Runs every bench in test/bench, bundled with the project's own builder, then the frame bench. Names on the command
// line choose some of them: `npm run bench -- solve frame`. Figures are medians.
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { benchFrame } from './bench-frame.mjs';

process.env.NODE_ENV = 'production';
const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(root, 'test', 'bench');
const FIRST = 'solve'; // its first line is the time of a full solve
const wanted = process.argv.slice(2);
const isWanted = (name) => wanted.length === 0 || wanted.includes(name);

const benches = readdirSync(folder)
  .map((file) => basename(file, '.ts'))
  .filter((name) => name !== 'yardstick')
  .sort((one, other) => Number(other === FIRST) - Number(one === FIRST) || one.localeCompare(other));
const unknown = wanted.filter((name) => name !== 'frame' && !benches.includes(name));
if (unknown.length > 0)
  throw new Error(`no bench is called ${unknown.join(', ')}: there are ${benches.join(', ')} and frame`);

for (const name of benches.filter(isWanted)) await runBench(name);
if (isWanted('frame')) {
  const { median, p95 } = await benchFrame();
  console.log(
    `pointer move to painted frame: median ${median.toFixed(1)} ms, 95th percentile ${p95.toFixed(1)} ms`,
  );
}

async function runBench(name) {
  const source = join(folder, `${name}.ts`);
  const aside = mkdtempSync(join(root, '.bench-'));
  try {
    await build({
      root,
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      ssr: { noExternal: true },
      define: { 'import.meta.url': JSON.stringify(pathToFileURL(source).href) },
      build: {
        ssr: source,
        outDir: aside,
        target: 'node20',
        minify: false,
        rollupOptions: { output: { entryFileNames: 'bench.mjs' } },
      },
    });
    const { bench } = await import(pathToFileURL(join(aside, 'bench.mjs')));
    await bench();
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
