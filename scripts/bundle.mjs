// Runs a TypeScript file of the project from Node: bundled with the project's own builder, aside, and removed again.
import { mkdtempSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Where a module stands below src/solver; null for any other. */
export function solverPath(id) {
  const path = relative(root, id.split('?')[0]).replaceAll('\\', '/');
  return path.startsWith('src/solver/') ? path.slice('src/solver/'.length) : null;
}

/** The module's exports; `plugins` may change what it is made of. */
export const importBundled = (source, plugins = []) => withBundle(source, plugins, (load) => load());

/** What `use` makes of the module: each `load()` is a fresh copy of it, with all it imports. */
export async function withBundle(source, plugins, use) {
  process.env.NODE_ENV = 'production';
  const path = join(root, source);
  const aside = mkdtempSync(join(root, '.bundle-'));
  let copies = 0;
  try {
    await build({
      root,
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      plugins,
      ssr: { noExternal: true },
      define: { 'import.meta.url': JSON.stringify(pathToFileURL(path).href) },
      build: {
        ssr: path,
        outDir: aside,
        target: 'node20',
        minify: true, // as the page has it: constants stand as numbers in the loops
        rollupOptions: { output: { entryFileNames: 'bundle.mjs', codeSplitting: false } },
      },
    });
    const bundle = pathToFileURL(join(aside, 'bundle.mjs')).href;
    return await use(() => import(`${bundle}?copy=${copies++}`));
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
}
