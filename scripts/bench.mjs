// Bundles the benches with the project's own builder and runs them in one process; figures are medians.
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

process.env.NODE_ENV = 'production';
const root = fileURLToPath(new URL('..', import.meta.url));
const aside = mkdtempSync(join(root, '.bench-'));
try {
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    define: {
      'import.meta.url': JSON.stringify(pathToFileURL(join(root, 'test', 'bench', 'solve.ts')).href),
    },
    build: {
      ssr: join(root, 'test', 'bench', 'solve.ts'),
      outDir: aside,
      target: 'node20',
      minify: false,
      rollupOptions: { output: { entryFileNames: 'bench.mjs' } },
    },
  });
  const { benchSolve } = await import(pathToFileURL(join(aside, 'bench.mjs')));
  benchSolve();
} finally {
  rmSync(aside, { recursive: true, force: true });
}
const { benchFrame } = await import('./bench-frame.mjs');
const { median, p95 } = await benchFrame();
console.log(
  `pointer move to painted frame: median ${median.toFixed(1)} ms, 95th percentile ${p95.toFixed(1)} ms`,
);
